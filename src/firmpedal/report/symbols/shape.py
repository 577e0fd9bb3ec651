"""What a symbol is made of, and moving it about."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.report.placing import Box, box_of
from firmpedal.report.sheet import Dot, Label, Stroke

if TYPE_CHECKING:
    from firmpedal.report.placing import Flat
    from firmpedal.report.sheet import Mark

THIN, BODY, PIPE, PLATE = 0.6, 1.1, 1.7, 3.6  # weights of strokes, in points
SPACING = 46.0  # between two connections on one side of a symbol: room for a ringed number


@dataclass(frozen=True, slots=True)
class Symbol:
    """Marks about (0, 0), y up, with where pipes come to it from above and from below."""

    marks: tuple[Mark, ...]
    uppers: tuple[Flat, ...] = ()
    lowers: tuple[Flat, ...] = ()

    @property
    def box(self) -> Box:
        return bounds(self.marks, (*self.uppers, *self.lowers))


def stroke(*points: Flat, weight: float = BODY, dashed: bool = False) -> Stroke:
    return Stroke(points, weight, dashed)


def closed(*points: Flat, weight: float = BODY, dashed: bool = False) -> Stroke:
    return Stroke((*points, points[0]), weight, dashed)


def rectangle(left: float, low: float, right: float, high: float, weight: float = BODY) -> Stroke:
    return closed((left, low), (right, low), (right, high), (left, high), weight=weight)


def ring(at: Flat, radius: float, weight: float = BODY) -> Stroke:
    turns = (n * math.pi / 16 for n in range(33))
    return Stroke(
        tuple((at[0] + radius * math.cos(turn), at[1] + radius * math.sin(turn)) for turn in turns), weight
    )


def spread(count: int, spacing: float = SPACING) -> tuple[float, ...]:
    """So many places across, about the middle."""
    return tuple((n - (count - 1) / 2) * spacing for n in range(count))


def moved(mark: Mark, by: Flat) -> Mark:
    """A mark moved across and up."""
    if isinstance(mark, Stroke):
        return replace(mark, points=tuple((x + by[0], y + by[1]) for x, y in mark.points))
    return replace(mark, at=(mark.at[0] + by[0], mark.at[1] + by[1]))


def mirrored(mark: Mark) -> Mark:
    """A mark seen in a mirror, left for right."""
    if isinstance(mark, Stroke):
        return replace(mark, points=tuple((-x, y) for x, y in mark.points))
    return replace(mark, at=(-mark.at[0], mark.at[1]))


def scaled(mark: Mark, by: float) -> Mark:
    """A mark made larger or smaller, its letters and weights with it; rounded for the page."""
    if isinstance(mark, Stroke):
        points = tuple((round(x * by, 2), round(y * by, 2)) for x, y in mark.points)
        return replace(mark, points=points, weight=round(mark.weight * by, 2))
    at = (round(mark.at[0] * by, 2), round(mark.at[1] * by, 2))
    if isinstance(mark, Dot):
        return replace(mark, at=at, radius=round(mark.radius * by, 2))
    return replace(mark, at=at, size=round(mark.size * by, 2))


def box_round(mark: Mark) -> Box:
    """The room that a mark takes."""
    if isinstance(mark, Label):
        return box_of(mark)
    points = mark.points if isinstance(mark, Stroke) else (mark.at,)
    half = mark.weight / 2 if isinstance(mark, Stroke) else mark.radius
    across, upward = [x for x, _ in points], [y for _, y in points]
    return Box(min(across), min(upward), max(across), max(upward)).grown(half)


def bounds(marks: tuple[Mark, ...], points: tuple[Flat, ...] = ()) -> Box:
    """The room that marks take together."""
    boxes = [box_round(mark) for mark in marks] + [Box(x, y, x, y) for x, y in points]
    return Box(
        min(box.left for box in boxes),
        min(box.low for box in boxes),
        max(box.right for box in boxes),
        max(box.high for box in boxes),
    )
