"""The room that fittings and nuts take: round rods along their axes, over the corners of their flats.

Lengths and widths are the most of what the catalogue gives. Where that is an estimate, and not a figure
from a standard, the name of the room says so. Sleeves, inserts, washers and O-rings lie inside the room of
what they belong to.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.catalog import catalogue
from firmpedal.export.room import ESTIMATE, Room, Rooms
from firmpedal.fit.chain import nut_at
from firmpedal.lay.hub_axes import HubEnd
from firmpedal.lay.hub_bodies import HubBodies
from firmpedal.lay.placed_body import Unplaced
from firmpedal.lay.port_bodies import PortBodies
from firmpedal.lay.vectors import along, less, unit
from firmpedal.model.aircraft import find
from firmpedal.model.part import CORNERS_OVER_FLATS
from firmpedal.model.stock import LineKind
from firmpedal.quantity import Mark

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.fit.joint import Joint
    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.placed_body import Standing
    from firmpedal.model.circuit import Bulkhead
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value

ENDS = 2  # points of a line that has no corner between its ends


def nut_rooms(evaluation: Evaluation, line: LaidLine) -> Rooms:
    """The nut at each end of a line, from the seat along the line; and in words which have none and why."""
    rooms: list[Room] = []
    left_out: list[str] = []
    for end, (seat, beyond) in (("from", line.points[:2]), ("to", line.points[:-3:-1])):
        joint = evaluation.assembly.joint_of(line.name, end)
        nut = nut_at(joint, line.name, end) if joint else None
        if nut is None:
            continue
        what, flats, length = (
            f"{nut.designation} at {line.name}.{end}",
            nut.width,
            nut.dimension("overall_length"),
        )
        if not (seat.known and beyond.known) or seat.point == beyond.point:
            left_out.append(f"{what}: where it lies is not known. Measure the line's end and its next corner")
        elif flats is None or length is None or not (flats.known and length.known):
            left_out.append(f"{what}: its size is not known. Measure it over its flats and its length")
        else:
            far = along(seat.point, unit(less(beyond.point, seat.point)), length.high)
            name = f"room_of_nut_{line.name}_{end}{_marked(flats, length)}"
            rooms.append(Room(name, (seat.point, far), _over_corners(flats)))
    return tuple(rooms), tuple(left_out)


def fitting_rooms(evaluation: Evaluation) -> Rooms:
    """Bodies, plugs and jam nuts of all joints, and in words which ones have none and why."""
    rooms: list[Room] = []
    left_out: list[str] = []
    for joint in evaluation.assembly.joints:
        for standing in _standing(evaluation, joint):
            found = _room(joint, standing)
            if isinstance(found, Room):
                rooms.append(found)
            else:
                left_out.append(f"{standing.part.designation} at {joint.name}: {found}")
    return tuple(_told_apart(rooms)), tuple(left_out)


def _room(joint: Joint, standing: Standing) -> Room | str:
    """The room of one body, or why there is none and what to measure."""
    if isinstance(standing, Unplaced):
        return f"{standing.why}. Measure {standing.measure}"
    width = standing.part.width
    if width is None or not width.known:
        return "its width is not known. Measure it over its flats"
    either = f"_{standing.either}" if standing.either else ""
    name = f"room_of_{standing.part.designation}_at_{joint.name}{either}{_marked(width, *standing.figures)}"
    path, *more = standing.paths
    return Room(name.replace(" ", "_"), path, _over_corners(width), tuple(more))


def _told_apart(rooms: Iterable[Room]) -> Iterator[Room]:
    """Two of one kind in a joint are numbered."""
    all_rooms, seen = tuple(rooms), Counter[str]()
    often = Counter(room.name for room in all_rooms)
    for room in all_rooms:
        seen[room.name] += 1
        yield replace(room, name=f"{room.name}_{seen[room.name]}") if often[room.name] > 1 else room


def _standing(evaluation: Evaluation, joint: Joint) -> tuple[Standing, ...]:
    """The bodies of one joint where they stand: in a port, in a bulkhead, or where two lines meet."""
    head, _, tail = joint.name.rpartition(".")
    component = find(evaluation.aircraft.components, head)
    port = find(component.ports, tail) if component else None
    ends = [_end(line, end) for line, end in _ends_at(evaluation, joint)]
    if port is not None:
        seat = ends[0].position if ends else None
        return PortBodies(port, joint, seat, evaluation.assembly, evaluation.laid, catalogue()).standing()
    bulkhead = find(evaluation.aircraft.bulkheads, joint.name)
    sides = _sides(evaluation, bulkhead, ends) if bulkhead else tuple(ends)
    return HubBodies(bulkhead, joint, sides, catalogue()).standing()


def _ends_at(evaluation: Evaluation, joint: Joint) -> Iterator[tuple[LaidLine, str]]:
    for line in evaluation.laid:
        for end in ("from", "to"):
            if evaluation.assembly.joint_of(line.name, end) is joint:
                yield line, end


def _end(line: LaidLine, end: str) -> HubEnd:
    """A line's end; a soft line without corners leaves as its fitting lets it, and so shows no way."""
    seat, beyond = line.points[:2] if end == "from" else line.points[:-3:-1]
    away = None
    if seat.known and beyond.known and (line.kind is LineKind.TUBE or len(line.points) > ENDS):
        away = unit(less(beyond.point, seat.point))
    return HubEnd(line.name, end, seat, away)


def _sides(evaluation: Evaluation, bulkhead: Bulkhead, ends: list[HubEnd]) -> tuple[HubEnd, ...]:
    """The ends in the order of the sides; a side to which no line comes has its seat alone."""
    found = []
    for side in bulkhead.sides:
        target = f"{bulkhead.name}.{side.name}"
        own = [
            one
            for one in ends
            for line in evaluation.aircraft.lines
            if line.name == one.line and (line.start if one.end == "from" else line.finish) == target
        ]
        bare = HubEnd("", "", side.seat, None)
        found.append(own[0] if own else bare)
    return tuple(found)


def _marked(*values: Value) -> str:
    return ESTIMATE if any(value.mark is Mark.ESTIMATE for value in values) else ""


def _over_corners(flats: Value) -> float:
    return flats.high * CORNERS_OVER_FLATS / 2
