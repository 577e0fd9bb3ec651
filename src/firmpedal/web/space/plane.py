"""Moving a corner in a picture: in which plane, and to which mark of the tape."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from firmpedal.model.space import Point
    from firmpedal.project.corners import Tape


def facing(view: Point) -> int:
    """The axis (0 aft, 1 right, 2 up) that is looked along most: what is dragged stays square to it.

    Args:
        view: The way somebody looks, of any length; all zero counts as looking down.
    """
    return max(reversed(range(3)), key=lambda axis: abs(view[axis]))


def dragged(now: Point, by: Point, view: Point, tape: Tape, *, single: bool = False) -> Point:
    """Where a corner comes to lie that was dragged.

    Args:
        now: Where it was [m].
        by: How far it was dragged [m].
        view: The way that was looked meanwhile.
        tape: The marks it is put on, along each axis that it moves along.
        single: Move it along one axis only, the one along which it was dragged most.
    """
    across = facing(view)
    axes = [axis for axis in range(3) if axis != across]
    if single:
        axes = [max(axes, key=lambda axis: abs(by[axis]))]
    far = [axis for axis in axes if abs(by[axis]) >= tape.mark / 2]
    return _with(now, {axis: tape.snapped(now[axis] + by[axis]) for axis in far})


def stepped(now: Point, axis: int, by: float) -> Point:
    """Where a corner comes to lie after a step along one axis [m], before it is put on a mark."""
    return _with(now, {axis: now[axis] + by})


def middle(one: Point, other: Point) -> Point:
    """Halfway between two corners."""
    return (one[0] + other[0]) / 2, (one[1] + other[1]) / 2, (one[2] + other[2]) / 2


def _with(point: Point, others: dict[int, float]) -> Point:
    return others.get(0, point[0]), others.get(1, point[1]), others.get(2, point[2])
