"""A caliper: a single-acting cylinder with spring return that presses a pad on the disc."""

from __future__ import annotations

from firmpedal.report.symbols.shape import PLATE, Symbol, mirrored, rectangle, spread, stroke

HALF = 8.5
SPRING = tuple((11.0 + 2.6 * n, 4.0 * (-1) ** n) for n in range(1, 7))


def caliper(uppers: int, lowers: int, *, disc_left: bool = False) -> Symbol:
    """Draw a caliper with its inlet on top; the disc stands to the right or to the left."""
    marks = (
        rectangle(-11, -HALF, 29, HALF),
        rectangle(7, -HALF, 11, HALF),
        stroke((11, 0), *SPRING, (29, 0), weight=0.8),
        stroke((11, 0), (36, 0)),
        stroke((37.5, -7.5), (37.5, 7.5), weight=PLATE),
        rectangle(41, -15, 44, 15),
    )
    uppers_at = tuple((x, HALF) for x in spread(uppers, 20))
    lowers_at = tuple((x, -HALF) for x in spread(lowers, 20))
    drawn = tuple(mirrored(mark) for mark in marks) if disc_left else marks
    return Symbol(drawn, uppers_at, lowers_at)
