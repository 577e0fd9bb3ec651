"""Stress in a tube's wall under internal pressure."""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require_not_negative, require_tube


def hoop_stress_at_bore(pressure: float, outside_diameter: float, wall_thickness: float) -> float:
    """Hoop stress at the bore of a thick-walled tube under internal pressure (Lamé).

    sigma_h = p (D^2 + d^2) / (D^2 - d^2), d = D - 2 t

    Args:
        pressure: p, internal gauge pressure [Pa].
        outside_diameter: D, of the tube [m].
        wall_thickness: t, least wall after tolerance and bend thinning [m].

    Returns:
        Hoop stress, tension positive, sigma_h [Pa].

    Valid: elastic, round, p >= 0, 0 < 2 t < D.
    Source: [roark-6], table 32, case 1a.
    """
    bore = _bore(pressure, outside_diameter, wall_thickness)
    return pressure * (outside_diameter**2 + bore**2) / (outside_diameter**2 - bore**2)


def radial_stress_at_bore(pressure: float) -> float:
    """Radial stress at the bore of a tube under internal pressure.

    sigma_r = -p

    Args:
        pressure: p, internal gauge pressure [Pa].

    Returns:
        Radial stress, tension positive, sigma_r [Pa].

    Valid: p >= 0.
    Source: [roark-6], table 32, case 1a.
    """
    require_not_negative(pressure, "the gauge pressure")
    return -pressure


def axial_stress_closed_ends(pressure: float, outside_diameter: float, wall_thickness: float) -> float:
    """Axial stress in a tube whose closed ends carry the internal pressure.

    sigma_a = p d^2 / (D^2 - d^2), d = D - 2 t

    Args:
        pressure: p, internal gauge pressure [Pa].
        outside_diameter: D, of the tube [m].
        wall_thickness: t, least wall after tolerance and bend thinning [m].

    Returns:
        Axial stress, tension positive, sigma_a [Pa].

    Valid: elastic, round, straight, away from the ends, p >= 0, 0 < 2 t < D.
    Source: [roark-6], table 32, case 1b.
    """
    bore = _bore(pressure, outside_diameter, wall_thickness)
    return pressure * bore**2 / (outside_diameter**2 - bore**2)


def von_mises_at_bore(pressure: float, outside_diameter: float, wall_thickness: float) -> float:
    """Von Mises stress at the bore of a tube with closed ends under internal pressure.

    sigma_v = sqrt(3) p D^2 / (D^2 - d^2), d = D - 2 t

    Args:
        pressure: p, internal gauge pressure [Pa].
        outside_diameter: D, of the tube [m].
        wall_thickness: t, least wall after tolerance and bend thinning [m].

    Returns:
        Von Mises stress sigma_v [Pa].

    Valid: elastic, round, closed ends, p >= 0, 0 < 2 t < D.
    Source: [firmpedal-derivation], hoop, radial and axial stress of roark-6 table 32 case 1b combined.
    """
    bore = _bore(pressure, outside_diameter, wall_thickness)
    return math.sqrt(3) * pressure * outside_diameter**2 / (outside_diameter**2 - bore**2)


def tresca_at_bore(pressure: float, outside_diameter: float, wall_thickness: float) -> float:
    """Tresca stress, hoop less radial, at the bore of a tube under internal pressure.

    sigma_t = 2 p D^2 / (D^2 - d^2), d = D - 2 t

    Args:
        pressure: p, internal gauge pressure [Pa].
        outside_diameter: D, of the tube [m].
        wall_thickness: t, least wall after tolerance and bend thinning [m].

    Returns:
        Greatest difference of principal stresses sigma_t [Pa].

    Valid: elastic, round, p >= 0, 0 < 2 t < D.
    Source: [firmpedal-derivation], hoop and radial stress of roark-6 table 32 case 1a subtracted.
    """
    bore = _bore(pressure, outside_diameter, wall_thickness)
    return 2 * pressure * outside_diameter**2 / (outside_diameter**2 - bore**2)


def barlow_stress(pressure: float, outside_diameter: float, wall_thickness: float) -> float:
    """Hoop stress of a tube by Barlow's formula on the outside diameter.

    sigma_b = p D / (2 t)

    Args:
        pressure: p, internal gauge pressure [Pa].
        outside_diameter: D, of the tube [m].
        wall_thickness: t, least wall after tolerance and bend thinning [m].

    Returns:
        Hoop stress, tension positive and higher than by Lamé, sigma_b [Pa].

    Valid: round, p >= 0, 0 < 2 t < D.
    Source: [barlow-web-article], equation 1.
    """
    _bore(pressure, outside_diameter, wall_thickness)
    return pressure * outside_diameter / (2 * wall_thickness)


def mean_diameter_stress(pressure: float, outside_diameter: float, wall_thickness: float) -> float:
    """Hoop stress of a tube, averaged over the wall, on the mean diameter.

    sigma_m = p (D - t) / (2 t)

    Args:
        pressure: p, internal gauge pressure [Pa].
        outside_diameter: D, of the tube [m].
        wall_thickness: t, least wall after tolerance and bend thinning [m].

    Returns:
        Hoop stress, tension positive, sigma_m [Pa].

    Valid: round, thin wall, p >= 0, 0 < 2 t < D; lower than the greatest stress at the bore.
    Source: [firmpedal-derivation], balance of half a thin ring.
    """
    _bore(pressure, outside_diameter, wall_thickness)
    return pressure * (outside_diameter - wall_thickness) / (2 * wall_thickness)


def _bore(pressure: float, outside_diameter: float, wall_thickness: float) -> float:
    require_not_negative(pressure, "the gauge pressure")
    require_tube(outside_diameter, wall_thickness)
    return outside_diameter - 2 * wall_thickness
