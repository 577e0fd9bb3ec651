"""The way back: how far a pedal goes under a given force, for any number of cases at once."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from collections.abc import Callable

    from numpy.typing import NDArray

    from firmpedal.analysis.feel.terms import Array, Terms

HALVINGS = 60  # of the bracket: below the last digit of a float
ALONG = 65  # places along the stroke where the greatest ratio is looked for
MOST = 2e8  # Pa: nothing on an aircraft's wheel is pressed harder
MARGIN = 1.02  # on it: between two such places it can be a little greater


@dataclass(frozen=True)
class Pressed:
    """Where each case comes to, each array [cases, forces]; what cannot be is nan."""

    pressure: Array
    stroke: Array
    travel: Array


def at_force(terms: Terms, force: Array) -> Pressed:
    """Where every case comes to under its forces, were there no end to cylinder or pedal.

    A force that spring and friction hold back leaves pads touching without pressure. Holds where the force
    grows all along the travel, as it does unless a lever goes over its centre.

    Args:
        terms: The cases.
        force: On the pad, [cases, forces] [N].
    """

    def short(pressure: Array) -> NDArray[np.bool_]:
        """Whether the foot pushes harder than this pressure asks for."""
        stroke = terms.stroke(pressure)
        return terms.push(pressure, stroke) < force * terms.ratio_at(_within(terms, stroke))

    low = np.zeros_like(force)
    high = force * _greatest_ratio(terms) / terms.area[:, None]
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        more = short(middle)
        low, high = np.where(more, middle, low), np.where(more, high, middle)
    pressure = (low + high) / 2
    stroke = terms.stroke(pressure)
    return Pressed(pressure, stroke, terms.travel(stroke))


def at_stroke(terms: Terms, stroke: Array) -> Array:
    """The force on the pad with which each case comes to a stroke, [cases, strokes] [N].

    Nothing where the stroke only closes the gap, infinite where the pressure of any pedal is too little.
    """
    return _force_at(terms, stroke, lambda found: found)


def at_travel(terms: Terms, travel: Array) -> Array:
    """The force on the pad with which each case comes to a travel of the pad, [cases, travels] [N]."""
    return _force_at(terms, travel, terms.travel)


def _force_at(terms: Terms, wanted: Array, measure: Callable[[Array], Array]) -> Array:
    """The force with which something that grows with the stroke comes to what is wanted."""
    low, high = np.zeros_like(wanted), np.full_like(wanted, MOST)
    never = measure(terms.stroke(high)) < wanted
    at_once = measure(terms.stroke(low)) >= wanted
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        short = measure(terms.stroke(middle)) < wanted
        low, high = np.where(short, middle, low), np.where(short, high, middle)
    pressure = (low + high) / 2
    stroke = terms.stroke(pressure)
    force = terms.push(pressure, stroke) / terms.ratio_at(stroke)
    return np.where(never, np.inf, np.where(at_once, 0.0, force))


def _within(terms: Terms, stroke: Array) -> Array:
    return np.minimum(stroke, terms.full_stroke[:, None])


def _greatest_ratio(terms: Terms) -> Array:
    if terms.link is None:
        return terms.ratio[:, None]
    along = terms.full_stroke[:, None] * np.linspace(0.0, 1.0, ALONG)[None, :]
    greatest: Array = MARGIN * np.nanmax(terms.ratio_at(along), axis=1, keepdims=True)
    return greatest
