"""Outside its validity a formula stops with a plain message; it never answers with a number."""

import math
from math import inf, nan, pi

import pytest

from firmpedal.formulas import (
    attitude,
    bends,
    bubbles,
    compliance,
    hose,
    laminar,
    levers,
    margin,
    mass,
    release,
    temperature,
    threads,
    trapped,
    tube_strength,
    tube_stress,
    viscosity,
)

TUBE_OF = [
    lambda diameter, wall: tube_stress.hoop_stress_at_bore(1e6, diameter, wall),
    lambda diameter, wall: tube_stress.axial_stress_closed_ends(1e6, diameter, wall),
    lambda diameter, wall: tube_stress.von_mises_at_bore(1e6, diameter, wall),
    lambda diameter, wall: tube_stress.tresca_at_bore(1e6, diameter, wall),
    lambda diameter, wall: tube_stress.barlow_stress(1e6, diameter, wall),
    lambda diameter, wall: tube_stress.mean_diameter_stress(1e6, diameter, wall),
    lambda diameter, wall: tube_strength.yield_pressure(1e8, diameter, wall),
    lambda diameter, wall: tube_strength.barlow_pressure(1e8, diameter, wall),
    lambda diameter, wall: tube_strength.burst_pressure(1e8, diameter, wall),
    lambda diameter, wall: tube_strength.mean_diameter_pressure(1e8, diameter, wall),
    lambda diameter, wall: compliance.tube_volume(diameter, wall, 1.0),
    lambda diameter, wall: compliance.growth_closed_ends(1e6, diameter, wall, 7e10, 0.3),
    lambda diameter, wall: compliance.growth_open_ends(1e6, diameter, wall, 7e10, 0.3),
    lambda diameter, wall: compliance.growth_fixed_ends(1e6, diameter, wall, 2.7e10, 0.3),
    lambda diameter, wall: mass.tube_mass_per_length(diameter, wall, 2700),
    mass.fluid_volume_per_length,
    laminar.tube_bore,
    lambda diameter, wall: bends.extrados_wall(wall, diameter, 0.015),
    lambda diameter, wall: bends.intrados_wall(wall, diameter, 0.015),
]


@pytest.mark.parametrize("formula", TUBE_OF)
@pytest.mark.parametrize(
    ("diameter", "wall"),
    [
        (0.006, 0.003),
        (0.006, 0.004),
        (0.006, 0),
        (0.006, -0.001),
        (-0.006, 0.001),
        (nan, 0.001),
        (0.006, nan),
    ],
)
def test_a_tube_needs_a_wall_and_a_bore(formula, diameter, wall):
    with pytest.raises(ValueError, match="the wall has to be"):
        formula(diameter, wall)


PRESSURES = [
    tube_stress.radial_stress_at_bore,
    lambda pressure: tube_stress.hoop_stress_at_bore(pressure, 0.006, 0.001),
    lambda pressure: tube_stress.von_mises_at_bore(pressure, 0.006, 0.001),
    lambda pressure: compliance.growth_closed_ends(pressure, 0.006, 0.001, 7e10, 0.3),
    lambda pressure: compliance.fluid_compression(1e-5, pressure, 1.8e9),
]


@pytest.mark.parametrize("formula", PRESSURES)
@pytest.mark.parametrize("pressure", [-1.0, nan, inf])
def test_pressure_is_gauge_and_not_below_zero(formula, pressure):
    with pytest.raises(ValueError, match="the gauge pressure cannot be below zero"):
        formula(pressure)


REFUSED = [
    (levers.lever_arm, (0.1, 1.6), "right angle"),
    (levers.lever_arm, (0.1, -0.1), "right angle"),
    (levers.lever_ratio, (0.2, 0.0), "lever arm of the master cylinder"),
    (levers.lever_ratio, (0.0, 0.1), "lever arm of the foot"),
    (levers.line_pressure, (-1.0, 3.0, 0.016), "foot force"),
    (levers.line_pressure, (300.0, 3.0, 0.0), "bore"),
    (levers.cylinder_stroke, (-1e-6, 0.016), "volume"),
    (levers.series_pressure, (-1.0, 1e6, 1.0), "own foot"),
    (levers.series_pressure, (1e6, -1.0, 1.0), "inlet"),
    (levers.series_pressure, (1e6, 1e6, 1.1), "share that adds"),
    (levers.pedal_travel, (3.0, -0.01, 0.0), "stroke"),
    (hose.hose_length_with_slack, (0.0, 0.05), "path"),
    (hose.hose_length_with_slack, (0.5, -0.05), "slack"),
    (attitude.height, (1.0, 1.0, pi), "steeper than upright"),
    (attitude.height, (1.0, nan, 0.1), "plain numbers"),
    (attitude.height_above, (nan, 1.0), "plain numbers"),
    (attitude.column_pressure, (-0.1, 870.0), "negative height"),
    (attitude.column_pressure, (0.1, 0.0), "weighs something"),
    (tube_strength.specification_proof_pressure, (2e8, 0.006, 0.006), "bore has to be inside"),
    (tube_strength.yield_pressure, (0.0, 0.006, 0.001), "strength"),
    (compliance.shear_modulus, (7e10, 0.6), "Poisson's ratio"),
    (compliance.shear_modulus, (7e10, -0.1), "Poisson's ratio"),
    (compliance.growth_closed_ends, (1e6, 0.006, 0.001, 0.0, 0.3), "modulus"),
    (compliance.fluid_compression, (1e-5, 1e6, 0.0), "bulk modulus"),
    (compliance.piston_volume, (0.0, 1, 0.001), "piston diameter"),
    (compliance.wall_growth_volume, (1e-5, -0.01), "growth"),
    (mass.mass_of_length, (0.05, -1.0), "length"),
    (mass.mass_of_volume, (1e-5, 0.0), "density"),
    (bends.setback, (0.014, pi), "less than 180 degrees"),
    (bends.setback, (0.014, -0.1), "less than 180 degrees"),
    (bends.setback, (0.0, 0.1), "centreline radius"),
    (bends.arc_length, (0.014, -0.1), "bend angle"),
    (bends.extrados_wall, (0.001, 0.006, 0.003), "wider than the tube"),
    (bends.intrados_wall, (0.001, 0.006, 0.003), "wider than the tube"),
    (bends.bending_strain, (0.006, 0.003), "wider than the tube"),
    (bends.intrados_hoop_factor, (0.003, 0.003), "wider than the tube"),
    (bends.flare_allowance, (0.006, 0.0061, 0.6), "smaller than its tube"),
    (bends.flare_allowance, (0.009, 0.006, pi / 2), "right angle"),
    (bends.flare_allowance, (0.009, 0.006, 0.0), "right angle"),
    (bends.hole_for_bend, (0.003, 0.006, 0.001, 0.1), "wider than the tube"),
    (bends.hole_for_bend, (0.02, 0.006, 0.034, 0.1), "thinner than the inside"),
    (bends.hole_for_bend, (0.02, 0.006, 0.001, pi), "half a turn"),
    (bends.hole_for_lean, (0.006, 0.001, pi / 2), "along the panel"),
    (bends.hole_for_lean, (0.006, -0.001, 0.1), "thickness"),
    (threads.pitch_diameter_at_small_end, (0.01, 0.005), "coarser"),
    (threads.pitch_diameter_at_small_end, (0.06, 0.0254 / 7.9), "coarser"),
    (threads.effective_thread_length, (0.002, 0.001), "too small"),
    (threads.pitch_diameter_at_gauge_plane, (0.01, -0.001), "engagement"),
    (threads.engagement_turns, (0.01, 0.0), "pitch"),
    (threads.diameter_growth_per_turn, (0.0,), "pitch"),
    (trapped.freed_by_warmth, (1e-5, 8e-4, 3e-4, 280.0, 290.0), "grow more"),
    (trapped.freed_by_warmth, (1e-5, 8e-4, 2e-5, 290.0, 280.0), "warm temperature"),
    (trapped.pressure_that_makes_room, (1e-9, 0.0, 1e6), "what gives"),
    (trapped.degrees_until, (-1.0, 0.0, 1e5), "the limit"),
    (release.time_through_line, (2e-5, 870.0, 1.0, 0.003, 1e-6, 0.0), "pressure"),
    (release.release_time, (0.1, 1e5, 2e5), "less has to be left"),
    (release.release_time, (0.1, inf, 1e5), "less has to be left"),
    (release.release_time, (0.1, 1e5, 0.0), "left"),
    (release.damping_ratio, (2e-5, 870.0, 1.0, 0.003, 0.0, 1e6), "volume"),
    (release.share_taken_up, (1e-8, 0.0), "volume"),
    (release.wave_speed, (870.0, 0.0, 0.0, 1e6), "bulk modulus"),
    (release.echo_time, (1.0, 0.0), "speed of sound"),
    (viscosity.walther_number, (0.3e-6,), "above 0.3"),
    (viscosity.viscosity_between, (300.0, 310.0, 0.4, 310.0, 0.1), "below the warmer"),
    (viscosity.viscosity_between, (299.0, 300.0, 0.4, 310.0, 0.1), "not beyond"),
    (viscosity.viscosity_between, (311.0, 300.0, 0.4, 310.0, 0.1), "not beyond"),
    (viscosity.viscosity_between, (305.0, 300.0, 0.1, 310.0, 0.4), "thicker in the cold"),
    (laminar.laminar_pressure_drop, (2e-5, 870.0, 1.0, 0.0, 1e-6), "bore"),
    (laminar.laminar_pressure_drop, (2e-5, 870.0, 1.0, 0.003, -1e-6), "flow"),
    (laminar.reynolds_number, (1e-6, 0.003, 0.0), "viscosity"),
    (laminar.flow_at_pressure, (1e-6, 0.0, 1e5), "pressure drop"),
    (laminar.time_to_pass, (1e-5, 0.0), "flow"),
    (bubbles.bond_number, (870.0, 0.003, 0.0), "surface tension"),
    (bubbles.widest_bore_that_holds_air, (0.0, 0.03), "density"),
    (bubbles.buoyancy_number, (0.0, 2e-5), "bore"),
    (bubbles.bubble_speed_at_most, (0.0, 10.0), "Bond number"),
    (bubbles.rise_in_a_time, (-0.1, 0.003, 60.0), "speed"),
    (bubbles.sweeping_flow, (0.003, 1.6), "upright"),
    (bubbles.share_of_volume, (1e-5, 1.1), "nothing and all"),
    (temperature.nylon_strength_retained, (295.0,), "does not reach"),
    (temperature.nylon_strength_retained, (373.5,), "does not reach"),
    (temperature.nylon_strength_retained, (nan,), "does not reach"),
]


@pytest.mark.parametrize(("formula", "arguments", "message"), REFUSED)
def test_outside_its_validity_a_formula_refuses(formula, arguments, message):
    with pytest.raises(ValueError, match=message):
        formula(*arguments)


def test_the_ends_of_validity_still_count():
    assert bends.arc_length(0.014, 0.0) == 0
    assert bends.setback(0.014, 0.0) == 0
    assert bends.flare_allowance(0.006, 0.006, 1.3) == 0
    assert levers.lever_arm(0.1, 0.0) == 0
    assert levers.lever_arm(0.1, pi / 2) == 0.1
    assert levers.line_pressure(0.0, 3.0, 0.016) == 0
    assert levers.cylinder_stroke(0.0, 0.016) == 0
    assert tube_stress.hoop_stress_at_bore(0.0, 0.006, 0.001) == 0
    assert compliance.shear_modulus(3.0, 0.5) == 1
    assert compliance.shear_modulus(2.0, 0.0) == 1
    assert hose.hose_length_with_slack(0.3, 0.0) == 0.3
    assert threads.diameter_growth_per_turn(16.0) == 1
    assert threads.effective_thread_length(0.06, 0.0254 / 8) > 0
    assert threads.effective_thread_length(0.0021, 0.001) > 0
    assert attitude.height(1.0, 0.0, -pi / 2) == 1


def test_table_is_read_along_straight_lines():
    points = ((0.0, 1.0), (2.0, 5.0), (4.0, 3.0))
    places = (0.0, 0.5, 2.0, 3.0, 4.0)
    assert [temperature.interpolate(place, points) for place in places] == [1.0, 2.0, 5.0, 4.0, 3.0]
    assert temperature.interpolate(1.5, points[:2]) == 4.0
    for outside in (-1e-6, 4 + 1e-6):
        with pytest.raises(ValueError, match="does not reach"):
            temperature.interpolate(outside, points)


def test_table_reads_its_own_ends_in_spite_of_rounding():
    in_fahrenheit = (212 + 459.67) * 5 / 9
    assert temperature.nylon_strength_retained(math.nextafter(in_fahrenheit, inf)) == pytest.approx(0.37)
    assert temperature.nylon_strength_retained(math.nextafter(296.15, 0)) == pytest.approx(1.0)


@pytest.mark.parametrize("points", [(), ((1.0, 2.0),), ((1.0, 2.0), (1.0, 3.0)), ((2.0, 1.0), (1.0, 2.0))])
def test_table_has_to_rise(points):
    with pytest.raises(ValueError, match="have to rise"):
        temperature.interpolate(1.0, points)


def test_no_more_than_all_of_a_strength_is_kept():
    assert margin.kept(1000.0, 1.0) == 1000.0
    with pytest.raises(ValueError, match="more than all"):
        margin.kept(1000.0, 1.01)
