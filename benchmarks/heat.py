"""Heat curves beside a loop of single integrations: the same brakes and stops by scipy's adaptive solver."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from scipy.integrate import solve_ivp

from benchmarks.timing import Race, best_time
from firmpedal.analysis.heating.network import Lumps, Phase, march, own_directions

if TYPE_CHECKING:
    from firmpedal.analysis.heating.network import Array

SETS = 2_000
SINGLE = 20  # sets that the loop does: all of them would take minutes; its time is taken in proportion
LOOKS = 24  # in each phase
STOPS = 3
SEED = 7
CLOSE = {"rtol": 1e-7, "atol": 1e-6}  # K: as near as the agreement that is printed


def _brakes() -> Lumps:
    """Random brakes of four lumps in a row: disc, caliper, fluid, line; a little of the heat leaps over."""
    random = np.random.default_rng(SEED)
    capacities = random.uniform([500, 500, 15, 8], [700, 800, 40, 30], (SETS, 4))
    links = np.zeros((SETS, 4, 4))
    for one, other, low, high in ((0, 1, 0.2, 1.2), (1, 2, 1.0, 8.0), (1, 3, 0.1, 0.5), (2, 3, 0.005, 0.05)):
        links[:, one, other] = links[:, other, one] = random.uniform(low, high, SETS)
    to_air = random.uniform([0.2, 0.2, 0.001, 0.03], [1.5, 0.8, 0.01, 0.15], (SETS, 4))
    return Lumps(capacities, links, to_air)


def _stops(lumps: Lumps) -> tuple[Phase, ...]:
    """Stops in a row, each with a while of rolling after it."""
    own, into = own_directions(lumps), np.zeros((SETS, 4))
    power = np.random.default_rng(SEED + 1).uniform(6e3, 14e3, SETS)
    into[:, 0], into[:, 1] = 0.92 * power, 0.08 * power
    stop = Phase(own, np.full(SETS, 8.0), into)
    roll = Phase(own, np.full(SETS, 300.0), np.zeros((SETS, 4)))
    return (stop, roll) * STOPS


def _alone(lumps: Lumps, phases: tuple[Phase, ...], row: int) -> Array:
    """Temperatures of one brake, integrated by itself, at the same looks."""
    shares = (np.arange(1, LOOKS + 1) / LOOKS) ** 2
    capacities, links, to_air = lumps.capacities[row], lumps.links[row], lumps.to_air[row]
    state, found = np.zeros(4), []
    for phase in phases:
        heat, duration = phase.heat[row], float(phase.duration[row])

        def slope(_t: float, theta: Array, heat: Array = heat) -> Array:
            flows = (links * (theta[None, :] - theta[:, None])).sum(axis=1)
            return (heat + flows - to_air * theta) / capacities

        looks = duration * shares
        made = solve_ivp(slope, (0.0, duration), state, method="LSODA", t_eval=looks, **CLOSE)
        state = made.y[:, -1]
        found.append(made.y.T)
    return np.concatenate(found)


def race() -> Race:
    """Thousands of heat curves in one call, against single integrations one after the other."""
    lumps = _brakes()
    phases = _stops(lumps)
    some = range(0, SETS, SETS // SINGLE)

    def ours() -> object:
        return march(_stops(lumps), LOOKS)  # finding the brakes' own directions is part of the work

    def loop() -> object:
        return [_alone(lumps, phases, row) for row in some]

    _, temperatures = march(phases, LOOKS)
    worst = max(float(np.abs(temperatures[row] - _alone(lumps, phases, row)).max()) for row in some)
    hottest = float(temperatures.max())
    words = (
        f"the loop did {len(some)} of them and is taken in proportion; largest difference {worst:.1e} K of "
        f"up to {hottest:.0f} K"
    )
    other = best_time(loop) * SETS / len(some)
    return Race(
        f"{SETS} heat curves of {LOOKS * 2 * STOPS} points",
        best_time(ours),
        other,
        "scipy, one by one",
        words,
    )
