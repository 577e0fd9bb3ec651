"""The circle that a fitting's outlet sweeps as it is screwed in, and where it lies afterwards.

A leg is a round bar from the crossing of a fitting's axes to its outlet. Its figures are ranges, so two
bodies stand for it: one that is inside every leg it can be, and one that holds them all. Only the first
can surely hit something; only the second can surely miss it. Everything is in metres.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.hashing import HashKept, hash_kept
from firmpedal.lay import near
from firmpedal.lay.wrench import rays_round
from firmpedal.quantity import Answer

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    from firmpedal.lay.shape import Point

    Array = NDArray[np.float64]

DIRECTIONS = 120  # looked at round the port: every three degrees


@hash_kept
@dataclass(frozen=True, slots=True)
class Leg(HashKept):
    """One reading of a leg: `slack` is how far it can lie off, `arm` where it points in the end.

    `turn` is the angle between the leg and the way the port faces, 0 for a straight body; `length` and
    `radius` are the least and the greatest.
    """

    crossing: Point
    axis: Point
    turn: float
    length: tuple[float, float]
    radius: tuple[float, float]
    slack: float = 0.0
    arm: Point | None = None


@lru_cache(maxsize=4096)
def swept(legs: tuple[Leg, ...], solid: near.Solid, off: float = 0.0) -> Answer:
    """Say whether a leg that is turned once round its port meets a body.

    Args:
        legs: Every way in which its figures can be read.
        solid: The body [m].
        off: How far the surface of the body can be from there [m].

    Returns:
        YES if it does in every reading, NO if it does in none.
    """
    return _of_all([_meets(leg, _round(leg), solid, off) for leg in legs])


@lru_cache(maxsize=4096)
def lies_in(legs: tuple[Leg, ...], solid: near.Solid, off: float = 0.0) -> Answer:
    """Say whether a leg meets a body once it points where it shall; UNKNOWN where nobody said where."""
    return _of_all([_meets(leg, _final(leg), solid, off) for leg in legs])


@lru_cache(maxsize=1024)
def cross(legs: tuple[Leg, ...], others: tuple[Leg, ...]) -> Answer:
    """Say whether two legs that point where they shall lie in each other."""
    return _of_all([_pair(_final(leg), leg, other) for leg in legs for other in others])


@lru_cache(maxsize=1024)
def swept_beside(legs: tuple[Leg, ...], others: tuple[Leg, ...]) -> Answer:
    """Say whether a leg that is turned once round its port meets another that stays where it is."""
    return _of_all([_pair(_round(leg), leg, other) for leg in legs for other in others])


def _pair(ways: Array | None, leg: Leg, other: Leg) -> Answer:
    way = _final(other)
    if way is None:
        return Answer.UNKNOWN
    inside, outside = (_bar(other, way[0], end) for end in (0, 1))
    surely = _meets(leg, ways, inside, other.slack)
    return surely if surely is Answer.YES else _meets(leg, ways, outside, other.slack, never=True)


def _of_all(answers: Sequence[Answer]) -> Answer:
    if all(answer is Answer.YES for answer in answers) and answers:
        return Answer.YES
    return Answer.NO if all(answer is Answer.NO for answer in answers) else Answer.UNKNOWN


def _meets(leg: Leg, ways: Array | None, solid: near.Solid, off: float, *, never: bool = False) -> Answer:
    """Look at a leg in some directions; with `never`, only whether it surely misses.

    Between two directions the outlet is at most half the step of the circle away from one of them. No
    point of a leg is further from its crossing than the corner at its end.
    """
    off += leg.slack
    from_crossing = near.distance(np.array([leg.crossing]), solid)[0]
    if from_crossing > np.hypot(leg.length[1], leg.radius[1]) + off:
        return Answer.NO
    if ways is None:
        return Answer.UNKNOWN
    starts = np.tile(leg.crossing, (len(ways), 1))
    within = max(leg.length[0] - leg.radius[0], 0.0)
    if not never and near.distances_of_straights(starts, within * ways, solid).min() <= leg.radius[0] - off:
        return Answer.YES
    step = leg.length[1] * np.sin(leg.turn) * np.pi / DIRECTIONS if len(ways) > 1 else 0.0
    nearest = near.distances_of_straights(starts, leg.length[1] * ways, solid).min()
    return Answer.UNKNOWN if nearest <= leg.radius[1] + off + step else Answer.NO


def _bar(leg: Leg, way: Array, end: int) -> near.Bar:
    """The leg as a bar: inside all it can be (0), or round all of it (1)."""
    length = max(leg.length[0] - leg.radius[0], 0.0) if end == 0 else leg.length[1]
    x, y, z = np.array(leg.crossing) + length * way
    return near.Bar(leg.crossing, (float(x), float(y), float(z)), leg.radius[end])


def _final(leg: Leg) -> Array | None:
    """The one way in which the leg points in the end, shape (1, 3)."""
    if not leg.turn:
        return np.array([leg.axis])
    if leg.arm is None:
        return None
    ways: Array = np.array([np.cos(leg.turn) * np.array(leg.axis) + np.sin(leg.turn) * np.array(leg.arm)])
    return ways


def _round(leg: Leg) -> Array:
    """The ways in which the leg points while it is turned once round, shape (DIRECTIONS, 3)."""
    axis = np.array(leg.axis)
    ways: Array = np.cos(leg.turn) * axis + np.sin(leg.turn) * rays_round(leg.axis, DIRECTIONS)
    return ways
