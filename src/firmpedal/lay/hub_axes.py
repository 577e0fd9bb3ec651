"""The axes of a body between the seats of its lines: round the corner of an elbow, to the middle of a tee."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import combinations
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.lay.vectors import along, foot, less, unit

if TYPE_CHECKING:
    from firmpedal.lay.shape import Point
    from firmpedal.model.circuit import Bulkhead
    from firmpedal.model.part import Part
    from firmpedal.model.space import Position

EITHER_WAY = "either_way"
SAME_ANGLE = math.radians(10)  # nobody measures directions more closely


@dataclass(frozen=True, slots=True)
class HubEnd:
    """One line's end at a hub: where it sits, and which way the line leaves, None if not known."""

    line: str
    end: str
    position: Position
    away: Point | None

    @property
    def seat(self) -> Point | None:
        return self.position.point if self.position.known else None


@dataclass(frozen=True, slots=True)
class Course:
    """The axes of a body from seat to seat; with two paths it lies along one of them, nobody knows which."""

    paths: tuple[tuple[Point, ...], ...]
    either: str = ""


def elbow_course(bulkhead: Bulkhead, ends: tuple[HubEnd, ...], elbow: Part) -> Course | tuple[str, str]:
    """Round the corner of an elbow in a panel or a free one, or why not and what to measure.

    In a panel one leg stands on the axis through the hole. Where the hole is not known either may, and
    both ways are given. A free elbow has its corner where its two lines point.
    """
    one, other = ends
    measure = f"where the middle of the hole of {bulkhead.name} is, and which way the panel looks"
    if one.seat is None or other.seat is None:
        return "where its ends sit is not known", f"the seats of both sides of {bulkhead.name}"
    normal, turn = bulkhead.normal.vector, elbow.turn or 0.0
    if normal is None:
        return _as_lines_leave(one, other, turn, measure)
    seats = (one.seat, other.seat)
    courses = [_round(straight, aside, normal, turn) for straight, aside in (seats, seats[::-1])]
    if bulkhead.at.known:
        beside = [math.dist(seat, foot(seat, bulkhead.at.point, normal)) for seat in seats]
        courses = courses[:1] if beside[0] < beside[1] else courses[1:]
    paths = tuple(path for path in courses if path is not None)
    if not paths:
        return f"its seats do not lie as an elbow of {math.degrees(turn):g} degrees has them", measure
    return Course(paths, EITHER_WAY if len(paths) > 1 else "")


def _round(straight: Point, aside: Point, normal: Point, turn: float) -> tuple[Point, ...] | None:
    """From the seat on the axis to the corner, and out to the other one; None where no such elbow reaches."""
    below = foot(aside, straight, normal)
    way, off = unit(less(below, straight)), math.dist(aside, below)
    far = math.dist(straight, below) - off / math.tan(turn)
    return (straight, along(straight, way, far), aside) if far > 0 and off > 0 else None


def _as_lines_leave(one: HubEnd, other: HubEnd, turn: float, measure: str) -> Course | tuple[str, str]:
    """The corner where both lines, taken on beyond their ends, come nearest to each other."""
    if one.seat is None or other.seat is None or one.away is None or other.away is None:
        return "which way its legs point is not known", measure
    ways = np.array([one.away, other.away])
    between = math.pi - math.acos(max(-1.0, min(1.0, float(ways[0] @ ways[1]))))
    if abs(between - turn) > SAME_ANGLE:
        return f"its lines do not leave it as an elbow of {math.degrees(turn):g} degrees lets them", measure
    across = np.subtract(other.seat, one.seat)
    backs = np.linalg.lstsq(np.column_stack([-ways[0], ways[1]]), across, rcond=None)[0]
    far, farther = (float(length) for length in backs)
    if far <= 0 or farther <= 0:
        return "its lines point past each other", measure
    first, second = along(one.seat, one.away, -far), along(other.seat, other.away, -farther)
    x, y, z = ((a + b) / 2 for a, b in zip(first, second, strict=True))
    return Course(((one.seat, (x, y, z), other.seat),))


def tee_courses(ends: tuple[HubEnd, ...]) -> tuple[tuple[Point, ...], ...]:
    """From each seat to the middle of a tee or cross, square to the run; none while a seat is not known.

    The run lies between the two seats that are farthest apart: so it is as long as no leg is shorter than
    half another one.
    """
    seats = [end.seat for end in ends if end.seat is not None]
    if len(seats) < len(ends) or len(set(seats)) < len(seats):
        return ()
    one, other = max(combinations(seats, 2), key=lambda pair: math.dist(*pair))
    axis = unit(less(other, one))
    feet = [foot(seat, one, axis) for seat in seats if seat not in (one, other)]
    x, y, z = (sum(numbers) / len(feet) for numbers in zip(*feet, strict=True))
    return tuple((seat, (x, y, z)) for seat in seats)
