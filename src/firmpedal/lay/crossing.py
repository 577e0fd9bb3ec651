"""Where lines run through zones: which stretch, where they go in and out, which ends lie inside."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise, product
from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from firmpedal.lay import clip
from firmpedal.lay.centreline import Centreline, centreline, sample
from firmpedal.model.shapes import Ball, Box, HalfSpace, Stretch, UnknownShape
from firmpedal.quantity import Mark, Missing, Value
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from numpy.typing import NDArray

    from firmpedal.lay.line_run import LineRun
    from firmpedal.lay.shape import Point
    from firmpedal.model.shapes import Shape
    from firmpedal.model.space import Position
    from firmpedal.model.surroundings import Zone

    Array = NDArray[np.float64]
    Course = tuple[Array, Array]  # points, and the station of each

SAMPLING = from_unit(0.05, "in")
AT_THE_END = from_unit(0.01, "in")


@dataclass(frozen=True, slots=True)
class Crossing:
    """One line in one zone.

    Each `unsure` says what to measure before that answer holds: a place that is unknown, or a range
    inside which the answer changes.
    """

    line: str
    zone: Zone
    stretches: tuple[tuple[float, float], ...]  # stations along the line
    passes: tuple[tuple[float, Point], ...]  # where it goes through the zone's boundary
    ends_inside: tuple[str, ...]  # "from", "to"
    unsure_inside: tuple[Missing, ...] = ()
    unsure_passes: tuple[Missing, ...] = ()
    unsure_ends: tuple[Missing, ...] = ()

    @property
    def inside(self) -> bool:
        """Whether the line is surely in the zone."""
        return bool(self.stretches) and not self.unsure_inside

    def length(self, place: str) -> Value:
        """The length of the line inside the zone."""
        whole = sum(stop - start for start, stop in self.stretches)
        label = f"length of {self.line} in {self.zone.name}"
        return Value(label, Dimension.LENGTH, (whole, whole), Mark.DERIVED, place)


@lru_cache(maxsize=4096)
def crossing(line: LineRun, zone: Zone) -> Crossing:
    """Cut one line against one zone."""
    missing, course = _missing(line, zone), path_of(line)
    if missing or course is None:
        return Crossing(line.name, zone, (), (), (), missing, missing, missing)
    here = _cut(line, zone, course, 0)
    others = [(_closer(line, zone, point), _cut(line, zone, other, 0)) for point, other in _courses(line)]
    if _ranged(zone):
        others += [(_closer(line, zone, None), _cut(line, zone, course, way)) for way in (1, -1)]
    unsure = [
        tuple(dict.fromkeys(what for what, cut in others if cut.answers[n] != here.answers[n]))
        for n in range(len(here.answers))
    ]
    return Crossing(line.name, zone, *here, *unsure)


def _missing(line: LineRun, zone: Zone) -> tuple[Missing, ...]:
    """What is unknown of the places of both; nothing where the zone is a stretch of another line."""
    if zone.where and all(isinstance(shape, Stretch) and shape.line != line.name for shape in zone.where):
        return ()
    found = [item for shape in zone.where if isinstance(shape, UnknownShape) for item in shape.missing]
    if found or not zone.where:
        return tuple(found) or (Missing(f"{zone.place}.where", f"where {zone.name} is"),)
    return tuple(dict.fromkeys(item for point in line.points for item in point.missing))


class _Cut(NamedTuple):
    """A line cut against a zone: stretches inside, passes through its boundary, ends inside."""

    stretches: tuple[tuple[float, float], ...]
    passes: tuple[tuple[float, Point], ...]
    ends: tuple[str, ...]

    @property
    def answers(self) -> tuple[object, ...]:
        return bool(self.stretches), len(self.passes), self.ends


def _cut(line: LineRun, zone: Zone, course: Course, way: int) -> _Cut:
    """Cut a course against the zone as it is (0), or as large (1) or as small (-1) as it can be."""
    points, stations = course
    whole = float(stations[-1])
    if isinstance(zone.where[0], Stretch):
        stretches = _declared(zone.where[0], line.name, whole, way)
    else:
        solid = clip.Both(tuple(_solid(shape, way) for shape in zone.where))
        stretches = clip.intervals(points, stations, solid)
    ends = tuple(
        name
        for name, station in (("from", 0.0), ("to", whole))
        if any(start - AT_THE_END <= station <= stop + AT_THE_END for start, stop in stretches)
    )
    edges = [edge for stretch in stretches for edge in stretch]
    inner = [edge for edge in edges if AT_THE_END < edge < whole - AT_THE_END]
    return _Cut(stretches, tuple((edge, clip.point_on(points, stations, edge)) for edge in inner), ends)


@lru_cache(maxsize=256)
def path_of(line: LineRun, straights: float | None = None) -> Course | None:
    """The line as a polyline with stations: the bent centreline of a tube, else the corner points.

    Args:
        line: The line.
        straights: The greatest step on the straights of a tube, where a finer one finds nothing more [m].
    """
    if line.centreline:
        course = sample(line.centreline, SAMPLING, straights)
    elif line.path is not None:
        course = _polyline(line.path)
    else:
        return None
    for array in course:
        array.flags.writeable = False  # whoever asks next gets the same one
    return course


def _polyline(corners: tuple[Point, ...]) -> Course:
    points = np.array(corners)
    lengths = [float(np.linalg.norm(b - a)) for a, b in pairwise(points)]
    return points, np.concatenate([[0.0], np.cumsum(lengths)])


def _courses(line: LineRun) -> Iterator[tuple[Position, Course]]:
    """Give the courses of a line with each point that has a range at the corners of where it can be."""
    corners = [point.point for point in line.points]
    for number, point in enumerate(line.points):
        spans = [sorted({value.low, value.high}) for value in point.coordinates]
        if all(len(span) == 1 for span in spans):
            continue
        for aft, right, up in product(*spans):
            moved = (*corners[:number], (aft, right, up), *corners[number + 1 :])
            bent = centreline(moved, line.radius.middle) if line.radius else None
            yield point, sample(bent, SAMPLING) if isinstance(bent, Centreline) else _polyline(moved)


def _closer(line: LineRun, zone: Zone, point: Position | None) -> Missing:
    """Ask for a point of the line, or else for the zone, more closely."""
    what = f"where {zone.name} is" if point is None else point.aft.label.rpartition(" ")[0]
    place = f"{zone.place}.where" if point is None else point.place
    return Missing(place, f"{what}, more closely: how {line.name} runs by {zone.name} hangs on it")


def _declared(shape: Stretch, line: str, whole: float, way: int) -> tuple[tuple[float, float], ...]:
    if shape.line != line:
        return ()
    start, stop = max(0.0, _bound(shape.start, -way)), min(whole, _bound(shape.finish, way))
    return ((start, stop),) if start < stop else ()


def _solid(shape: Shape, way: int) -> clip.Solid:
    if isinstance(shape, Box):
        pairs = zip(shape.low.coordinates, shape.high.coordinates, strict=True)
        sides = [sorted(pair, key=lambda value: value.middle) for pair in pairs]
        low, high = ([_bound(side[end], way * sign) for side in sides] for end, sign in ((0, -1), (1, 1)))
        return clip.Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))
    if isinstance(shape, Ball):
        off = math.hypot(*((value.high - value.low) / 2 for value in shape.centre.coordinates))
        return clip.Ball(shape.centre.point, max(0.0, _bound(shape.radius, way) + way * off))
    if isinstance(shape, HalfSpace):
        return clip.HalfSpace(shape.axis, shape.sign, _bound(shape.offset, -way * shape.sign))
    raise TypeError(f"{type(shape).__name__} is not a solid")


def _bound(value: Value, way: int) -> float:
    return (value.middle, value.high, value.low)[way]


def _ranged(zone: Zone) -> bool:
    return any(_cuts(shape, 1) != _cuts(shape, -1) for shape in zone.where)


def _cuts(shape: Shape, way: int) -> object:
    if isinstance(shape, Stretch):
        return _bound(shape.start, -way), _bound(shape.finish, way)
    return _solid(shape, way)
