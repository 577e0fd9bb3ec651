"""Where each formula is tried: the range of every argument, and which way the result moves with it.

UP and DOWN say that the result grows or shrinks with the argument everywhere in the range; EITHER
that it goes one way or the other depending on the other arguments, but never turns back. Ranges
that go together are chosen so that every combination is valid: the thickest wall still leaves a
bore in the smallest tube.
"""

from math import radians
from typing import NamedTuple

from firmpedal.formulas import (
    air,
    attitude,
    bends,
    braking,
    bubbles,
    compliance,
    grip,
    hose,
    laminar,
    levers,
    margin,
    mass,
    pedal,
    release,
    run_up,
    temperature,
    thread_crests,
    threads,
    trapped,
    tube_strength,
    tube_stress,
    viscosity,
    warming,
)

UP, DOWN, EITHER = 1, -1, 0


class Range(NamedTuple):
    low: float
    high: float
    way: int


PRESSURE = Range(1e4, 3e7, UP)
STRENGTH = Range(1e7, 1e9, UP)
LENGTH = Range(0.01, 4, UP)
VOLUME = Range(1e-8, 1e-3, UP)
DENSITY = Range(500, 9000, UP)
POISSON = Range(0, 0.5, EITHER)
STIFFNESS = Range(1e8, 3e11, DOWN)
RADIUS = Range(0.0095, 0.2, UP)
BORE = Range(0.008, 0.06, UP)
NOSE_UP = Range(0, radians(30), DOWN)


def _tube(outside_diameter, wall_thickness):
    """The range of tube, from tiny to stout, with the ways the result moves."""
    return {
        "outside_diameter": Range(0.003, 0.03, outside_diameter),
        "wall_thickness": Range(0.0002, 0.00149, wall_thickness),
    }


def _growth(modulus):
    return {"pressure": PRESSURE, **_tube(UP, DOWN), modulus: STIFFNESS}


_FLARE = {
    "flare_diameter": Range(0.009, 0.02, UP),
    "outside_diameter": Range(0.002, 0.009, DOWN),
    "half_angle": Range(radians(1), radians(89), UP),
}
_BENT = {"wall_thickness": Range(0.0002, 0.0014, UP)}
_THREAD = {"outside_diameter": Range(0.01, 0.1, UP)}
_LINE_BORE = Range(0.004, 0.012, UP)  # wide enough for a bubble to rise in any fluid below
_TENSION = Range(0.02, 0.035, UP)
_FLUID_DENSITY = Range(800, 1100, UP)
_VISCOSITY = Range(2e-6, 3e-3, UP)
_FLOW = Range(1e-8, 1e-4, UP)

TORQUE = Range(1, 500, UP)
MASS = Range(200, 3000, UP)
FRICTION = Range(0.05, 0.9, UP)
SPEED = Range(5, 60, UP)
BRAKING = Range(0.1, 12, UP)

DOMAINS = {
    release.time_through_line: {
        "viscosity": _VISCOSITY,
        "density": _FLUID_DENSITY,
        "length": LENGTH,
        "bore": _LINE_BORE._replace(way=DOWN),
        "volume": VOLUME,
        "pressure": PRESSURE._replace(way=DOWN),
    },
    release.release_time: {
        "time_constant": Range(1e-4, 10, UP),
        "from_pressure": Range(1e6, 3e7, UP),
        "to_pressure": Range(1e4, 9e5, DOWN),
    },
    release.damping_ratio: {
        "viscosity": _VISCOSITY,
        "density": _FLUID_DENSITY,
        "length": LENGTH,
        "bore": _LINE_BORE._replace(way=DOWN),
        "volume": VOLUME,
        "pressure": PRESSURE._replace(way=DOWN),
    },
    release.share_taken_up: {"taken": VOLUME, "volume": VOLUME._replace(way=DOWN)},
    release.wave_speed: {
        "density": _FLUID_DENSITY._replace(way=DOWN),
        "bulk_modulus": Range(1e9, 3e9, UP),
        "growth": Range(0, 0.1, DOWN),
        "pressure": PRESSURE,
    },
    release.echo_time: {"length": LENGTH, "wave_speed": Range(100, 1500, DOWN)},
    trapped.freed_by_warmth: {
        "volume": VOLUME,
        "expansion": Range(7e-4, 1e-3, UP),
        "wall_expansion": Range(0, 2e-4, DOWN),
        "cool_temperature": Range(230, 280, DOWN),
        "warm_temperature": Range(290, 340, UP),
    },
    trapped.pressure_that_makes_room: {
        "freed": VOLUME,
        "taken": VOLUME._replace(way=DOWN),
        "reference_pressure": PRESSURE,
    },
    trapped.degrees_until: {
        "limit": Range(5e6, 3e7, UP),
        "start": Range(0, 4.9e6, DOWN),
        "rise": Range(1e4, 1e6, DOWN),
    },
    viscosity.walther_number: {"viscosity": _VISCOSITY},
    viscosity.viscosity_between: {
        "temperature": Range(260, 300, DOWN),
        "colder": Range(220, 255, UP),
        "colder_number": Range(0.3, 0.55, UP),
        "warmer": Range(305, 380, UP),
        "warmer_number": Range(-0.2, 0.25, UP),
    },
    laminar.tube_bore: _tube(UP, DOWN),
    laminar.laminar_pressure_drop: {
        "viscosity": _VISCOSITY,
        "density": _FLUID_DENSITY,
        "length": LENGTH,
        "bore": _LINE_BORE._replace(way=DOWN),
        "flow": _FLOW,
    },
    laminar.reynolds_number: {
        "flow": _FLOW,
        "bore": _LINE_BORE._replace(way=DOWN),
        "viscosity": _VISCOSITY._replace(way=DOWN),
    },
    laminar.flow_at_pressure: {"flow": _FLOW, "drop": PRESSURE._replace(way=DOWN), "pressure": PRESSURE},
    laminar.time_to_pass: {"volume": VOLUME, "flow": _FLOW._replace(way=DOWN)},
    bubbles.bond_number: {
        "density": _FLUID_DENSITY,
        "bore": _LINE_BORE,
        "surface_tension": _TENSION._replace(way=DOWN),
    },
    bubbles.widest_bore_that_holds_air: {
        "density": _FLUID_DENSITY._replace(way=DOWN),
        "surface_tension": _TENSION,
    },
    bubbles.buoyancy_number: {"bore": _LINE_BORE, "viscosity": _VISCOSITY._replace(way=DOWN)},
    bubbles.bubble_speed_at_most: {"bond": Range(0.85, 10, UP), "buoyancy": Range(1, 500, UP)},
    bubbles.rise_in_a_time: {
        "froude": Range(0.001, 0.35, UP),
        "bore": _LINE_BORE,
        "time": Range(1, 1000, UP),
    },
    bubbles.sweeping_flow: {"bore": _LINE_BORE, "down_angle": Range(0, radians(90), UP)},
    bubbles.share_of_volume: {"volume": VOLUME, "share": Range(0, 1, UP)},
    levers.lever_arm: {"distance": LENGTH, "angle": Range(0, radians(90), UP)},
    levers.lever_ratio: {"pad_arm": LENGTH, "cylinder_arm": Range(0.02, 0.3, DOWN)},
    levers.line_pressure: {
        "foot_force": Range(0, 2000, UP),
        "lever_ratio": Range(0.5, 8, UP),
        "bore": BORE._replace(way=DOWN),
    },
    levers.series_pressure: {
        "own": PRESSURE,
        "inlet": PRESSURE,
        "added": Range(0, 1, UP),
    },
    levers.pressure_pushed_behind: {"own": PRESSURE, "inlet": PRESSURE, "added": Range(0, 1, UP)},
    levers.rise_over_inlet: {
        "own": PRESSURE,
        "inlet": PRESSURE._replace(way=DOWN),
        "added": Range(0, 1, UP),
    },
    levers.stroke_drawn_on: {
        "stroke": Range(0, 0.05, UP),
        "volume": VOLUME,
        "added": Range(0, 1, UP),
        "bore": BORE._replace(way=DOWN),
    },
    levers.cylinder_stroke: {"volume": VOLUME, "bore": BORE._replace(way=DOWN)},
    levers.pedal_travel: {
        "lever_ratio": Range(0.5, 8, UP),
        "stroke": Range(0, 0.05, UP),
        "free_stroke": Range(0, 0.01, UP),
    },
    hose.hose_length_with_slack: {"path": LENGTH, "slack": Range(0, 0.5, UP)},
    hose.hose_volume: {"bore": Range(0.002, 0.02, UP), "length": LENGTH},
    hose.measured_swelling: {
        "taken": Range(0, 1e-6, UP),
        "pressure": PRESSURE,
        "reference_pressure": Range(1e6, 3e7, DOWN),
    },
    hose.hose_expansion: {
        "expansion": Range(0, 1e-5, UP),
        "length": LENGTH,
        "pressure": PRESSURE,
        "reference_pressure": Range(1e6, 3e7, DOWN),
    },
    # Points well behind the datum, so that they stay on one side of their turning point.
    attitude.height: {
        "aft": Range(0.5, 4, EITHER),
        "up": Range(-1, 1, UP),
        "nose_up_angle": Range(radians(-20), radians(20), DOWN),
    },
    attitude.height_above: {"upper": Range(-3, 3, UP), "lower": Range(-3, 3, DOWN)},
    attitude.column_pressure: {"height": Range(0.001, 3, UP), "density": DENSITY},
    tube_stress.hoop_stress_at_bore: {"pressure": PRESSURE, **_tube(UP, DOWN)},
    tube_stress.radial_stress_at_bore: {"pressure": PRESSURE._replace(way=DOWN)},
    tube_stress.axial_stress_closed_ends: {"pressure": PRESSURE, **_tube(UP, DOWN)},
    tube_stress.von_mises_at_bore: {"pressure": PRESSURE, **_tube(UP, DOWN)},
    tube_stress.tresca_at_bore: {"pressure": PRESSURE, **_tube(UP, DOWN)},
    tube_stress.barlow_stress: {"pressure": PRESSURE, **_tube(UP, DOWN)},
    tube_stress.mean_diameter_stress: {"pressure": PRESSURE, **_tube(UP, DOWN)},
    tube_strength.yield_pressure: {"yield_strength": STRENGTH, **_tube(DOWN, UP)},
    tube_strength.barlow_pressure: {"strength": STRENGTH, **_tube(DOWN, UP)},
    tube_strength.burst_pressure: {"ultimate_strength": STRENGTH, **_tube(DOWN, UP)},
    tube_strength.mean_diameter_pressure: {"strength": STRENGTH, **_tube(DOWN, UP)},
    tube_strength.specification_proof_pressure: {
        "strength": STRENGTH,
        "outside_diameter": Range(0.004, 0.03, UP),
        "bore": Range(0.001, 0.0039, DOWN),
    },
    compliance.tube_volume: {**_tube(UP, DOWN), "length": LENGTH},
    compliance.shear_modulus: {"modulus": STIFFNESS._replace(way=UP), "poisson_ratio": Range(0, 0.5, DOWN)},
    compliance.growth_closed_ends: {**_growth("modulus"), "poisson_ratio": POISSON},
    compliance.growth_open_ends: {**_growth("modulus"), "poisson_ratio": POISSON},
    compliance.growth_fixed_ends: {**_growth("shear_modulus"), "poisson_ratio": Range(0, 0.5, DOWN)},
    compliance.wall_growth_volume: {"volume": VOLUME, "growth": Range(0, 0.2, UP)},
    compliance.fluid_compression: {
        "volume": VOLUME,
        "pressure": PRESSURE,
        "bulk_modulus": Range(5e8, 5e9, DOWN),
    },
    compliance.piston_volume: {"bore": BORE, "count": Range(1, 4, UP), "travel": Range(0, 0.01, UP)},
    compliance.give_volume: {
        "bore": BORE,
        "count": Range(1, 4, UP),
        "travel": Range(0, 0.001, UP),
        "pressure": PRESSURE,
        "reference_pressure": Range(1e6, 3e7, DOWN),
    },
    # Air long pressed together stops moving, so not more than the share of it that can be felt.
    air.free_air_taken: {
        "volume": VOLUME,
        "pressure": Range(1e4, 1e6, UP),
        "ambient_pressure": Range(7e4, 1.1e5, DOWN),
        "exponent": Range(1, 1.4, DOWN),
    },
    air.volume_with_air: {
        "air_share": Range(0.01, 0.9, DOWN),
        "pressure": Range(1e4, 1e6, DOWN),
        "bulk_modulus": Range(1e7, 5e8, UP),
        "ambient_pressure": Range(7e4, 1.1e5, UP),
        "exponent": Range(1, 1.4, UP),
    },
    air.modulus_with_air: {
        "air_share_at_pressure": Range(0.001, 0.5, DOWN),
        "absolute_pressure": Range(1e5, 1e7, UP),
        "bulk_modulus": Range(5e7, 5e9, UP),
        "exponent": Range(1, 1.4, UP),
    },
    pedal.spring_force: {
        "at_rest": Range(0, 50, UP),
        "pressed": Range(51, 200, UP),
        "stroke": Range(0, 0.02, EITHER),
        "full_stroke": Range(0.021, 0.05, EITHER),
    },
    pedal.net_line_pressure: {
        "foot_force": Range(300, 2000, UP),
        "lever_ratio": Range(1, 8, UP),
        "bore": BORE._replace(way=DOWN),
        "spring_force": Range(0, 150, DOWN),
        "seal_friction": Range(0, 100, DOWN),
    },
    pedal.pad_force: {
        "pressure": Range(1e4, 1e6, UP),
        "lever_ratio": Range(0.5, 8, DOWN),
        "bore": BORE,
        "spring_force": Range(0, 150, UP),
        "seal_friction": Range(0, 100, UP),
    },
    pedal.lever_opening: {
        "length": Range(0.11, 0.19, UP),
        "difference": Range(0.02, 0.10, DOWN),
        "total": Range(0.2, 0.5, DOWN),
    },
    mass.tube_mass_per_length: {**_tube(UP, UP), "density": DENSITY},
    mass.fluid_volume_per_length: _tube(UP, DOWN),
    mass.mass_of_length: {"mass_per_length": Range(0.001, 2, UP), "length": LENGTH},
    mass.mass_of_volume: {"volume": VOLUME, "density": DENSITY},
    bends.setback: {"centreline_radius": RADIUS, "bend_angle": Range(0, radians(175), UP)},
    bends.arc_length: {"centreline_radius": RADIUS, "bend_angle": Range(0, radians(360), UP)},
    bends.extrados_wall: {
        **_BENT,
        "outside_diameter": Range(0.003, 0.018, DOWN),
        "centreline_radius": RADIUS,
    },
    bends.intrados_wall: {
        **_BENT,
        "outside_diameter": Range(0.003, 0.018, UP),
        "centreline_radius": RADIUS._replace(way=DOWN),
    },
    bends.bending_strain: {
        "outside_diameter": Range(0.003, 0.018, UP),
        "centreline_radius": RADIUS._replace(way=DOWN),
    },
    bends.intrados_hoop_factor: {
        "centreline_radius": RADIUS._replace(way=DOWN),
        "mean_radius": Range(0.001, 0.009, UP),
    },
    bends.extrados_hoop_factor: {"centreline_radius": RADIUS, "mean_radius": Range(0.001, 0.009, DOWN)},
    bends.flare_allowance: _FLARE,
    bends.hole_for_bend: {
        "centreline_radius": Range(0.02, 0.2, DOWN),
        "outside_diameter": Range(0.003, 0.03, UP),
        "panel_thickness": Range(0, 0.009, UP),
        "bend_angle": Range(0, 3.1, UP),
    },
    bends.hole_for_lean: {
        "outside_diameter": Range(0.003, 0.03, UP),
        "panel_thickness": Range(0, 0.03, UP),
        "lean": Range(0, 1.5, UP),
    },
    threads.pitch_diameter_at_small_end: {**_THREAD, "pitch": Range(0.0009, 0.0031, DOWN)},
    threads.effective_thread_length: {**_THREAD, "pitch": Range(0.0009, 0.0031, UP)},
    threads.pitch_diameter_at_gauge_plane: {
        "small_end_pitch_diameter": Range(0.008, 0.1, UP),
        "hand_engagement": Range(0, 0.02, UP),
    },
    threads.engagement_turns: {"engagement": Range(0, 0.02, UP), "pitch": Range(0.0009, 0.0031, DOWN)},
    threads.diameter_growth_per_turn: {"pitch": Range(0.0009, 0.0031, UP)},
    thread_crests.least_external_crest: {
        "major_diameter": Range(0.005, 0.02, UP),
        "pitch": Range(0.0009, 0.0016, DOWN),
        "allowance": Range(0, 1e-4, DOWN),
    },
    thread_crests.internal_crest: {
        "crest_diameter": Range(0.005, 0.02, UP),
        "thread_height": Range(0.0004, 0.002, DOWN),
    },
    thread_crests.play_of_crests: {"pitch": Range(0.0009, 0.0031, UP), "share": Range(0, 0.5, UP)},
    thread_crests.growth_along_taper: {"length": Range(0, 0.02, UP), "taper": Range(0, 0.1, UP)},
    thread_crests.gap_under_template: {
        "edge_diameter": Range(0.0065, 0.02, UP),
        "inner_diameter": Range(0.002, 0.006, DOWN),
        "angle": Range(radians(20), radians(40), DOWN),
        "other_angle": Range(radians(41), radians(60), UP),
    },
    margin.factor: {"strength": STRENGTH, "load": Range(1e4, 3e7, DOWN)},
    margin.kept: {"strength": STRENGTH, "share": Range(0, 1, UP)},
    trapped.trapped_pressure_rise: {
        "expansion": Range(1e-4, 2e-3, UP),
        "bulk_modulus": Range(5e8, 5e9, UP),
        "cool_temperature": Range(230, 290, DOWN),
        "warm_temperature": Range(291, 360, UP),
    },
    braking.clamp_force: {"pressure": PRESSURE, "bore": BORE, "count": Range(1, 4, UP)},
    braking.mean_radius: {"inner_radius": Range(0.02, 0.06, UP), "outer_radius": Range(0.061, 0.2, UP)},
    braking.new_pad_radius: {"inner_radius": Range(0.02, 0.06, UP), "outer_radius": Range(0.061, 0.2, UP)},
    braking.brake_torque: {
        "clamp": Range(0, 20000, UP),
        "friction": FRICTION,
        "effective_radius": Range(0.03, 0.2, UP),
    },
    braking.drag_at_ground: {"torque": TORQUE, "rolling_radius": Range(0.1, 0.4, DOWN)},
    braking.deceleration: {"drag": Range(0, 9000, UP), "mass": MASS._replace(way=DOWN)},
    braking.drag_needed: {"wanted": BRAKING, "mass": MASS},
    braking.pressure_needed: {
        "drag": Range(0, 9000, UP),
        "trial_drag": Range(10, 9000, DOWN),
        "trial_pressure": Range(1e4, 1e7, UP),
    },
    braking.foot_needed: {
        "drag": Range(0, 9000, UP),
        "trial_drag": Range(10, 9000, DOWN),
        "trial_foot": Range(1, 2000, UP),
    },
    braking.pressure_at_foot: {
        "foot": Range(0, 2000, UP),
        "trial_pressure": Range(1e4, 1e7, UP),
        "trial_foot": Range(1, 2000, DOWN),
    },
    braking.drag_of_one_wheel: {"wanted": BRAKING, "mass": MASS, "wheels": Range(1, 4, DOWN)},
    braking.share_of_other: {"part": TORQUE, "other": TORQUE._replace(way=DOWN)},
    braking.stop_distance: {"speed": SPEED, "braking": BRAKING._replace(way=DOWN)},
    braking.lining_friction: {
        "torque": TORQUE,
        "clamp": Range(100, 20000, DOWN),
        "effective_radius": Range(0.03, 0.2, DOWN),
    },
    grip.grip_limit_nosewheel: {
        "friction": FRICTION,
        "ahead": Range(0, 1.4, DOWN),
        "wheelbase": Range(1.5, 6, UP),
        "height": Range(0.3, 1.5, DOWN),
    },
    grip.grip_limit_tailwheel: {
        "friction": FRICTION,
        "behind": Range(0, 1.4, DOWN),
        "wheelbase": Range(1.5, 6, EITHER),
        "height": Range(0.3, 1.5, UP),
    },
    grip.nose_over_limit: {"behind": Range(0.05, 2, UP), "height": Range(0.3, 2, DOWN)},
    grip.lesser: {"one": Range(1, 10, UP), "other": Range(2, 9, UP)},
    grip.distance_by_weights: {
        "wheelbase": Range(1, 6, UP),
        "third_weight": Range(1, 300, UP),
        "main_weight": Range(100, 2000, DOWN),
    },
    grip.grip_standing: {
        "friction": FRICTION,
        "mass": MASS,
        "distance": Range(0, 1.4, DOWN),
        "wheelbase": Range(1.5, 6, UP),
    },
    grip.grip_tail_up: {"friction": FRICTION},
    run_up.forward_pull: {"thrust": Range(0, 1e4, UP), "nose_up": NOSE_UP},
    run_up.pull_held_nosewheel: {
        "friction": FRICTION,
        "mass": MASS,
        "ahead": Range(0, 1.4, DOWN),
        "wheelbase": Range(1.5, 6, UP),
        "height": Range(0.3, 3, DOWN),
        "nose_up": NOSE_UP,
    },
    run_up.pull_held_tailwheel: {
        "friction": FRICTION,
        "mass": MASS,
        "behind": Range(0, 1.4, DOWN),
        "wheelbase": Range(3, 8, UP),
        "height": Range(0.3, 2.5, UP),
        "nose_up": NOSE_UP,
    },
    run_up.pull_that_lifts_the_tail: {
        "mass": MASS,
        "behind": Range(0, 1.4, UP),
        "height": Range(0.3, 3, DOWN),
    },
    grip.stop_energy: {"mass": MASS, "speed": SPEED, "wheels": Range(1, 4, DOWN)},
    grip.rule_energy: {"mass": MASS, "speed": SPEED, "wheels": Range(1, 4, DOWN)},
    warming.warmed: {
        "start": Range(230, 330, UP),
        "energy": Range(1e3, 2e5, UP),
        "share": Range(0, 1, UP),
        "mass": Range(0.3, 5, DOWN),
        "specific_heat": Range(400, 1100, DOWN),
    },
    warming.carried_to: {
        "measured": Range(280, 600, UP),
        "then": Range(240, 279, DOWN),
        "now": Range(240, 320, UP),
    },
    warming.disc_mass_of_each: {"mass": Range(0.3, 5, UP), "calipers": Range(1, 4, DOWN)},
    warming.disc_radius_of_each: {"radius": Range(0.05, 0.2, UP), "calipers": Range(1, 4, DOWN)},
    warming.drag_power: {"drag": Range(0, 900, UP), "speed": SPEED, "wheels": Range(1, 4, DOWN)},
    warming.stop_time: {"speed": SPEED, "braking": BRAKING._replace(way=DOWN)},
    temperature.nylon_strength_retained: {"temperature": Range(296.15, 373.15, DOWN)},
}
