"""Movements with plain numbers: points brought from where they are in some settings to others."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from firmpedal.model.surroundings import Shift, Swing, UnknownMotion

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from numpy.typing import NDArray

    from firmpedal.model.space import Point
    from firmpedal.model.surroundings import Motion
    from firmpedal.quantity import Value

    Array = NDArray[np.float64]
    Positions = Sequence[Mapping[str, float | str]]  # of every state, in each of several settings


def moved(motions: tuple[Motion, ...], points: Array, before: Positions, after: Positions) -> Array:
    """Move points from where they are in some settings to where they are in others.

    Movements are taken with the middle of each range.

    Args:
        motions: What moves them, innermost first.
        points: Shape (k, n, 3), or (1, n, 3) where they are the same in each of k settings [m].
        before: The position of every state when the points are where they are given, of each setting or
            once for all.
        after: The positions of each setting to which they are brought, or once for all.

    Returns:
        Shape (k, n, 3), or (1, n, 3) where they are the same in each setting [m].
    """
    numbers = iter([value.middle for value in movers(motions)])
    return take_along(moves_of(motions, numbers), points, before, after)


def movers(motions: tuple[Motion, ...]) -> tuple[Value, ...]:
    """The numbers behind movements, in the order in which they are taken up again."""
    found: list[Value] = []
    for motion in motions:
        if isinstance(motion, Shift):
            found += motion.by.coordinates
        elif isinstance(motion, Swing):
            found += [*motion.about.coordinates, motion.angle]
    return tuple(found)


class Move(NamedTuple):
    """One movement with plain numbers: a vector, or a centre and an angle."""

    motion: Motion
    vector: Array
    angle: float

    def of(self, points: Array, now: Positions, way: int) -> Array:
        """Move points with the positions of the states, or back from there; all of shape (k, n, 3)."""
        if isinstance(self.motion, UnknownMotion):
            return points
        variable, setting = self.motion.variable, self.motion.setting
        values = [each[variable] for each in now]
        shares = way * np.array([float(value == setting) if setting else float(value) for value in values])
        if not shares.any():
            return points
        if isinstance(self.motion, Shift):
            moved: Array = points + shares[:, None, None] * self.vector
            return moved
        if self.motion.axis.vector is None:
            return points
        swung = self.vector + turned(points - self.vector, self.motion.axis.vector, shares * self.angle)
        return np.where(shares[:, None, None] == 0, points, swung)


def moves_of(motions: tuple[Motion, ...], numbers: Iterator[float]) -> list[Move]:
    """Give each movement its numbers, in the order of `movers`."""
    return [Move(motion, *_mover(motion, numbers)) for motion in motions]


def take_along(moves: list[Move], points: Array, before: Positions, after: Positions) -> Array:
    """Move points back from where they are in some settings, and on to others; see `moved`."""
    for move in reversed(moves):
        points = move.of(points, before, -1)
    for move in moves:
        points = move.of(points, after, 1)
    return points


def _mover(motion: Motion, numbers: Iterator[float]) -> tuple[Array, float]:
    if isinstance(motion, UnknownMotion):
        return np.zeros(3), 0.0
    return point_from(numbers), next(numbers) if isinstance(motion, Swing) else 0.0


def point_from(numbers: Iterator[float]) -> Array:
    """The next three numbers."""
    return np.array([next(numbers) for _ in range(3)])


def turned(vector: Array, axis: Array | Point, angle: float | Array) -> Array:
    """Turn a vector, or each row of several, about a unit axis by the right hand (Rodrigues).

    Args:
        vector: Shape (3,) or (n, 3); (k, n, 3) or (1, n, 3) for k angles [m].
        axis: A unit vector.
        angle: One, or several, shape (k,) [rad].
    """
    x, y, z = (float(part) for part in axis)
    across, still = np.sin(angle), np.cos(angle)
    over = 1 - still
    by_column = np.array(
        (
            (still + over * x * x, over * x * y + across * z, over * x * z - across * y),
            (over * x * y - across * z, still + over * y * y, over * y * z + across * x),
            (over * x * z + across * y, over * y * z - across * x, still + over * z * z),
        )
    )
    result: Array = vector @ (np.moveaxis(by_column, -1, 0) if by_column.ndim == 3 else by_column)
    return result
