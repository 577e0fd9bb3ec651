"""The rule about elbows in neighbouring ports, which meet when they are screwed in."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import combinations
from typing import TYPE_CHECKING

from firmpedal.catalog import catalogue
from firmpedal.checks.view import Limit, Outcome, View, cited
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.lay.seats import stand_of
from firmpedal.lay.spread import spread
from firmpedal.model.part import Category, Clocking, Form
from firmpedal.quantity import Answer, Mark, Missing, Step, Value, all_missing, exactly, total, unknown
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.model.circuit import Port
    from firmpedal.model.part import Part
    from firmpedal.model.space import Point, Position

RULE = "elbows-cannot-turn"
SAME_WAY = math.cos(math.radians(10))  # ports of one casting face the same way as closely as this


@dataclass(frozen=True)
class _Elbow:
    """A turned body in a port, and how its axis is found from the place that the file gives.

    `aside` is how far that place stands beside the axis, along `arm`; where the arm is not known it may
    stand there in any direction.
    """

    port: Port
    part: Part
    place: Position
    aside: Value
    arm: Point | None


def elbows_cannot_turn(view: View) -> Iterator[Outcome]:
    """Two elbows side by side can be screwed in one after the other.

    An elbow that is screwed in sweeps a circle round its port with its outlet. The one that goes in last must
    clear the body of the one that is in already; it is tried in both orders.
    """
    for component in view.aircraft.components:
        elbows = [elbow for port in component.ports if (elbow := _elbow(view, component.name, port))]
        for one, other in combinations(elbows, 2):
            if _same_way(one.port, other.port):
                yield from _pair(view, component.place, one, other)


def _pair(view: View, place: str, one: _Elbow, other: _Elbow) -> Iterator[Outcome]:
    names = f"{one.port.name} and {other.port.name}"
    apart = _apart(one, other, f"distance of {names}")
    orders = [_needed(one.part, other.part, place), _needed(other.part, one.part, place)]
    answers = [Limit(apart, needed, "at least").kept for needed in orders]
    if Answer.YES in answers:
        return
    last = min(orders, key=lambda value: value.low if value.known else math.inf)
    if Answer.UNKNOWN in answers:
        missing = _asked(apart, orders[answers.index(Answer.UNKNOWN)], (one.part, other.part), place)
        yield NotShown(RULE, place, f"whether the elbows at {names} can both be screwed in", missing)
        return
    yield Finding(
        RULE,
        Level.CAUTION,
        place,
        f"{names} are {view.show(apart)} apart, and an elbow turned in beside the other needs "
        f"{view.show(last)}: neither can go in last",
        (
            "a straight nipple in one of the two, put in last, and the bend in the hose's own end",
            "or a fitting that swivels before it is locked",
        ),
        apart,
        last,
        "at least",
        cited(last, apart),
    )


def _asked(apart: Value, needed: Value, parts: tuple[Part, ...], place: str) -> tuple[Missing, ...]:
    """What is not known; where all is and only an estimate is too wide, the fittings in hand tell."""
    if missing := (*apart.missing, *needed.missing):
        return missing
    legs = " and ".join(dict.fromkeys(part.designation for part in parts))
    return (
        Missing(place, f"the outlet leg of {legs}, to be turned side by side; or put a straight one in last"),
    )


def _needed(last: Part, first: Part, place: str) -> Value:
    """What lies between two axes for one elbow to be turned in beside the body of another."""
    sweep, half = _sweep(last, place), _half_width(first, place)
    return total(f"room to turn in {last.designation} beside {first.designation}", (sweep, half), place)


def _sweep(part: Part, place: str) -> Value:
    """The radius of the circle that an elbow's outlet draws round the port's axis."""
    leg, label = part.outlet_leg, f"circle that {part.designation} sweeps"
    if leg is None or leg.span is None or part.turn is None:
        return unknown(label, Dimension.LENGTH, place, f"the outlet leg of {part.designation}")
    share = math.sin(part.turn)
    step = Step("L sin(turn)", (("L", leg),))
    span = (leg.low * share, leg.high * share)
    return Value(label, Dimension.LENGTH, span, max(Mark.DERIVED, leg.mark), place, leg.source, step)


def _half_width(part: Part, place: str) -> Value:
    width, label = part.width, f"half the body of {part.designation}"
    if width is None or width.span is None:
        return unknown(label, Dimension.LENGTH, place, f"the width of the body of {part.designation}")
    step = Step("w / 2", (("w", width),))
    span = (width.low / 2, width.high / 2)
    return Value(label, Dimension.LENGTH, span, max(Mark.DERIVED, width.mark), place, width.source, step)


def _elbow(view: View, component: str, port: Port) -> _Elbow | None:
    """The elbow in a port, if there is one that has to be turned as it goes in."""
    joint = next((one for one in view.assembly.joints if one.name == f"{component}.{port.name}"), None)
    bodies = [part for part in joint.parts if part.category is Category.FITTING] if joint else []
    if not bodies or not bodies[0].turn or port.faces.vector is None or not _turned_in(bodies[0]):
        return None
    on_axis = exactly("beside the axis", Dimension.LENGTH, 0.0, Mark.DERIVED)
    if port.at.known:
        return _Elbow(port, bodies[0], port.at, on_axis, None)
    measured = catalogue().part(port.seat_measured_with) or bodies[0]
    aside = stand_of([measured]).lateral if measured.turn else on_axis
    return _Elbow(port, bodies[0], port.seat, aside, port.arm.vector)


def _turned_in(part: Part) -> bool:
    """Whether the part is screwed into the port as a whole: taper thread, or a boss with its lock nut."""
    return any(end.clocking is Clocking.MAKE_UP or end.interface.form is Form.BOSS for end in part.ends)


def _same_way(one: Port, other: Port) -> bool:
    a, b = one.faces.vector, other.faces.vector
    return a is not None and b is not None and sum(p * q for p, q in zip(a, b, strict=True)) > SAME_WAY


def _apart(one: _Elbow, other: _Elbow, label: str) -> Value:
    """The distance of two parallel axes, square to them."""
    inputs = [*one.place.coordinates, one.aside, *other.place.coordinates, other.aside]
    place, mark = one.place.place, max([Mark.DERIVED, *(value.mark for value in inputs)])
    if not all(value.known for value in inputs):
        missing = all_missing(inputs)
        return Value(label, Dimension.LENGTH, None, mark, place, missing=missing)
    axis = one.port.faces.vector or (0.0, 0.0, 0.0)

    def distance(flat: tuple[float, ...]) -> tuple[float, ...]:
        a, b = _on_axis(one, flat[:4]), _on_axis(other, flat[4:])
        between = [q - p for p, q in zip(a, b, strict=True)]
        along = sum(p * q for p, q in zip(between, axis, strict=True))
        return (math.sqrt(max(sum(p * p for p in between) - along**2, 0.0)),)

    (bounds,) = spread(distance, inputs) or ()
    either_way = sum(elbow.aside.high for elbow in (one, other) if elbow.arm is None)
    span = (max(bounds.low - either_way, 0.0), bounds.high + either_way)
    step = Step("distance square to the ports", tuple((value.label, value) for value in inputs))
    return Value(label, Dimension.LENGTH, span, mark, place, step=step)


def _on_axis(elbow: _Elbow, flat: tuple[float, ...]) -> list[float]:
    arm = elbow.arm or (0.0, 0.0, 0.0)
    return [one - flat[3] * along for one, along in zip(flat[:3], arm, strict=True)]
