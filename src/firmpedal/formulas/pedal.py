"""What a foot feels: springs, seals, and a lever whose arms change as it swings."""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require, require_not_negative, require_positive


def spring_force(at_rest: float, pressed: float, stroke: float, full_stroke: float) -> float:
    """Force of a return spring part of the way.

    S = S_0 + (S_1 - S_0) s / s_1

    Args:
        at_rest: S_0, force with the cylinder at rest [N].
        pressed: S_1, force at the end of the stroke [N].
        stroke: s, stroke so far [m].
        full_stroke: s_1, all of the stroke [m].

    Returns:
        Force of the spring S [N].

    Valid: forces >= 0, 0 <= s <= s_1, s_1 > 0; a coil spring, not yet solid.
    Source: [firmpedal-derivation], proportional to the stroke.
    """
    require_not_negative(at_rest, "the force of the spring at rest")
    require_not_negative(pressed, "the force of the spring when pressed")
    require_positive(full_stroke, "the whole stroke")
    require(0 <= stroke <= full_stroke, "the stroke has to be within the cylinder's")
    return at_rest + (pressed - at_rest) * stroke / full_stroke


def net_line_pressure(
    foot_force: float, lever_ratio: float, bore: float, spring_force: float, seal_friction: float
) -> float:
    """Line pressure made by a foot, less what return spring and seals take of it.

    p = (F i - S - R) / (pi d_c^2 / 4)

    Args:
        foot_force: F, square to the pedal's lever arm [N].
        lever_ratio: i, pedal ratio [-].
        bore: d_c, master cylinder bore [m].
        spring_force: S, of the return spring, along the cylinder [N].
        seal_friction: R, of the cylinder's seals as it is pressed, along the cylinder [N].

    Returns:
        Gauge pressure in the line, p [Pa].

    Valid: i > 0, d_c > 0, S >= 0, R >= 0, F i >= S + R.
    Source: [firmpedal-derivation], balance of forces on the piston.
    """
    require_not_negative(foot_force, "the foot force")
    require_positive(lever_ratio, "the pedal ratio")
    require_positive(bore, "the master cylinder bore")
    require_not_negative(spring_force, "the force of the spring")
    require_not_negative(seal_friction, "the friction of the seals")
    net = foot_force * lever_ratio - spring_force - seal_friction
    require(net >= 0, "the foot does not overcome return spring and seals")
    return net / (math.pi * bore**2 / 4)


def pad_force(
    pressure: float, lever_ratio: float, bore: float, spring_force: float, seal_friction: float
) -> float:
    """Force on the pad that makes a line pressure.

    F = (p pi d_c^2 / 4 + S + R) / i

    Args:
        pressure: p, gauge pressure in the line [Pa].
        lever_ratio: i, pedal ratio [-].
        bore: d_c, master cylinder bore [m].
        spring_force: S, of the return spring, along the cylinder [N].
        seal_friction: R, of the cylinder's seals as it is pressed, along the cylinder [N].

    Returns:
        Force square to the pedal's lever arm, F [N].

    Valid: p >= 0, i > 0, d_c > 0, S >= 0, R >= 0.
    Source: [firmpedal-derivation], balance of forces on the piston.
    """
    require_not_negative(pressure, "the gauge pressure")
    require_positive(lever_ratio, "the pedal ratio")
    require_positive(bore, "the master cylinder bore")
    require_not_negative(spring_force, "the force of the spring")
    require_not_negative(seal_friction, "the friction of the seals")
    return (pressure * math.pi * bore**2 / 4 + spring_force + seal_friction) / lever_ratio


def lever_opening(length: float, difference: float, total: float) -> float:
    """Angle at a lever's pivot between the cylinder's two pins.

    phi = 2 asin(sqrt((L^2 - d^2) / (s^2 - d^2)))

    Args:
        length: L, from pin to pin of the cylinder [m].
        difference: d, between the distances of the two pins from the pivot, the greater less the
            smaller [m].
        total: s, of the distances of the two pins from the pivot [m].

    Returns:
        Angle from one pin to the other, seen from the pivot, phi [rad].

    Valid: 0 <= d <= L <= s, d < s: a triangle.
    Source: [firmpedal-derivation], law of cosines for half the angle.
    """
    require_not_negative(difference, "the difference of the distances")
    require(
        difference <= length <= total < math.inf and difference < total,
        "cylinder and pivot have to make a triangle",
    )
    share = (length**2 - difference**2) / (total**2 - difference**2)
    return 2 * math.asin(math.sqrt(min(share, 1.0)))
