"""A body of a joint where it stands, and what has to be measured where nobody can tell."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from firmpedal.lay.shape import Point
    from firmpedal.model.part import Part
    from firmpedal.quantity import Value


@dataclass(frozen=True, slots=True)
class Placed:
    """A body along its axes: paths of two points or more [m], and the lengths that decided them.

    `either` says of which two places both are given, in one word or two, where the file leaves it open.
    """

    part: Part
    paths: tuple[tuple[Point, ...], ...]
    figures: tuple[Value, ...] = ()
    either: str = ""


@dataclass(frozen=True, slots=True)
class Unplaced:
    """A body whose place is not known: why, and what to measure or write down."""

    part: Part
    why: str
    measure: str


Standing = Placed | Unplaced
