"""Declared bodies as plain solids, in the middle of their ranges."""

from __future__ import annotations

from math import hypot
from typing import TYPE_CHECKING, assert_never

from firmpedal.lay import near
from firmpedal.model.shapes import Ball, Bar, Box, Disc
from firmpedal.units import from_unit

if TYPE_CHECKING:
    from firmpedal.model.shapes import Sheet
    from firmpedal.model.space import Position
    from firmpedal.quantity import Value

    KnownBody = Box | Ball | Bar | Disc

ENDLESS = from_unit(100, "ft")  # how far a panel is taken to reach where the file does not say


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


def corners_of(body: KnownBody) -> tuple[Position, ...]:
    """The declared points of a body."""
    match body:
        case Box(low, high):
            return (low, high)
        case Ball(centre, _) | Disc(centre, _, _, _):
            return (centre,)
        case Bar(start, finish, _):
            return (start, finish)
        case _:
            assert_never(body)


def sizes_of(body: KnownBody) -> tuple[Value, ...]:
    """The declared sizes of a body: its radius first, then the thickness of a disc."""
    match body:
        case Box():
            return ()
        case Ball(_, radius) | Bar(_, _, radius):
            return (radius,)
        case Disc(_, _, radius, thickness):
            return (radius, thickness)
        case _:
            assert_never(body)


def point_off(position: Position) -> float:
    """How far a point with ranges can be from its middle."""
    return hypot(*map(half_range, position.coordinates))


def body_off(body: KnownBody) -> float:
    """How far the surface of a body can be from where its middle figures put it."""
    radius, *others = (*map(half_range, sizes_of(body)), 0.0)
    return max(map(point_off, corners_of(body))) + hypot(radius, *(half / 2 for half in others))


def half_range(value: Value) -> float:
    """How far a figure can be from the middle of its range."""
    return (value.high - value.low) / 2


def reach_of(sheet: Sheet, offset: float, half: float) -> list[tuple[float, float]]:
    """How far a panel reaches along each axis, in the middle of its ranges, with half a thickness [m]."""
    pairs = [(-ENDLESS, ENDLESS)] * 3
    if sheet.within is not None:
        corners = zip(sheet.within.low.point, sheet.within.high.point, strict=True)
        pairs = [(min(pair), max(pair)) for pair in corners]
    pairs[sheet.axis] = (offset - half, offset + half)
    return pairs
