"""A parking valve: one shut-off valve for each way, worked by one lever."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.sheet import Dot
from firmpedal.report.symbols.shape import PIPE, THIN, Symbol, closed, spread, stroke

if TYPE_CHECKING:
    from firmpedal.report.sheet import Mark

HALF_WIDTH, HALF_HEIGHT, FRAME = 7.5, 11.0, 18.0
WAY_SPACING = 46.0


def parking_valve(ways: int) -> Symbol:
    """Draw its ways side by side in one frame; each takes fluid in above and lets it out below."""
    across = spread(ways, WAY_SPACING)
    left, right = across[0] - 16, across[-1] + 16
    bodies = [
        closed(*((x + u * HALF_WIDTH, v * HALF_HEIGHT) for u, v in ((-1, 1), (1, 1), (-1, -1), (1, -1))))
        for x in across
    ]
    pipes = [
        stroke((x, sign * HALF_HEIGHT), (x, sign * FRAME), weight=PIPE) for x in across for sign in (1, -1)
    ]
    frame = closed((left, -FRAME), (right, -FRAME), (right, FRAME), (left, FRAME), weight=THIN, dashed=True)
    lever = [stroke((across[0], 0), (right + 8, 0)), stroke((right + 8, 0), (right + 16, 11))]
    marks: tuple[Mark, ...] = (*bodies, *pipes, frame, *lever, Dot((right + 16, 11), 2.2))
    return Symbol(marks, tuple((x, FRAME) for x in across), tuple((x, -FRAME) for x in across))
