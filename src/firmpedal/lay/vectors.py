"""Plain vectors in the file's axes, for one body at a time."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from firmpedal.lay.shape import Point


def along(start: Point, way: Point, far: float) -> Point:
    """The point `far` from `start` in units of `way`."""
    return (start[0] + far * way[0], start[1] + far * way[1], start[2] + far * way[2])


def less(one: Point, other: Point) -> Point:
    """The vector from `other` to `one`."""
    return (one[0] - other[0], one[1] - other[1], one[2] - other[2])


def dot(one: Point, other: Point) -> float:
    return sum(a * b for a, b in zip(one, other, strict=True))


def unit(way: Point) -> Point:
    """The same way, one long; nothing stays nothing."""
    long = math.hypot(*way) or 1.0
    return (way[0] / long, way[1] / long, way[2] / long)


def turned(axis: Point, arm: Point, turn: float) -> Point:
    """The way that leaves an axis by `turn` [rad], towards `arm` square to it."""
    x, y, z = (math.cos(turn) * one + math.sin(turn) * other for one, other in zip(axis, arm, strict=True))
    return unit((x, y, z))


def foot(point: Point, start: Point, axis: Point) -> Point:
    """Where a point stands on the line through `start` along a unit vector."""
    return along(start, axis, dot(less(point, start), axis))
