"""Where a path lies in a convex zone.

A path is a polyline with a station, the length along the line, at every point. Zones are closed:
the boundary belongs to them. Everything is in metres.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, assert_never

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from firmpedal.lay.shape import Point

    Array = NDArray[np.float64]
    Spans = tuple[Array, Array]

# Zones are taken this much larger: a path along a face is in the zone, whatever its rounding.
GROWTH = 1e-9
# A segment that rises less than this from end to end runs level.
LEAST_RISE = 1e-12
# Less than this inside a zone is a touch, and nothing on an aircraft is measured so finely.
LEAST_STAY = 1e-7


@dataclass(frozen=True, slots=True)
class Box:
    """Between two corners, sides along the axes."""

    low: Point
    high: Point


@dataclass(frozen=True, slots=True)
class Ball:
    """Within a radius of a centre; radius 0 is a point."""

    centre: Point
    radius: float


@dataclass(frozen=True, slots=True)
class HalfSpace:
    """One side of a plane: sign +1 where the coordinate on `axis` is over `offset`, -1 under it."""

    axis: int
    sign: int
    offset: float


@dataclass(frozen=True, slots=True)
class Both:
    """What lies in every part; no parts is everywhere."""

    parts: tuple[Shape, ...]


Solid = Box | Ball | HalfSpace
Shape = Solid | Both


def intervals(points: Array, stations: Array, shape: Shape) -> tuple[tuple[float, float], ...]:
    """Give the stretches of a path in a zone as stations in and out, in order and apart.

    Every segment is cut exactly. A touch without length is no stretch.
    """
    enter, leave = _spans(points[:-1], np.diff(points, axis=0), shape)
    inside = enter <= leave
    length = np.diff(stations)[inside]
    first = stations[:-1][inside]
    merged: list[tuple[float, float]] = []
    for start, stop in zip(first + enter[inside] * length, first + leave[inside] * length, strict=True):
        if merged and start - merged[-1][1] <= GROWTH:
            merged[-1] = (merged[-1][0], float(stop))
        else:
            merged.append((float(start), float(stop)))
    return tuple((start, stop) for start, stop in merged if stop - start > LEAST_STAY)


def crossings(points: Array, stations: Array, shape: Shape) -> tuple[tuple[float, Point], ...]:
    """Give where a path goes through the boundary of a zone, as stations and points.

    An end of the path inside the zone, or on its boundary, is no crossing.
    """
    ends = [station for stretch in intervals(points, stations, shape) for station in stretch]
    low, high = stations[0] + LEAST_STAY, stations[-1] - LEAST_STAY
    return tuple((station, point_on(points, stations, station)) for station in ends if low < station < high)


def point_on(points: Array, stations: Array, station: float) -> Point:
    """Give the point of a path at a station.

    Raises:
        ValueError: The station is not on the path.
    """
    if not stations[0] - GROWTH <= station <= stations[-1] + GROWTH:
        raise ValueError(f"station {station} is not on a path from {stations[0]} to {stations[-1]}")
    x, y, z = (float(np.interp(station, stations, points[:, axis])) for axis in range(3))
    return (x, y, z)


def _spans(starts: Array, steps: Array, shape: Shape) -> Spans:
    """Give the share of every segment where it enters a zone and where it leaves it, if it does."""
    match shape:
        case HalfSpace():
            return _spans_of_half_space(starts, steps, shape)
        case Ball():
            return _spans_of_ball(starts, steps, shape)
        case Box(low, high):
            faces = [HalfSpace(axis, 1, low[axis]) for axis in range(3)]
            faces += [HalfSpace(axis, -1, high[axis]) for axis in range(3)]
            return _spans(starts, steps, Both(tuple(faces)))
        case Both(parts):
            enter, leave = np.zeros(len(starts)), np.ones(len(starts))
            for part in parts:
                one, other = _spans(starts, steps, part)
                enter, leave = np.maximum(enter, one), np.minimum(leave, other)
            return enter, leave
        case _:
            assert_never(shape)


def _spans_of_half_space(starts: Array, steps: Array, half: HalfSpace) -> Spans:
    inside = half.sign * (starts[:, half.axis] - half.offset) + GROWTH
    rise = half.sign * _without_noise(steps[:, half.axis])
    level = rise == 0
    share = -inside / np.where(level, 1.0, rise)
    enter = np.where(level, np.where(inside >= 0, 0.0, np.inf), np.where(rise > 0, share, 0.0))
    leave = np.where(rise < 0, share, 1.0)
    return np.maximum(enter, 0.0), np.minimum(leave, 1.0)


def _without_noise(steps: Array) -> Array:
    return np.where(abs(steps) < LEAST_RISE, 0.0, steps)


def _spans_of_ball(starts: Array, steps: Array, ball: Ball) -> Spans:
    length = np.linalg.norm(steps, axis=1)
    middle = _foot(starts, steps, ball.centre)
    off = np.linalg.norm(starts + middle[:, None] * steps - np.array(ball.centre), axis=1)
    room = (ball.radius + GROWTH) ** 2 - off**2
    half = np.sqrt(np.maximum(room, 0.0)) / np.where(length > 0, length, 1.0)
    enter = np.where(room >= 0, np.maximum(middle - half, 0.0), np.inf)
    return enter, np.minimum(middle + half, 1.0)


def _foot(starts: Array, steps: Array, point: Point) -> Array:
    """Share of every segment, drawn out without end, at which it is nearest to a point."""
    square = np.sum(steps**2, axis=1)
    along = np.sum((np.array(point) - starts) * steps, axis=1)
    foot: Array = along / np.where(square > 0, square, 1.0)
    return foot
