"""In which positions everything that moves is looked at."""

from __future__ import annotations

from itertools import product
from math import prod
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.quantity import Missing

if TYPE_CHECKING:
    from firmpedal.model.surroundings import State

Setting = tuple[tuple[str, float | str], ...]  # the value of each state that matters

# A range is looked at in this many places, so that the bow of a swing shows; in fewer where many
# states move one thing, because every place of one is combined with every place of the others.
SAMPLES = (9, 5, 3, 2)
MOST_SETTINGS = 2000


def settings_of(states: tuple[State, ...]) -> tuple[Setting, ...]:
    """Combine the positions of some states; those that cannot be combined stay as measured."""
    usable = [state for state in states if not missing_of((state,))]
    few = next((n for n in SAMPLES if prod(_count(state, n) for state in usable) <= MOST_SETTINGS), 0)
    choices = [[(state.name, value) for value in _positions(state, few)] for state in usable]
    return tuple(product(*choices)) if few else ((),)


def missing_of(states: tuple[State, ...]) -> tuple[Missing, ...]:
    """Say what has to be known before a state's positions are, and refuse more than can be combined."""
    found = [
        Missing(f"{state.place}.from", f"how far {state.name} goes, from and to")
        for state in states
        if not state.values and not (state.lowest.known and state.highest.known)
    ]
    if not found and prod(_count(state, SAMPLES[-1]) for state in states) > MOST_SETTINGS:
        names = ", ".join(state.name for state in states)
        found = [Missing("states", f"which of the states {names} can come together: there are too many")]
    return tuple(found)


def _count(state: State, samples: int) -> int:
    return len(state.values) or samples


def _positions(state: State, samples: int) -> tuple[float | str, ...]:
    if state.values:
        return state.values
    return tuple(float(one) for one in np.linspace(state.lowest.low, state.highest.high, samples))


def measured_in(state: State, own: tuple[tuple[str, str], ...]) -> float | str:
    """The position in which a thing was measured: its own `measured in`, else that of the state."""
    text = dict(own).get(state.name, state.measured_at)
    if state.values:
        return text or state.values[0]
    return _number(text)


def _number(text: str) -> float:
    try:
        return float(text or 0)
    except ValueError:
        return 0.0
