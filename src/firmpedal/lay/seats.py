"""Where the end of each line sits, once the fitting that holds it is chosen."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.lay.movement import Carried, carriers_of
from firmpedal.model.aircraft import find
from firmpedal.model.part import Category
from firmpedal.model.space import Position
from firmpedal.quantity import Mark, Value, exactly, total, unknown
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.fit.joint import Joint
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.circuit import Port
    from firmpedal.model.part import Part
    from firmpedal.model.space import Direction


@dataclass(frozen=True, slots=True)
class Stand:
    """How far a fitting carries the seat from the thread face: along the port, and to its side."""

    reach: Value
    lateral: Value


def seat_of(aircraft: Aircraft, target: str, joint: Joint | None, parts: tuple[Part, ...]) -> Carried | None:
    """Find where a line's end sits at a named connection and what carries it.

    A seat measured with another fitting than the chosen one is shifted by the difference.
    """
    head, _, tail = target.rpartition(".")
    component = find(aircraft.components, head)
    if component is not None:
        port = find(component.ports, tail)
        if port is None:
            return None
        seat = _port_seat(port, joint, parts)
        return Carried(seat, carriers_of(component.moves_with, aircraft.moving), component.measured_in)
    bulkhead = find(aircraft.bulkheads, head)
    side = find(bulkhead.sides, tail) if bulkhead else None
    if bulkhead is None or side is None:
        return None
    return Carried(side.seat, carriers_of(bulkhead.moves_with, aircraft.moving), bulkhead.measured_in)


def _port_seat(port: Port, joint: Joint | None, parts: tuple[Part, ...]) -> Position:
    body = _body(joint)
    measured = next((part for part in parts if port.seat_measured_with in _names(part)), None)
    if not port.seat.known:
        return _from_face(port, body) if port.at.known and body else port.seat
    if body is None or measured is None or _same_body(body, measured):
        return port.seat
    chosen, old = stand_of(body), stand_of(measured)
    along = total("difference in reach", (chosen.reach, _minus(old.reach)), port.place)
    aside = total("difference to the side", (chosen.lateral, _minus(old.lateral)), port.place)
    return _carried_on(port.seat, port.faces, port.arm, along, aside)


def _names(part: Part) -> tuple[str, ...]:
    return (part.designation, *part.also_known_as)


def _same_body(one: Part, other: Part) -> bool:
    return (one.family, one.size, one.turn) == (other.family, other.size, other.turn)


def _body(joint: Joint | None) -> Part | None:
    """The first fitting at a port: it alone decides where the seat stands when it is the only one."""
    bodies = [part for part in joint.parts if part.category is Category.FITTING] if joint else []
    return bodies[0] if bodies else None


def stand_of(part: Part) -> Stand:
    """Work out a pipe-threaded fitting's reach and side step from its envelope lengths."""
    pipe = part.dimension("leg_centre_to_pipe_end")
    flare = part.outlet_leg
    whole = part.dimension("overall_length")
    if part.turn == 0 and whole is not None:
        return Stand(whole, exactly("side step", Dimension.LENGTH, 0.0, Mark.DERIVED))
    if part.turn and pipe is not None and flare is not None:
        return Stand(
            total("reach", (pipe, _scaled(flare, math.cos(part.turn)))), _scaled(flare, math.sin(part.turn))
        )
    what = f"how far the seat of {part.designation} stands off the port"
    gap = unknown(what, Dimension.LENGTH, "", what)
    return Stand(gap, gap)


def _scaled(value: Value, factor: float) -> Value:
    if value.span is None:
        return value
    ends = sorted(bound * factor for bound in value.span)
    return replace(value, span=(ends[0], ends[1]))


def _minus(value: Value) -> Value:
    return _scaled(value, -1.0)


def _from_face(port: Port, body: Part) -> Position:
    """Take the seat from the thread face: reach less the thread that screws in."""
    stand = stand_of(body)
    screwed_in = body.dimension("thread_engagement")
    along = total("reach", (stand.reach, _minus(screwed_in))) if screwed_in is not None else stand.reach
    return _carried_on(port.at, port.faces, port.arm, along, stand.lateral)


def _carried_on(start: Position, faces: Direction, arm: Direction, along: Value, aside: Value) -> Position:
    """Go along the port's axis and to the side of the elbow's arm; an unknown arm may point anywhere."""
    coordinates = []
    for axis, coordinate in enumerate(start.coordinates):
        parts = [coordinate]
        parts.append(_component(along, faces, axis))
        parts.append(_component(aside, arm, axis))
        coordinates.append(total(coordinate.label, parts, coordinate.place))
    return Position(coordinates[0], coordinates[1], coordinates[2], start.place)


def _component(length: Value, direction: Direction, axis: int) -> Value:
    if direction.vector is not None:
        return replace(_scaled(length, direction.vector[axis]), mark=max(length.mark, direction.mark))
    if length.span is None or length.span == (0.0, 0.0):
        return length
    most = max(abs(bound) for bound in length.span)
    return replace(length, span=(-most, most), mark=Mark.ESTIMATE)
