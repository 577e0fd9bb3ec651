"""The one list of rules, in the order in which findings are shown."""

from __future__ import annotations

from firmpedal.checks import (
    bends,
    clearance,
    fluids,
    heat,
    heights,
    joints,
    motion,
    pressure,
    reservoirs,
    stroke,
    support,
)
from firmpedal.checks.view import Rule

RULES: tuple[Rule, ...] = (
    Rule("joint-does-not-close", joints.joint_does_not_close),
    Rule("part-missing-between", joints.part_missing_between),
    Rule("flare-angle-mixed", joints.flare_angle_mixed),
    Rule("metric-and-pipe-thread", joints.metric_and_pipe_thread),
    Rule("metric-tube-in-inch-nut", joints.metric_tube_in_inch_nut),
    Rule("dash-sizes-differ", joints.dash_sizes_differ),
    Rule("pipe-dash-read-as-tube-dash", joints.pipe_dash_read_as_tube_dash),
    Rule("fitting-angle-not-known", joints.fitting_angle_not_known),
    Rule("joint-in-covered-length", joints.joint_in_covered_length),
    Rule("plastic-in-hot-place", heat.plastic_in_hot_place),
    Rule("rigid-line-between-moving-ends", motion.rigid_line_between_moving_ends),
    Rule("pressure-above-rating", pressure.pressure_above_rating),
    Rule("pressure-below-usual", pressure.pressure_below_usual),
    Rule("tube-yields", pressure.tube_yields),
    Rule("burst-margin-too-small", pressure.burst_margin_too_small),
    Rule("stroke-short", stroke.stroke_short),
    Rule("fluid-against-seals", fluids.fluid_against_seals),
    Rule("fluids-mixed", fluids.fluids_mixed),
    Rule("reservoir-too-small", reservoirs.reservoir_too_small),
    Rule("reservoir-overflows", reservoirs.reservoir_overflows),
    Rule("air-trap", heights.air_trap),
    Rule("line-above-reservoir", heights.line_above_reservoir),
    Rule("tube-cannot-be-bent", bends.tube_cannot_be_bent),
    Rule("bend-radius-below-minimum", bends.bend_radius_below_minimum),
    Rule("end-straight-too-short", bends.end_straight_too_short),
    Rule("straight-between-bends-too-short", bends.straight_between_bends_too_short),
    Rule("no-bend-in-rigid-line", bends.no_bend_in_rigid_line),
    Rule("clamp-spacing", support.clamp_spacing),
    Rule("only-tie-wraps", support.only_tie_wraps),
    Rule("covered-edge-chafes", heat.covered_edge_chafes),
    Rule("too-near-to-stay-clear", clearance.too_near_to_stay_clear),
    Rule("hose-bend-radius", motion.hose_bend_radius),
)
