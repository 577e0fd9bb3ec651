"""The pressure a tube's wall can take: first yield, burst, proof."""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require, require_positive, require_tube


def yield_pressure(yield_strength: float, outside_diameter: float, wall_thickness: float) -> float:
    """Pressure at first yield of a tube with closed ends, by von Mises at the bore.

    p_y = sigma_y (D^2 - d^2) / (sqrt(3) D^2), d = D - 2 t

    Args:
        yield_strength: sigma_y, of the tube's material [Pa].
        outside_diameter: D, of the tube [m].
        wall_thickness: t, least wall after tolerance and bend thinning [m].

    Returns:
        Internal gauge pressure at which the bore begins to yield, p_y [Pa].

    Valid: elastic up to sigma_y, round, closed ends, 0 < 2 t < D.
    Source: [firmpedal-derivation], hoop, radial and axial stress of roark-6 table 32 case 1b combined.
    """
    bore = _bore(yield_strength, outside_diameter, wall_thickness)
    return yield_strength * (outside_diameter**2 - bore**2) / (math.sqrt(3) * outside_diameter**2)


def barlow_pressure(strength: float, outside_diameter: float, wall_thickness: float) -> float:
    """Pressure at a given hoop stress, by Barlow's formula on the outside diameter.

    p_b = 2 S t / D

    Args:
        strength: S, hoop stress that may be reached [Pa].
        outside_diameter: D, of the tube [m].
        wall_thickness: t, least wall after tolerance and bend thinning [m].

    Returns:
        Internal gauge pressure p_b [Pa].

    Valid: round, 0 < 2 t < D.
    Source: [barlow-web-article], equation 1.
    """
    _bore(strength, outside_diameter, wall_thickness)
    return 2 * strength * wall_thickness / outside_diameter


def burst_pressure(ultimate_strength: float, outside_diameter: float, wall_thickness: float) -> float:
    """Burst pressure of a tube, by Barlow's formula with the ultimate strength.

    p_u = 2 sigma_u t / D

    Args:
        ultimate_strength: sigma_u, ultimate tensile strength of the tube's material [Pa].
        outside_diameter: D, of the tube [m].
        wall_thickness: t, least wall after tolerance and bend thinning [m].

    Returns:
        Internal gauge pressure at burst p_u [Pa].

    Valid: round, ductile, 0 < 2 t < D; an estimate, a burst test decides.
    Source: [barlow-web-article], equation 2.
    """
    return barlow_pressure(ultimate_strength, outside_diameter, wall_thickness)


def mean_diameter_pressure(strength: float, outside_diameter: float, wall_thickness: float) -> float:
    """Pressure at a given hoop stress averaged over the wall, on the mean diameter.

    p_m = 2 S t / (D - t)

    Args:
        strength: S, hoop stress averaged over the wall that may be reached [Pa].
        outside_diameter: D, of the tube [m].
        wall_thickness: t, least wall after tolerance and bend thinning [m].

    Returns:
        Internal gauge pressure p_m [Pa].

    Valid: round, 0 < 2 t < D; for a strength that was found by bursting tube of the same material
        and reckoned in the same way.
    Source: [firmpedal-derivation], balance of half a thin ring.
    """
    _bore(strength, outside_diameter, wall_thickness)
    return 2 * strength * wall_thickness / (outside_diameter - wall_thickness)


def specification_proof_pressure(strength: float, outside_diameter: float, bore: float) -> float:
    """Proof pressure of new annealed corrosion-resistant steel tube by its specification.

    P = S (D^2 - d^2) / (D^2 + d^2)

    Args:
        strength: S, least yield strength the specification gives [Pa].
        outside_diameter: D, largest outside diameter [m].
        bore: d, largest inside diameter [m].

    Returns:
        Proof pressure, gauge, P [Pa].

    Valid: 0 < d < D; the specification itself never asks for more than 15 000 psi (103.4 MPa).
    Source: [mil-t-8504b], paragraph 3.6.
    """
    require_positive(strength, "the strength")
    require(0 < bore < outside_diameter < math.inf, "the bore has to be inside the outside diameter")
    return strength * (outside_diameter**2 - bore**2) / (outside_diameter**2 + bore**2)


def _bore(strength: float, outside_diameter: float, wall_thickness: float) -> float:
    require_positive(strength, "the strength")
    require_tube(outside_diameter, wall_thickness)
    return outside_diameter - 2 * wall_thickness
