"""From line pressure to drag at the ground: clamp, brake torque, tyre, and the same way back."""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require, require_not_negative, require_positive


def clamp_force(pressure: float, bore: float, count: float) -> float:
    """Force with which a caliper presses each pad on the disc.

    N = p n (pi d^2 / 4)

    Args:
        pressure: p, gauge pressure at the caliper [Pa].
        bore: d, of one piston [m].
        count: n, pistons on one side of the disc [-].

    Returns:
        Clamping force N [N].

    Valid: p >= 0, d > 0, n > 0; the pistons of one side only, the other side gives the reaction; seal
        friction left out.
    Source: [firmpedal-derivation], pressure times area, and the balance of the caliper.
    """
    require_not_negative(pressure, "the pressure")
    require_positive(bore, "the bore of the pistons")
    require_positive(count, "the count of pistons")
    return pressure * count * math.pi * bore**2 / 4


def mean_radius(inner_radius: float, outer_radius: float) -> float:
    """Effective radius of worn-in pads: they wear evenly, so that pressure is greatest inside.

    r_e = (r_i + r_o) / 2

    Args:
        inner_radius: r_i, from the axle to the inner edge of the pads [m].
        outer_radius: r_o, from the axle to their outer edge [m].

    Returns:
        Effective radius r_e [m].

    Valid: 0 < r_i < r_o.
    Source: [firmpedal-derivation], friction moment of a ring sector that wears evenly.
    """
    _require_ring(inner_radius, outer_radius)
    return (inner_radius + outer_radius) / 2


def new_pad_radius(inner_radius: float, outer_radius: float) -> float:
    """Effective radius of new pads: the pressure is even all over them.

    r_e = 2 / 3 (r_o^3 - r_i^3) / (r_o^2 - r_i^2)

    Args:
        inner_radius: r_i, from the axle to the inner edge of the pads [m].
        outer_radius: r_o, from the axle to their outer edge [m].

    Returns:
        Effective radius r_e [m].

    Valid: 0 < r_i < r_o, pads that are sectors of a ring.
    Source: [firmpedal-derivation], friction moment of a ring sector under even pressure.
    """
    _require_ring(inner_radius, outer_radius)
    return 2 / 3 * (outer_radius**3 - inner_radius**3) / (outer_radius**2 - inner_radius**2)


def _require_ring(inner_radius: float, outer_radius: float) -> None:
    require_positive(inner_radius, "the inner radius of the pads")
    require(
        inner_radius < outer_radius < math.inf,
        "the outer edge of the pads has to be outside their inner edge",
    )


def brake_torque(clamp: float, friction: float, effective_radius: float) -> float:
    """Torque of one disc brake: both faces of the disc rub.

    T = 2 mu N r_e

    Args:
        clamp: N, force that presses each pad on the disc [N].
        friction: mu, of lining on disc [-].
        effective_radius: r_e, where the friction acts [m].

    Returns:
        Brake torque T [N m].

    Valid: N >= 0, mu >= 0, r_e > 0; one disc.
    Source: [brake-torque-article], T = 2 mu F r for the two faces of a disc.
    """
    require_not_negative(clamp, "the clamping force")
    require_not_negative(friction, "the friction of the lining")
    require_positive(effective_radius, "the effective radius")
    return 2 * friction * clamp * effective_radius


def drag_at_ground(torque: float, rolling_radius: float) -> float:
    """Drag that a brake makes where its tyre meets the ground.

    D = T / r

    Args:
        torque: T, of the brake [N m].
        rolling_radius: r, from the axle to the ground [m].

    Returns:
        Drag D [N].

    Valid: T >= 0, r > 0, the wheel turns or only just does not.
    Source: [firmpedal-derivation], moments about the axle.
    """
    require_not_negative(torque, "the torque")
    require_positive(rolling_radius, "the radius of the tyre")
    return torque / rolling_radius


def deceleration(drag: float, mass: float) -> float:
    """Deceleration by a drag.

    a = D / m

    Args:
        drag: D, of all braked wheels together [N].
        mass: m, of the aircraft [kg].

    Returns:
        Deceleration a [m/s^2].

    Valid: D >= 0, m > 0; the brakes alone, no air drag and no rolling drag.
    Source: [firmpedal-derivation], Newton's second law.
    """
    require_not_negative(drag, "the drag")
    require_positive(mass, "the weight")
    return drag / mass


def drag_needed(wanted: float, mass: float) -> float:
    """Drag that a wanted deceleration needs.

    D = a m

    Args:
        wanted: a, deceleration [m/s^2].
        mass: m, of the aircraft [kg].

    Returns:
        Drag of all braked wheels together D [N].

    Valid: a >= 0, m > 0; the brakes alone.
    Source: [firmpedal-derivation], Newton's second law.
    """
    require_not_negative(wanted, "the deceleration")
    require_positive(mass, "the weight")
    return wanted * mass


def pressure_needed(drag: float, trial_drag: float, trial_pressure: float) -> float:
    """Pressure at the brakes for a drag, from what they make of another pressure.

    p = p_1 D / D_1

    Args:
        drag: D, that is wanted [N].
        trial_drag: D_1, that the brakes make [N].
        trial_pressure: p_1, gauge pressure at every brake that makes it [Pa].

    Returns:
        Gauge pressure at every brake p [Pa].

    Valid: D >= 0, D_1 > 0, p_1 > 0; drag in proportion to the pressure: friction of the caliper's seals
        left out.
    Source: [firmpedal-derivation], drag in proportion to the pressure at the brakes.
    """
    require_not_negative(drag, "the drag")
    require_positive(trial_drag, "the drag of the brakes")
    require_positive(trial_pressure, "the pressure")
    return trial_pressure * drag / trial_drag


def stop_distance(speed: float, braking: float) -> float:
    """Distance of a stop at an even deceleration.

    s = V^2 / (2 a)

    Args:
        speed: V, at which braking begins [m/s].
        braking: a, deceleration [m/s^2].

    Returns:
        Distance s [m].

    Valid: V >= 0, a > 0, level ground, no wind.
    Source: [firmpedal-derivation], motion at constant deceleration.
    """
    require_not_negative(speed, "the speed")
    require_positive(braking, "the deceleration")
    return speed**2 / (2 * braking)


def lining_friction(torque: float, clamp: float, effective_radius: float) -> float:
    """Friction of the lining that a stated torque asks for.

    mu = T / (2 N r_e)

    Args:
        torque: T, as stated [N m].
        clamp: N, force that presses each pad on the disc [N].
        effective_radius: r_e, where the friction acts [m].

    Returns:
        Friction of lining on disc, mu [-].

    Valid: T >= 0, N > 0, r_e > 0; one disc, two faces.
    Source: [brake-torque-article], T = 2 mu F r solved for the friction.
    """
    require_not_negative(torque, "the torque")
    require_positive(clamp, "the clamping force")
    require_positive(effective_radius, "the effective radius")
    return torque / (2 * clamp * effective_radius)
