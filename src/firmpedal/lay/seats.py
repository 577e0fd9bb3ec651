"""Where the end of each line sits, once the fitting that holds it is chosen."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.lay.movement import Carried, carriers_of
from firmpedal.model.aircraft import find
from firmpedal.model.part import Category
from firmpedal.model.space import AXIS_NAMES, Position
from firmpedal.quantity import Mark, Step, Value, exactly, total, unknown
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from firmpedal.catalog import Catalogue
    from firmpedal.fit.joint import Joint
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.circuit import Line, Port, Side
    from firmpedal.model.part import Part
    from firmpedal.model.space import Direction

# How deep a parallel thread of these sizes goes in, where nobody says: common practice, no source. Wide, for
# to the fluid a few millimetres of line are nothing; what is cut never rests on it.
ANY_DEPTH = (0.0, from_unit(15, "mm"))


@dataclass(frozen=True, slots=True)
class Stand:
    """How far a fitting carries the seat from the thread face: along the port, and to its side."""

    reach: Value
    lateral: Value


def seat_of(
    aircraft: Aircraft,
    line: Line,
    end: str,
    joint: Joint | None,
    catalogue: Catalogue,
    *,
    any_depth: bool = False,
) -> Carried:
    """Find where an end of a line (`from` or `to`) sits and what carries it.

    With `any_depth` a thread that no table tells of screws in by whatever is usual, a range for the sums of
    fluid; without it nobody knows, so that nothing is cut by it.

    A seat measured with another fitting than the chosen one is shifted by the difference. Where two
    lines meet with nothing declared between them, nobody has said where that is.
    """
    head, _, tail = (line.start if end == "from" else line.finish).rpartition(".")
    component, bulkhead = find(aircraft.components, head), find(aircraft.bulkheads, head)
    port = find(component.ports, tail) if component else None
    side = find(bulkhead.sides, tail) if bulkhead else None
    bodies = [part for part in joint.parts if part.category is Category.FITTING] if joint else []
    if component is not None and port is not None:
        seat = _port_seat(port, bodies, catalogue, any_depth=any_depth)
        return Carried(seat, carriers_of(component.moves_with, aircraft.moving), component.measured_in)
    if bulkhead is not None and side is not None:
        seat = _side_seat(side, bodies, catalogue)
        return Carried(seat, carriers_of(bulkhead.moves_with, aircraft.moving), bulkhead.measured_in)
    both = " and ".join(sorted({line.name, head}))
    return Carried(_unknown_seat(joint.place if joint else line.place, f"where {both} meet"), ())


def _port_seat(port: Port, bodies: list[Part], catalogue: Catalogue, *, any_depth: bool) -> Position:
    if not port.seat.known:
        if not (port.at.known and bodies):
            return port.seat
        depth = screwed_in(port, catalogue)
        return _from_face(port, bodies, _usual_depth(port) if any_depth and not depth.known else depth)
    old = catalogue.part(port.seat_measured_with)
    if not bodies or old is None:  # measured as it is: a name that no part has is refused by the reader
        return port.seat
    if len(bodies) == 1 and same_body(bodies[0], old):
        return port.seat
    chosen, before = stand_of(bodies), stand_of([old])
    along = total("difference in reach", (chosen.reach, minus(before.reach)), port.place)
    aside = total("difference to the side", (chosen.lateral, minus(before.lateral)), port.place)
    return _carried_on(port.seat, port.faces, port.arm_aside, along, aside)


def _side_seat(side: Side, bodies: list[Part], catalogue: Catalogue) -> Position:
    """A bulkhead's seat holds for the fitting it was measured with; nothing says how to shift it."""
    old = catalogue.part(side.seat_measured_with)
    if not bodies or old is None or any(same_body(body, old) for body in bodies):
        return side.seat
    names = " and ".join(body.designation for body in bodies)
    return _unknown_seat(
        f"{side.place}.seat", f"the seat with {names}: it was measured with {old.designation}"
    )


def _unknown_seat(place: str, what: str) -> Position:
    aft, right, up = (unknown(f"{what}, {axis}", Dimension.LENGTH, place, what) for axis in AXIS_NAMES)
    return Position(aft, right, up, place)


def same_body(one: Part, other: Part) -> bool:
    """Whether two parts are one body in different metals."""
    return (one.family, one.size, one.turn) == (other.family, other.size, other.turn)


def stand_of(bodies: list[Part]) -> Stand:
    """Work out a pipe-threaded fitting's reach and side step from its envelope lengths.

    Unknown for two fittings in a row: how far one screws into the other is not known.
    """
    part = bodies[0]
    pipe = part.dimension("leg_centre_to_pipe_end")
    flare = part.outlet_leg
    whole = part.dimension("overall_length")
    if len(bodies) == 1 and part.turn == 0 and whole is not None:
        return Stand(whole, exactly("side step", Dimension.LENGTH, 0.0, Mark.DERIVED))
    if len(bodies) == 1 and part.turn and pipe is not None and flare is not None:
        return Stand(
            total("reach", (pipe, _scaled(flare, math.cos(part.turn)))), _scaled(flare, math.sin(part.turn))
        )
    names = " and ".join(body.designation for body in bodies)
    what = f"how far the seat of {names} stands off the port"
    gap = unknown(what, Dimension.LENGTH, "", what)
    return Stand(gap, gap)


def _scaled(value: Value, factor: float) -> Value:
    if value.span is None:
        return value
    ends = sorted(bound * factor for bound in value.span)
    return replace(value, span=(ends[0], ends[1]))


def minus(value: Value) -> Value:
    """The same length the other way."""
    return _scaled(value, -1.0)


def _from_face(port: Port, bodies: list[Part], depth: Value) -> Position:
    """Take the seat from the thread face: reach less the thread that screws in."""
    stand = stand_of(bodies)
    along = total("reach", (stand.reach, minus(depth)), port.place)
    return _carried_on(port.at, port.faces, port.arm_aside, along, stand.lateral)


def _usual_depth(port: Port) -> Value:
    label = f"how far the thread of {port.name} screws in, taken as anything that is usual"
    return Value(label, Dimension.LENGTH, ANY_DEPTH, Mark.ESTIMATE, port.place, "common-practice")


def screwed_in(port: Port, catalogue: Catalogue) -> Value:
    """How far a taper thread goes into a port: by hand, and then by the wrench; no table tells of others."""
    depth = made_up(port.thread.interface.size, port.place, catalogue)
    if depth.known:
        return depth
    what = (
        f"how far the thread {port.thread.interface.size} screws in at {_of_port(port)}, or where the line's "
        "end sits there: measure that point with the fitting in, and write it as the seat of this port, with "
        "the fitting that it was measured with"
    )
    return unknown(depth.label, Dimension.LENGTH, f"{port.place}.seat", what)


def _of_port(port: Port) -> str:
    """A port by component and name, as lines call it."""
    return ".".join(part for part in port.place.split(".") if part not in ("components", "ports"))


def made_up(size: str, place: str, catalogue: Catalogue) -> Value:
    """How far a taper thread of some size goes in when it is made up [m]."""
    thread = catalogue.thread(size)
    names = ("hand_tight_length", "wrench_turns", "pitch")
    known = [value for name in names if thread and (value := thread.value(name)) is not None]
    if len(known) < len(names):
        what = f"how far a {size} thread screws in"
        return unknown(what, Dimension.LENGTH, place, what)
    by_hand, turns, pitch = known
    span = (turns.low * pitch.low, turns.high * pitch.high)
    mark, step = max(Mark.DERIVED, turns.mark, pitch.mark), Step("n p", (("n", turns), ("p", pitch)))
    by_wrench = Value("made up by wrench", Dimension.LENGTH, span, mark, place, step=step)
    return total("thread engagement", (by_hand, by_wrench), place)


def _carried_on(start: Position, faces: Direction, arm: Direction, along: Value, aside: Value) -> Position:
    """Go along the port's axis and to the side of the elbow's arm.

    An unknown arm may point anywhere square to the port's axis.
    """
    free = [math.sqrt(max(1 - one**2, 0.0)) for one in faces.vector or (0.0, 0.0, 0.0)]
    coordinates = [
        total(
            coordinate.label,
            (coordinate, _component(along, faces, axis, 1.0), _component(aside, arm, axis, free[axis])),
            coordinate.place,
        )
        for axis, coordinate in enumerate(start.coordinates)
    ]
    return Position(coordinates[0], coordinates[1], coordinates[2], start.place)


def _component(length: Value, direction: Direction, axis: int, free: float) -> Value:
    """One component of a step; in an unknown direction it is at most the share `free`, either way."""
    if direction.vector is not None:
        return replace(_scaled(length, direction.vector[axis]), mark=max(length.mark, direction.mark))
    if length.span is None:
        return length
    most = max(abs(bound) for bound in length.span) * free
    return replace(length, span=(-most, most), mark=max(length.mark, Mark.ESTIMATE))
