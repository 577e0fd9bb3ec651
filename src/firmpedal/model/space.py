"""Positions and directions in the aircraft: aft, right and up from the builder's datum."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.hashing import HashKept, hash_kept
from firmpedal.quantity import Mark, all_missing

if TYPE_CHECKING:
    from firmpedal.quantity import Missing, Value

Point = tuple[float, float, float]
AXIS_NAMES = ("aft", "right", "up")

SAME_ANGLE = math.radians(10)
"""Nobody measures directions more closely [rad]."""


@hash_kept
@dataclass(frozen=True, slots=True)
class Position(HashKept):
    """A point [aft, right, up]; each coordinate is a value with its story."""

    aft: Value
    right: Value
    up: Value
    place: str = ""

    @property
    def known(self) -> bool:
        return all(value.known for value in self.coordinates)

    @property
    def coordinates(self) -> tuple[Value, Value, Value]:
        return (self.aft, self.right, self.up)

    @property
    def point(self) -> Point:
        """The middle of the range of each coordinate [m]."""
        return (self.aft.middle, self.right.middle, self.up.middle)

    @property
    def missing(self) -> tuple[Missing, ...]:
        return all_missing(self.coordinates)


@dataclass(frozen=True, slots=True)
class NamedPoint:
    """A place with a name, from which chains can start."""

    name: str
    position: Position


@dataclass(frozen=True, slots=True)
class Direction:
    """A unit vector [aft, right, up], or unknown."""

    vector: Point | None
    place: str = ""
    mark: Mark = Mark.MEASURED
    missing: tuple[Missing, ...] = ()

    @property
    def known(self) -> bool:
        return self.vector is not None
