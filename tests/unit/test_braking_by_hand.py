"""Braking and grip at figures whose answer anybody can work out on paper."""

import math

import pytest

from firmpedal.formulas import braking, grip

G = 9.80665


def test_pads_from_one_to_two_act_near_the_middle():
    """Even wear: 1.5. Even pressure: 2/3 of (8 - 1) over (4 - 1), which is 14/9, a little further out."""
    assert braking.mean_radius(1.0, 2.0) == 1.5
    assert braking.new_pad_radius(1.0, 2.0) == pytest.approx(14 / 9)


def test_both_radii_meet_where_the_pad_is_narrow():
    assert braking.new_pad_radius(0.9999, 1.0001) == pytest.approx(
        braking.mean_radius(0.9999, 1.0001), rel=1e-6
    )


def test_a_newton_metre_of_friction_on_each_face():
    assert braking.brake_torque(10.0, 0.5, 0.2) == pytest.approx(2.0)
    assert braking.lining_friction(2.0, 10.0, 0.2) == pytest.approx(0.5)


def test_the_way_back_from_a_wanted_stop():
    """3 m/s^2 on 500 kg are 1500 N; brakes that make 750 N at 1 MPa need 2 MPa."""
    drag = braking.drag_needed(3.0, 500.0)
    assert drag == 1500.0
    assert braking.pressure_needed(drag, 750.0, 1e6) == pytest.approx(2e6)
    assert braking.deceleration(drag, 500.0) == pytest.approx(3.0)


def test_from_twenty_at_two_it_takes_a_hundred_metres():
    assert braking.stop_distance(20.0, 2.0) == pytest.approx(100.0)


def test_grip_of_a_nosewheel_type_by_moments_about_both_wheels():
    """Wheelbase 2, centre of gravity 0.5 ahead of the mains and 1 up, friction 0.5: a is 0.3 g.

    Mains then carry (1.5 - 0.3) / 2 = 0.6 of the weight, and half of 0.6 is 0.3.
    """
    assert grip.grip_limit_nosewheel(0.5, 0.5, 2.0, 1.0) == pytest.approx(0.3 * G)


def test_grip_of_a_tailwheel_type_by_moments_about_both_wheels():
    """Wheelbase 4, centre of gravity 1 behind the mains and 1 up, friction 0.8: a is 0.75 g.

    Mains then carry (3 + 0.75) / 4 = 0.9375 of the weight, and 0.8 of that is 0.75.
    """
    assert grip.grip_limit_tailwheel(0.8, 1.0, 4.0, 1.0) == pytest.approx(0.75 * G)


def test_tyres_that_slide_just_as_the_tail_lifts():
    """With friction b / h both limits are the same: all the weight is on the mains."""
    assert grip.grip_limit_tailwheel(0.5, 0.6, 5.0, 1.2) == pytest.approx(grip.nose_over_limit(0.6, 1.2))


def test_with_the_tail_up_the_mains_carry_all_and_no_more():
    """Friction 0.8 is more than b / h = 0.3: the tail is up first; they slide at 0.8 g, not 0.925 g."""
    assert grip.grip_limit_tailwheel(0.8, 0.3, 4.0, 1.0) == pytest.approx(0.8 * G)


def test_the_first_limit_counts():
    assert grip.lesser(2.0, 3.0) == grip.lesser(3.0, 2.0) == 2.0


def test_centre_of_gravity_from_three_scales():
    """A fifth of the weight on the third wheel: a fifth of the wheelbase away from the mains."""
    assert grip.distance_by_weights(5.0, 100.0, 400.0) == pytest.approx(1.0)


def test_grip_standing_is_friction_on_what_the_mains_carry():
    assert grip.grip_standing(0.5, 100.0, 1.0, 4.0) == pytest.approx(0.5 * 75 * G)


REFUSED = [
    (braking.clamp_force, (-1.0, 0.04, 1), "the pressure"),
    (braking.clamp_force, (1e6, 0.0, 1), "bore"),
    (braking.clamp_force, (1e6, 0.04, 0), "count"),
    (braking.mean_radius, (0.06, 0.05), "outside their inner edge"),
    (braking.mean_radius, (0.05, math.inf), "outside their inner edge"),
    (braking.new_pad_radius, (0.05, 0.05), "outside their inner edge"),
    (braking.brake_torque, (10.0, math.nan, 0.1), "friction"),
    (braking.drag_at_ground, (10.0, 0.0), "radius of the tyre"),
    (braking.pressure_needed, (10.0, 0.0, 1.0), "drag of the brakes"),
    (braking.stop_distance, (10.0, 0.0), "deceleration"),
    (braking.lining_friction, (1.0, 0.0, 0.1), "clamping force"),
    (grip.grip_limit_nosewheel, (0.5, 2.0, 2.0, 1.0), "between the wheels"),
    (grip.grip_limit_tailwheel, (0.9, 0.5, 2.0, 2.5), "too high"),
    (grip.nose_over_limit, (0.5, 0.0), "height"),
    (grip.grip_standing, (0.5, 100.0, 3.0, 2.0), "between the wheels"),
    (grip.rule_energy, (500.0, 20.0, 0), "braked wheels"),
    (grip.stop_energy, (0.0, 20.0, 2), "weight"),
]


@pytest.mark.parametrize(("formula", "figures", "words"), REFUSED)
def test_outside_their_validity_they_stop_with_a_plain_message(formula, figures, words):
    with pytest.raises(ValueError, match=words):
        formula(*figures)
