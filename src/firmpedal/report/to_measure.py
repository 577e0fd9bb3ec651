"""What is still to be measured, one by one: where its figure is written, in which unit, how to take it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.decide.lacking import key_of, left_open, place_of, waiting, when_of
from firmpedal.model.display import display_of
from firmpedal.project.bare_units import OF_PIECES, bare_unit
from firmpedal.project.locate import walked
from firmpedal.project.measured import still_open, written_at
from firmpedal.project.names import label_of
from firmpedal.project.tree import Branch, Node
from firmpedal.project.unknowns import Item, reads_at
from firmpedal.quantity import When
from firmpedal.report.measuring_words import blank_of
from firmpedal.report.offers import Offer, offers_for

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.model.fields import Reads
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Missing
    from firmpedal.report.sheet import Blank

WITH_UNIT = "write its unit too, such as {unit}"
NEEDED_LATER = "no rule waits for it yet; it is open in the file"
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
    asks for it, whether a rule waits for it or not.
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

    @property
    def why(self) -> str:
        """Which rules wait for it."""
        if self.for_figures and not self.rules:
            return ""
        return f"for the rule {', '.join(self.rules)}" if self.rules else NEEDED_LATER

    @property
    def later(self) -> str:
        """When it can be measured, where that is not now."""
        return LATER[self.when]


def to_measure(evaluation: Evaluation) -> tuple[ToMeasure, ...]:
    """Each thing once: what rules wait for, what else the file leaves unknown, last what waits."""
    when, found = when_of(evaluation), dict[str, ToMeasure]()
    for what, (rules, places) in waiting(evaluation).items():
        _put(evaluation, found, replace(_one(evaluation, what, rules, places), when=when[what]))
    asked = tuple(place for one in found.values() for place in (one.at, *one.places))
    for place in map(place_of, left_open(evaluation, asked)):
        found[place] = _one(evaluation, label_of(place), (), (place,))
    return tuple(sorted(found.values(), key=lambda one: list(When).index(one.when)))


def asked_for(evaluation: Evaluation, missing: Iterable[Missing]) -> tuple[ToMeasure, ...]:
    """What some figures lack, each thing once, with the rules that wait for it as well."""
    rules, found = waiting(evaluation), dict[str, ToMeasure]()
    places: dict[str, tuple[tuple[str, ...], When]] = {}
    for each in missing:
        before, _ = places.get(each.what, ((), each.when))
        places[each.what] = (tuple(dict.fromkeys((*before, each.place))), each.when)
    for what, (where, when) in places.items():
        waits = rules[what][0] if what in rules else ()
        _put(evaluation, found, replace(_one(evaluation, what, waits, where), when=when, for_figures=True))
    return tuple(found.values())


def _put(evaluation: Evaluation, found: dict[str, ToMeasure], one: ToMeasure) -> None:
    key = key_of(evaluation.reading, one.what, one.places)
    found[key] = _joined(found[key], one) if key in found else one


def _one(evaluation: Evaluation, what: str, rules: tuple[str, ...], places: tuple[str, ...]) -> ToMeasure:
    """A single value of the file gets a box; a point or a shape only the ways to its places."""
    if len(places) != 1:
        return ToMeasure(what, rules, places)
    at = written_at(evaluation.reading, places[0])
    blank = _blank(evaluation, at)
    if blank is None:
        return ToMeasure(what, rules, places)
    copies = () if at == places[0] else (places[0],)
    offers = offers_for(evaluation, at)
    return ToMeasure(what, rules, places, at, copies, blank.boxes[0], blank.how, offers=offers)


def _joined(one: ToMeasure, other: ToMeasure) -> ToMeasure:
    """The same figure, missed at a copy as well, or for another reason at its own place."""
    others = (*one.others, *(other.others or other.places))
    return replace(
        one,
        rules=tuple(dict.fromkeys((*one.rules, *other.rules))),
        places=tuple(dict.fromkeys((*one.places, *other.places))),
        others=tuple(place for place in dict.fromkeys(others) if place != one.at),
    )


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
