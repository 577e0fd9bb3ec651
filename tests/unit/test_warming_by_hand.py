"""Heat of a brake at figures whose answer anybody can work out on paper."""

from __future__ import annotations

import math

import pytest

from firmpedal.formulas import warming


def test_an_energy_warms_a_mass():
    """9 of 10 kJ into 2 kg of 450 J/kg K are 10 K."""
    assert warming.warmed(300.0, 10_000.0, 0.9, 2.0, 450.0) == pytest.approx(310.0)


def test_two_calipers_have_half_the_mass_of_their_disc_and_half_its_surface():
    assert warming.disc_mass_of_each(3.0, 2) == pytest.approx(1.5)
    assert warming.disc_radius_of_each(0.1, 2) ** 2 == pytest.approx(0.1**2 / 2)
    assert (warming.disc_mass_of_each(3.0, 1), warming.disc_radius_of_each(0.1, 1)) == (3.0, 0.1)


def test_a_dragging_brake_makes_force_times_speed_shared_out():
    assert warming.drag_power(60.0, 5.0, 2) == pytest.approx(150.0)


def test_a_stop_takes_speed_over_deceleration():
    assert warming.stop_time(20.0, 4.0) == pytest.approx(5.0)


REFUSED = [
    (warming.warmed, (300.0, 1e4, 1.1, 2.0, 450.0), "between nothing and all"),
    (warming.warmed, (300.0, 1e4, 0.9, 0.0, 450.0), "mass"),
    (warming.disc_mass_of_each, (3.0, 0), "one caliper at least"),
    (warming.disc_mass_of_each, (0.0, 2), "mass"),
    (warming.disc_radius_of_each, (0.1, 0.9), "one caliper at least"),
    (warming.disc_radius_of_each, (math.inf, 2), "radius"),
    (warming.drag_power, (-1.0, 5.0, 2), "drag"),
    (warming.drag_power, (60.0, 5.0, 0), "wheels"),
    (warming.stop_time, (20.0, 0.0), "deceleration"),
]


@pytest.mark.parametrize(("formula", "figures", "words"), REFUSED)
def test_outside_their_validity_they_stop_with_a_plain_message(formula, figures, words):
    with pytest.raises(ValueError, match=words):
        formula(*figures)
