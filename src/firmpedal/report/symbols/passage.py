"""Where lines meet: a fitting through a plate, a union, or a tee with its dots."""

from __future__ import annotations

from firmpedal.report.sheet import Dot
from firmpedal.report.symbols.shape import PIPE, PLATE, THIN, Symbol, rectangle, spread, stroke

HALF = 8.0


def through_plate() -> Symbol:
    """Draw a plate seen on its edge with a fitting through it."""
    marks = (
        stroke((-27, 0), (-6.5, 0), weight=PLATE),
        stroke((6.5, 0), (27, 0), weight=PLATE),
        rectangle(-5, -HALF, 5, HALF),
        stroke((-7.5, 3.2), (7.5, 3.2)),
        stroke((-7.5, -3.2), (7.5, -3.2)),
    )
    return Symbol(marks, ((0, HALF),), ((0, -HALF),))


def union() -> Symbol:
    """Draw a fitting between two lines that no plate carries."""
    marks = (rectangle(-5, -HALF, 5, HALF), stroke((-5, 0), (5, 0)))
    return Symbol(marks, ((0, HALF),), ((0, -HALF),))


def meeting() -> Symbol:
    """Draw two line ends that are brought together with nothing declared between."""
    marks = (stroke((-7, 1.8), (7, 1.8)), stroke((-7, -1.8), (7, -1.8)), stroke((0, -5), (0, 5), weight=THIN))
    return Symbol(marks, ((0, 1.8),), ((0, -1.8),))


def tee(uppers: int, lowers: int) -> Symbol:
    """Draw a junction with a dot wherever a line leaves it."""
    above = tuple((x, HALF) for x in spread(uppers))
    below = tuple((x, -HALF) for x in spread(lowers))
    across = sorted({x for x, _ in (*above, *below)} | {0.0})
    bar = [stroke((across[0], 0), (across[-1], 0), weight=PIPE)] if len(across) > 1 else []
    legs = [stroke((x, 0), (x, y), weight=PIPE) for x, y in (*above, *below)]
    return Symbol(
        (*bar, *legs, *(Dot((x, 0), 2.8) for x, _ in dict.fromkeys((*above, *below)))), above, below
    )
