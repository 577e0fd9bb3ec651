"""The room that fittings and nuts take: round rods along their axes, over the corners of their flats.

Lengths and widths are the most of what the catalogue gives. Where that is an estimate, and not a figure
from a standard, the name of the room says so.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.fit.chain import chain_at
from firmpedal.model.aircraft import find
from firmpedal.model.part import CORNERS_OVER_FLATS, Category
from firmpedal.quantity import Mark

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.fit.joint import Joint
    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.shape import Point
    from firmpedal.model.circuit import Bulkhead, Port
    from firmpedal.model.part import Part
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value

ESTIMATE = "_estimate"


@dataclass(frozen=True, slots=True)
class Room:
    """A rod round a path of two points or more [m]."""

    name: str
    path: tuple[Point, ...]
    radius: float


def nut_rooms(evaluation: Evaluation, line: LaidLine) -> Iterator[Room]:
    """The nut at each end of a line, from the seat along the line."""
    if line.path is None:
        return
    for end, (seat, beyond) in (("from", line.path[:2]), ("to", line.path[:-3:-1])):
        joint = evaluation.assembly.joint_of(line.name, end)
        own = chain_at(joint, line.name, end) if joint else ()
        nut = next((part for part in own if part.category is Category.COUPLING_NUT), None)
        flats, length = (nut.width, nut.dimension("overall_length")) if nut else (None, None)
        if flats is None or length is None or not (flats.known and length.known) or seat == beyond:
            continue
        name = f"room_of_nut_{line.name}_{end}{_marked(flats, length)}"
        far = _along(seat, _unit(_less(beyond, seat)), length.high)
        yield Room(name, (seat, far), _over_corners(flats))


def fitting_rooms(evaluation: Evaluation) -> tuple[tuple[Room, ...], tuple[str, ...]]:
    """The bodies in ports and bulkheads, and in words which ones have none and why."""
    rooms: list[Room] = []
    left_out: list[str] = []
    for joint in evaluation.assembly.joints:
        for body in (part for part in joint.parts if part.category is Category.FITTING):
            found = _room(evaluation, joint, body)
            if isinstance(found, Room):
                rooms.append(found)
            else:
                left_out.append(f"{body.designation} at {joint.name}: {found}")
    return tuple(rooms), tuple(left_out)


def _room(evaluation: Evaluation, joint: Joint, body: Part) -> Room | str:
    """The room of one body, or why it is not known."""
    width = body.width
    if width is None or not width.known:
        return "how wide it is is not known"
    if sum(part.category is Category.FITTING for part in joint.parts) > 1:
        return "there is more than one fitting, and how far one goes into the other is not known"
    head, _, tail = joint.name.rpartition(".")
    component, bulkhead = (
        find(evaluation.aircraft.components, head),
        find(evaluation.aircraft.bulkheads, joint.name),
    )
    port = find(component.ports, tail) if component else None
    seats = _seats(evaluation, joint)
    if port is not None and len(seats) == 1:
        path, lengths = _in_port(port, body, seats[0])
    elif bulkhead is not None and len(seats) == 2:
        path, lengths = _through(bulkhead, body, seats), ()
    else:
        return "where its ends sit is not known"
    if path is None:
        return "which way it points, or how long it is, is not known"
    name = f"room_of_{body.designation}_at_{joint.name}{_marked(width, *lengths)}"
    return Room(name, path, _over_corners(width))


def _seats(evaluation: Evaluation, joint: Joint) -> list[Point]:
    """Where the lines that come to a joint end, as far as that is known."""
    found = []
    for line in evaluation.laid:
        for end, point in (("from", line.points[0]), ("to", line.points[-1])):
            if evaluation.assembly.joint_of(line.name, end) == joint and point.known:
                found.append(point.point)
    return found


def _in_port(port: Port, body: Part, seat: Point) -> tuple[tuple[Point, ...] | None, tuple[Value, ...]]:
    """From the seat back to the end in the port: straight, or round the corner of an elbow."""
    faces, arm, turn = port.faces.vector, port.arm.vector, body.turn
    if faces is None or turn is None:
        return None, ()
    if turn == 0:
        whole = body.dimension("overall_length")
        if whole is None or not whole.known:
            return None, ()
        return (seat, _along(seat, faces, -whole.high)), (whole,)
    leg, pipe = body.outlet_leg, body.dimension("leg_centre_to_pipe_end")
    if arm is None or leg is None or pipe is None or not (leg.known and pipe.known):
        return None, ()
    out = tuple(math.cos(turn) * one + math.sin(turn) * other for one, other in zip(faces, arm, strict=True))
    corner = _along(seat, _unit((out[0], out[1], out[2])), -leg.middle)
    return (seat, corner, _along(corner, faces, -pipe.high)), (leg, pipe)


def _through(bulkhead: Bulkhead, body: Part, seats: list[Point]) -> tuple[Point, ...] | None:
    """From seat to seat: straight, or round the corner that an elbow makes on the axis through the panel."""
    one, other = seats
    if one == other or body.turn is None:
        return None
    if body.turn == 0:
        return (one, other)
    normal = bulkhead.normal.vector
    if normal is None or not bulkhead.at.known:
        return None
    aside, straight = sorted(seats, key=lambda seat: _beside(seat, bulkhead.at.point, normal), reverse=True)
    foot = _along(straight, normal, _dot(_less(aside, straight), normal))
    return (straight, foot, aside) if straight != foot != aside else None


def _beside(seat: Point, at: Point, normal: Point) -> float:
    """How far a seat stands beside the axis through the hole."""
    away = _less(seat, at)
    return math.dist(away, _along((0.0, 0.0, 0.0), normal, _dot(away, normal)))


def _marked(*values: Value) -> str:
    return ESTIMATE if any(value.mark is Mark.ESTIMATE for value in values) else ""


def _over_corners(flats: Value) -> float:
    return flats.high * CORNERS_OVER_FLATS / 2


def _along(start: Point, way: Point, far: float) -> Point:
    return (start[0] + far * way[0], start[1] + far * way[1], start[2] + far * way[2])


def _less(one: Point, other: Point) -> Point:
    return (one[0] - other[0], one[1] - other[1], one[2] - other[2])


def _dot(one: Point, other: Point) -> float:
    return sum(a * b for a, b in zip(one, other, strict=True))


def _unit(way: Point) -> Point:
    long = math.hypot(*way) or 1.0
    return (way[0] / long, way[1] / long, way[2] / long)
