"""Figures of a brake's heat where the file gives ranges: which end of each one leads to which, by hand."""

from __future__ import annotations

import pytest
from test_heating import AIRCRAFT, heat_of

KNOT, POUND = 1852 / 3600, 4.4482216152605


def brake(*edits):
    text = AIRCRAFT
    for old, new in edits:
        assert text.count(old) == 1
        text = text.replace(old, new)
    return heat_of(text).brakes[0]


def rise_of(trial):
    return [bound * 1.8 for bound in brake(("disc:", f"heat trial: {trial}\n    disc:")).trial.rise]


def test_a_label_bounds_the_rise_by_its_step_of_nine_degrees_on_either_side():
    """150 less 70 is 80 degF; from one field to the next are 5 K."""
    assert rise_of("{air: 70, port: 150}") == pytest.approx([80 - 9, 80 + 9])


def test_the_least_rise_is_in_the_warmest_air_and_the_greatest_in_the_coolest():
    """From 70 to 150 are 80 degF, and from 60 to 165 are 105."""
    assert rise_of("{air: 60 to 70, port: 150 to 165}") == pytest.approx([80 - 9, 105 + 9])


def taxi(*edits):
    found = dict(brake(("taxi drag: 5", "static thrust: 300 to 400"), *edits).figures.values())
    return found["taxi_power"]


def test_a_taxi_without_a_drag_takes_a_twentieth_to_a_tenth_of_the_thrust():
    """15 to 40 lbf at 8 to 12 kt over two wheels. Common practice, no source: idle thrust held back."""
    power = taxi()
    assert power.low == pytest.approx(15 * POUND * 8 * KNOT / 2)
    assert power.high == pytest.approx(40 * POUND * 12 * KNOT / 2)


def test_a_declared_taxi_speed_takes_the_place_of_the_usual_one():
    power = taxi(("static thrust", "taxi speed: 10 kt, static thrust"))
    assert power.span == pytest.approx((15 * POUND * 10 * KNOT / 2, 40 * POUND * 10 * KNOT / 2))
