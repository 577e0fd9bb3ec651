"""A bent tube laid between two ends: moved and turned as a whole, its shape kept."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan2, cos, dist, sin
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.lay.centreline import waypoints
from firmpedal.lay.rows import crossed

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from firmpedal.lay.half_bent import BendData
    from firmpedal.lay.shape import Point

    Array = NDArray[np.float64]

# How far the end straights have to lean out of the line between the ends, as the sum of squares of the
# sines, before they say how the tube is turned about it: 6 degrees for one of them.
LEAST_LEAN = 0.01
LEAST_SHARE = 1e-6  # of the developed length: ends closer than this are one place


@dataclass(frozen=True, slots=True)
class Between:
    """Where a tube lies: its corners with both ends [m], and how well it fits.

    `overshoot` is how much farther apart its ends are than the places that they should be at; the first
    end is on its place, the last one off by that much, along the line between them. `off` are the angles
    [rad] between the end straights and where they should point, None where that was not said.
    """

    corners: tuple[Point, ...]
    overshoot: float
    off: tuple[float | None, float | None]


def laid_between(
    tube: BendData, start: Point, finish: Point, leaving: tuple[Point | None, Point | None]
) -> Between | None:
    """Lay a tube between two places; None where nothing says how it is turned about the line between them.

    The turn is the one that brings both end straights nearest to where they should point: least squares
    over the parts of their directions that are square to the line between the ends.

    Args:
        tube: Its straights and bends.
        start: Where its first end belongs [m].
        finish: Where its last end belongs, another place than the first [m].
        leaving: Where the first straight goes from the start, and the last one from the finish: unit vectors.

    Raises:
        ValueError: The two places are one, or the ends of the tube are.
    """
    local = np.array(waypoints(tube.straights, tube.bends, (0, 0, 0), (1, 0, 0), (0, 0, 1)))
    chord, wanted = local[-1], np.array(finish) - np.array(start)
    long, apart = float(np.linalg.norm(chord)), float(np.linalg.norm(wanted))
    if min(long, apart) <= LEAST_SHARE * (sum(tube.straights) + sum(bend.arc for bend in tube.bends)):
        raise ValueError("the two ends are at one place")
    axis = wanted / apart
    placed = local @ _turn_onto(chord / long, axis).T
    if tube.bends:
        angle = _turn_about(axis, _ends(placed), leaving)
        if angle is None:
            return None
        placed = placed @ _rotation(axis, angle).T
    off = [
        None if aim is None else _between(mine, np.array(aim))
        for mine, aim in zip(_ends(placed), leaving, strict=True)
    ]
    moved = placed + np.array(start)
    corners = tuple((float(x), float(y), float(z)) for x, y, z in moved)
    return Between(corners, long - apart, (off[0], off[1]))


def overshoot(tube: BendData, start: Point, finish: Point) -> float:
    """How much farther apart a tube's ends are than two places [m]; below nothing where they are nearer."""
    first, *_, last = waypoints(tube.straights, tube.bends, (0, 0, 0), (1, 0, 0), (0, 0, 1))
    return dist(first, last) - dist(start, finish)


def _ends(corners: Array) -> tuple[Array, Array]:
    """Where the first straight goes from the start, and the last one from the finish."""
    first, last = corners[1] - corners[0], corners[-2] - corners[-1]
    return first / np.linalg.norm(first), last / np.linalg.norm(last)


def _turn_about(
    axis: Array, mine: tuple[Array, Array], leaving: tuple[Point | None, Point | None]
) -> float | None:
    """The turn about an axis that brings directions nearest to others; None where none of them leans."""
    along = across = lean = 0.0
    for one, aim in zip(mine, leaving, strict=True):
        if aim is None:
            continue
        own, other = (way - np.dot(way, axis) * axis for way in (one, np.array(aim)))
        along += float(np.dot(own, other))
        across += float(np.dot(crossed(own, other), axis))
        lean += float(np.linalg.norm(own) * np.linalg.norm(other))
    return None if lean < LEAST_LEAN else atan2(across, along)


def _turn_onto(one: Array, other: Array) -> Array:
    """A rotation that turns one unit vector onto another, as half turns; exact for opposite ones too."""
    if np.dot(one, other) < 0:
        aside = crossed(one, np.eye(3)[int(np.argmin(abs(one)))])
        return _turn_onto(-one, other) @ _half_turn(aside / np.linalg.norm(aside))
    half = one + other
    return _half_turn(half / np.linalg.norm(half)) @ _half_turn(one)


def _half_turn(axis: Array) -> Array:
    turned: Array = 2 * np.outer(axis, axis) - np.eye(3)
    return turned


def _rotation(axis: Array, angle: float) -> Array:
    """A turn about a unit axis, by the right hand."""
    x, y, z = axis
    cross = np.array([[0, -z, y], [z, 0, -x], [-y, x, 0]])
    turned: Array = cos(angle) * np.eye(3) + sin(angle) * cross + (1 - cos(angle)) * np.outer(axis, axis)
    return turned


def _between(one: Array, other: Array) -> float:
    return atan2(float(np.linalg.norm(crossed(one, other))), float(np.dot(one, other)))
