"""How fast pressure comes and goes at the end of a line: time constants, sound, blows."""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require, require_not_negative, require_positive


def time_through_line(
    viscosity: float, density: float, length: float, bore: float, volume: float, pressure: float
) -> float:
    """Time that a volume takes through a round line under a steady pressure; also the line's time constant.

    t = 128 rho nu L V / (pi d^4 p)

    Args:
        viscosity: nu, kinematic viscosity of the fluid [m^2/s].
        density: rho, of the fluid [kg/m^3].
        length: L, of the line [m].
        bore: d, of the line [m].
        volume: V, that passes; for a time constant what all behind the line takes up at p [m^3].
        pressure: p, between the line's ends [Pa].

    Returns:
        Time t [s].

    Valid: laminar flow, inertia left out; nu, rho, d, p > 0, L, V >= 0.
    Source: [firmpedal-derivation], volume over the flow of Hagen and Poiseuille.
    """
    require_positive(viscosity, "the viscosity")
    require_positive(density, "the density")
    require_not_negative(length, "the length")
    require_positive(bore, "the bore")
    require_not_negative(volume, "the volume")
    require_positive(pressure, "the pressure")
    return 128 * density * viscosity * length * volume / (math.pi * bore**4 * pressure)


def release_time(time_constant: float, from_pressure: float, to_pressure: float) -> float:
    """Time in which the pressure at the end of a line falls once the other end is let go.

    t = tau ln(p_1 / p_2)

    Args:
        time_constant: tau, of line and end [s].
        from_pressure: p_1, that stood there [Pa].
        to_pressure: p_2, that is left [Pa].

    Returns:
        Time t [s].

    Valid: one time constant, all give in proportion to pressure; p_1 >= p_2 > 0, tau >= 0.
    Source: [firmpedal-derivation], decay with one time constant.
    """
    require_not_negative(time_constant, "the time constant")
    require_positive(to_pressure, "the pressure that is left")
    require(to_pressure <= from_pressure < math.inf, "less has to be left than there was")
    return time_constant * math.log(from_pressure / to_pressure)


def damping_ratio(
    viscosity: float, density: float, length: float, bore: float, volume: float, pressure: float
) -> float:
    """Damping of the pressure at the end of a line; below 1 it overshoots a step, and inertia sets the pace.

    z = 64 rho nu L / (pi d^4) sqrt(pi d^2 V / (4 rho L p))

    Args:
        viscosity: nu, kinematic viscosity of the fluid [m^2/s].
        density: rho, of the fluid [kg/m^3].
        length: L, of the line [m].
        bore: d, of the line [m].
        volume: V, that the end takes up at p [m^3].
        pressure: p, at which that is given [Pa].

    Returns:
        Damping ratio z [-].

    Valid: laminar friction, one line with an end that gives more than the line; all > 0.
    Source: [firmpedal-derivation], half the resistance against the root of inertance over capacity.
    """
    for number, name in (
        (viscosity, "the viscosity"),
        (density, "the density"),
        (length, "the length"),
        (bore, "the bore"),
        (volume, "the volume"),
        (pressure, "the pressure"),
    ):
        require_positive(number, name)
    half = 64 * density * viscosity * length / (math.pi * bore**4)
    return half * math.sqrt(math.pi * bore**2 * volume / (4 * density * length * pressure))


def share_taken_up(taken: float, volume: float) -> float:
    """What walls take up as a share of what they hold.

    g = V_t / V

    Args:
        taken: V_t, taken up at some pressure [m^3].
        volume: V, held without pressure [m^3].

    Returns:
        Share g [-].

    Valid: V_t >= 0, V > 0.
    Source: [firmpedal-derivation], share of a volume.
    """
    require_not_negative(taken, "what is taken up")
    require_positive(volume, "the volume")
    return taken / volume


def wave_speed(density: float, bulk_modulus: float, growth: float, pressure: float) -> float:
    """Speed of sound in fluid whose walls give.

    c = 1 / sqrt(rho (1 / B + g / p))

    Args:
        density: rho, of the fluid [kg/m^3].
        bulk_modulus: B, of the fluid [Pa].
        growth: g, growth of the bore's volume at p as a share of it [-].
        pressure: p, at which that is given [Pa].

    Returns:
        Speed c [m/s].

    Valid: rho, B, p > 0, g >= 0; walls give in proportion to the pressure.
    Source: [firmpedal-derivation], elastic fluid in an elastic tube.
    """
    require_positive(density, "the density")
    require_positive(bulk_modulus, "the bulk modulus")
    require_not_negative(growth, "the growth")
    require_positive(pressure, "the pressure")
    return 1 / math.sqrt(density * (1 / bulk_modulus + growth / pressure))


def echo_time(length: float, wave_speed: float) -> float:
    """Time that sound takes through a line and back.

    t = 2 L / c

    Args:
        length: L, of the line [m].
        wave_speed: c, speed of sound in it [m/s].

    Returns:
        Time t [s].

    Valid: L >= 0, c > 0.
    Source: [firmpedal-derivation], way over speed.
    """
    require_not_negative(length, "the length")
    require_positive(wave_speed, "the speed of sound")
    return 2 * length / wave_speed
