"""Corner points of a tube to bend data and back, and points along the bent centreline.

Corner points are the two ends of the tube and the intersections of neighbouring straights, not
the tangent points. A bend angle is the turn: 0 is straight. Everything is in one unit of length
and in radians.

Rotation is the turn of the plane of bend from one bend to the next, positive by the right hand
with the thumb along the feed from start to end; the first bend has rotation 0. The range is
(-pi, pi]; both ends of it are the same bend. Reading the tube from its other end reverses the
lists and changes no sign; a mirror image changes every sign.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from itertools import pairwise
from math import atan2, cos, pi, sin, tan
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.lay.along import box, point_at, sample
from firmpedal.lay.rows import crossed, lengths
from firmpedal.lay.shape import Bend, Centreline, Impossible, ImpossibleKind, Point

if TYPE_CHECKING:
    from collections.abc import Iterator

    from numpy.typing import NDArray

    Array = NDArray[np.float64]

__all__ = [
    "Bend",
    "Centreline",
    "Impossible",
    "ImpossibleKind",
    "Point",
    "box",
    "centreline",
    "point_at",
    "sample",
    "waypoints",
]

# Below this turn two straights are one. It is far above the rounding of coordinates (1e-16 of
# their size) and moves the far end of a 10 m straight by 0.01 mm, which no tape shows. The same
# angle decides what is a turn of 180 degrees, and which rotation next to 180 or -180 degrees is 180.
LEAST_ANGLE = 1e-6
# Lengths that differ by less than this share of the whole line are equal: rounding, not geometry.
LEAST_SHARE = 1e-9


@lru_cache(maxsize=4096)  # what is found of a tube over its ranges begins with the same ones
def centreline(points: tuple[Point, ...], radii: float | tuple[float, ...]) -> Centreline | Impossible:
    """Work out straights, bend angles, rotations and developed length from corner points.

    Args:
        points: Both ends and the corners between them, in the order of the feed.
        radii: Radius to the centreline, one for all or one for each point between the ends.

    Returns:
        The centreline, or why these points cannot be bent. A negative straight is never clipped.

    Raises:
        ValueError: A coordinate or radius is not a number, or the radii do not match the points.
    """
    all_radii = _radii(radii, len(points) - 2)
    if not np.all(np.isfinite(points)):
        raise ValueError("a coordinate is not finite")
    if len(points) < 2:
        return Impossible(ImpossibleKind.TOO_FEW, 0, None, "a line needs at least two points")
    size = float(lengths(np.diff(np.array(points), axis=0)).sum())
    if trouble := _coinciding(points, LEAST_SHARE * size):
        return trouble
    kept = _without_straight_points(points)
    corners = np.array([points[index] for index in kept])
    turns = _turns(corners)
    if trouble := _doubling_back(kept, turns):
        return trouble
    bends = tuple(
        Bend(corner, turn, rotation, all_radii[corner - 1], all_radii[corner - 1] * tan(turn / 2))
        for corner, turn, rotation in zip(kept[1:-1], turns, _rotations(corners), strict=True)
    )
    straights = _straights(corners, bends, LEAST_SHARE * size)
    return _no_room(kept, straights) or _assembled(corners, straights, bends)


def _radii(radii: float | tuple[float, ...], count: int) -> tuple[float, ...]:
    given = radii if isinstance(radii, tuple) else (float(radii),) * max(count, 0)
    if len(given) != max(count, 0):
        raise ValueError(f"{len(given)} radii for {max(count, 0)} points between the ends")
    if not all(0 <= radius < float("inf") for radius in given):
        raise ValueError("a radius is negative or not finite")
    return given


def _coinciding(points: tuple[Point, ...], least: float) -> Impossible | None:
    steps = lengths(np.diff(np.array(points), axis=0))
    return _first(
        Impossible(
            ImpossibleKind.COINCIDE, n, None, f"point {n + 1} and point {n + 2} are the same place", n + 1
        )
        for n, length in enumerate(steps)
        if length <= least
    )


def _without_straight_points(points: tuple[Point, ...]) -> list[int]:
    """Give the indices of the points that are ends or turn, comparing with the last one kept."""
    kept = [0]
    for index in range(1, len(points) - 1):
        three = np.array([points[kept[-1]], points[index], points[index + 1]])
        if _turns(three)[0] >= LEAST_ANGLE:
            kept.append(index)
    return [*kept, len(points) - 1]


def _turns(corners: Array) -> list[float]:
    """Turn at every corner; by atan2, because acos is poor near 0 and pi."""
    directions = _directions(corners)
    across = lengths(crossed(directions[:-1], directions[1:]))
    along = np.sum(directions[:-1] * directions[1:], axis=1)
    return [float(turn) for turn in np.arctan2(across, along)]


def _directions(corners: Array) -> Array:
    segments = np.diff(corners, axis=0)
    unit: Array = segments / lengths(segments)[:, None]
    return unit


def _doubling_back(kept: list[int], turns: list[float]) -> Impossible | None:
    return _first(
        Impossible(ImpossibleKind.DOUBLES_BACK, corner, None, f"the line doubles back at point {corner + 1}")
        for corner, turn in zip(kept[1:-1], turns, strict=True)
        if turn > pi - LEAST_ANGLE
    )


def _normals(corners: Array) -> Array:
    """Unit normal of the plane of every bend."""
    directions = _directions(corners)
    normals = crossed(directions[:-1], directions[1:])
    unit: Array = normals / lengths(normals)[:, None]
    return unit


def _rotations(corners: Array) -> list[float]:
    if len(corners) < 3:
        return []
    normals, directions = _normals(corners), _directions(corners)
    rotations = [0.0]
    for before, after, feed in zip(normals, normals[1:], directions[1:], strict=False):
        angle = atan2(float(np.dot(crossed(before, after), feed)), float(np.dot(before, after)))
        rotations.append(pi if abs(angle) >= pi - LEAST_ANGLE else angle + 0.0)  # -0.0 becomes 0.0
    return rotations


def _straights(corners: Array, bends: tuple[Bend, ...], least: float) -> tuple[float, ...]:
    steps = lengths(np.diff(corners, axis=0))
    setbacks = (0.0, *(bend.setback for bend in bends), 0.0)
    rest = [float(length) - sum(both) for length, both in zip(steps, pairwise(setbacks), strict=True)]
    return tuple(0.0 if abs(straight) <= least else straight for straight in rest)


def _no_room(kept: list[int], straights: tuple[float, ...]) -> Impossible | None:
    last = len(straights) - 1
    return _first(
        Impossible(ImpossibleKind.NO_ROOM, kept[n], straight, _overlap(kept, n, last), kept[n + 1])
        for n, straight in enumerate(straights)
        if straight < 0
    )


def _overlap(kept: list[int], straight: int, last: int) -> str:
    one, other = kept[straight] + 1, kept[straight + 1] + 1
    if straight == 0:
        return f"the bend at point {other} would begin before the line does"
    if straight == last:
        return f"the bend at point {one} would end past the end of the line"
    return f"the bends at point {one} and point {other} overlap"


def _first(found: Iterator[Impossible]) -> Impossible | None:
    everything = tuple(found)
    return replace(everything[0], also=everything[1:]) if everything else None


def _assembled(corners: Array, straights: tuple[float, ...], bends: tuple[Bend, ...]) -> Centreline:
    directions = _directions(corners)
    tangents = [corners[0]]
    for n, bend in enumerate(bends):
        corner = corners[n + 1]
        tangents += [corner - bend.setback * directions[n], corner + bend.setback * directions[n + 1]]
    tangents.append(corners[-1])
    return Centreline(
        corners=tuple(_point(corner) for corner in corners),
        straights=straights,
        bends=bends,
        tangent_points=tuple(_point(tangent) for tangent in tangents),
        developed_length=sum(straights) + sum(bend.arc for bend in bends),
        polyline_length=float(lengths(np.diff(corners, axis=0)).sum()),
    )


def _point(array: Array) -> Point:
    return (float(array[0]), float(array[1]), float(array[2]))


def waypoints(
    straights: tuple[float, ...], bends: tuple[Bend, ...], start: Point, direction: Point, normal: Point
) -> tuple[Point, ...]:
    """Work out corner points from bend data: the inverse of `centreline`.

    Args:
        straights: Between tangent points, one more than bends.
        bends: Their angle, rotation and radius are used.
        start: Where the tube starts.
        direction: The feed at the start.
        normal: Of the plane of the first bend: the feed before it crossed with the feed after it.

    Raises:
        ValueError: The lists do not match, or the normal is not square to the direction.
    """
    if len(straights) != len(bends) + 1:
        raise ValueError(f"{len(straights)} straights for {len(bends)} bends")
    feed, square = _unit(direction), _unit(normal)
    if abs(float(np.dot(feed, square))) > LEAST_ANGLE:
        raise ValueError("the normal is not square to the direction")
    place, setback, points = np.array(start, dtype=float), 0.0, [start]
    for straight, bend in zip(straights, bends, strict=False):
        before, setback = setback, bend.radius * tan(bend.angle / 2)
        place = place + (before + straight + setback) * feed
        points.append(_point(place))
        square = _turned(square, feed, bend.rotation)
        feed = _turned(feed, square, bend.angle)
    return (*points, _point(place + (setback + straights[-1]) * feed))


def _unit(vector: Point) -> Array:
    array = np.array(vector, dtype=float)
    unit: Array = array / np.linalg.norm(array)
    return unit


def _turned(vector: Array, axis: Array, angle: float) -> Array:
    """Turn a vector about a unit axis square to it."""
    turned: Array = cos(angle) * vector + sin(angle) * crossed(axis, vector)
    return turned / np.linalg.norm(turned)
