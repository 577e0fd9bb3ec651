"""Bubbles in a line: whether one rises by itself, how fast at most, and what flow takes it along."""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require, require_not_negative, require_positive
from firmpedal.formulas.attitude import STANDARD_GRAVITY

CRITICAL_BOND_NUMBER = 0.842  # with the radius; below it no long bubble rises in an upright tube


def bond_number(density: float, bore: float, surface_tension: float) -> float:
    """Bond number of a bore: weight of the fluid against the tension of its surface.

    Bo = rho g (d / 2)^2 / s, g = 9.80665

    Args:
        density: rho, of the fluid, the air's left out [kg/m^3].
        bore: d, of the line [m].
        surface_tension: s, of the fluid against air [N/m].

    Returns:
        Bond number with the radius, Bo [-].

    Valid: rho, d, s > 0. In an upright round tube that the fluid wets, a bubble as wide as the bore does not
        rise at all below 0.842.
    Source: [bretherton-1961], second problem, rise of a bubble in an upright tube.
    """
    require_positive(density, "the density")
    require_positive(bore, "the bore")
    require_positive(surface_tension, "the surface tension")
    return density * STANDARD_GRAVITY * (bore / 2) ** 2 / surface_tension


def widest_bore_that_holds_air(density: float, surface_tension: float) -> float:
    """Widest bore in which a bubble that fills it does not rise by itself.

    d = 2 sqrt(0.842 s / (rho g)), g = 9.80665

    Args:
        density: rho, of the fluid [kg/m^3].
        surface_tension: s, of the fluid against air [N/m].

    Returns:
        Bore d [m].

    Valid: upright round tube that the fluid wets, rho, s > 0.
    Source: [bretherton-1961], critical value 0.842.
    """
    require_positive(density, "the density")
    require_positive(surface_tension, "the surface tension")
    return 2 * math.sqrt(CRITICAL_BOND_NUMBER * surface_tension / (density * STANDARD_GRAVITY))


def buoyancy_number(bore: float, viscosity: float) -> float:
    """Buoyancy against viscosity in a line, as a Reynolds number.

    N = sqrt(g d^3) / nu, g = 9.80665

    Args:
        bore: d, of the line [m].
        viscosity: nu, kinematic viscosity of the fluid [m^2/s].

    Returns:
        Buoyancy Reynolds number N [-].

    Valid: d, nu > 0; the air's density is left out.
    Source: [viana-2003], abstract, buoyancy Reynolds number.
    """
    require_positive(bore, "the bore")
    require_positive(viscosity, "the viscosity")
    return math.sqrt(STANDARD_GRAVITY * bore**3) / viscosity


def bubble_speed_at_most(bond: float, buoyancy: float) -> float:
    """Speed of a bubble that fills an upright bore, in parts of sqrt(g d), at most.

    F = min(0.34 / (1 + 3805 / (4 B)^3.06)^0.58, 0.009494 N^1.026 / (1 + 6197 / (4 B)^2.561)^0.5793)

    Args:
        bond: B, Bond number with the radius, a quarter of the Eotvos number [-].
        buoyancy: N, buoyancy Reynolds number [-].

    Returns:
        Froude number F [-].

    Valid: upright tube, B, N > 0; 0 where B <= 0.842, for there nothing rises. The two laws are those for
        great and for small N; the published curve between them lies below both, so the lesser is the most.
    Source: [viana-2003], abstract, laws for N above 200 and under 10.
    """
    require_positive(bond, "the Bond number")
    require_positive(buoyancy, "the buoyancy number")
    if bond <= CRITICAL_BOND_NUMBER:
        return 0.0
    quick: float = 0.34 / (1 + 3805 / (4 * bond) ** 3.06) ** 0.58
    slow: float = 9.494e-3 * buoyancy**1.026 / (1 + 6197 / (4 * bond) ** 2.561) ** 0.5793
    return min(quick, slow)


def rise_in_a_time(froude: float, bore: float, time: float) -> float:
    """How far a bubble rises in a time.

    h = t F sqrt(g d), g = 9.80665

    Args:
        froude: F, its speed in parts of sqrt(g d) [-].
        bore: d, of the line [m].
        time: t, that it is left alone [s].

    Returns:
        Height risen h [m].

    Valid: steady rise; F, t >= 0, d > 0.
    Source: [viana-2003], definition of the Froude number.
    """
    require_not_negative(froude, "the speed")
    require_positive(bore, "the bore")
    require_not_negative(time, "the time")
    return time * froude * math.sqrt(STANDARD_GRAVITY * bore)


def sweeping_flow(bore: float, down_angle: float) -> float:
    """Flow that surely takes a pocket of air down a slope with it.

    Q = (pi / 4) d^2 sqrt(g d) (0.825 + 0.25 sqrt(sin(a))), g = 9.80665

    Args:
        bore: d, of the line [m].
        down_angle: a, by which the line falls in the direction of the flow [rad].

    Returns:
        Flow Q [m^3/s].

    Valid: d > 0, 0 <= a <= pi/2. An envelope of tests with water in pipes far wider than these lines, where
        only weight holds the air back; in thin lines less will do.
    Source: [wisner-1975], speed that clears air, as a textbook quotes it.
    """
    require_positive(bore, "the bore")
    require(0 <= down_angle <= math.pi / 2, "a slope falls between level and upright")
    speed = math.sqrt(STANDARD_GRAVITY * bore) * (0.825 + 0.25 * math.sqrt(math.sin(down_angle)))
    return math.pi / 4 * bore**2 * speed


def share_of_volume(volume: float, share: float) -> float:
    """Part of a line's volume.

    V_p = V s

    Args:
        volume: V, of the whole line [m^3].
        share: s, of its length [-].

    Returns:
        Volume of that part V_p [m^3].

    Valid: one bore along the line, V >= 0, 0 <= s <= 1.
    Source: [firmpedal-derivation], share of a volume.
    """
    require_not_negative(volume, "the volume")
    require(0 <= share <= 1, "a share lies between nothing and all")
    return volume * share
