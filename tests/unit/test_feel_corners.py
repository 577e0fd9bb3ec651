"""A pedal with a range for everything, against every corner of its ranges solved on its own by scipy."""

from __future__ import annotations

from itertools import product
from math import expm1, pi

import pytest
from scipy.optimize import brentq
from test_feel import ARMS, COLD, GAP, HOSE, STROKE, evaluated, felt, key

from firmpedal.analysis.feel.cases import Case
from firmpedal.units import from_unit

INCH = 0.0254
RANGES = {  # in inches and pounds; the arms make a ratio from 5 / 2.6 to 5 / 2.4
    "arm": (2.4, 2.6),
    "bore": (0.62, 0.63),
    "free": (0.05, 0.07),
    "rest": (8, 12),
    "pressed": (20, 25),
    "friction": (5, 10),
    "gap": (0.018, 0.022),
    "gives": (0.003, 0.005),
    "wear": (0.08, 0.12),
}
TEXT = {name: f"{low} to {high}" for name, (low, high) in RANGES.items()}


@pytest.fixture(scope="module")
def evaluation():
    spring = f"return spring: {{at rest: {TEXT['rest']}, pressed: {TEXT['pressed']}}}"
    more = f"free stroke: {TEXT['free']}\n    {spring}\n    seal friction: {TEXT['friction']}"
    return evaluated(
        HOSE,
        key(STROKE, more),
        (GAP, f"pad gap: {TEXT['gap']}\n    gives: {{travel: {TEXT['gives']}, under: 500}}\n"),
        ("    bore: 5/8\n", f"    bore: {TEXT['bore']}\n"),
        ("pad wear: 0.10", f"pad wear: {TEXT['wear']}"),
        (ARMS, f"brake: {{brake: {{pad: 5, arm: {TEXT['arm']}}}}}"),
    )


def solved(evaluation, case, force, corner):
    """Stroke and pad travel of one corner at a foot force [N], by the balance along the cylinder."""
    given = dict(zip(RANGES, corner[:-2], strict=True))
    swells, modulus = corner[-2:]
    area, piston = pi / 4 * (given["bore"] * INCH) ** 2, pi / 4 * (1.5 * INCH) ** 2
    ratio = 5 / given["arm"]
    (volume,) = (each.middle for each in evaluation.results.volumes)
    fluid = volume + (2 * piston * given["wear"] * INCH if case.worn else 0.0)
    pounds = {name: from_unit(given[name], "lbf") for name in ("rest", "pressed", "friction")}
    atmosphere = 101_325.0

    def stroke(pressure):
        give = piston * given["gives"] * INCH * pressure / from_unit(500, "psi")
        air = fluid * case.air * (1 - (atmosphere / (atmosphere + pressure)) ** (1 / case.exponent))
        squeezed = -fluid * (1 - case.air) * expm1(-pressure / modulus)
        taken = piston * given["gap"] * INCH + swells * pressure + give + squeezed + air
        return given["free"] * INCH + taken / area

    def short(pressure):
        spring = pounds["rest"] + (pounds["pressed"] - pounds["rest"]) * stroke(pressure) / (0.75 * INCH)
        return pressure * area + spring + pounds["friction"] - force * ratio

    found = stroke(brentq(short, 0.0, 2e7, xtol=1e-3))
    return found, ratio * found


@pytest.mark.parametrize("case", [COLD, Case(air=0.02), Case(worn=True)])
@pytest.mark.parametrize("number", [0, 1])
def test_the_band_ends_where_the_least_and_the_greatest_corner_do(evaluation, case, number):
    """No corner lies outside of the band, and two of them are its ends."""
    found = felt(evaluation)
    budget = next(each for each in evaluation.results.budgets if each.foot == "hard")
    (swell,) = budget.swells
    slopes = [bound / pressed for bound, pressed in zip(swell.wall.span, budget.pressure.span, strict=True)]
    modulus = evaluation.aircraft.fluid.bulk_modulus.span
    force = evaluation.results.forces[number].middle
    corners = [
        solved(evaluation, case, force, corner) for corner in product(*RANGES.values(), slopes, modulus)
    ]
    for which, ours in enumerate((found.stroke(case, number), found.travel(case, number))):
        every = [each[which] for each in corners]
        assert ours.span == pytest.approx((min(every), max(every)), rel=1e-6)
