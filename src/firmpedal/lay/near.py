"""How near a path comes to a convex body: box, ball, bar or flat disc.

Along a straight the distance from a convex body falls and then rises, so on every segment the nearest
place is found by narrowing it from both sides. Everything is in metres.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, assert_never

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from firmpedal.lay.shape import Point

    Array = NDArray[np.float64]

GOLDEN = (5**0.5 - 1) / 2
STEPS = 60  # each keeps 0.618 of the segment: at the end less than 1e-12 of it is left


@dataclass(frozen=True, slots=True)
class Box:
    low: Point
    high: Point


@dataclass(frozen=True, slots=True)
class Bar:
    """All within a radius of a straight; both ends in one place make a ball."""

    start: Point
    finish: Point
    radius: float


@dataclass(frozen=True, slots=True)
class Disc:
    """A flat cylinder about a unit axis, half its thickness to either side of the centre."""

    centre: Point
    axis: Point
    radius: float
    thickness: float


Solid = Box | Bar | Disc


@dataclass(frozen=True, slots=True)
class Nearest:
    """The least distance, 0 inside; where on the path it is, and after what share of the segments."""

    distance: float
    share: float
    point: Point


def nearest(points: Array, solid: Solid) -> Nearest:
    """Find where a path of corner points comes nearest to a body.

    Args:
        points: Corners of the path, shape (n, 3), n at least 1 [m].
        solid: The body [m].
    """
    if len(points) == 1:
        points = np.repeat(points, 2, axis=0)
    starts, steps = points[:-1], np.diff(points, axis=0)
    shares = _nearest_shares(starts, steps, solid)
    places = starts + shares[:, None] * steps
    distances = distance(places, solid)
    best = int(np.argmin(distances))
    x, y, z = places[best]
    share = (best + float(shares[best])) / len(starts)
    return Nearest(float(distances[best]), share, (float(x), float(y), float(z)))


def _nearest_shares(starts: Array, steps: Array, solid: Solid) -> Array:
    """Golden-section search on all segments at once; the ends are looked at as well."""
    low, high = np.zeros(len(starts)), np.ones(len(starts))
    for _ in range(STEPS):
        left, right = high - GOLDEN * (high - low), low + GOLDEN * (high - low)
        nearer_left = distance(starts + left[:, None] * steps, solid) <= distance(
            starts + right[:, None] * steps, solid
        )
        low, high = np.where(nearer_left, low, left), np.where(nearer_left, right, high)
    candidates = np.stack([(low + high) / 2, np.zeros(len(starts)), np.ones(len(starts))])
    found = np.stack([distance(starts + share[:, None] * steps, solid) for share in candidates])
    chosen: Array = np.take_along_axis(candidates, np.argmin(found, axis=0)[None, :], axis=0)[0]
    return chosen


def distance(points: Array, solid: Solid) -> Array:
    """Distances of points, shape (n, 3), from a body; 0 inside it."""
    match solid:
        case Box(low, high):
            off: Array = np.linalg.norm(points - np.clip(points, low, high), axis=1)
            return off
        case Bar(start, finish, radius):
            gaps: Array = np.maximum(_from_straight(points, np.array(start), np.array(finish)) - radius, 0.0)
            return gaps
        case Disc(centre, axis, radius, thickness):
            away, direction = points - np.array(centre), np.array(axis)
            along = away @ direction
            across = np.linalg.norm(away - along[:, None] * direction, axis=1)
            over_rim, over_face = across - radius, abs(along) - thickness / 2
            out: Array = np.hypot(np.maximum(over_rim, 0.0), np.maximum(over_face, 0.0))
            return out
        case _:
            assert_never(solid)


def _from_straight(points: Array, start: Array, finish: Array) -> Array:
    step = finish - start
    square = float(step @ step)
    share = np.clip((points - start) @ step / square, 0.0, 1.0) if square > 0 else np.zeros(len(points))
    gaps: Array = np.linalg.norm(points - (start + share[:, None] * step), axis=1)
    return gaps
