"""Where lines and things are in one setting of the states, and what to measure before that is known."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from firmpedal.lay.movement import Carried, unmeasured
from firmpedal.lay.moves import moved
from firmpedal.lay.states import measured_in

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    from firmpedal.lay.states import Setting
    from firmpedal.model.surroundings import State
    from firmpedal.quantity import Missing

    Array = NDArray[np.float64]


def at_rest(carried: Carried, states: tuple[State, ...]) -> dict[str, float | str]:
    """The position of every state in which a thing was measured."""
    return {state.name: measured_in(state, carried.measured) for state in states}


def points_in(
    points: Array, carried: Carried, states: tuple[State, ...], settings: Sequence[Setting]
) -> Array:
    """Bring points of a thing from where they were measured to where they are in settings.

    Args:
        points: Shape (n, 3) [m].
        carried: The thing that they belong to.
        states: Every state that moves it, and others.
        settings: The states that are other than when it was measured, k of them.

    Returns:
        Shape (k, n, 3), or (1, n, 3) where nothing moves it [m].
    """
    rest = at_rest(carried, states)
    return moved(carried.motions, points[None], [rest], [{**rest, **dict(each)} for each in settings])


def with_shares(points: Array, stations: Array) -> tuple[Array, Array]:
    """The points of a line, and after what share of its length each of them lies."""
    return points, stations / stations[-1] if stations[-1] > 0 else np.zeros(len(stations))


def course_in(
    course: tuple[Array, Array],
    ends: tuple[Carried, Carried],
    states: tuple[State, ...],
    settings: Sequence[Setting],
) -> Array:
    """Bring a line to where it is in settings.

    Its points follow the end that they are nearer to, in the share of their distance along it; how a hose
    bows between its ends is another question.

    Args:
        course: Points of the line as measured, shape (n, 3) [m], and after what share of the line's length
            each of them lies, shape (n,).
        ends: Both ends with what carries them.
        states: Every state that moves one of them, and others.
        settings: The states that are other than when the ends were measured, k of them.

    Returns:
        Shape (k, n, 3), or (1, n, 3) where nothing moves it [m].
    """
    points, shares = course
    if not any(carried.motions for carried in ends):
        return points[None]
    share = shares[:, None]
    from_start, from_finish = (points_in(points, carried, states, settings) for carried in ends)
    there: Array = (1 - share) * from_start + share * from_finish
    return there


def unmeasured_in(carried: Carried, states: tuple[State, ...], setting: Setting) -> tuple[Missing, ...]:
    """Name the unknown movements that take a thing away in a setting: it is shown where it was measured."""
    return tuple(dict.fromkeys(unmeasured(carried, states, (setting,))))
