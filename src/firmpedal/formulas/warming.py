"""Heat of braking in one lump: how warm a disc gets, how it cools, what a dragging brake puts in."""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require, require_not_negative, require_positive


def warmed(start: float, energy: float, share: float, mass: float, specific_heat: float) -> float:
    """Temperature of a disc right after it has taken the energy of a stop.

    T = T_0 + E x / (m c)

    Args:
        start: T_0, before the stop [K].
        energy: E, that the wheel takes [J].
        share: x, of it that goes into the disc [-].
        mass: m, of the disc [kg].
        specific_heat: c, of its metal [J/kg K].

    Returns:
        Temperature T [K].

    Valid: T_0 > 0, E >= 0, 0 <= x <= 1, m > 0, c > 0; no heat is lost during the stop, so never too low.
    Source: [firmpedal-derivation], heat capacity.
    """
    require_positive(start, "the temperature before")
    require_not_negative(energy, "the energy")
    require(0 <= share <= 1, "the share has to be between nothing and all")
    require_positive(mass, "the mass")
    require_positive(specific_heat, "the specific heat")
    return start + energy * share / (mass * specific_heat)


def carried_to(measured: float, then: float, now: float) -> float:
    """A temperature that was measured in one air, carried to another: what it is above the air stays.

    T = T_m - T_a + T_n

    Args:
        measured: T_m, what was measured [K].
        then: T_a, air in which it was measured [K].
        now: T_n, air to which it is carried [K].

    Returns:
        Temperature T [K].

    Valid: all > 0; heat goes into the air as the difference, so that all that is above the air stays.
    Source: [firmpedal-derivation], Newton's cooling is linear.
    """
    for each, words in ((measured, "what was measured"), (then, "the air then"), (now, "the air now")):
        require_positive(each, words)
    return measured - then + now


def disc_mass_of_each(mass: float, calipers: float) -> float:
    """Mass of disc that each caliper warms, where several alike grip one disc.

    m_e = m / n

    Args:
        mass: m, of the whole disc [kg].
        calipers: n, that grip it [-].

    Returns:
        Mass for each caliper m_e [kg].

    Valid: m > 0, n >= 1.
    Source: [firmpedal-derivation], calipers alike put in like heat.
    """
    require_positive(mass, "the mass")
    require(calipers >= 1, "one caliper at least grips the disc")
    return mass / calipers


def disc_radius_of_each(radius: float, calipers: float) -> float:
    """Radius of a disc with the surface that each caliper has of one disc for its own.

    r_e = r / sqrt(n)

    Args:
        radius: r, of the whole disc [m].
        calipers: n, that grip it [-].

    Returns:
        Radius of a disc with one part of the surface r_e [m].

    Valid: r > 0, n >= 1.
    Source: [firmpedal-derivation], the surface goes with the square of the radius.
    """
    require_positive(radius, "the radius")
    require(calipers >= 1, "one caliper at least grips the disc")
    return radius / math.sqrt(calipers)


def drag_power(drag: float, speed: float, wheels: float) -> float:
    """Heat that each dragging brake makes while the aircraft taxies against it.

    P = D v / N

    Args:
        drag: D, that the brakes hold back, all wheels together [N].
        speed: v, of the taxiing [m/s].
        wheels: N, that share it [-].

    Returns:
        Power for each wheel P [W].

    Valid: D >= 0, v >= 0, N > 0.
    Source: [firmpedal-derivation], force times speed.
    """
    require_not_negative(drag, "the drag")
    require_not_negative(speed, "the speed")
    require_positive(wheels, "the number of braked wheels")
    return drag * speed / wheels


def stop_time(speed: float, braking: float) -> float:
    """Time of a stop at an even deceleration.

    t = V / a

    Args:
        speed: V, at which braking begins [m/s].
        braking: a, deceleration [m/s^2].

    Returns:
        Time t [s].

    Valid: V >= 0, a > 0.
    Source: [firmpedal-derivation], motion at constant deceleration.
    """
    require_not_negative(speed, "the speed")
    require_positive(braking, "the deceleration")
    return speed / braking
