"""Declared bodies as plain solids, in the middle of their ranges."""

from __future__ import annotations

from typing import TYPE_CHECKING, assert_never

from firmpedal.lay import near
from firmpedal.model.shapes import Ball, Bar, Box, Disc

if TYPE_CHECKING:
    KnownBody = Box | Ball | Bar | Disc


def solid_of(body: KnownBody) -> near.Solid:
    """Give a declared body its plain numbers."""
    match body:
        case Box(low, high):
            pairs = [sorted(pair) for pair in zip(low.point, high.point, strict=True)]
            return near.Box((pairs[0][0], pairs[1][0], pairs[2][0]), (pairs[0][1], pairs[1][1], pairs[2][1]))
        case Ball(centre, radius):
            return near.Bar(centre.point, centre.point, radius.middle)
        case Bar(start, finish, radius):
            return near.Bar(start.point, finish.point, radius.middle)
        case Disc(centre, axis, radius, thickness):
            return near.Disc(centre.point, axis.vector or (0, 0, 0), radius.middle, thickness.middle)
        case _:
            assert_never(body)
