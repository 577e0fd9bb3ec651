"""A large clock face for the turn before a bend, to cut out and slip over the tube. In points, y up."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from firmpedal.report.marks import LETTERS, MILLIMETRE, bounds, row, text
from firmpedal.report.sheet import Mark, Stroke

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.report.views import Flat

RIM = 23 * MILLIMETRE
HEAD = 15.0
LINE = 12.0
BESIDE_HAND = math.radians(11)  # an hour nearer to the hand than this is not written


def circle(at: Flat, radius: float, weight: float) -> Stroke:
    """A circle as a closed line whose corners stand so that its middle line has the true radius."""
    steps = 180
    corner = radius / math.sqrt(math.cos(math.pi / steps))
    turns = (n * math.tau / steps for n in range(steps + 1))
    return Stroke(tuple((at[0] + corner * math.sin(t), at[1] + corner * math.cos(t)) for t in turns), weight)


def clock_face(rotation: float, outside_diameter: float, words: tuple[str, ...]) -> tuple[Mark, ...]:
    """Draw a face around the origin: the hole for the tube, the hours, the hand at its true angle.

    Args:
        rotation: Of the plane of bend, clockwise as one looks at the face [rad].
        outside_diameter: Of the tube, in points.
        words: The first stands over the face, the others under it.
    """
    hole = outside_diameter / 2
    hand = Stroke((_on(hole + 2, rotation), _on(RIM, rotation)), 3.2)
    marks = (
        circle((0.0, 0.0), RIM, 0.8),
        circle((0.0, 0.0), hole, 0.5),
        Stroke(((-2.0, 0.0), (2.0, 0.0)), 0.4),
        Stroke(((0.0, -2.0), (0.0, 2.0)), 0.4),
        *_hours(rotation),
        hand,
        Stroke((_on(hole + 2, 0.0), _on(RIM - 8 * MILLIMETRE, 0.0)), 1.2, dashed=True),
        Stroke((_on(hole, slit(rotation)), _on(RIM, slit(rotation))), 0.8, dashed=True),
        *row(words[0], (0.0, RIM + 11), HEAD, bold=True),
        *(mark for n, line in enumerate(words[1:]) for mark in row(line, (0.0, -RIM - 8 - n * LINE))),
    )
    box = bounds(marks).grown(3.0)
    corners = ((box.left, box.low), (box.right, box.low), (box.right, box.high), (box.left, box.high))
    return (*marks, Stroke((*corners, corners[0]), 0.3))


def slit(rotation: float) -> float:
    """Where the face is cut open: on the half hour that is farthest from the hand and from twelve."""
    halves = (math.pi / 12 + n * math.pi / 6 for n in range(12))
    return max(halves, key=lambda turn: round(min(_apart(turn, rotation), _apart(turn, 0.0)), 6))


def _apart(one: float, other: float) -> float:
    return abs(math.remainder(one - other, math.tau))


def _hours(rotation: float) -> Iterator[Mark]:
    for minute in range(60):
        long = 3.2 if minute % 15 == 0 else 2.4 if minute % 5 == 0 else 1.2
        turn = minute * math.pi / 30
        yield Stroke((_on(RIM - long * MILLIMETRE, turn), _on(RIM, turn)), 0.8 if minute % 5 == 0 else 0.35)
    for hour in range(1, 13):
        if _apart(hour * math.pi / 6, rotation) < BESIDE_HAND:
            continue
        yield text(str(hour), _on(RIM - 5.6 * MILLIMETRE, hour * math.pi / 6), LETTERS)


def _on(reach: float, clockwise: float) -> Flat:
    """A point on the face, by its angle from twelve o'clock."""
    return (reach * math.sin(clockwise), reach * math.cos(clockwise))
