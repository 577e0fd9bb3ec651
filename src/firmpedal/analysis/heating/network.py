"""A few warm lumps joined by conductances, many sets of figures at once, integrated exactly.

With theta the lumps' temperatures above the air, C their heat capacities, G the matrix of conductances and
q the heat that comes in, C theta' = -G theta + q. Scaled by the square roots of C the matrix is symmetric, so
that its own directions part the lumps: each goes to its end value by an exponential. There is no step in
time, and no error of one.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
LEAST = 1e-12  # W/K over J/K: a direction that keeps its heat


@dataclass(frozen=True)
class Lumps:
    """Sets of figures along the first axis: capacities [J/K], links [W/K], conductances to the air [W/K].

    `links` is symmetric, its diagonal is not used.
    """

    capacities: Array  # (sets, lumps)
    links: Array  # (sets, lumps, lumps)
    to_air: Array  # (sets, lumps)


@dataclass(frozen=True)
class Own:
    """The lumps seen in their own directions."""

    rates: Array  # (sets, lumps), 1/s
    directions: Array  # (sets, lumps, lumps)
    roots: Array  # (sets, lumps), square roots of the capacities


@dataclass(frozen=True)
class Phase:
    """A while in which nothing changes: how long [s], the heat into each lump [W], and how the air cools."""

    own: Own
    duration: Array  # (sets,)
    heat: Array  # (sets, lumps)


def own_directions(lumps: Lumps) -> Own:
    """Part the lumps into directions that do not disturb each other."""
    count = lumps.capacities.shape[1]
    off = lumps.links * (1 - np.eye(count))
    matrix = -off
    diagonal = off.sum(axis=2) + lumps.to_air
    matrix[:, np.arange(count), np.arange(count)] = diagonal
    roots = np.sqrt(lumps.capacities)
    scaled = matrix / roots[:, :, None] / roots[:, None, :]
    rates, directions = np.linalg.eigh(scaled)
    return Own(np.maximum(rates, LEAST), directions, roots)


def after(own: Own, start: Array, heat: Array, times: Array) -> Array:
    """Temperatures above the air after some times of one phase.

    Args:
        own: The lumps in their own directions.
        start: At the beginning (sets, lumps) [K].
        heat: Into each lump (sets, lumps) [W].
        times: Since the beginning (sets, times) [s].

    Returns:
        Temperatures (sets, times, lumps) [K].
    """
    inward = np.swapaxes(own.directions, 1, 2)
    first = np.einsum("nij,nj->ni", inward, start * own.roots)
    drive = np.einsum("nij,nj->ni", inward, heat / own.roots)
    gone = np.expm1(-own.rates[:, None, :] * times[:, :, None])  # exact for slow directions too
    parted = first[:, None, :] * (1 + gone) - gone * (drive / own.rates)[:, None, :]
    found: Array = parted @ inward / own.roots[:, None, :]
    return found


def march(phases: tuple[Phase, ...], looks: int) -> tuple[Array, Array]:
    """Go through phases one after the other, from lumps as warm as the air.

    Args:
        phases: In their order.
        looks: How often to look in each phase, its end included.

    Returns:
        Times (sets, looks of all phases) [s] and temperatures above the air (sets, looks, lumps) [K].
    """
    sets, count = phases[0].heat.shape
    state, clock = np.zeros((sets, count)), np.zeros(sets)
    shares = (np.arange(1, looks + 1) / looks) ** 2  # more looks where it changes quickest
    times, found = [], []
    for phase in phases:
        within = phase.duration[:, None] * shares[None, :]
        temperatures = after(phase.own, state, phase.heat, within)
        times.append(clock[:, None] + within)
        found.append(temperatures)
        state, clock = temperatures[:, -1, :], clock + phase.duration
    return np.concatenate(times, axis=1), np.concatenate(found, axis=1)
