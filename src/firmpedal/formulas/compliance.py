"""Volumes that a pedal has to fill: tube growth, fluid, pistons.

The growth of a tube's bore is given as a share of the bore's volume for three ways of holding the
tube, each by Lamé's thick wall; a thin wall formula is a quarter too low for the tubes used here.
"""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require, require_not_negative, require_positive, require_tube


def tube_volume(outside_diameter: float, wall_thickness: float, length: float) -> float:
    """Volume of the bore of a length of tube.

    V = (pi / 4) (D - 2 t)^2 L

    Args:
        outside_diameter: D, of the tube [m].
        wall_thickness: t, of the tube [m].
        length: L, developed length of the tube [m].

    Returns:
        Volume of the bore V [m^3].

    Valid: round, 0 < 2 t < D, L >= 0.
    Source: [firmpedal-derivation], volume of a cylinder.
    """
    require_tube(outside_diameter, wall_thickness)
    require_not_negative(length, "the length")
    return math.pi * (outside_diameter - 2 * wall_thickness) ** 2 / 4 * length


def shear_modulus(modulus: float, poisson_ratio: float) -> float:
    """Shear modulus of an isotropic material.

    G = E / (2 (1 + nu))

    Args:
        modulus: E, modulus of elasticity [Pa].
        poisson_ratio: nu, Poisson's ratio [-].

    Returns:
        Shear modulus G [Pa].

    Valid: isotropic, elastic, 0 <= nu <= 0.5.
    Source: [firmpedal-derivation], isotropic elasticity.
    """
    _require_material(modulus, poisson_ratio)
    return modulus / (2 * (1 + poisson_ratio))


def growth_closed_ends(
    pressure: float, outside_diameter: float, wall_thickness: float, modulus: float, poisson_ratio: float
) -> float:
    """Growth of the bore of a tube with closed ends that is free to stretch.

    g = p (3 (1 - 2 nu) + 2 (1 + nu) k) / (E (k - 1)), k = (D / (D - 2 t))^2

    Args:
        pressure: p, internal gauge pressure [Pa].
        outside_diameter: D, of the tube [m].
        wall_thickness: t, of the tube [m].
        modulus: E, modulus of elasticity [Pa].
        poisson_ratio: nu, Poisson's ratio [-].

    Returns:
        Growth of the bore's volume as a share of that volume, g [-].

    Valid: elastic, round, small growth (above about 0.1 the true one is larger), p >= 0, 0 < 2 t < D,
        0 <= nu <= 0.5.
    Source: [roark-6], table 32, case 1b, change of the inner radius and of the length.
    """
    k = _diameter_ratio_squared(pressure, outside_diameter, wall_thickness)
    _require_material(modulus, poisson_ratio)
    return pressure * (3 * (1 - 2 * poisson_ratio) + 2 * (1 + poisson_ratio) * k) / (modulus * (k - 1))


def growth_open_ends(
    pressure: float, outside_diameter: float, wall_thickness: float, modulus: float, poisson_ratio: float
) -> float:
    """Growth of the bore of a tube whose ends carry no pressure and may move.

    g = p (2 (1 - 2 nu) + 2 (1 + nu) k) / (E (k - 1)), k = (D / (D - 2 t))^2

    Args:
        pressure: p, internal gauge pressure [Pa].
        outside_diameter: D, of the tube [m].
        wall_thickness: t, of the tube [m].
        modulus: E, modulus of elasticity [Pa].
        poisson_ratio: nu, Poisson's ratio [-].

    Returns:
        Growth of the bore's volume as a share of that volume, g [-].

    Valid: elastic, round, small growth (above about 0.1 the true one is larger), p >= 0, 0 < 2 t < D,
        0 <= nu <= 0.5.
    Source: [roark-6], table 32, case 1a, change of the inner radius and of the length.
    """
    k = _diameter_ratio_squared(pressure, outside_diameter, wall_thickness)
    _require_material(modulus, poisson_ratio)
    return pressure * (2 * (1 - 2 * poisson_ratio) + 2 * (1 + poisson_ratio) * k) / (modulus * (k - 1))


def growth_fixed_ends(
    pressure: float,
    outside_diameter: float,
    wall_thickness: float,
    shear_modulus: float,
    poisson_ratio: float,
) -> float:
    """Growth of the bore of a tube that is clamped and cannot change its length.

    g = p (1 - 2 nu + k) / (G (k - 1)), k = (D / (D - 2 t))^2

    Args:
        pressure: p, internal gauge pressure [Pa].
        outside_diameter: D, of the tube [m].
        wall_thickness: t, of the tube [m].
        shear_modulus: G, shear modulus; with it, and not with E, the growth moves in one direction
            with Poisson's ratio [Pa].
        poisson_ratio: nu, Poisson's ratio [-].

    Returns:
        Growth of the bore's volume as a share of that volume, g [-].

    Valid: elastic, round, small growth (above about 0.1 the true one is larger), p >= 0, 0 < 2 t < D,
        0 <= nu <= 0.5.
    Source: [roark-6], table 32, cases 1a and 1b combined so that the length stays.
    """
    k = _diameter_ratio_squared(pressure, outside_diameter, wall_thickness)
    _require_material(shear_modulus, poisson_ratio)
    return pressure * (1 - 2 * poisson_ratio + k) / (shear_modulus * (k - 1))


def wall_growth_volume(volume: float, growth: float) -> float:
    """Volume a tube takes up by the growth of its bore.

    dV = V g

    Args:
        volume: V, of the bore without pressure [m^3].
        growth: g, growth of the bore's volume as a share of it [-].

    Returns:
        Volume taken up dV [m^3].

    Valid: V >= 0, g >= 0.
    Source: [firmpedal-derivation], share of a volume.
    """
    require_not_negative(volume, "the volume")
    require_not_negative(growth, "the growth")
    return volume * growth


def fluid_compression(volume: float, pressure: float, bulk_modulus: float) -> float:
    """Volume lost by compressing fluid that holds no air.

    dV = V (1 - exp(-p / B))

    Args:
        volume: V, of the fluid without pressure [m^3].
        pressure: p, gauge pressure [Pa].
        bulk_modulus: B, of the fluid, one number for the whole range of pressure [Pa].

    Returns:
        Volume lost dV [m^3].

    Valid: V >= 0, p >= 0, B > 0, no free air.
    Source: [fluid-bulk-modulus], definition of bulk modulus, integrated.
    """
    require_not_negative(volume, "the volume")
    require_not_negative(pressure, "the gauge pressure")
    require_positive(bulk_modulus, "the bulk modulus")
    return volume * -math.expm1(-pressure / bulk_modulus)


def piston_volume(bore: float, count: float, travel: float) -> float:
    """Volume that pistons take up when they move, for pad gap or pad wear.

    V = n (pi / 4) d_p^2 x

    Args:
        bore: d_p, piston diameter [m].
        count: n, pistons that move this far [-].
        travel: x, travel of each piston [m].

    Returns:
        Volume taken up V [m^3].

    Valid: d_p > 0, n >= 0, x >= 0.
    Source: [firmpedal-derivation], volume of a cylinder.
    """
    require_positive(bore, "the piston diameter")
    require_not_negative(count, "the number of pistons")
    require_not_negative(travel, "the travel")
    return count * math.pi * bore**2 / 4 * travel


def give_volume(
    bore: float, count: float, travel: float, pressure: float, reference_pressure: float
) -> float:
    """Volume taken up as caliper and pads give under pressure, taken as proportional to it.

    V = n (pi / 4) d_p^2 x p / p_r

    Args:
        bore: d_p, piston diameter [m].
        count: n, pistons that move this far [-].
        travel: x, further travel of each piston at the reference pressure, once the pads touch [m].
        pressure: p, gauge pressure [Pa].
        reference_pressure: p_r, pressure at which the travel was measured [Pa].

    Returns:
        Volume taken up V [m^3].

    Valid: d_p > 0, n, x, p >= 0, p_r > 0.
    Source: [firmpedal-derivation], volume of a cylinder, proportional to pressure.
    """
    require_not_negative(pressure, "the gauge pressure")
    require_positive(reference_pressure, "the reference pressure")
    return piston_volume(bore, count, travel) * pressure / reference_pressure


def _diameter_ratio_squared(pressure: float, outside_diameter: float, wall_thickness: float) -> float:
    require_not_negative(pressure, "the gauge pressure")
    require_tube(outside_diameter, wall_thickness)
    return (outside_diameter / (outside_diameter - 2 * wall_thickness)) ** 2


def _require_material(modulus: float, poisson_ratio: float) -> None:
    require_positive(modulus, "the modulus")
    require(0 <= poisson_ratio <= 0.5, "Poisson's ratio has to be between 0 and 0.5")
