"""Rules about what the bench can make."""

from __future__ import annotations

from math import degrees
from typing import TYPE_CHECKING

from firmpedal.checks.view import Outcome, View, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.quantity import Mark

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.bend_order import BendOrder, Hit

ENDS = {"from": "the first end", "to": "the last end"}


def bends_in_no_order(view: View) -> Iterator[Outcome]:
    """There is an order in which every bend can be made without the tube hitting bender or bench.

    The half-bent tube is swept past the parts of the bender that the file declares, in the order from the
    first end, then with the other side held, then in any other order.
    """
    rule, reason = "bends-in-no-order", practice("firmpedal-derivation", Mark.DERIVED)
    for line in view.laid:
        if line.work is None or not line.work.bends:
            continue
        if line.work.missing:
            message = f"whether the bends of {line.name} can be made"
            yield NotShown(rule, line.place, message, line.work.missing)
            continue
        order = line.work.order
        if order is None or not order.hits:
            continue
        hit = order.hits[0]
        if not order.steps:
            message = f"the bends of {line.name} can be made in no order: {_words(hit)}"
            tries = (
                "longer straights on either side of this bend, or two gentler bends",
                "a smaller bender, or take this bend by hand if the tube allows it",
                "two tubes with a union between them, at a place that can be reached",
            )
            yield Finding(rule, Level.WARNING, line.place, message, tries, sources=reason)
            continue
        message = f"{line.name} cannot be bent from its first end on: {_words(hit)}"
        yield Finding(rule, Level.NOTE, line.place, message, (_order(order),), sources=reason)


def _words(hit: Hit) -> str:
    return f"in bend {hit.bend + 1} the tube hits {hit.body} at {degrees(hit.angle):.0f} degrees"


def _order(order: BendOrder) -> str:
    steps = ", ".join(f"bend {step.bend + 1} with the side of {ENDS[step.held]} held" for step in order.steps)
    return f"bend in this order: {steps}"
