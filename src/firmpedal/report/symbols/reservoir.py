"""A reservoir: a tank, open at the top where it is vented."""

from __future__ import annotations

from firmpedal.report.symbols.shape import SPACING, Symbol, spread, stroke

HALF_HEIGHT = 12.0


def reservoir(lowers: int, *, vented: bool = True) -> Symbol:
    """Draw a tank with so many pipes out of its floor, below the level of the fluid."""
    half = max(18.0, SPACING * (lowers - 1) / 2 + 14)
    wall = [(-half, HALF_HEIGHT), (-half, -HALF_HEIGHT), (half, -HALF_HEIGHT), (half, HALF_HEIGHT)]
    if not vented:
        wall.append((-half, HALF_HEIGHT))
    feet = tuple((x, -HALF_HEIGHT) for x in spread(lowers))
    return Symbol((stroke(*wall, weight=1.4),), (), feet)
