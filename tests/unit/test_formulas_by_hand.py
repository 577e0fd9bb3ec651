"""Formulas at inputs whose answer anybody can work out on paper."""

import math
from math import pi

import pytest

from firmpedal.formulas import (
    air,
    attitude,
    bends,
    bubbles,
    compliance,
    hose,
    laminar,
    levers,
    margin,
    mass,
    pedal,
    trapped,
)

INCH = 0.0254


def test_height_follows_the_aircraft():
    """A point straight behind the datum sinks when the nose goes up, one ahead of it rises."""
    assert attitude.height(2.0, 0.5, 0.0) == 0.5
    assert attitude.height(1.0, 0.0, pi / 2) == pytest.approx(-1.0)
    assert attitude.height(-1.0, 0.0, pi / 6) == pytest.approx(0.5)


def test_height_of_a_point_turned_by_a_three_four_five_angle():
    """3 behind and 4 above, nose up by the angle with sine 3/5: 4 x 4/5 - 3 x 3/5 = 1.4."""
    assert attitude.height(3.0, 4.0, math.asin(3 / 5)) == pytest.approx(1.4)


def test_a_height_above_another():
    """The gear bulkhead 7 above the floor, the keel 3 below it."""
    assert attitude.height_above(7.0, -3.0) == 10.0
    assert attitude.height_above(-3.0, 7.0) == -10.0


def test_ten_metres_of_water_press_one_technical_atmosphere():
    """By definition 1 kgf on 1 cm^2, which is 98066.5 Pa."""
    assert attitude.column_pressure(10.0, 1000.0) == pytest.approx(98066.5)
    assert attitude.column_pressure(0.0, 870.0) == 0.0


def test_flare_of_a_three_four_five_cone():
    """Half angle with sine 3/5: an edge 3 out has a slant of 5 and a height of 4, so 1 is used up."""
    assert bends.flare_allowance(12.0, 6.0, math.asin(3 / 5)) == pytest.approx(1.0)


def test_a_bend_through_a_thick_panel_needs_its_sagitta_more_than_its_diameter():
    # inside radius 5 and half the panel 3: the inside comes to 4 (3-4-5), the outside to 7
    assert bends.hole_for_bend(6.0, 2.0, 6.0, pi / 2) == pytest.approx(3.0)


def test_a_gentle_bend_through_a_thick_panel_is_a_kink_between_two_straights():
    # inside radius 5 turned by 2 atan(1/2) in a panel of 8: the straights go on at a slope of 1 : 2
    kink = 2 * math.atan(0.5)
    inside = 5 * math.cos(kink / 2) - (4 - 5 * math.sin(kink / 2)) / 2
    assert bends.hole_for_bend(6.0, 2.0, 8.0, kink) == pytest.approx(7 - inside)


def test_a_tube_leaning_by_three_to_four():
    # a strip of 8 at cos 4/5 covers 10, and a panel of 4 adds 3
    assert bends.hole_for_lean(8.0, 4.0, math.asin(3 / 5)) == pytest.approx(13.0)


def test_setback_of_a_square_bend_is_its_radius():
    assert bends.setback(0.0143, pi / 2) == pytest.approx(0.0143)


def test_a_force_at_thirty_degrees_has_half_the_arm():
    assert levers.lever_arm(0.2, pi / 6) == pytest.approx(0.1)


def test_two_feet_on_one_piston():
    """80 lbf on 0.4 in^2, 100 psi on the 0.3 in^2 of its back that a rod leaves: 110 lbf on 0.4."""
    assert levers.series_pressure(80 / 0.4, 100.0, 0.3 / 0.4) == pytest.approx(110 / 0.4)
    assert levers.series_pressure(80 / 0.4, 100.0, 0.0) == pytest.approx(200.0)  # the inlet not behind it
    assert levers.series_pressure(80 / 0.4, 300.0, 0.0) == pytest.approx(300.0)  # pushed back to its inlet
    assert levers.series_pressure(0.0, 300.0, 1.0) == pytest.approx(300.0)  # at rest


def test_free_stroke_counts_in_the_pedal_travel():
    assert levers.pedal_travel(3.0, 0.010, 0.002) == pytest.approx(0.036)


def test_ten_inches_with_five_to_eight_per_cent_of_slack():
    lengths = [hose.hose_length_with_slack(10 * INCH, slack) / INCH for slack in (0.05, 0.08)]
    assert lengths == pytest.approx([10.5, 10.8])


def test_two_feet_of_hose_at_half_the_pressure_swell_like_one_foot():
    """The limit of 0.33 cm^3 per foot at 1000 psi, low expansion, bore of 1/8 in, 49 CFR 571.106."""
    foot = 12 * INCH
    swelling = hose.hose_expansion(0.33e-6 / foot, 2 * foot, 500.0, 1000.0)
    assert swelling == pytest.approx(0.33e-6)


def test_volumes_of_round_things():
    """A bore of 6 has an area of 9 pi."""
    assert compliance.piston_volume(6.0, 2, 3.0) == pytest.approx(54 * pi)
    assert hose.hose_volume(6.0, 3.0) == pytest.approx(27 * pi)
    assert compliance.tube_volume(8.0, 1.0, 3.0) == pytest.approx(27 * pi)
    assert mass.fluid_volume_per_length(8.0, 1.0) == pytest.approx(9 * pi)


def test_masses():
    """A ring from 6 to 10 across has an area of 16 pi."""
    assert mass.tube_mass_per_length(10.0, 2.0, 10.0) == pytest.approx(160 * pi)
    assert mass.mass_of_length(2.0, 3.0) == 6
    assert mass.mass_of_volume(2.0, 3.0) == 6


def test_a_pad_arm_twice_the_cylinder_arm_doubles_the_force():
    assert levers.lever_ratio(0.2, 0.1) == 2


def test_factor_and_kept_strength():
    assert margin.factor(1200.0, 400.0) == 3
    assert margin.kept(1200.0, 0.25) == 300


def test_reservoir_volume_for_pad_wear():
    """Common practice, no source: 0.20 in of wear on a 1.5 in piston takes 0.35 cu in per wheel."""
    assert compliance.piston_volume(1.5 * INCH, 1, 0.20 * INCH) / INCH**3 == pytest.approx(0.35, abs=0.005)


def test_flow_and_time():
    """Twice the pressure drives twice the flow; 10 ml at 2 ml/s take 5 s."""
    assert laminar.flow_at_pressure(1e-6, 2e4, 4e4) == pytest.approx(2e-6)
    assert laminar.time_to_pass(10e-6, 2e-6) == pytest.approx(5)


def test_bubbles_where_the_square_root_of_g_d_is_plain():
    """A bore of 1/9.80665 m makes sqrt(g d) 1 m/s: level 0.825 m/s clear it, upright 1.075."""
    bore = 1 / 9.80665
    area = pi / 4 * bore**2
    assert bubbles.sweeping_flow(bore, 0.0) / area == pytest.approx(0.825)
    assert bubbles.sweeping_flow(bore, pi / 2) / area == pytest.approx(1.075)
    assert bubbles.rise_in_a_time(0.34, bore, 60.0) == pytest.approx(20.4)
    assert bubbles.buoyancy_number(bore, 1e-5) == pytest.approx(bore * 1e5)


def test_a_wide_pipe_of_water_has_bubbles_at_a_third_of_the_square_root_of_g_d():
    """Where neither tension nor viscosity counts the law ends at its 0.34."""
    assert bubbles.bubble_speed_at_most(1e6, 1e9) == pytest.approx(0.34)


def test_air_at_half_the_volume():
    """Pressed to twice the outside pressure air takes half its room; to 2^1.4 times so, if fast."""
    assert air.free_air_taken(2.0, 1e5, 1e5, 1.0) == pytest.approx(1.0)
    assert air.free_air_taken(2.0, (2**1.4 - 1) * 1e5, 1e5, 1.4) == pytest.approx(1.0)
    assert air.volume_with_air(1.0, 1e5, 1e9, 1e5, 1.0) == pytest.approx(0.5)
    assert air.volume_with_air(0.0, 1e9, 1e9, 1e5, 1.0) == pytest.approx(1 / math.e)


def test_air_alone_is_as_stiff_as_its_pressure():
    assert air.modulus_with_air(1.0, 2e5, 1e9, 1.4) == pytest.approx(2.8e5)
    assert air.modulus_with_air(0.0, 2e5, 1e9, 1.4) == pytest.approx(1e9)


def test_a_spring_half_way():
    assert pedal.spring_force(20.0, 60.0, 0.01, 0.02) == 40.0


def test_the_foot_less_spring_and_seals():
    """100 at a ratio of 2 less 30 and 10 leaves 160 on a bore of area 1; and back."""
    bore = math.sqrt(4 / pi)
    assert pedal.net_line_pressure(100.0, 2.0, bore, 30.0, 10.0) == pytest.approx(160.0)
    assert pedal.pad_force(160.0, 2.0, bore, 30.0, 10.0) == pytest.approx(100.0)
    with pytest.raises(ValueError, match="does not overcome"):
        pedal.net_line_pressure(10.0, 2.0, bore, 30.0, 10.0)


def test_a_lever_whose_pins_and_pivot_make_a_three_four_five_triangle():
    assert pedal.lever_opening(5.0, 1.0, 7.0) == pytest.approx(pi / 2)
    assert pedal.lever_opening(1.0, 1.0, 7.0) == 0.0
    assert pedal.lever_opening(7.0, 1.0, 7.0) == pytest.approx(pi)


def test_a_measured_hose_swells_in_proportion():
    assert hose.measured_swelling(6.0, 2.0, 4.0) == 3.0


def test_a_caliper_gives_in_proportion():
    assert compliance.give_volume(2.0, 2.0, 0.5, 3.0, 6.0) == pytest.approx(pi / 2)


def test_what_is_shut_in_above_the_limit_may_not_warm_at_all():
    """From 10 to 30 bar at 2 bar a degree are 10 degrees; from above the limit there are none."""
    assert trapped.degrees_until(30e5, 10e5, 2e5) == pytest.approx(10)
    assert trapped.degrees_until(10e5, 20e5, 2e5) == 0


def test_fluid_that_is_no_warmer_than_when_it_was_shut_in_presses_no_more():
    assert trapped.trapped_pressure_rise(8e-4, 1.8e9, 290.0, 290.0) == 0.0
    assert trapped.freed_by_warmth(1e-4, 8e-4, 2e-5, 290.0, 290.0) == 0.0


def test_walls_that_grow_as_fast_as_the_fluid_leave_room_for_all_of_it():
    """Three times a length's growth is that of its volume: 3/4096 for the fluid, 1/4096 for the wall."""
    assert trapped.freed_by_warmth(1e-4, 3 / 4096, 1 / 4096, 290.0, 300.0) == 0.0
    # of 4/4096 in the fluid a quarter is left: on 100 ml and ten degrees 100 / 4096 x 10 ml
    assert trapped.freed_by_warmth(1e-4, 4 / 4096, 1 / 4096, 290.0, 300.0) == pytest.approx(1e-3 / 4096)
