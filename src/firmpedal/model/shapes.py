"""Shapes in the aircraft: where a zone, a panel or a thing to stay clear of is."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from firmpedal.model.space import Direction, Position
    from firmpedal.quantity import Missing, Value


@dataclass(frozen=True, slots=True)
class Box:
    low: Position
    high: Position


@dataclass(frozen=True, slots=True)
class Ball:
    centre: Position
    radius: Value


@dataclass(frozen=True, slots=True)
class HalfSpace:
    """Everything beyond a plane across one axis (0 aft, 1 right, 2 up), on its + or - side."""

    axis: int
    sign: int
    offset: Value


@dataclass(frozen=True, slots=True)
class Stretch:
    """A length along a line, from and to so far from its first end."""

    line: str
    start: Value
    finish: Value


@dataclass(frozen=True, slots=True)
class Bar:
    """Everything within a radius of the straight between two points: a rod, a tube, a rounded leg."""

    start: Position
    finish: Position
    radius: Value


@dataclass(frozen=True, slots=True)
class Disc:
    """A flat round thing: a brake disc, a tyre, a pulley."""

    centre: Position
    axis: Direction
    radius: Value
    thickness: Value


@dataclass(frozen=True, slots=True)
class Sheet:
    """A flat panel across one axis (0 aft, 1 right, 2 up), as far as `within` reaches, else endless."""

    axis: int
    offset: Value
    within: Box | None = None


@dataclass(frozen=True, slots=True)
class UnknownShape:
    missing: tuple[Missing, ...]


Shape = Box | Ball | HalfSpace | Stretch | UnknownShape
Body = Box | Ball | Bar | Disc | UnknownShape
