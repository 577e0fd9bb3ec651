"""Where the next bend of a tube goes, as a clock face tells it.

The face is seen from the first end, looking along the tube. Twelve o'clock is the side where the
leg before the last bend lies. The hand points to the side where the next bend goes. So 12:00 bends
on the same side, making a U, and 6:00 bends to the other side, making a Z.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.report.lengths import degrees
from firmpedal.report.sheet import Dot, Drawing, Label, Mark, Stroke

if TYPE_CHECKING:
    from collections.abc import Sequence

    from firmpedal.quantity import Value

FACE = 24.0  # radius of a face, points
WIDTH = 490.0
TALL = 74.0
MOST_IN_A_ROW = 3
MINUTES = 5  # a clock is read to this many minutes, which is 2.5 degrees
LEAST_TURN = math.radians(0.5)  # less than a bender can be set to
RINGS = 20  # numbers in a ring that the type has


def ring(number: int) -> str:
    """A number in a ring, as it stands on the drawing and in the table."""
    return chr(0x2460 + number - 1) if number <= RINGS else f"({number})"


def clock_time(rotation: float) -> str:
    """The time to which the hand points: `4:20` for 130 degrees clockwise."""
    minutes = round(math.degrees(rotation) * 2 / MINUTES) * MINUTES % 720
    return f"{minutes // 60 or 12}:{minutes % 60:02d}"


def turn_words(rotation: Value) -> str:
    """A turn in words: which way round, seen from the first end."""
    if not rotation.known:
        return "unknown"
    if abs(rotation.middle) < LEAST_TURN:
        return "no turn"
    if abs(rotation.middle) > math.pi - LEAST_TURN:
        return "half a turn"
    return "clockwise" if rotation.middle > 0 else "anticlockwise"


def turn_size(rotation: Value) -> str:
    """A turn as one reads it off, with the way round in words: `129.5 degrees clockwise`, `half a turn`."""
    words = turn_words(rotation)
    if rotation.span is None or not words.endswith("clockwise"):
        return words
    low, high = rotation.span
    if high <= 0:
        rotation = replace(rotation, span=(-high, -low))
    return f"{degrees(rotation)} {words}"  # one that may go either way keeps its signs


def faces(rotations: Sequence[tuple[int, Value]]) -> Drawing:
    """Draw a clock face for each bend: its number, and the turn before it."""
    rows = math.ceil(len(rotations) / MOST_IN_A_ROW)
    marks: list[Mark] = []
    for place, (number, rotation) in enumerate(rotations):
        row, column = divmod(place, MOST_IN_A_ROW)
        in_row = min(MOST_IN_A_ROW, len(rotations) - row * MOST_IN_A_ROW)
        middle = WIDTH * (column + 0.5) / in_row
        marks += _face((middle, TALL * (rows - row) - FACE - 6), number, rotation)
    return Drawing((WIDTH, TALL * rows), tuple(marks))


def _face(at: tuple[float, float], number: int, rotation: Value) -> list[Mark]:
    x, y = at
    circle = tuple(_on(at, FACE, n * math.pi / 32) for n in range(65))
    marks: list[Mark] = [Stroke(circle, 1.2)]
    marks += [
        Stroke((_on(at, FACE - (7 if n % 3 == 0 else 4), n * math.pi / 6), _on(at, FACE, n * math.pi / 6)), 1)
        for n in range(12)
    ]
    marks += [Stroke((_on(at, 2, 0), _on(at, FACE - 9, 0)), 1.2, dashed=True), Dot(at, 3)]
    marks.append(Stroke((at, _on(at, FACE - 3, rotation.middle)), 3.2))
    marks.append(Label(ring(number), (round(x - FACE - 16, 2), y), 17, bold=True))
    marks.append(Label(clock_time(rotation.middle), (round(x + FACE + 8, 2), y), 15, "start", bold=True))
    return [*marks, Label(turn_size(rotation), (round(x, 2), round(y - FACE - 11, 2)), 10.5)]


def _on(at: tuple[float, float], radius: float, clockwise: float) -> tuple[float, float]:
    """A point on a face, by its angle from twelve o'clock."""
    x = at[0] + radius * math.sin(clockwise)
    return (round(x, 2), round(at[1] + radius * math.cos(clockwise), 2))
