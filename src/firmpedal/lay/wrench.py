"""How far a wrench can swing on a nut before it meets something."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.lay import near
from firmpedal.lay.rows import crossed

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from firmpedal.lay.shape import Point

    Array = NDArray[np.float64]

DIRECTIONS = 180  # looked at round the nut: every two degrees


@lru_cache(maxsize=4096)
def free_swing(
    nut: Point, axis: Point, solids: tuple[near.Solid, ...], length: float, thickness: float
) -> float:
    """Give the widest angle through which a wrench swings freely square to a nut's axis [rad].

    The wrench is a bar from the middle of the nut outwards; a full turn means that nothing is in reach.

    Args:
        nut: The middle of the nut [m].
        axis: Along the line, of any length but none.
        solids: What is in the way [m].
        length: Of the wrench from the middle of the nut [m].
        thickness: Of the wrench along the nut's axis [m].
    """
    half = thickness / 2
    within_reach = [solid for solid in solids if near.distance(np.array([nut]), solid)[0] <= length + half]
    starts, bars = np.tile(nut, (DIRECTIONS, 1)), length * rays_round(axis, DIRECTIONS)
    free = np.ones(DIRECTIONS, dtype=bool)
    for solid in within_reach:
        free &= near.distances_of_straights(starts, bars, solid) > half
    if free.all():
        return float(2 * np.pi)
    start = int(np.argmin(free))  # begin at a blocked place, so that no free stretch is cut in two
    longest = run = 0
    for place in np.roll(free, -start):
        run = run + 1 if place else 0
        longest = max(longest, run)
    return max(longest - 1, 0) * 2 * float(np.pi) / DIRECTIONS


def rays_round(axis: Point, count: int) -> Array:
    """Unit vectors square to an axis, evenly all round it, shape (count, 3)."""
    along = np.array(axis) / np.linalg.norm(axis)
    aside = crossed(along, np.eye(3)[int(np.argmin(abs(along)))])
    aside = aside / np.linalg.norm(aside)
    angles = np.linspace(0, 2 * np.pi, count, endpoint=False)[:, None]
    rays: Array = np.cos(angles) * aside + np.sin(angles) * crossed(along, aside)
    return rays
