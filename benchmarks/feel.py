"""Pedal curves beside a loop of single solves: the same pedals, point by point, by scipy's root finder."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np
from scipy.optimize import brentq

from benchmarks.timing import Race, best_time
from firmpedal.analysis.feel.solve import at_force
from firmpedal.analysis.feel.terms import OUTSIDE, Terms, curves, pressures_up_to

if TYPE_CHECKING:
    from firmpedal.analysis.feel.terms import Array

PEDALS = 10_000
POINTS = 33  # of each curve
SINGLE = 200  # pedals that the loop does: all of them would take minutes; its time is taken in proportion
SEED = 11
FORCE = 900.0  # N
HIGHEST = 1e9  # Pa, the end of the loop's bracket


def _pedals() -> Terms:
    """Random pedals from firm metal to hot plastic, with air and springs."""
    random = np.random.default_rng(SEED)

    def between(low: float, high: float) -> Array:
        return random.uniform(low, high, PEDALS)

    slopes = np.stack([between(1e-14, 1e-12), between(-5e-15, 1e-13)], axis=1)
    return Terms(
        area=math.pi / 4 * between(0.0127, 0.019) ** 2,
        full_stroke=between(0.015, 0.028),
        free_stroke=between(0.0, 0.002),
        gap=between(1e-7, 1e-6),
        knots=np.tile([0.0, 3e6], (PEDALS, 1)),
        slopes=slopes,
        fluid=between(1e-5, 6e-5),
        modulus=between(1.0e9, 2.1e9),
        air=between(0.0, 1e-6),
        exponent=random.choice([1.0, 1.4], PEDALS),
        spring=between(0.0, 40.0),
        spring_rate=between(0.0, 3000.0),
        friction=between(0.0, 20.0),
        ratio=between(1.5, 4.0),
    )


def _alone(terms: Terms, row: int) -> tuple[float, ...]:
    """The travel of one pedal at each of its forces, each found by itself."""
    area, ratio, fluid = terms.area[row], terms.ratio[row], terms.fluid[row]
    bulk, air, n = terms.modulus[row], terms.air[row], terms.exponent[row]
    spring, rate, full = terms.spring[row], terms.spring_rate[row], terms.full_stroke[row]
    bends = list(zip(terms.knots[row].tolist(), terms.slopes[row].tolist(), strict=True))

    def stroke(pressure: float) -> float:
        walls = sum(max(0.0, pressure - knot) * slope for knot, slope in bends)
        lost = 1 - (OUTSIDE / (OUTSIDE + pressure)) ** (1 / n)
        volume = terms.gap[row] + walls + fluid * (1 - math.exp(-pressure / bulk)) + air * lost
        return float(terms.free_stroke[row] + volume / area)

    def over(pressure: float, force: float) -> float:
        held = spring + rate * min(stroke(pressure), full) + terms.friction[row]
        return float((pressure * area + held) / ratio - force)

    forces = [FORCE * (k / (POINTS - 1)) ** 2 for k in range(POINTS)]
    found = [brentq(over, 0.0, HIGHEST, args=(force,)) if over(0.0, force) < 0 else 0.0 for force in forces]
    return tuple(float(ratio * stroke(pressure)) for pressure in found)


def race() -> Race:
    """Ten thousand curves in one call, against single solves one after the other."""
    terms = _pedals()
    most = (FORCE * terms.ratio - terms.spring) / terms.area
    pressure = pressures_up_to(np.maximum(most, 1.0), POINTS)
    some = range(0, PEDALS, PEDALS // SINGLE)

    def ours() -> object:
        return curves(terms, pressure)

    def loop() -> object:
        return [_alone(terms, row) for row in some]

    forces = np.tile(FORCE * np.linspace(0.0, 1.0, POINTS) ** 2, (PEDALS, 1))
    travel = at_force(terms, forces).travel
    worst = max(
        abs(a - b) / b for row in some for a, b in zip(travel[row].tolist(), _alone(terms, row), strict=True)
    )
    words = (
        f"the loop did {len(some)} of them and is taken in proportion; largest relative difference of travel "
        f"at the same force {worst:.1e}"
    )
    other = best_time(loop) * PEDALS / len(some)
    return Race(
        f"{PEDALS} pedal curves of {POINTS} points", best_time(ours), other, "scipy, one by one", words
    )
