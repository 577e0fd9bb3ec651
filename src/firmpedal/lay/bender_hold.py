"""Where a part of the bender holds the tube, and so is touched without being in the way.

Former, hook and shoe touch the tube next to the bend before the lever has moved. What the file declares
does not say which part is which; the straight tube, laid in, does. A part that it touches next to the bend
holds it, as far along as it touches it. How long a straight the bender grips does not come into it: a lever
that swings against the held straight hits it, however much of that straight is held.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from firmpedal.lay import near
from firmpedal.lay.half_bent import FEED

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Array = NDArray[np.float64]

HALVINGS = 40  # of the length that is searched: a metre comes down to a millionth of a micrometre


def next_to_bend(radius: float, outside_radius: float, touch: float) -> float:
    """How far from the bend a former can touch a straight tube that leaves it [m].

    The flanges of its groove reach to the outside of the tube at most, R + r from the middle of the bend.
    They touch the tube where its axis is no more than t further out: (R + r + t)^2 = R^2 + s^2.
    Source: Derived by this project.

    Args:
        radius: Of the bend, to the centreline R [m].
        outside_radius: Of the tube r [m].
        touch: From the tube's axis to a body that touches it t [m].
    """
    return float(np.sqrt((radius + outside_radius + touch) ** 2 - radius**2))


def held_lengths(
    solid: near.Solid, nearby: float, straights: tuple[float, float], touch: float, *, turns: bool
) -> tuple[float, float]:
    """How far a body holds the straight tube before a bend, and after it; 0 where it does not.

    A tool holds what stands still against it: of one that turns with the lever that is the tube after the
    bend, of any other the tube before it. The other side only comes past it, next to the bend.

    Args:
        solid: The body, in the bender's axes before the lever has moved [m].
        nearby: A body that touches the tube no nearer to the bend than this holds nothing [m].
        straights: How much is straight before and after the bend [m].
        touch: From the tube's axis to a body that touches it [m].
        turns: Whether the body goes round with the lever.

    Returns:
        Lengths from the bend, before and after; each 0 or at least `nearby` [m].
    """
    before, after = (
        _held(solid, way, nearby, straight if fixed else nearby, touch)
        for way, straight, fixed in ((-FEED, straights[0], not turns), (FEED, straights[1], turns))
    )
    return before, after


def _held(solid: near.Solid, way: Array, nearby: float, far: float, touch: float) -> float:
    """Along a straight the distance from a convex body falls and then rises: one piece is touched."""
    if near.nearest(np.array([0 * way, nearby * way]), solid).distance >= touch:
        return 0.0
    low, high = nearby, max(nearby, far)
    if _touches(solid, high * way, touch):
        return high
    if not _touches(solid, low * way, touch):
        return nearby
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if _touches(solid, middle * way, touch) else (low, middle)
    return low


def _touches(solid: near.Solid, place: Array, touch: float) -> bool:
    return float(near.distance(place[None, :], solid)[0]) < touch
