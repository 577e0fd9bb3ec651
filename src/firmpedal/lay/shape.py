"""What a tube's corner points and its bend data are, as frozen numbers in one unit and radians."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from itertools import accumulate, chain, zip_longest

Point = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Bend:
    """One bend in the order of the feed; `corner` is its index in the points that were given.

    `angle` is the turn, 0 for straight. `rotation` is the turn of the plane of bend since the bend
    before, by the right hand with the thumb along the feed, in (-pi, pi] and 0 for the first bend.
    """

    corner: int
    angle: float
    rotation: float
    radius: float
    setback: float

    @property
    def arc(self) -> float:
        return self.radius * self.angle


@dataclass(frozen=True, slots=True)
class Centreline:
    """A centreline that can be bent: `straights` run between tangent points, one more than bends.

    `corners` are the points without those in the middle of a straight. `tangent_points` are the
    start, where each bend begins and ends, and the end.
    """

    corners: tuple[Point, ...]
    straights: tuple[float, ...]
    bends: tuple[Bend, ...]
    tangent_points: tuple[Point, ...]
    developed_length: float
    polyline_length: float

    @property
    def arcs(self) -> tuple[float, ...]:
        return tuple(bend.arc for bend in self.bends)

    @property
    def tangent_stations(self) -> tuple[float, ...]:
        """Developed length from the start to each tangent point."""
        lengths = chain.from_iterable(zip_longest(self.straights, self.arcs))
        return (0.0, *accumulate(length for length in lengths if length is not None))


class ImpossibleKind(StrEnum):
    """Why points are no tube."""

    TOO_FEW = "too few points"
    COINCIDE = "points coincide"
    DOUBLES_BACK = "line doubles back on itself"
    NO_ROOM = "no room between bends"


@dataclass(frozen=True, slots=True)
class Impossible:
    """Why points are no tube: the first reason along the line, and in `also` the others like it.

    `corner` is an index in the given points. Where a straight is to blame, `other` is the index of
    its far end and `amount` its negative length. `words` count the points from 1 and hold no
    lengths, because nothing here knows a unit.
    """

    kind: ImpossibleKind
    corner: int
    amount: float | None
    words: str
    other: int | None = None
    also: tuple[Impossible, ...] = ()
