"""The small marks: the number of a joint, a warning, a span that moves, a plug and an open end."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from firmpedal.report.placing import LETTER_HEIGHT, LETTER_WIDTH
from firmpedal.report.sheet import Dot, Label, Stroke
from firmpedal.report.symbols.shape import BODY, PIPE, closed, ring, stroke

if TYPE_CHECKING:
    from firmpedal.report.placing import Flat
    from firmpedal.report.sheet import Mark

LETTERS = 10.5
TRIANGLE, ARROW = 12.0, 18.0


def number_radius(largest: int) -> float:
    """The radius of the ring around numbers up to the largest one: all rings of a drawing are alike."""
    wide = LETTER_WIDTH * LETTERS * len(str(largest)) / 2
    return round(math.hypot(wide, LETTER_HEIGHT * LETTERS / 2) + 0.8, 2)


def joint_number(number: int, at: Flat, radius: float) -> tuple[Mark, ...]:
    """A joint's number in a ring."""
    return (ring(at, radius, 0.9), Label(str(number), at, LETTERS))


def warning(left: float, at: float) -> tuple[Mark, ...]:
    """A triangle with a mark of exclamation, its left corner at `left`, its middle at height `at`."""
    middle, low, high = left + TRIANGLE / 2, at - TRIANGLE * 0.42, at + TRIANGLE * 0.4
    return (
        closed((left, low), (left + TRIANGLE, low), (middle, high), weight=1.3),
        stroke((middle, high - 4.2), (middle, low + 4.2), weight=1.2),
        Dot((middle, low + 2.2), 0.8),
    )


def moving(left: float, at: float) -> tuple[Mark, ...]:
    """An arrow with two heads: one end moves against the other."""
    return (Stroke(((left, at), (left + ARROW, at)), BODY, arrows=True),)


def plug(at: Flat) -> tuple[Mark, ...]:
    """The cross at the end of a pipe that is plugged."""
    x, y = at
    return (
        stroke((x - 3.5, y - 3.5), (x + 3.5, y + 3.5), weight=PIPE),
        stroke((x - 3.5, y + 3.5), (x + 3.5, y - 3.5), weight=PIPE),
    )


def open_end(at: Flat) -> tuple[Mark, ...]:
    """A small ring: nothing comes here yet."""
    return (ring(at, 3.0),)
