"""The rule about elbows that meet something as they are screwed in, or when they point where they shall."""

from __future__ import annotations

import math
from itertools import combinations
from typing import TYPE_CHECKING

from firmpedal.checks.elbow_room import (
    RULE,
    around,
    final,
    needed_beside,
    set_apart,
    side_by_side,
    turns_in_beside,
)
from firmpedal.checks.view import Limit, Outcome, View, cited
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.lay.around import things_about
from firmpedal.lay.port_fittings import port_fittings
from firmpedal.quantity import Answer

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.port_fittings import PortFitting
    from firmpedal.quantity import Missing, Value

STRAIGHT_LAST = (
    "a straight nipple in one of the two, put in last, and the bend in the hose's own end",
    "a fitting that swivels before it is locked",
)


def elbows_cannot_turn(view: View) -> Iterator[Outcome]:
    """An elbow has room to be screwed in, and room where it points in the end.

    An elbow that is screwed in sweeps a circle round its port with its outlet. Of two elbows side by side
    the one that goes in last must clear the body of the one that is in already; it is tried in both orders.
    Once they point where they shall, no leg may lie in another fitting, in a panel or in a thing to stay
    clear of. What the circle alone meets, and does not belong to the component, is no hindrance on the
    bench: there the elbow goes in first, and the component is mounted with it. Things are taken where they
    were measured; what is not in the file is not seen.
    """
    about = things_about(view.aircraft)
    for component in view.aircraft.components:
        fittings = port_fittings(component, view.assembly, view.laid)
        for one, other in combinations(fittings, 2):
            found = list(_pair(view, component.place, one, other)) if _side_by_side(one, other) else []
            yield from found or final(component.place, one, other)
        for elbow in fittings:
            if elbow.turned_in:
                yield from around(view, component.name, elbow, about)


def _side_by_side(one: PortFitting, other: PortFitting) -> bool:
    return one.turned_in and other.turned_in and one.same_way(other)


def _pair(view: View, place: str, one: PortFitting, other: PortFitting) -> Iterator[Outcome]:
    names = f"{one.port.name} and {other.port.name}"
    apart = set_apart(one, other)
    orders = [needed_beside(one, other), needed_beside(other, one)]
    answers = [Limit(apart, needed, "at least").kept for needed in orders]
    if Answer.YES in answers:
        yield from _past_the_leg(place, one, other)
        return
    last = min(orders, key=lambda value: value.low if value.known else math.inf)
    if Answer.UNKNOWN in answers:
        missing = _asked(apart, orders[answers.index(Answer.UNKNOWN)], (one, other))
        yield NotShown(RULE, place, f"whether the elbows at {names} can both be screwed in", missing)
        return
    yield Finding(
        RULE,
        Level.CAUTION,
        place,
        f"{names} are {view.show(apart)} apart, and an elbow turned in beside the other needs "
        f"{view.show(last)}: neither can go in last",
        STRAIGHT_LAST,
        apart,
        last,
        "at least",
        cited(last, apart),
        about=(one.port.place, other.port.place),
    )


def _past_the_leg(place: str, one: PortFitting, other: PortFitting) -> Iterator[Outcome]:
    """The bodies leave room: whether the one that goes in last also turns past where the first one points.

    Where nobody says which way they point, a way can still be chosen that leaves room.
    """
    if one.arm is None or other.arm is None:
        return
    if {turns_in_beside(one, other), turns_in_beside(other, one)} != {Answer.NO}:
        return  # the circle has answered already; only what is sure is added to it
    names = f"{one.port.name} and {other.port.name}"
    yield Finding(
        RULE,
        Level.CAUTION,
        place,
        f"the elbows at {names} point into each other's circle: whichever goes in last meets the outlet of "
        "the first",
        ("point one of the two another way", *STRAIGHT_LAST),
        sources=cited(*one.figures, *other.figures),
        about=(one.port.place, other.port.place),
    )


def _asked(apart: Value, needed: Value, pair: tuple[PortFitting, ...]) -> tuple[Missing, ...]:
    """What is not known; where all is and only an estimate is too wide, the fittings in hand tell."""
    return tuple(dict.fromkeys((*apart.missing, *needed.missing))) or side_by_side(pair)
