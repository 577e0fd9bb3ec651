"""The card of what is chosen: its name and figures, the way to its field, and buttons that move a corner."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, NamedTuple

from firmpedal.units import show
from firmpedal.web.elements import box, button, link, put, put_words, said

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.project.corners import Tape
    from firmpedal.web.space.figures import Said
    from firmpedal.web.space.mover import Held

NOTHING = "Choose a line or a thing, in the picture or in the list."
WAYS = (("forward", 0, -1), ("aft", 0, 1), ("left", 1, -1), ("right", 1, 1), ("down", 2, -1), ("up", 2, 1))
MOVE_WORDS = (
    "Drag it in the picture, or press a way. In the picture the arrow keys go forward, aft, up and down, "
    "Page Up goes right and Page Down left."
)
MOVED = "The picture is shown moved. Corners are moved as measured."
# Steps in marks of the tape: 1/16, 1/4 and 1 in, or 1, 5 and 25 mm.
SIZES, METRIC_SIZES = (1, 4, 16), (1, 5, 25)


class Doings(NamedTuple):
    """What the buttons of the card do."""

    step: Callable[[int, int, int], None]  # axis, sign, how many marks
    add: Callable[[int], None]
    remove: Callable[[], None]
    make_point: Callable[[], None]
    choose: Callable[[str], None]
    centre: Callable[[], None]
    single: Callable[[bool], None]


class Details:
    """Stays the same element, so that whoever presses a way again and again keeps their place."""

    def __init__(self, doings: Doings) -> None:
        self._doings, self._size, self._single, self._marks = doings, 0, False, SIZES
        with box("section", "fp-card fp-space-details", aria_label="What is chosen"):
            self._name = said("h2", "")
            self._sort = said("p", NOTHING, "fp-small")
            self._alert = said("p", "", "fp-refused", role="alert")
            self._rows = box("dl", "fp-space-figures")
            self._ways = box("div", "fp-actions")
            self._notes = box("div")
            self._mover = box("div", "fp-space-mover")
            with self._mover:
                self._move()
            self._legs = box("div")
        self._alert.set_visibility(False)

    def _move(self) -> None:
        said("p", MOVE_WORDS, "fp-small")
        with box("div", "fp-space-ways", role="group", aria_label="Move the corner"):
            for word, axis, sign in WAYS:
                button(word, partial(self._step, axis, sign))
        with box("div", "fp-pair", role="group", aria_label="By how much"):
            self._sizes = [button("", partial(self._resize, n)) for n in range(len(SIZES))]
        with box("div", "fp-actions"):
            self._one = button("Drag one way only", self._turn_single, aria_pressed="false")
            button("Take the corner out", self._doings.remove)

    def _step(self, axis: int, sign: int) -> None:
        self._doings.step(axis, sign, self._marks[self._size])

    def _resize(self, number: int) -> None:
        self._size = number
        for n, each in enumerate(self._sizes):
            put(each, aria_pressed=str(n == number).lower())

    def _turn_single(self) -> None:
        self._single = not self._single
        put(self._one, aria_pressed=str(self._single).lower())
        self._doings.single(self._single)

    def measure(self, tape: Tape) -> None:
        """Say how long the steps are, as the file counts."""
        self._marks = METRIC_SIZES if tape.metric else SIZES
        unit, fraction = ("mm", None) if tape.metric else ("in", 16)
        for each, marks in zip(self._sizes, self._marks, strict=True):
            put_words(each, show(marks * tape.mark, unit, fraction=fraction, decimals=0))
        self._resize(self._size)

    def refused(self, words: str) -> None:
        """Say why something was not done; empty for nothing."""
        self._alert.set_visibility(bool(words))
        put_words(self._alert, words)

    def show(
        self, told: Said | None, field: str, held: Held | None, *, moved: bool, legs: tuple[str, ...]
    ) -> None:
        """Show the card of something, or of nothing.

        Args:
            told: What is said of it.
            field: The address of its field.
            held: Of a corner, how it can be moved.
            moved: Whether the picture is shown moved; then nothing is changed in it.
            legs: Of a line, the lengths of its legs, for corners to be put in.
        """
        put_words(self._name, told.name if told else "Nothing chosen")
        put_words(self._sort, told.sort if told else NOTHING)
        for holder in (self._rows, self._ways, self._notes, self._legs):
            holder.clear()
        self._mover.set_visibility(held is not None and held.free and not moved)
        if told is None:
            return
        with self._rows:
            for name, words in told.rows:
                with box("div"):
                    said("dt", name)
                    said("dd", words)
        with self._ways:
            link("Its field", field, "fp-button")
            button("Look at it", self._doings.centre)
        with self._notes:
            if held is not None:
                self._hold(held, moved=moved)
        if legs and not moved:
            with self._legs:
                self._add(legs)

    def _hold(self, held: Held, *, moved: bool) -> None:
        for words in (MOVED,) if moved else held.words:
            said("p", words, "fp-small")
        if held.source:
            button("Choose that one", lambda: self._doings.choose(held.source))
        elif held.corner is not None and not held.free and not moved:
            button("Make it a point", self._doings.make_point)

    def _add(self, legs: tuple[str, ...]) -> None:
        said("h3", "Put a corner in the middle of")
        with box("div", "fp-actions"):
            for n, length in enumerate(legs):
                button(f"leg {n + 1}, {length}", partial(self._doings.add, n))
