"""Where lines run through zones: which stretch, where they go in and out, which ends lie inside."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.lay import clip
from firmpedal.lay.centreline import sample
from firmpedal.model.surroundings import Ball, Box, HalfSpace, Stretch, UnknownShape
from firmpedal.quantity import Mark, Value
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.shape import Point
    from firmpedal.model.surroundings import Shape, Zone
    from firmpedal.quantity import Missing

    Array = NDArray[np.float64]

SAMPLING = from_unit(0.05, "in")
AT_THE_END = from_unit(0.01, "in")


@dataclass(frozen=True, slots=True)
class Crossing:
    """One line in one zone, or, where something is unknown, what to measure to tell."""

    line: str
    zone: Zone
    stretches: tuple[tuple[float, float], ...]  # stations along the line
    passes: tuple[tuple[float, Point], ...]  # where it goes through the zone's boundary
    ends_inside: tuple[str, ...]  # "from", "to"
    missing: tuple[Missing, ...] = ()

    @property
    def inside(self) -> bool:
        return bool(self.stretches)

    def length(self, place: str) -> Value:
        """The length of the line inside the zone."""
        whole = sum(stop - start for start, stop in self.stretches)
        label = f"length of {self.line} in {self.zone.name}"
        return Value(label, Dimension.LENGTH, (whole, whole), Mark.DERIVED, place)


@lru_cache(maxsize=4096)
def crossing(line: LaidLine, zone: Zone) -> Crossing:
    """Cut one line against one zone."""
    missing = [item for shape in zone.where if isinstance(shape, UnknownShape) for item in shape.missing]
    if missing or line.path is None:
        missing += [item for point in line.points for item in point.missing]
        return Crossing(line.name, zone, (), (), (), tuple(dict.fromkeys(missing)))
    points, stations = path_of(line)
    stretches: tuple[tuple[float, float], ...]
    if len(zone.where) == 1 and isinstance(zone.where[0], Stretch):
        stretches = _declared(zone.where[0], line.name, float(stations[-1]))
    else:
        solid = clip.Both(tuple(_solid(shape) for shape in zone.where))
        stretches = clip.intervals(points, stations, solid)
    ends = tuple(
        name
        for name, station in (("from", 0.0), ("to", float(stations[-1])))
        if any(start - AT_THE_END <= station <= stop + AT_THE_END for start, stop in stretches)
    )
    inner = [edge for stretch in stretches for edge in stretch]
    passes = tuple(
        (edge, clip.point_on(points, stations, edge))
        for edge in inner
        if AT_THE_END < edge < stations[-1] - AT_THE_END
    )
    return Crossing(line.name, zone, stretches, passes, ends)


def path_of(line: LaidLine) -> tuple[Array, Array]:
    """The line as a polyline with stations: the bent centreline of a tube, else the corner points."""
    if line.tube and line.tube.centreline:
        return sample(line.tube.centreline, SAMPLING)
    points = np.array(line.path)
    lengths = [float(np.linalg.norm(b - a)) for a, b in pairwise(points)]
    return points, np.concatenate([[0.0], np.cumsum(lengths)])


def _declared(shape: Stretch, line: str, whole: float) -> tuple[tuple[float, float], ...]:
    if shape.line != line:
        return ()
    start, stop = max(0.0, shape.start.low), min(whole, shape.finish.high)
    return ((start, stop),) if start < stop else ()


def _solid(shape: Shape) -> clip.Solid:
    if isinstance(shape, Box):
        corners = list(zip(shape.low.point, shape.high.point, strict=True))
        low, high = ([pick(pair) for pair in corners] for pick in (min, max))
        return clip.Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))
    if isinstance(shape, Ball):
        return clip.Ball(shape.centre.point, shape.radius.high)
    if isinstance(shape, HalfSpace):
        return clip.HalfSpace(shape.axis, shape.sign, shape.offset.middle)
    raise TypeError(f"{type(shape).__name__} is not a solid")
