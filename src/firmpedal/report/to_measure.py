"""What is still to be measured, one by one: where its figure is written, in which unit, how to take it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from firmpedal.checks.rules import asked_by
from firmpedal.decide.lacking import lacking, lacking_for
from firmpedal.hashing import Same
from firmpedal.model.display import display_of
from firmpedal.project.bare_units import OF_PIECES, bare_unit
from firmpedal.project.locate import walked
from firmpedal.project.measured import still_open, written_at
from firmpedal.project.own_image import follows
from firmpedal.project.tree import Branch, Node
from firmpedal.project.unknowns import Item, reads_at
from firmpedal.quantity import When
from firmpedal.report.measuring_words import blank_of
from firmpedal.report.offers import Offer, offers_for

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.decide.lacking import Lacking
    from firmpedal.model.fields import Reads
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Missing
    from firmpedal.report.sheet import Blank

WITH_UNIT = "write its unit too, such as {unit}"
NEEDED_LATER = "no check waits for it yet; it is open in the file"
WITH_SIDES = ("position", "positions", "direction", "vector", "shape", "body", "sheet")  # how a key is read
POINTS_OF_SHAPES = ("ball", "disc", "box", "bar")
NAMED = 2  # of the checks that wait for it; the others are counted
LATER = {
    When.NOW: "",
    When.IN_HAND: "Measure it with the part in hand.",
    When.FITTED: "Measure it when the line is fitted, and write it on its card.",
    When.TRIED: "Measure it in the first trials on the ground, once everything else is proved.",
}


@dataclass(frozen=True, slots=True)
class ToMeasure:
    """One thing to measure.

    `at` is the one place of the file where its figure is written, empty where it is no single value;
    `places` are where it is missed, `others` what gets the same figure as copies do. `unit` is that of
    the file for a bare figure, or the words to choose from; `when` it is there to be measured; `offers` are
    figures that the file has elsewhere and that may be it. `for_figures` says that a page of figures
    asks for it, whether a rule waits for it or not; `turns` that the others are mirror images and its figure
    is a place or a way, so that theirs is not the same but the same seen in a mirror.
    """

    what: str
    rules: tuple[str, ...]
    places: tuple[str, ...]
    at: str = ""
    others: tuple[str, ...] = ()
    unit: str = ""
    how: str = ""
    when: When = When.NOW
    for_figures: bool = False
    offers: tuple[Offer, ...] = ()
    turns: bool = False

    @property
    def of_thread(self) -> bool:
        """Whether it is the thread of a port, which is looked at and not measured alone."""
        return self.at.endswith(".thread")

    @property
    def checks(self) -> tuple[str, ...]:
        """What cannot be checked before it is known, a sentence each."""
        return tuple(filter(None, map(asked_by, self.rules)))

    @property
    def why(self) -> str:
        """What waits for it, in a line."""
        first, more = self.checks[:NAMED], len(self.checks) - NAMED
        if not first:
            return "" if self.for_figures else NEEDED_LATER
        others = f"; and {more} more" if more > 0 else ""
        return f"needed to check: {'; '.join(each.removesuffix('.') for each in first)}{others}"

    @property
    def later(self) -> str:
        """When it can be measured, where that is not now."""
        return LATER[self.when]


def to_measure(evaluation: Evaluation) -> tuple[ToMeasure, ...]:
    """Each thing once: what rules wait for, what else the file leaves unknown, last what waits."""
    return _all_rows(Same(evaluation))


@lru_cache(maxsize=4)  # every page counts it, and most sheets of a packet ask
def _all_rows(same: Same[Evaluation]) -> tuple[ToMeasure, ...]:
    found = (_row(same.thing, one) for one in lacking(same.thing))
    return tuple(sorted(found, key=lambda one: list(When).index(one.when)))


def asked_for(evaluation: Evaluation, missing: Iterable[Missing]) -> tuple[ToMeasure, ...]:
    """What some figures lack, each thing once, with the rules that wait for it as well."""
    found = (_row(evaluation, one) for one in lacking_for(evaluation, missing))
    return tuple(replace(one, for_figures=True) for one in found)


def _turns(evaluation: Evaluation, places: tuple[str, ...]) -> bool:
    """Whether a figure has a left and a right, and goes to mirror images too."""
    tree, reading = evaluation.reading.tree, evaluation.reading
    if tree is None or not any(follows(reading, ".".join(place.split(".")[:2])) for place in places):
        return False
    reads = reads_at(tree, places[0])
    of_a_point = places[0].rpartition(".")[2] in POINTS_OF_SHAPES or places[0].startswith("moving.")
    return of_a_point or (reads is not None and reads.method in WITH_SIDES)


def _row(evaluation: Evaluation, one: Lacking) -> ToMeasure:
    """A single value of the file gets a box; a point or a shape only the ways to its places."""
    turns = _turns(evaluation, one.places)
    row = ToMeasure(one.what, one.rules, one.places, when=one.when, turns=turns)
    written = {written_at(evaluation.reading, place) for place in one.places}
    if len(written) != 1:
        return row
    (at,) = written
    blank = _blank(evaluation, at)
    if blank is None:
        return replace(row, others=one.places[1:])
    others, offers = tuple(place for place in one.places if place != at), offers_for(evaluation, at)
    return replace(row, at=at, others=others, unit=blank.boxes[0], how=blank.how, offers=offers)


def _blank(evaluation: Evaluation, place: str) -> Blank | None:
    """The row of the measuring form for one value; None where a place is no single value of the file."""
    tree = evaluation.reading.tree
    if tree is None:
        return None
    node, reads = walked(tree, place), reads_at(tree, place)
    thing = walked(tree, place.rpartition(".")[0])
    if not (_can_begin(reads, thing) if node is None else still_open(node)):
        return None
    own = display_of(evaluation.aircraft.units)
    blank = blank_of(Item(place, reads, ()), own)
    if len(blank.boxes) != 1 or (reads is not None and reads.method in OF_PIECES):
        return None
    unit = _unit(evaluation, blank.boxes[0], place)
    if blank.boxes[0] and not unit:
        how = "; ".join(words for words in (blank.how, WITH_UNIT.format(unit=blank.boxes[0])) if words)
        return replace(blank, boxes=("",), how=how)
    return replace(blank, boxes=(unit,))


def _can_begin(reads: Reads | None, thing: Node | None) -> bool:
    """Whether a value that is not written has a key of its own, under a thing of keys."""
    return reads is not None and (thing is None or isinstance(thing, Branch))


def _unit(evaluation: Evaluation, words: str, place: str) -> str:
    """The unit of a bare figure, as the file names it; where it names none there is no unit to go by."""
    tree = evaluation.reading.tree
    reads = reads_at(tree, place) if tree is not None else None
    if tree is None or reads is None or reads.dimension is None:
        return words
    return bare_unit(tree, reads.dimension)
