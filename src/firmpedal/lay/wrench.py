"""How far a wrench can swing on a nut before it meets something."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from firmpedal.lay import near

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    from firmpedal.lay.shape import Point

    Array = NDArray[np.float64]

DIRECTIONS = 180  # looked at round the nut: every two degrees


def free_swing(
    nut: Point, axis: Point, solids: Sequence[near.Solid], length: float, thickness: float
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
    free = np.array([_is_free(nut, ray, within_reach, length, half) for ray in _rays(axis)])
    if free.all():
        return float(2 * np.pi)
    start = int(np.argmin(free))  # begin at a blocked place, so that no free stretch is cut in two
    longest = run = 0
    for place in np.roll(free, -start):
        run = run + 1 if place else 0
        longest = max(longest, run)
    return max(longest - 1, 0) * 2 * float(np.pi) / DIRECTIONS


def _rays(axis: Point) -> Array:
    along = np.array(axis) / np.linalg.norm(axis)
    aside = np.cross(along, np.eye(3)[int(np.argmin(abs(along)))])
    aside = aside / np.linalg.norm(aside)
    angles = np.linspace(0, 2 * np.pi, DIRECTIONS, endpoint=False)[:, None]
    rays: Array = np.cos(angles) * aside + np.sin(angles) * np.cross(along, aside)
    return rays


def _is_free(nut: Point, ray: Array, solids: Sequence[near.Solid], length: float, half: float) -> bool:
    bar = np.array([nut, np.array(nut) + length * ray])
    return all(near.nearest(bar, solid).distance > half for solid in solids)
