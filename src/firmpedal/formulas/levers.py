"""Pedal levers and master cylinders: force, pressure, stroke and travel."""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require, require_not_negative, require_positive


def lever_arm(distance: float, angle: float) -> float:
    """Lever arm of a force about a pivot.

    a = r sin(theta)

    Args:
        distance: r, from the pivot to the point where the force acts [m].
        angle: theta, between the line of the force and the line from the pivot to that point, the
            smaller one of the two [rad].

    Returns:
        Perpendicular distance from the pivot to the line of the force, a [m].

    Valid: r >= 0, 0 <= theta <= pi/2; beyond a right angle take the supplement.
    Source: [firmpedal-derivation], perpendicular from a point to a line.
    """
    require_not_negative(distance, "the distance from the pivot")
    require(0 <= angle <= math.pi / 2, "the angle to the lever has to be between nothing and a right angle")
    return distance * math.sin(angle)


def lever_ratio(pad_arm: float, cylinder_arm: float) -> float:
    """Pedal ratio.

    i = a_p / a_c

    Args:
        pad_arm: a_p, lever arm of the foot's force about the pivot [m].
        cylinder_arm: a_c, lever arm of the master cylinder's push about the pivot [m].

    Returns:
        Pedal ratio, also pedal travel per master cylinder stroke, i [-].

    Valid: both arms above zero, a rigid lever, friction of the pivot left out.
    Source: [brake-design-theory], section 1.
    """
    require_positive(pad_arm, "the lever arm of the foot")
    require_positive(cylinder_arm, "the lever arm of the master cylinder")
    return pad_arm / cylinder_arm


def line_pressure(foot_force: float, lever_ratio: float, bore: float) -> float:
    """Line pressure made by a foot on a brake pedal.

    p = F i / (pi d_c^2 / 4)

    Args:
        foot_force: F, square to the pedal's lever arm [N].
        lever_ratio: i, pedal ratio [-].
        bore: d_c, master cylinder bore [m].

    Returns:
        Gauge pressure in the line, p [Pa].

    Valid: F >= 0, i > 0, d_c > 0; return spring and seal friction left out, so never too low.
    Source: [brake-basics], worked example of pedal force, ratio and cylinder area.
    """
    require_not_negative(foot_force, "the foot force")
    require_positive(lever_ratio, "the pedal ratio")
    require_positive(bore, "the master cylinder bore")
    return foot_force * lever_ratio / (math.pi * bore**2 / 4)


def series_pressure(own: float, inlet: float, added: float) -> float:
    """Line pressure of a master cylinder that takes its fluid from another one that is pressed as well.

    p = max(p_i, p_o + k p_i)

    Args:
        own: p_o, pressure that its own foot makes [Pa].
        inlet: p_i, pressure at its inlet [Pa].
        added: k, share of the inlet's pressure that pushes on the back of its piston [-].

    Returns:
        Gauge pressure at its outlet, p [Pa].

    Valid: p_o >= 0, p_i >= 0, 0 <= k <= 1. Forces on the piston: where its back lies in what the inlet
    brings, k = 1 - (rod diameter / bore)^2; where it does not, k = 0. Never under p_i: at rest, or pushed
    back, it lies open to its inlet.
    Source: [firmpedal-derivation], balance of the forces on the piston.
    """
    require_not_negative(own, "the pressure of its own foot")
    require_not_negative(inlet, "the pressure at the inlet")
    require(0 <= added <= 1, "the share that adds has to be between nothing and all")
    return max(inlet, own + added * inlet)


def pressure_pushed_behind(own: float, inlet: float, added: float) -> float:
    """What a master cylinder's piston presses with its own foot and what stands behind it, by itself.

    p = p_o + k p_i

    Args:
        own: p_o, pressure that its own foot makes [Pa].
        inlet: p_i, pressure at its inlet [Pa].
        added: k, share of the inlet's pressure that pushes on the back of its piston [-].

    Returns:
        Gauge pressure that the piston makes, p [Pa].

    Valid: p_o >= 0, p_i >= 0, 0 <= k <= 1; where the inlet's pressure is greater the piston is pushed back.
    Source: [firmpedal-derivation], balance of the forces on the piston.
    """
    require_not_negative(own, "the pressure of its own foot")
    require_not_negative(inlet, "the pressure at the inlet")
    require(0 <= added <= 1, "the share that adds has to be between nothing and all")
    return own + added * inlet


def rise_over_inlet(own: float, inlet: float, added: float) -> float:
    """By how much a foot raises what another seat has pressed through its cylinder before.

    r = max(0, p_o - (1 - k) p_i)

    Args:
        own: p_o, pressure that its own foot makes [Pa].
        inlet: p_i, pressure at its inlet, pressed before [Pa].
        added: k, share of the inlet's pressure that pushes on the back of its piston [-].

    Returns:
        Rise of the pressure at the outlet, r [Pa].

    Valid: p_o >= 0, p_i >= 0, 0 <= k <= 1; at rest the outlet lies open to the inlet.
    Source: [firmpedal-derivation], balance of the forces on the piston, less what stands there before.
    """
    return max(0.0, pressure_pushed_behind(own, inlet, added) - inlet)


def stroke_drawn_on(stroke: float, volume: float, added: float, bore: float) -> float:
    """Stroke of a cylinder that another seat's piston, going on, draws fluid from behind itself.

    s = s_1 + k V / (pi d_c^2 / 4)

    Args:
        stroke: s_1, of the cylinder pressed alone [m].
        volume: V, that the other seat's piston pushes out on top [m^3].
        added: k, share of that piston's area which lies in the inlet [-].
        bore: d_c, bore of the cylinder [m].

    Returns:
        Stroke of the cylinder s [m].

    Valid: s_1 >= 0, V >= 0, 0 <= k <= 1, d_c > 0; the pressure at the inlet stays as it is.
    Source: [firmpedal-derivation], volume balance of the space behind the other seat's piston.
    """
    require_not_negative(stroke, "the stroke")
    require(0 <= added <= 1, "the share that adds has to be between nothing and all")
    return stroke + added * cylinder_stroke(volume, bore)


def cylinder_stroke(volume: float, bore: float) -> float:
    """Master cylinder stroke that displaces a volume.

    s = V / (pi d_c^2 / 4)

    Args:
        volume: V, fluid to be displaced [m^3].
        bore: d_c, master cylinder bore [m].

    Returns:
        Stroke of the master cylinder s [m].

    Valid: V >= 0, d_c > 0; the stroke that closes the compensating port comes on top.
    Source: [brake-basics], worked example of displaced volume and cylinder area.
    """
    require_not_negative(volume, "the displaced volume")
    require_positive(bore, "the master cylinder bore")
    return volume / (math.pi * bore**2 / 4)


def pedal_travel(lever_ratio: float, stroke: float, free_stroke: float) -> float:
    """Pedal travel for a master cylinder stroke.

    x = i (s + s_0)

    Args:
        lever_ratio: i, pedal ratio [-].
        stroke: s, master cylinder stroke that displaces fluid [m].
        free_stroke: s_0, stroke that closes the compensating port and moves no fluid [m].

    Returns:
        Travel of the pad along its arc, x [m].

    Valid: i > 0, s >= 0, s_0 >= 0; the ratio stays the same through the travel.
    Source: [firmpedal-derivation], the lever ratio read as a ratio of travels.
    """
    require_positive(lever_ratio, "the pedal ratio")
    require_not_negative(stroke, "the stroke")
    require_not_negative(free_stroke, "the free stroke")
    return lever_ratio * (stroke + free_stroke)
