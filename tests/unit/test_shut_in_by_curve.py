"""Warmed fluid behind a hose whose maker gives a curve: hoses get firmer as they are pressed harder."""

from math import pi

import pytest
from two_seats import planted

from firmpedal.pipeline import evaluate_text
from firmpedal.report.trapped import found_in

RUN = "  red_run: {from: valve.red_out, to: red_wheel.inlet, made of: hose -4 PTFE braided"
PSI, BORE = 6894.757, 0.1875 * 0.0254
EXPANSION, MODULUS, KELVIN = 8.28e-4, 1.793e9, 1 / 1.8


def rise(*points):
    curve = ", ".join(f"{{under: {under} psi, per length: {taken} ml/m}}" for under, taken in points)
    words = f"{RUN}, expansion curve: [{curve}]" if points else RUN
    fluid = ("fluid: MIL-PRF-5606\n", "fluid: MIL-PRF-5606\nfoot: {normal: 25, hard: 50, panic: 60}\n")
    found = found_in(evaluate_text(planted(fluid, (RUN, words)), "two"))
    return next(each.rise for each in found if each.caliper == "red_wheel")


def by_hand(slope):
    """Warmth frees V beta; fluid takes V / B of it for each pascal, and the hose what it takes a metre."""
    area = pi / 4 * BORE**2
    return EXPANSION * KELVIN / (1 / MODULUS + slope * 1e-6 / PSI / area)


def test_it_rises_by_the_firmest_piece_of_a_curve_that_goes_far_enough():
    """0.2 ml/m in the first 500 psi, 0.1 more in 1,100: the second piece is 4.4 times as firm."""
    found = rise((500, 0.2), (1600, 0.3))
    assert found.low == pytest.approx(by_hand(0.2 / 500), rel=1e-3)
    assert found.high == pytest.approx(by_hand(0.1 / 1100), rel=1e-3)


def test_beyond_a_curve_that_ends_below_the_rating_a_hose_may_take_nothing():
    found = rise((500, 0.2), (900, 0.3))
    assert found.high == pytest.approx(by_hand(0), rel=1e-3)
    assert found.high == rise().high


def test_the_order_of_the_firm_and_the_soft_piece_changes_nothing():
    assert rise((500, 0.2), (1600, 0.3)).span == pytest.approx(rise((1100, 0.1), (1600, 0.3)).span)
