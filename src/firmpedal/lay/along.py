"""Points along a bent centreline: on its straights and on its arcs."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from math import atan2, ceil, pi, radians
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from firmpedal.lay.shape import Centreline, Point

    Array = NDArray[np.float64]

# No step of a sampled bend turns more, so a chord stays within 0.4 % of the radius of its arc.
GREATEST_STEP = radians(10)
# A station may lie outside the line by this share of its length: rounding.
LEAST_SHARE = 1e-9


@dataclass(frozen=True, slots=True)
class _Piece:
    """A straight, or an arc that leaves `origin` along `direction` and turns towards `inward`."""

    start: float
    length: float
    origin: Array
    direction: Array
    inward: Array | None = None
    radius: float = 0.0

    def points(self, distances: Array) -> Array:
        along = distances[:, None]
        if self.inward is None:
            straight: Array = self.origin + along * self.direction
            return straight
        turned = along / self.radius
        sideways = 2 * np.sin(turned / 2) ** 2  # 1 - cos, without losing its digits near 0
        arc: Array = self.origin + self.radius * (np.sin(turned) * self.direction + sideways * self.inward)
        return arc

    def directions(self, distances: Array) -> Array:
        if self.inward is None:
            return np.broadcast_to(self.direction, (len(distances), 3))
        turned = distances[:, None] / self.radius
        tangent: Array = np.cos(turned) * self.direction + np.sin(turned) * self.inward
        return tangent

    def steps(self, spacing: float) -> int:
        turned = 0.0 if self.inward is None else self.length / self.radius
        return max(1, ceil(self.length / spacing), ceil(turned / GREATEST_STEP))

    def extremes(self) -> Array:
        """Distances at which a coordinate of the piece can be greatest or least."""
        ends = [0.0, self.length]
        if self.inward is not None:
            flat = [atan2(-float(u), float(m)) % pi for u, m in zip(self.direction, self.inward, strict=True)]
            ends += [turn * self.radius for turn in flat if turn * self.radius < self.length]
        return np.array(ends)


def sample(line: Centreline, spacing: float, straights: float | None = None) -> tuple[Array, Array]:
    """Give points on the centreline and their stations, the developed lengths from the start.

    The tangent points are among them. Stations rise strictly: where two bends meet without a
    straight, the point between them comes once.

    Args:
        line: The centreline.
        spacing: Greatest developed length between neighbours; a bend is never stepped coarser than
            10 degrees.
        straights: The same where the line is straight; as `spacing` where it is not given.

    Raises:
        ValueError: A spacing is not positive.
    """
    if not spacing > 0 or (straights is not None and not straights > 0):
        raise ValueError("the spacing of a sample must be positive")
    points, stations = [np.array([line.corners[0]])], [np.zeros(1)]
    for piece in _pieces(line):
        step = spacing if straights is None or piece.inward is not None else straights
        distances = np.linspace(0.0, piece.length, piece.steps(step) + 1)[1:]
        points.append(piece.points(distances))
        stations.append(piece.start + distances)
    return np.concatenate(points), np.concatenate(stations)


def point_at(line: Centreline, station: float) -> Point:
    """Give the point at a developed length from the start.

    Raises:
        ValueError: The station is not on the line.
    """
    slack = LEAST_SHARE * line.developed_length
    if not -slack <= station <= line.developed_length + slack:
        raise ValueError(f"station {station} is not on a line of {line.developed_length}")
    pieces = _pieces(line)
    piece = next((piece for piece in pieces if station <= piece.start + piece.length), pieces[-1])
    x, y, z = piece.points(np.array([station - piece.start]))[0]
    return (float(x), float(y), float(z))


def box(line: Centreline, outside_diameter: float) -> tuple[Point, Point]:
    """Give the least and greatest coordinates of the round tube along this centreline.

    Exact where every bend radius is over half the outside diameter: the surface reaches furthest
    where the centreline does, or at a square-cut end.
    """
    low, high = np.full(3, np.inf), np.full(3, -np.inf)
    for piece in _pieces(line):
        distances = piece.extremes()
        tilt = np.clip(1 - piece.directions(distances) ** 2, 0, None)
        reach = outside_diameter / 2 * np.sqrt(tilt)
        points = piece.points(distances)
        low = np.minimum(low, (points - reach).min(axis=0))
        high = np.maximum(high, (points + reach).max(axis=0))
    return _point(low), _point(high)


def _point(array: Array) -> Point:
    return (float(array[0]), float(array[1]), float(array[2]))


@lru_cache(maxsize=64)  # whoever samples a line also measures it, or asks for places on it
def _pieces(line: Centreline) -> tuple[_Piece, ...]:
    """Give the straights and arcs that have a length, in order."""
    corners, tangents = np.array(line.corners), np.array(line.tangent_points)
    segments = np.diff(corners, axis=0)
    directions = segments / np.linalg.norm(segments, axis=1, keepdims=True)
    pieces = []
    for n, (start, stop) in enumerate(pairwise(line.tangent_stations)):
        feed = directions[n // 2]
        if n % 2 == 0:
            pieces.append(_Piece(start, stop - start, tangents[n], feed))
            continue
        after = directions[n // 2 + 1]
        inward = after - np.dot(after, feed) * feed
        radius = line.bends[n // 2].radius
        pieces.append(_Piece(start, stop - start, tangents[n], feed, inward / np.linalg.norm(inward), radius))
    return tuple(piece for piece in pieces if piece.length > 0)
