"""Figures that the file has elsewhere for the same thing, offered where one is asked for."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.model.aircraft import find
from firmpedal.model.component import SideOf
from firmpedal.model.shapes import Disc
from firmpedal.model.surroundings import Obstacle
from firmpedal.project.locate import walked
from firmpedal.project.names import label_of
from firmpedal.project.supposed import supposed_thread
from firmpedal.project.tree import Branch, at, word_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.model.surroundings import KeepClear
    from firmpedal.pipeline import Evaluation

LOOKED = "that is only supposed. Have you looked, and is it that?"
ACROSS = 1  # the coordinate that is plus on the right


@dataclass(frozen=True, slots=True)
class Offer:
    """What the file has that may be it: its words, of which thing, what to ask, and a mark of doubt."""

    words: str
    thing: str
    asks: str = "is it that disc?"
    doubt: str = ""


def offers_for(evaluation: Evaluation, place: str) -> tuple[Offer, ...]:
    """What may be written at a place of the file because it stands elsewhere already.

    The radius of a brake disc is that of the disc which lines stay clear of, on the same side. A thread
    may well be what it is supposed to be.
    """
    tree = evaluation.reading.tree
    if tree is not None and (supposed := supposed_thread(walked(tree, place))):
        return (Offer(supposed, label_of(place.removesuffix(".thread")), LOOKED),)
    section, _, rest = place.partition(".")
    name, _, key = rest.partition(".")
    caliper = find(evaluation.aircraft.calipers, name) if section == "components" else None
    if caliper is None or key != "disc.radius":
        return ()
    discs = (each for each in evaluation.aircraft.keep_clear_of if _on(each, caliper.side))
    return tuple(offer for each in discs for offer in _radius(evaluation, each))


def _on(thing: KeepClear, side: SideOf) -> bool:
    """Whether it is a brake disc on a side of the aircraft, by where its middle is."""
    if thing.kind is not Obstacle.DISC or not isinstance(thing.where, Disc):
        return False
    across = thing.where.centre.coordinates[ACROSS]
    if across.span is None:
        return False
    return across.high < 0 if side is SideOf.LEFT else across.low > 0 if side is SideOf.RIGHT else True


def _radius(evaluation: Evaluation, thing: KeepClear) -> Iterator[Offer]:
    tree = evaluation.reading.tree
    node = None if tree is None else walked(tree, f"{thing.place}.where.radius")
    words = word_of(at(node, "value")) if isinstance(node, Branch) else word_of(node)
    if words and isinstance(thing.where, Disc) and thing.where.radius.known:
        yield Offer(words, thing.name, doubt=word_of(at(node, "mark")) if isinstance(node, Branch) else "")
