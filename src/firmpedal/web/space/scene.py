"""What stands where in an aircraft, for a picture: lines with their corners, clamps and ends, and bodies."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.catalog import catalogue
from firmpedal.lay.centreline import sample
from firmpedal.lay.crossing import path_of
from firmpedal.lay.movement import Carried, carriers_of
from firmpedal.model.space import Position
from firmpedal.pipeline import line_setting
from firmpedal.place import is_within
from firmpedal.quantity import Mark, exactly
from firmpedal.units import Dimension, from_unit
from firmpedal.web.space.solids import (
    Room,
    Solid,
    body_solids,
    bulkhead_solids,
    component_solids,
    corners_of,
    panel_solids,
    zone_solids,
)

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from numpy.typing import NDArray

    from firmpedal.lay.line import LaidLine
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.space import Point
    from firmpedal.pipeline import Evaluation

    Array = NDArray[np.float64]

SPACING = from_unit(0.5, "in")  # of the points on a straight, between which a line bows when its ends move
ROUND_ABOUT = from_unit(4, "in")

# The sorts of bodies in the order in which they are listed, and what each is called.
SORTS = {
    "component": "Components",
    "bulkhead": "Bulkheads and brackets",
    "panel": "Panels",
    "keep clear": "To stay clear of",
    "zone": "Zones",
}


@dataclass(frozen=True, slots=True)
class Spot:
    """A place on a line that can be chosen: a corner with its point, a clamp with its station [m]."""

    key: str
    point: Point = (0.0, 0.0, 0.0)
    station: float = 0.0


@dataclass(frozen=True, slots=True, eq=False)
class Way:
    """A line: points along it as measured with their stations, and what carries its two ends."""

    key: str
    name: str
    kind: str
    radius: float
    points: Array
    stations: Array
    ends: tuple[Carried, Carried]
    corners: tuple[Spot, ...]  # both ends are no corners
    clamps: tuple[Spot, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Thing:
    """A body: its solids as measured, and what carries it; without solids it is not known where it is."""

    key: str
    name: str
    sort: str
    solids: tuple[Solid, ...]
    carried: Carried


@dataclass(frozen=True, eq=False)
class Scene:
    """Everything in the picture; `lacking` are the lines whose places are not known."""

    ways: tuple[Way, ...]
    lacking: tuple[str, ...]
    things: tuple[Thing, ...]
    room: Room

    def way(self, key: str) -> Way | None:
        return next((way for way in self.ways if way.key == key), None)

    def line_of(self, key: str) -> Way | None:
        """The line that a key names, or that has the corner, clamp or end of that name."""
        return next((way for way in self.ways if is_within(key, way.key)), None)

    def thing(self, key: str) -> Thing | None:
        return next((thing for thing in self.things if thing.key == key), None)

    @cached_property
    def keys(self) -> frozenset[str]:
        """Whatever can be chosen."""
        return frozenset(
            (
                *(way.key for way in self.ways),
                *(spot.key for way in self.ways for spot in (*way.corners, *way.clamps)),
                *(f"{way.key}.{end}" for way in self.ways for end in ("from", "to")),
                *(thing.key for thing in self.things),
            )
        )

    def nearest_key(self, place: str) -> str:
        """What is to be chosen for a place in the file: itself, or what it belongs to; nothing for others."""
        steps = place.split(".")
        tries = (".".join(steps[:n]) for n in range(len(steps), 1, -1))
        return next((each for each in tries if each in self.keys), "")


def scene_of(evaluation: Evaluation) -> Scene:
    """Gather what the picture of an evaluation shows."""
    aircraft = evaluation.aircraft
    ways = {line.name: _way(evaluation, line) for line in evaluation.laid}
    near = [*_ported(aircraft), *_avoided(aircraft)]
    room = _room(ways.values(), near)
    return Scene(
        tuple(way for way in ways.values() if way is not None),
        tuple(name for name, way in ways.items() if way is None),
        (*near, *_endless(aircraft, room)),
        room,
    )


def _way(evaluation: Evaluation, line: LaidLine) -> Way | None:
    course, aircraft = _course(line), evaluation.aircraft
    if course is None:
        return None
    declared = next(each for each in aircraft.lines if each.name == line.name)
    setting = line_setting(aircraft, evaluation.assembly, catalogue(), declared)
    corners = [Spot(point.place, point.point) for point in line.points[1:-1]]
    clamps = [
        Spot(f"{line.place}.clamp {n}", station=each.middle)
        for n, each in enumerate(line.supports.stations, 1)
    ]
    return Way(
        line.place,
        line.name,
        line.kind.value,
        line.drawn_width / 2,
        *course,
        (setting.start, setting.finish),
        tuple(corners),
        tuple(clamps),
    )


def _course(line: LaidLine) -> tuple[Array, Array] | None:
    """Points along a line, no more of them than a picture needs."""
    if line.tube and line.tube.centreline and line.path is not None:
        return sample(line.tube.centreline, SPACING)
    return path_of(line.run)


def _ported(aircraft: Aircraft) -> Iterator[Thing]:
    for part in aircraft.components:
        carried = _carried(aircraft, part.moves_with, part.measured_in)
        yield Thing(part.place, part.name, "component", component_solids(part), carried)
    for wall in aircraft.bulkheads:
        carried = _carried(aircraft, wall.moves_with, wall.measured_in)
        yield Thing(wall.place, wall.name, "bulkhead", bulkhead_solids(wall), carried)


def _avoided(aircraft: Aircraft) -> Iterator[Thing]:
    for body in aircraft.keep_clear_of:
        carried = _carried(aircraft, body.moves_with, body.measured_in)
        yield Thing(body.place, body.name, "keep clear", body_solids(body.where), carried)


def _endless(aircraft: Aircraft, room: Room) -> Iterator[Thing]:
    """What may be declared without an end, and moves with nothing."""
    for panel in aircraft.panels:
        yield Thing(panel.place, panel.name, "panel", panel_solids(panel, room), _carried(aircraft, "", ()))
    for zone in aircraft.zones:
        solids = zone_solids(zone.where, room)
        yield Thing(zone.place, zone.name, "zone", solids, _carried(aircraft, "", ()))


def _carried(aircraft: Aircraft, name: str, measured: tuple[tuple[str, str], ...]) -> Carried:
    zero = exactly("datum", Dimension.LENGTH, 0.0, Mark.DERIVED)
    return Carried(Position(zero, zero, zero), carriers_of(name, aircraft.moving), measured)


def _room(ways: Iterable[Way | None], things: Iterable[Thing]) -> Room:
    points = [point for way in ways if way is not None for point in way.points]
    points += [np.array(point) for thing in things for point in corners_of(thing.solids)]
    if not points:
        return Room((-ROUND_ABOUT,) * 3, (ROUND_ABOUT,) * 3)
    low, high = np.min(points, axis=0) - ROUND_ABOUT, np.max(points, axis=0) + ROUND_ABOUT
    return Room(
        (float(low[0]), float(low[1]), float(low[2])), (float(high[0]), float(high[1]), float(high[2]))
    )
