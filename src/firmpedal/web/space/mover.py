"""Changing the corners of lines in the builder's text: moved, added, taken out, made into points."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.project.corner_list import as_a_point, with_corner, without_corner
from firmpedal.project.corners import Corner, Form, as_point, corner_at, moved_words, tape_of
from firmpedal.project.edit import EditError
from firmpedal.web.space.plane import dragged, middle, stepped

if TYPE_CHECKING:
    from firmpedal.model.space import Point
    from firmpedal.pipeline import Evaluation
    from firmpedal.project.corners import Tape
    from firmpedal.web.space.scene import Scene, Way
    from firmpedal.web.watch import Watch

CHAIN_WORDS = "It hangs on another place and stays so: its distances change."
OTHER_WORDS = (
    "It is written as `{words}`. To be moved it becomes a point of its own, {point}, and no longer goes "
    "along with what it hangs on."
)
FOR_ALL = "It stands in the aircraft as written: moved, it moves in every option."
MIRRORED = "It is the mirror image of {name}, and moves with it."


@dataclass(frozen=True)
class Held:
    """How a corner can be moved: freely, or why not, in words; `source` is the one that it is a copy of."""

    corner: Corner | None
    words: tuple[str, ...] = ()
    source: str = ""

    @property
    def free(self) -> bool:
        return self.corner is not None and self.corner.form is not Form.OTHER


class Mover:
    """Changes corners through the document; remembers where they were put until that is worked out."""

    def __init__(self, watch: Watch) -> None:
        self.watch = watch
        self._put: dict[str, Point] = {}
        self.tape: Tape | None = None

    def shown(self, evaluation: Evaluation) -> None:
        """Another answer is there, with all that was changed so far."""
        self._put.clear()
        self.tape = tape_of(evaluation.aircraft.units)

    def held(self, evaluation: Evaluation, scene: Scene, key: str) -> Held:
        """Say whether a corner can be moved, and what to know before."""
        text, option = self.watch.document.text, self.watch.option
        try:
            corner = corner_at(text, key, option)
        except EditError as refusal:
            source = self._source(evaluation, scene, key)
            if source:
                return Held(None, (MIRRORED.format(name=_called(scene, source)),), source)
            return Held(None, (f"{refusal}.", f"{refusal.suggestion}.".capitalize()))
        words: tuple[str, ...] = (FOR_ALL,) if option is not None and corner.option is None else ()
        if corner.form is Form.CHAIN:
            words += (CHAIN_WORDS,)
        if corner.form is Form.OTHER and self.tape is not None:
            point = as_point(self._now(scene, key), self.tape)
            words += (OTHER_WORDS.format(words=" ".join(corner.words.split()), point=point),)
        return Held(corner, words)

    def _source(self, evaluation: Evaluation, scene: Scene, key: str) -> str:
        """The corner whose words a copied one has: it stands at the same place of the file."""
        span, copy = evaluation.span_of(key), scene.line_of(key)
        others = (spot.key for way in scene.ways if way is not copy for spot in way.corners)
        here = [each for each in others if evaluation.span_of(each) == span]
        return next((each for each in here if self._written(each)), "")

    def _written(self, key: str) -> bool:
        try:
            corner_at(self.watch.document.text, key, self.watch.option)
        except EditError:
            return False
        return True

    def drag(self, scene: Scene, key: str, by: Point, view: Point, *, single: bool) -> Point:
        """Write a corner that was dragged; gives where it is then.

        Raises:
            EditError: It cannot be moved; nothing was changed.
        """
        tape = self._tape()
        now = self._now(scene, key)
        return self._write(key, now, dragged(now, by, view, tape, single=single))

    def step(self, scene: Scene, key: str, axis: int, by: float) -> Point:
        """Write a corner that was moved by a step along one axis [m]; gives where it is then.

        Raises:
            EditError: It cannot be moved; nothing was changed.
        """
        now = self._now(scene, key)
        return self._write(key, now, stepped(now, axis, by))

    def _write(self, key: str, now: Point, to: Point) -> Point:
        tape, document = self._tape(), self.watch.document
        corner = corner_at(document.text, key, self.watch.option)
        if corner.form is Form.OTHER:
            raise EditError(f"{key} is not written as a point", "make it one first")
        document.change(corner.place, moved_words(corner, now, to, tape), corner.option)
        if corner.form is Form.POINT:
            x, y, z = (new if new == old else tape.snapped(new) for old, new in zip(now, to, strict=True))
            to = (x, y, z)
        self._put[key] = to
        return to

    def add(self, way: Way, leg: int, ends: tuple[Point, Point]) -> str:
        """Put a corner in the middle of a leg, which are counted from 0; gives its key.

        Raises:
            EditError: The line's corners are not written by themselves.
        """
        document, words = self.watch.document, as_point(middle(*ends), self._tape())
        text = with_corner(document.text, way.key, leg, words, self.watch.option)
        document.rewrite(text, f"a corner in leg {leg + 1} of {way.name}")
        return f"{way.key}.via.{leg + 1}"

    def remove(self, way: Way, key: str) -> str:
        """Take a corner out; gives the key of its line.

        Raises:
            EditError: The line's corners are not written by themselves.
        """
        number, document = _number(key), self.watch.document
        text = without_corner(document.text, way.key, number, self.watch.option)
        document.rewrite(text, f"corner {number} of {way.name} taken out")
        return way.key

    def make_point(self, scene: Scene, way: Way, key: str) -> None:
        """Write a corner as a point that is written in another way.

        Raises:
            EditError: The line's corners are not written by themselves.
        """
        words, document = as_point(self._now(scene, key), self._tape()), self.watch.document
        text = as_a_point(document.text, way.key, _number(key), words, self.watch.option)
        document.rewrite(text, f"corner {_number(key)} of {way.name} made a point")

    def _now(self, scene: Scene, key: str) -> Point:
        """Where a corner is, with what has been changed and is still being worked out."""
        spots = (spot for way in scene.ways for spot in way.corners if spot.key == key)
        point = self._put.get(key) or next((spot.point for spot in spots), None)
        if point is None:
            raise EditError(f"there is no corner {key} any more", "choose another one")
        return point

    def _tape(self) -> Tape:
        if self.tape is None:
            raise EditError("the file is still being read", "try again in a moment")
        return self.tape


def _number(key: str) -> int:
    return int(key.rpartition(".")[2])


def _called(scene: Scene, key: str) -> str:
    way = scene.line_of(key)
    return f"corner {_number(key)} of {way.name}" if way is not None else key
