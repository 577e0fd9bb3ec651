"""Rules about what the bench can make."""

from __future__ import annotations

from math import degrees
from typing import TYPE_CHECKING

from firmpedal.checks.view import Outcome, View, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.quantity import Mark, exactly
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.bend_order import BendOrder, Hit
    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.work import TubeWork

NO_ORDER = "bends-in-no-order"
ENDS = {"from": "the first end", "to": "the last end"}
_REASON = practice("firmpedal-derivation", Mark.DERIVED)


def bends_in_no_order(view: View) -> Iterator[Outcome]:
    """There is an order in which every bend can be made: held in the bender, and hitting nothing.

    Before a bend the bender's `grip` has to be straight. The half-bent tube is swept past the parts of the
    bender that the file declares, in the order from the first end, then with the other side held, then in
    any other order. A part that touches the tube right at the bend before the lever moves holds it, and
    is not hit there; any other is, also within the grip.
    """
    rule = NO_ORDER
    for line, work in _bent(view):
        if work.missing:
            yield NotShown(rule, line.place, f"whether the bends of {line.name} can be made", work.missing)
        elif work.order is not None and not work.order.possible:
            hit = work.order.hits[0]
            message = f"the bends of {line.name} can be made in no order: {_words(view, hit)}"
            yield Finding(rule, Level.WARNING, line.place, message, _tries(line, hit), sources=_REASON)


def bends_out_of_order(view: View) -> Iterator[Outcome]:
    """The bends can be made one after the other from the first end, with that end's side held.

    Where they cannot, another order is given. It is found as for bends-in-no-order, which also says what
    has to be measured first.
    """
    rule = "bends-out-of-order"
    for line, work in _bent(view):
        if work.order is not None and work.order.hits and work.order.steps:
            words = _words(view, work.order.hits[0])
            message = f"{line.name} cannot be bent from its first end on: {words}"
            advice = (_order(work.order),)
            yield Finding(rule, Level.NOTE, line.place, message, advice, sources=_REASON)


def _bent(view: View) -> list[tuple[LaidLine, TubeWork]]:
    return [(line, line.work) for line in view.laid if line.work is not None and line.work.bends]


def _words(view: View, hit: Hit) -> str:
    if hit.straight is None:
        return f"in bend {hit.bend + 1} the tube hits {hit.body} at {degrees(hit.angle):.0f} degrees"
    grip = view.aircraft.bench.bender.grip
    straight = view.show(exactly("straight", Dimension.LENGTH, hit.straight, Mark.DERIVED))
    return (
        f"bend {hit.bend + 1} cannot be held, as straight {hit.bend + 1} before it is {straight} "
        f"and the bender grips {view.show(grip)}"
    )


def _tries(line: LaidLine, hit: Hit) -> tuple[str, ...]:
    usual = (
        "longer straights on either side of this bend, or two gentler bends",
        "a smaller bender, or take this bend by hand if the tube allows it",
        "two tubes with a union between them, at a place that can be reached",
    )
    if hit.straight is None:
        own = f"if {hit.body} is what holds the tube there, leave it out of the bender's parts"
        return usual if hit.angle > 0 else (own, *usual)
    if hit.bend > 0:
        return usual
    return (f"leave {line.name} longer at its first end while you bend, and cut it afterwards", *usual)


def _order(order: BendOrder) -> str:
    steps = ", ".join(f"bend {step.bend + 1} with the side of {ENDS[step.held]} held" for step in order.steps)
    return f"bend in this order: {steps}"
