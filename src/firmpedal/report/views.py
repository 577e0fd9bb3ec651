"""Three ways to look at a line, and the two that show most of it."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from firmpedal.lay.shape import Point

Flat = tuple[float, float]

POINTS_PER_METRE = 72 / 0.0254
# Scales that are easy to reckon with: one on paper to so many on the aircraft.
SCALES = (1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100, 150, 200)


@dataclass(frozen=True, slots=True)
class View:
    """A direction to look in: which coordinate runs across the paper and which one up it."""

    words: tuple[str, str]  # from where, and what runs which way
    across: tuple[int, int]  # 0 aft, 1 right, 2 up, and its sign
    upward: tuple[int, int]

    def flat(self, point: Point) -> Flat:
        """Where a point, or a direction, lies on the paper."""
        return (self.across[1] * point[self.across[0]], self.upward[1] * point[self.upward[0]])

    def shown_length(self, path: tuple[Point, ...]) -> float:
        """How long a path looks in this view."""
        return sum(math.dist(one, other) for one, other in pairwise(map(self.flat, path)))


FROM_BEHIND = View(("seen from behind", "right \u2192  up \u2191"), (1, 1), (2, 1))
FROM_LEFT = View(("seen from the left", "aft \u2192  up \u2191"), (0, 1), (2, 1))
FROM_ABOVE = View(("seen from above", "aft \u2192  right \u2191"), (0, 1), (1, 1))
FROM_ABOVE_AHEAD = View(("seen from above", "right \u2192  forward \u2191"), (1, 1), (0, -1))


@dataclass(frozen=True, slots=True)
class Pair:
    """Two views that share one direction of the paper, so that they line up."""

    views: tuple[View, View]
    beside: bool  # side by side, sharing the heights; else one above the other


PAIRS = (
    Pair((FROM_BEHIND, FROM_LEFT), beside=True),
    Pair((FROM_LEFT, FROM_ABOVE), beside=False),
    Pair((FROM_BEHIND, FROM_ABOVE_AHEAD), beside=False),
)


@dataclass(frozen=True, slots=True)
class Extent:
    """The room a path takes on the paper, in metres."""

    left: float
    low: float
    width: float
    height: float


def extent(points: list[Flat]) -> Extent:
    """The smallest upright box around points."""
    across, upward = [x for x, _ in points], [y for _, y in points]
    return Extent(min(across), min(upward), max(across) - min(across), max(upward) - min(upward))


@dataclass(frozen=True, slots=True)
class Placed:
    """A view at its place on the paper, scaled to points."""

    view: View
    origin: Flat
    scale: float

    def at(self, point: Point) -> Flat:
        """Where a point of the aircraft lies on the paper, in points."""
        x, y = self.view.flat(point)
        return (self.origin[0] + self.scale * x, self.origin[1] + self.scale * y)
