"""How near a path comes to a convex body: box, ball, bar or flat disc.

Along a straight the distance from a convex body falls and then rises, so on every segment the nearest
place is found by looking at places in a row and going on between the neighbours of the nearest one.
Everything is in metres.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple, assert_never

import numpy as np

from firmpedal.lay.rows import lengths

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from firmpedal.lay.shape import Point

    Array = NDArray[np.float64]

GRID = np.linspace(0, 1, 17)
ROUNDING = 1e-12  # as a share of the figures
ROUNDS = 11  # each keeps an eighth of the segment: at the end less than 1e-9 of it is left


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
    off, steps = distance(points, solid), np.diff(points, axis=0)
    # no place of a segment is nearer than half of what its two ends are off, less half its length; of one
    # that leads straight away from the body that is what its end is off, but for rounding
    close = np.flatnonzero(off[:-1] + off[1:] - lengths(steps) <= 2 * off.min() + ROUNDING * off.max())
    offs, shares = np.full(len(steps), np.inf), np.zeros(len(steps))
    offs[close], shares[close] = _of_straights(points[:-1][close], steps[close], solid)
    return nearest_seen(points, offs, shares, solid)


def nearest_seen(points: Array, offs: Array, shares: Array, solid: Solid) -> Nearest:
    """Pick the nearest place of a path whose segments were looked at.

    Args:
        points: Corners of the path, shape (n, 3), n at least 2 [m].
        offs: How far each segment is off, or at least that; the nearest of them truly so [m].
        shares: After what share of its length it is nearest, shape (n - 1,).
        solid: The body [m].
    """
    alike = np.flatnonzero(offs <= offs.min())  # where a path goes through a body, all of that is
    places = points[alike] + shares[alike, None] * (points[alike + 1] - points[alike])
    best = int(np.argmin(_off_middle(places, solid)))
    x, y, z = places[best]
    share = (int(alike[best]) + float(shares[alike[best]])) / (len(points) - 1)
    return Nearest(float(offs.min()), share, (float(x), float(y), float(z)))


def segments_under(paths: Array, solid: Solid, enough: float) -> Array:
    """Give how far each segment of paths is off a body, where that is under a limit; else a lesser figure.

    Args:
        paths: Corners of the paths, shape (k, n, 3), n at least 2 [m].
        solid: The body [m].
        enough: How far off is far enough [m].

    Returns:
        Distances, shape (k, n - 1) [m].
    """
    return segments(paths, solid, enough).offs


class Segments(NamedTuple):
    """Segments of k paths of n corners beside a body, all of shape (k, n - 1).

    Each is off by `at_least`; `offs` is the same with the true distance of those that were looked at
    closely [m], and `shares` after what share of its length such a one is nearest.
    """

    at_least: Array
    offs: Array
    shares: Array


def segments(paths: Array, solid: Solid, enough: float | None = None, spare: float = 0.0) -> Segments:
    """Give how near each segment of paths can come to a body at least, and how far off the close ones are.

    Quick where a path keeps well off: no place of a segment is nearer than half of what its two ends are
    off, less half its length, and only segments that could come under the limit are looked at closely.

    Args:
        paths: Corners of the paths, shape (k, n, 3), n at least 2 [m].
        solid: The body [m].
        enough: How far off is far enough; without it, what no place of the same path is nearer than [m].
        spare: What is looked at beyond that [m].
    """
    off = distance(paths.reshape(-1, 3), solid).reshape(paths.shape[:2])
    steps = paths[:, 1:] - paths[:, :-1]
    long = lengths(steps.reshape(-1, 3)).reshape(steps.shape[:2])
    at_least = (off[:, :-1] + off[:, 1:] - long) / 2
    close = at_least <= (off.min(axis=1)[:, None] + spare if enough is None else enough + spare)
    shares = np.zeros_like(at_least)
    if not close.any():
        return Segments(at_least, at_least, shares)
    offs = at_least.copy()
    offs[close], shares[close] = _of_straights(paths[:, :-1][close], steps[close], solid)
    return Segments(at_least, offs, shares)


def distances_of_straights(starts: Array, steps: Array, solid: Solid) -> Array:
    """Give the least distance of each of several straights from a body.

    Args:
        starts: Where they begin, shape (n, 3) [m].
        steps: From there to where they end, shape (n, 3) [m].
        solid: The body [m].
    """
    return _of_straights(starts, steps, solid)[0]


def _of_straights(starts: Array, steps: Array, solid: Solid) -> tuple[Array, Array]:
    """The least distance of each of several straights from a body, and after what share of its length."""
    shares = _nearest_shares(starts, steps, solid)
    return distance(starts + shares[:, None] * steps, solid), shares


def _nearest_shares(starts: Array, steps: Array, solid: Solid) -> Array:
    """After what share of its length each of several straights is nearest to a body."""
    if isinstance(solid, Bar):
        return _nearest_to_straight(starts, steps, np.array(solid.start), np.array(solid.finish))
    return _narrowed(starts, steps, solid)


def _nearest_to_straight(starts: Array, steps: Array, start: Array, finish: Array) -> Array:
    """Two straights are nearest where both lead square to each other, or at an end of one of them.

    The square place of both is taken first; where it lies beyond the end of the bar, the place that is
    nearest to that end.
    """
    bar, between = finish - start, starts - start
    square, own = float(bar @ bar), np.einsum("ij,ij->i", steps, steps)
    along, back = steps @ bar, np.einsum("ij,ij->i", steps, between)
    ahead = between @ bar
    shares = _share(along * ahead - back * square, own * square - along**2)
    on_bar = _within((along * shares + ahead) / square) if square > 0 else 0.0 * shares
    return _share(along * on_bar - back, own)


def _share(part: Array, whole: Array) -> Array:
    """Which share of a whole each part is, from nothing to all; nothing where there is no whole."""
    some = whole > 0
    return _within(np.where(some, part, 0.0) / np.where(some, whole, 1.0))


def _within(shares: Array) -> Array:
    """Shares kept between nothing and all; quicker than the library's clip of short rows."""
    kept: Array = np.minimum(np.maximum(shares, 0.0), 1.0)
    return kept


def _narrowed(starts: Array, steps: Array, solid: Solid) -> Array:
    """Narrow every segment down to the neighbourhood of its nearest place, all segments at once."""
    rows = np.arange(len(starts))
    low, width = np.zeros(len(starts)), np.ones(len(starts))
    nearest_shares = low
    for _ in range(ROUNDS):
        shares = low[:, None] + width[:, None] * GRID
        places = starts[:, None] + shares[:, :, None] * steps[:, None]
        best = np.argmin(distance(places.reshape(-1, 3), solid).reshape(shares.shape), axis=1)
        nearest_shares = shares[rows, best]
        low, width = low + width * GRID[np.minimum(np.maximum(best - 1, 0), len(GRID) - 3)], width * GRID[2]
    return nearest_shares


def distance(points: Array, solid: Solid) -> Array:
    """Distances of points, shape (n, 3), from a body; 0 inside it."""
    match solid:
        case Box(low, high):
            return lengths(points - np.minimum(np.maximum(points, low), high))
        case Bar(start, finish, radius):
            gaps: Array = np.maximum(_from_straight(points, np.array(start), np.array(finish)) - radius, 0.0)
            return gaps
        case Disc(centre, axis, radius, thickness):
            away, direction = points - np.array(centre), np.array(axis)
            along = away @ direction
            across = lengths(away - along[:, None] * direction)
            over_rim, over_face = across - radius, abs(along) - thickness / 2
            out: Array = np.hypot(np.maximum(over_rim, 0.0), np.maximum(over_face, 0.0))
            return out
        case _:
            assert_never(solid)


def _off_middle(points: Array, solid: Solid) -> Array:
    """Distances of points from the middle line of a bar, or from the middle of another body."""
    match solid:
        case Bar(start, finish, _):
            return _from_straight(points, np.array(start), np.array(finish))
        case Box(low, high):
            return lengths(points - (np.array(low) + np.array(high)) / 2)
        case Disc(centre, _, _, _):
            return lengths(points - np.array(centre))
        case _:
            assert_never(solid)


def _from_straight(points: Array, start: Array, finish: Array) -> Array:
    step = finish - start
    square = float(step @ step)
    share = _within((points - start) @ step / square) if square > 0 else np.zeros(len(points))
    return lengths(points - (start + share[:, None] * step))
