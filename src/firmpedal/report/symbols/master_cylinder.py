"""A master cylinder: a single-acting cylinder with spring return, worked by a pedal."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.symbols.shape import PIPE, Symbol, mirrored, rectangle, spread, stroke

if TYPE_CHECKING:
    from firmpedal.report.sheet import Stroke

HALF = 9.0
SPRING = tuple((-9.0 + 2.4 * n, 4.0 * (-1) ** n) for n in range(1, 8))
TANK_LOW = HALF + 6


def master_cylinder(
    uppers: int, lowers: int, *, own_reservoir: bool = False, pedal_right: bool = False
) -> Symbol:
    """Draw a cylinder whose inlet is on top of its chamber and its outlet below."""
    marks = (
        rectangle(-34, -HALF, 12, HALF),
        rectangle(-13, -HALF, -9, HALF),
        stroke((-9, 0), *SPRING, (12, 0), weight=0.8),
        stroke((-13, 0), (-46, 0)),
        stroke((-51.5, 11), (-42, -8), weight=PIPE),
        stroke((-46, -8), (-38, -8)),
        *(_tank(-4.0 if uppers else 0.0) if own_reservoir else ()),
    )
    aside = 8.0 if own_reservoir else 0.0  # an inlet beside the tank
    uppers_at = tuple((x + aside, HALF) for x in spread(uppers, 20))
    lowers_at = tuple((x, -HALF) for x in spread(lowers, 20))
    if pedal_right:
        uppers_at = tuple((-x, y) for x, y in uppers_at)
        return Symbol(tuple(mirrored(mark) for mark in marks), uppers_at, lowers_at)
    return Symbol(marks, uppers_at, lowers_at)


def _tank(at: float) -> tuple[Stroke, Stroke]:
    """A small vented tank on top of the chamber, narrow where an inlet is beside it."""
    half = 6.0 if at else 9.0
    high = TANK_LOW + 9
    return (
        stroke((at, HALF), (at, TANK_LOW)),
        stroke((at - half, high), (at - half, TANK_LOW), (at + half, TANK_LOW), (at + half, high)),
    )
