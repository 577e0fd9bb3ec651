"""Things cut open, as drawings: outlines with hatching, turned about an axis that lies across the page."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from firmpedal.report.sheet import Label, Stroke

if TYPE_CHECKING:
    from collections.abc import Sequence

    from firmpedal.report.sheet import Mark

Flat = tuple[float, float]
OUTLINE, THIN, LETTERS = 1.3, 0.45, 10.5
HATCH = 4.2  # points between the lines of a hatching
RISING, FALLING = math.pi / 4, -math.pi / 4


@dataclass(frozen=True, slots=True)
class Place:
    """Where on the drawing the origin of a section lies, and how many points its unit is."""

    at: Flat
    scale: float

    def point(self, along: float, out: float) -> Flat:
        """A point of the section on the drawing: along the axis, and out from it."""
        return (round(self.at[0] + along * self.scale, 2), round(self.at[1] + out * self.scale, 2))

    def line(self, *points: Flat, weight: float = OUTLINE, dashed: bool = False) -> Stroke:
        return Stroke(tuple(self.point(*point) for point in points), weight, dashed)

    def dimension(self, one: Flat, other: Flat) -> Stroke:
        """A thin line with arrow heads at both ends."""
        return Stroke((self.point(*one), self.point(*other)), 0.8, arrows=True)


def turned(place: Place, shape: Sequence[Flat], angle: float = RISING) -> list[Mark]:
    """A ring cut open: its outline and hatching above the axis, and the same below it."""
    return [*cut(place, shape, angle), *cut(place, mirrored(shape), -angle)]


def mirrored(shape: Sequence[Flat]) -> tuple[Flat, ...]:
    return tuple((along, -out) for along, out in shape)


def cut(place: Place, shape: Sequence[Flat], angle: float = RISING) -> list[Mark]:
    """One cut face: a closed outline filled with hatching."""
    points = [place.point(*point) for point in shape]
    hatching: list[Mark] = [Stroke(ends, THIN) for ends in hatched(points, angle)]
    return [*hatching, Stroke((*points, points[0]), OUTLINE)]


def hatched(points: Sequence[Flat], angle: float, spacing: float = HATCH) -> list[tuple[Flat, Flat]]:
    """Parallel lines that fill a closed outline, even-odd."""
    turned_back = [_rotated(point, -angle) for point in points]
    sides = list(pairwise([*turned_back, turned_back[0]]))
    low = min(y for _, y in turned_back)
    count = int((max(y for _, y in turned_back) - low) / spacing)
    found = []
    for number in range(1, count + 1):
        level = low + (number - 0.5) * spacing
        over = [side for side in sides if (side[0][1] > level) != (side[1][1] > level)]
        crossed = sorted(_crossing(side, level) for side in over)
        ends = zip(crossed[::2], crossed[1::2], strict=True)
        found += [(_back((left, level), angle), _back((right, level), angle)) for left, right in ends]
    return found


def _crossing(side: tuple[Flat, Flat], level: float) -> float:
    (x0, y0), (x1, y1) = side
    return x0 + (x1 - x0) * (level - y0) / (y1 - y0)


def _rotated(point: Flat, angle: float) -> Flat:
    x, y = point
    return (x * math.cos(angle) - y * math.sin(angle), x * math.sin(angle) + y * math.cos(angle))


def _back(point: Flat, angle: float) -> Flat:
    x, y = _rotated(point, angle)
    return (round(x, 2), round(y, 2))


def circle(at: Flat, radius: float, weight: float = OUTLINE, *, dashed: bool = False) -> Stroke:
    """A circle as a line of short pieces."""
    turns = (n * math.pi / 36 for n in range(73))
    points = ((at[0] + radius * math.cos(turn), at[1] + radius * math.sin(turn)) for turn in turns)
    return Stroke(tuple((round(x, 2), round(y, 2)) for x, y in points), weight, dashed)


def pointed(words: str, at: Flat, to: Flat, anchor: str = "middle") -> list[Mark]:
    """A word with a thin line to the thing that it names; the line starts at the edge of the word."""
    gap = 8.0 if to[1] < at[1] else -8.0
    start = (at[0], round(at[1] - gap, 2)) if anchor == "middle" else at
    return [Stroke((start, to), 0.7), Label(words, at, LETTERS, anchor)]
