"""Putting words beside a drawing without covering it: each label at the cheapest free place."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from itertools import product

from firmpedal.report.sheet import Label, Mark, Stroke

Flat = tuple[float, float]
Segment = tuple[Flat, Flat]

LETTER_WIDTH = 0.602  # of the size, in the drawing's one-width type
LETTER_HEIGHT = 0.95
DIRECTIONS = 16
DISTANCES = (7.0, 12.0, 18.0, 26.0, 36.0, 48.0, 62.0)
LEADER_FROM = 14.0  # a label farther away than this gets a thin line to its point
MARGIN = 2.0


@dataclass(frozen=True, slots=True)
class Box:
    left: float
    low: float
    right: float
    high: float

    def grown(self, by: float) -> Box:
        return Box(self.left - by, self.low - by, self.right + by, self.high + by)

    def meets(self, other: Box) -> bool:
        apart = self.right <= other.left or other.right <= self.left
        return not (apart or self.high <= other.low or other.high <= self.low)

    def inside(self, other: Box) -> bool:
        wide = other.left <= self.left and self.right <= other.right
        return wide and other.low <= self.low and self.high <= other.high

    def cuts(self, segment: Segment) -> bool:
        """Whether a straight piece passes through the box."""
        return self.part_of(segment) is not None

    def part_of(self, segment: Segment) -> tuple[float, float] | None:
        """From which share of a straight piece to which it lies in the box (Liang and Barsky's clipping)."""
        (x, y), (x1, y1) = segment
        first, last = 0.0, 1.0
        for step, low, high in (
            (x1 - x, self.left - x, self.right - x),
            (y1 - y, self.low - y, self.high - y),
        ):
            if abs(step) < 1e-12:
                if low > 0 or high < 0:
                    return None
                continue
            enter, leave = sorted((low / step, high / step))
            first, last = max(first, enter), min(last, leave)
        return (first, last) if first < last else None

    def nearest(self, point: Flat) -> Flat:
        return (min(max(point[0], self.left), self.right), min(max(point[1], self.low), self.high))


def box_of(label: Label) -> Box:
    """The room a label takes, for a label that stands at its middle."""
    wide = LETTER_WIDTH * label.size * len(label.text) / 2
    tall = LETTER_HEIGHT * label.size / 2
    x, y = label.at
    return Box(x - wide, y - tall, x + wide, y + tall)


@dataclass
class Placer:
    """A drawing in the making: what is taken already, and the room there is.

    `thick` is how far what is drawn reaches beside its middle, beyond a thin line.
    """

    room: Box
    segments: list[Segment] = field(default_factory=list)
    boxes: list[Box] = field(default_factory=list)
    thick: float = 0.0

    def block(self, label: Label, around: float = 0.0) -> Label:
        """Keep other labels away from one that has its place, with some room around it."""
        self.boxes.append(box_of(label).grown(around))
        return label

    def place(self, text: str, at: Flat, towards: float, size: float, *, bold: bool = False) -> list[Mark]:
        """Put a label near a point, best in the direction `towards` or opposite to it."""
        angles = [towards + 2 * math.pi * n / DIRECTIONS for n in range(DIRECTIONS)]
        candidates = [
            self._candidate(text, at, angle, distance + self.thick, size, bold=bold)
            for distance, angle in product(DISTANCES, angles)
        ]
        costs = [
            self._cost(label, at, angle - towards, distance)
            for label, (distance, angle) in zip(candidates, product(DISTANCES, angles), strict=True)
        ]
        label = candidates[min(range(len(costs)), key=costs.__getitem__)]
        box = box_of(label)
        self.boxes.append(box)
        end = box.grown(1).nearest(at)
        if math.dist(at, end) < LEADER_FROM + self.thick:
            return [label]
        self.segments.append((at, end))
        return [Stroke((_rounded(at), _rounded(end)), 0.4), label]

    @staticmethod
    def _candidate(text: str, at: Flat, angle: float, distance: float, size: float, *, bold: bool) -> Label:
        wide, tall = LETTER_WIDTH * size * len(text) / 2, LETTER_HEIGHT * size / 2
        x, y = math.cos(angle), math.sin(angle)
        reach = distance + abs(x) * wide + abs(y) * tall
        return Label(text, _rounded((at[0] + reach * x, at[1] + reach * y)), size, "middle", 0.0, bold)

    def _cost(self, label: Label, at: Flat, turned: float, distance: float) -> float:
        """Small for near places square to the line; large for covering anything."""
        box = box_of(label).grown(MARGIN)
        cost = distance + 10 * (1 - abs(math.cos(turned))) + 1.5 * (1 - math.cos(turned))
        beside = box.grown(self.thick)
        cost += 400 * sum(beside.cuts(segment) for segment in self.segments)
        cost += 1000 * sum(box.meets(other) for other in self.boxes)
        cost += 0.0 if box.inside(self.room) else 5000.0
        leader = (at, box.nearest(at))
        crossed = sum(other.cuts(leader) for other in self.boxes) if distance > LEADER_FROM else 0
        return round(cost + 300 * crossed, 6)


def _rounded(point: Flat) -> Flat:
    return (round(point[0], 2), round(point[1], 2))
