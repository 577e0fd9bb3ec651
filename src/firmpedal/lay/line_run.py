"""Where one line runs, and nothing else of it: what is found of that stays when only its clamps change."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from firmpedal.hashing import HashKept, first_of_equals, hash_kept

if TYPE_CHECKING:
    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.shape import Centreline, Point
    from firmpedal.model.space import Position
    from firmpedal.model.stock import LineKind
    from firmpedal.quantity import Value


@hash_kept
@dataclass(frozen=True, slots=True)
class LineRun(HashKept):
    """A line as its surroundings see it; `radius` and `centreline` are those of a tube that can be bent."""

    name: str
    place: str
    kind: LineKind
    outside_diameter: Value
    points: tuple[Position, ...]
    radius: Value | None
    centreline: Centreline | None

    @property
    def path(self) -> tuple[Point, ...] | None:
        """The corner points as plain numbers; None while one is unknown."""
        return _path_of(self)


@lru_cache(maxsize=4096)  # every nut of every line asks
def _path_of(run: LineRun) -> tuple[Point, ...] | None:
    return tuple(point.point for point in run.points) if all(p.known for p in run.points) else None


@lru_cache(maxsize=4096)
def run_of(line: LaidLine) -> LineRun:
    """What the surroundings see of a line."""
    bent = line.tube if line.tube and line.tube.centreline else None
    radius, centreline = (bent.radius, bent.centreline) if bent else (None, None)
    outside = line.stock.outside_diameter
    return first_of_equals(
        LineRun(line.name, line.place, line.kind, outside, line.points, radius, centreline)
    )
