"""The room of a thing in a drawing in space: a rod, by name."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from firmpedal.lay.shape import Point

ESTIMATE = "_estimate"  # behind the name of a room of which a figure is no standard's


@dataclass(frozen=True, slots=True)
class Room:
    """A rod round a path of two points or more [m], and round `more` of them for a body with arms."""

    name: str
    path: tuple[Point, ...]
    radius: float
    more: tuple[tuple[Point, ...], ...] = ()

    @property
    def paths(self) -> tuple[tuple[Point, ...], ...]:
        return (self.path, *self.more)


Rooms = tuple[tuple[Room, ...], tuple[str, ...]]
