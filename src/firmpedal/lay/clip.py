"""Where a path lies in a convex zone, and how near it comes to one.

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


@dataclass(frozen=True, slots=True)
class Nearest:
    """Where a path comes nearest to a zone; distance 0 where it reaches into it."""

    distance: float
    station: float
    point: Point


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


def nearest(points: Array, stations: Array, solid: Solid) -> Nearest:
    """Find where a path comes nearest to a zone, exactly on every segment."""
    if len(points) == 1:
        points, stations = np.repeat(points, 2, axis=0), np.repeat(stations, 2)
    starts, steps = points[:-1], np.diff(points, axis=0)
    shares = _nearest_shares(starts, steps, solid)
    places = starts + shares[:, None] * steps
    distances = _distances(places, solid)
    best = int(np.argmin(distances))
    station = stations[best] + shares[best] * (stations[best + 1] - stations[best])
    x, y, z = places[best]
    return Nearest(float(distances[best]), float(station), (float(x), float(y), float(z)))


def distance_to(points: Array, solid: Solid) -> float:
    """Give the least distance of a path from a zone, 0 where it reaches into it."""
    return nearest(points, np.arange(len(points), dtype=float), solid).distance


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


def _nearest_shares(starts: Array, steps: Array, solid: Solid) -> Array:
    match solid:
        case HalfSpace(axis, sign, _):
            return np.where(sign * steps[:, axis] > 0, 1.0, 0.0)
        case Ball(centre, _):
            return np.clip(_foot(starts, steps, centre), 0.0, 1.0)
        case Box():
            return _nearest_shares_of_box(starts, steps, solid)
        case _:
            assert_never(solid)


def _nearest_shares_of_box(starts: Array, steps: Array, box: Box) -> Array:
    """Between the planes of the faces the squared distance is one parabola: take the lowest of them."""
    low, high = np.array(box.low), np.array(box.high)
    slopes = np.where(_without_noise(steps) == 0, np.inf, steps)
    planes = np.concatenate([(low - starts) / slopes, (high - starts) / slopes], axis=1)
    ends = np.broadcast_to([0.0, 1.0], (len(starts), 2))
    cuts = np.sort(np.concatenate([np.clip(planes, 0.0, 1.0), ends], axis=1), axis=1)
    middles = (cuts[:, :-1] + cuts[:, 1:]) / 2
    at_middles = starts[:, None] + middles[:, :, None] * steps[:, None]
    targets = np.clip(at_middles, low, high)
    moving = np.where(targets == at_middles, 0.0, steps[:, None])
    square = np.sum(moving**2, axis=2)
    along = np.sum((targets - starts[:, None]) * moving, axis=2)
    lowest = np.clip(along / np.where(square > 0, square, 1.0), cuts[:, :-1], cuts[:, 1:])
    places = starts[:, None] + lowest[:, :, None] * steps[:, None]
    distances = np.linalg.norm(places - np.clip(places, low, high), axis=2)
    return np.take_along_axis(lowest, np.argmin(distances, axis=1)[:, None], axis=1)[:, 0]


def _distances(places: Array, solid: Solid) -> Array:
    match solid:
        case HalfSpace(axis, sign, offset):
            under: Array = np.maximum(sign * (offset - places[:, axis]), 0.0)
            return under
        case Ball(centre, radius):
            out: Array = np.maximum(np.linalg.norm(places - np.array(centre), axis=1) - radius, 0.0)
            return out
        case Box(low, high):
            off: Array = np.linalg.norm(places - np.clip(places, low, high), axis=1)
            return off
        case _:
            assert_never(solid)
