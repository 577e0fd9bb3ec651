"""The pedal's curves against scipy's root finder and integrator, and against levers turned in space."""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.optimize import brentq

from feel_rows import terms
from firmpedal.analysis.feel.solve import at_force, at_stroke
from firmpedal.analysis.feel.terms import OUTSIDE, Link, curves, pressures_up_to
from firmpedal.analysis.linkage import swung
from firmpedal.formulas.air import free_air_taken
from firmpedal.formulas.compliance import fluid_compression

AREA = math.pi / 4 * 0.015875**2
SOFT = {
    "area": AREA, "full_stroke": 0.02, "free_stroke": 0.001, "gap": 2e-7, "fluid": 4e-5, "modulus": 1.8e9,
    "air": 4e-7, "exponent": 1.4, "spring": 20.0, "spring_rate": 2000.0, "friction": 9.0, "ratio": 2.4,
    "walls": [(0.0, 1e-13), (2e6, -5e-14), (6e6, 4e-14)],
}  # fmt: skip
CASES = [
    SOFT,
    {**SOFT, "air": 0.0, "spring": 0.0, "spring_rate": 0.0, "friction": 0.0},
    {**SOFT, "exponent": 1.0, "air": 2e-6},
    {**SOFT, "walls": [(0.0, 8e-13)]},
]
FORCES = [40.0, 120.0, 333.6, 900.0]
LEVER = ((0.0, 0.0, 0.0), (0.02, 0.0, 0.13), (-0.05, 0.0, 0.03), (-0.03, 0.0, 0.17))  # pivot, pad, rod, base


def _scalar_volume(case: dict, pressure: float) -> float:
    """One term after the other by the scalar formulas."""
    air = free_air_taken(case["air"], pressure, OUTSIDE, case["exponent"])
    walls = sum(max(0.0, pressure - knot) * slope for knot, slope in case["walls"])
    return case["gap"] + walls + fluid_compression(case["fluid"], pressure, case["modulus"]) + air


def _pressure(case: dict, force: float) -> float:
    """The pressure under a force by scipy, with the spring where the stroke has come to."""

    def over(pressure: float) -> float:
        stroke = case["free_stroke"] + _scalar_volume(case, pressure) / case["area"]
        spring = case["spring"] + case["spring_rate"] * min(stroke, case["full_stroke"])
        return (pressure * case["area"] + spring + case["friction"]) / case["ratio"] - force

    return brentq(over, 0.0, 1e9, xtol=1e-4, rtol=1e-14) if over(0.0) < 0 else 0.0


@pytest.mark.parametrize("case", CASES)
def test_travel_at_a_force_is_what_scipys_root_finder_gives(case):
    found = at_force(terms(case), np.array([FORCES]))
    for n, force in enumerate(FORCES):
        pressure = _pressure(case, force)
        stroke = case["free_stroke"] + _scalar_volume(case, pressure) / case["area"]
        assert found.pressure[0, n] == pytest.approx(pressure, rel=1e-9, abs=1e-3)
        assert found.travel[0, n] == pytest.approx(case["ratio"] * stroke, rel=1e-9)


@pytest.mark.parametrize("case", CASES)
def test_volume_is_the_integral_of_what_gives_way(case):
    """dV/dp term by term, each differentiated by hand, integrated by quadrature."""

    def gives(pressure: float) -> float:
        walls = sum(slope for knot, slope in case["walls"] if pressure > knot)
        fluid = case["fluid"] / case["modulus"] * math.exp(-pressure / case["modulus"])
        n, whole = case["exponent"], OUTSIDE + pressure
        return walls + fluid + case["air"] / (n * OUTSIDE) * (OUTSIDE / whole) ** (1 + 1 / n)

    for pressure in (3e4, 1e6, 9e6):
        # each piece as its own integral, and pressures by their size: air gives way near nothing
        knots = [0.0, *(p for p in (1e3, 1e4, 1e5, 1e6, 2e6, 6e6) if p < pressure), pressure]
        whole = sum(quad(gives, a, b, epsrel=1e-12)[0] for a, b in itertools.pairwise(knots))
        ours = terms(case).volume(np.array([[pressure]]))[0, 0] - case["gap"]
        assert ours == pytest.approx(whole, rel=1e-9)


def test_all_cases_in_one_call_are_as_each_alone():
    pressure = pressures_up_to(np.full(len(CASES), 5e6), 33)
    whole = curves(terms(*CASES), pressure)
    for n, case in enumerate(CASES):
        alone = curves(terms(case), pressure[n : n + 1])
        for name in ("stroke", "travel", "force"):
            assert getattr(whole, name)[n] == pytest.approx(getattr(alone, name)[0], rel=1e-13)


def test_force_at_a_stroke_is_the_way_back():
    found = terms(*CASES)
    force = np.tile(FORCES[1:], (len(CASES), 1))
    stroke = np.minimum(at_force(found, force).stroke, found.full_stroke[:, None])
    there = at_stroke(found, stroke)
    again = at_force(found, there)
    assert again.stroke == pytest.approx(stroke, rel=1e-9)


def test_no_force_is_wanted_inside_the_gap_and_none_is_enough_beyond_all():
    found = terms({**SOFT, "walls": [(0.0, 1e-15)], "air": 0.0})
    near, far = at_stroke(found, np.array([[1e-4, 0.5]]))[0]
    assert near == 0
    assert far == math.inf


def _lever(points=LEVER) -> Link:
    pivot, pad, rod, base = points
    one, other, length = math.dist(pivot, rod), math.dist(pivot, base), math.dist(rod, base)
    columns = (length, abs(one - other), one + other, math.dist(pivot, pad))
    return Link(*(np.array([each]) for each in columns))


def _turned(point, angle):
    x, y, z = point
    return (x * math.cos(angle) - z * math.sin(angle), y, x * math.sin(angle) + z * math.cos(angle))


def _stroke_at(angle: float) -> float:
    """How much shorter the cylinder is with the lever turned, towards the cylinder's base."""
    rod, base = LEVER[2], LEVER[3]
    return math.dist(rod, base) - math.dist(_turned(rod, -angle), base)


@pytest.mark.parametrize("stroke", [0.002, 0.01, 0.02])
def test_the_lever_is_the_one_that_is_turned_in_space(stroke):
    angle = brentq(lambda a: _stroke_at(a) - stroke, 0.0, 1.2)
    pad = math.dist(LEVER[0], LEVER[1])
    link, step = _lever(), 1e-6
    at = np.array([[stroke]])
    assert link.travel(at)[0, 0] == pytest.approx(pad * angle, rel=1e-9)
    slope = (brentq(lambda a: _stroke_at(a) - stroke - step, 0.0, 1.2) - angle) / step * pad
    assert link.ratio(at)[0, 0] == pytest.approx(slope, rel=1e-4)
    flat = (*LEVER[0], *LEVER[1], *LEVER[2], *LEVER[3], stroke)
    assert swung(flat) == pytest.approx((link.travel(at)[0, 0], link.ratio(at)[0, 0]), rel=1e-12)


def test_work_of_the_foot_is_work_on_the_cylinder():
    """Without friction the work over the pad's travel equals the work over the stroke, whatever the lever."""
    found = terms({**SOFT, "friction": 0.0, "full_stroke": 0.05}, link=_lever())
    line = curves(found, pressures_up_to(np.array([2e6]), 4001))
    foot = np.trapezoid(line.force[0], line.travel[0])
    cylinder = np.trapezoid(found.push(line.pressure, line.stroke)[0], line.stroke[0])
    assert foot == pytest.approx(cylinder, rel=1e-6)


def test_a_lever_beyond_its_dead_point_gives_no_figure():
    assert np.isnan(_lever().travel(np.array([[0.2]]))).all()
