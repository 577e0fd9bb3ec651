"""How far the end of a tube can come out from where it should, because figures on paper are rounded."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.lay.centreline import waypoints

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from firmpedal.lay.shape import Centreline

    Array = NDArray[np.float64]

STEP = 1e-6  # of each input, for the slopes


@dataclass(frozen=True, slots=True)
class Rounding:
    """What a printed figure can be off: a mark [m], an angle or a rotation [rad]."""

    mark: float
    angle: float


def end_band(line: Centreline, rounding: Rounding) -> float:
    """How far the far end can be from its place while the first leg is held where it belongs [m].

    Every figure is off by its most in the direction that does the most harm: the sum of what each alone
    can do, to first order. A mark that is off makes the straight before it longer and the next one
    shorter; the length of the cut is one more mark.
    """
    count = len(line.bends)
    sizes = [rounding.mark] * (count + 1) + [rounding.angle] * (2 * count - 1 if count else 0)
    base = _end(line, np.zeros(len(sizes)))
    whole = 0.0
    for number, size in enumerate(sizes):
        change = np.zeros(len(sizes))
        change[number] = STEP
        whole += float(np.linalg.norm(_end(line, change) - base)) / STEP * size
    return whole


def _end(line: Centreline, change: Array) -> Array:
    """Where the far end comes with changed marks, angles and rotations (the first has none)."""
    count = len(line.bends)
    marks, angles, rotations = change[: count + 1], change[count + 1 : 2 * count + 1], change[2 * count + 1 :]
    turns = (0.0, *rotations)
    moved = np.diff([0.0, *marks])
    straights = tuple(float(a + b) for a, b in zip(line.straights, moved, strict=True))
    # a bend of another angle uses another arc: the marks stay, so the straight after it gives way
    arcs = [bend.radius * angle for bend, angle in zip(line.bends, angles, strict=True)]
    straights = tuple(a - b for a, b in zip(straights, (0.0, *arcs), strict=True))
    bends = tuple(
        replace(bend, angle=float(bend.angle + angle), rotation=float(bend.rotation + turn))
        for bend, angle, turn in zip(line.bends, angles, turns, strict=False)
    )
    return np.array(waypoints(straights, bends, (0, 0, 0), (1, 0, 0), (0, 0, 1))[-1])
