"""Hose lengths."""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require_not_negative, require_positive


def hose_length_with_slack(path: float, slack: float) -> float:
    """Hose length with the slack it needs under pressure.

    L = l (1 + s)

    Args:
        path: l, longest path between the two seats in any state of movement [m].
        slack: s, slack as a share of the path [-].

    Returns:
        Length of the hose from seat to seat, L [m].

    Valid: l > 0, s >= 0; published practice for s is 0.05 to 0.08.
    Source: [ac-43-13-1b], paragraph 9-30, page 9-20.
    """
    require_positive(path, "the path of the hose")
    require_not_negative(slack, "the slack")
    return path * (1 + slack)


def hose_expansion(expansion: float, length: float, pressure: float, reference_pressure: float) -> float:
    """Fluid that a hose takes up as it swells, taken as proportional to the pressure.

    V = e L p / p_r

    Args:
        expansion: e, volume taken per length at the reference pressure [m^3/m].
        length: L, free length of the hose [m].
        pressure: p, gauge pressure in the hose [Pa].
        reference_pressure: p_r, pressure at which the expansion is given [Pa].

    Returns:
        Volume taken up, V [m^3].

    Valid: e, L, p >= 0, p_r > 0; a limit for e gives the most, not the usual.
    Source: [firmpedal-derivation], proportional to length and pressure.
    """
    require_not_negative(expansion, "the expansion")
    require_not_negative(length, "the length")
    require_not_negative(pressure, "the pressure")
    require_positive(reference_pressure, "the reference pressure")
    return expansion * length * pressure / reference_pressure


def measured_swelling(taken: float, pressure: float, reference_pressure: float) -> float:
    """Fluid that a hose takes up as it swells, from one measurement, taken as proportional to the pressure.

    V = V_m p / p_r

    Args:
        taken: V_m, volume that it took when measured [m^3].
        pressure: p, gauge pressure in the hose [Pa].
        reference_pressure: p_r, pressure at which it was measured [Pa].

    Returns:
        Volume taken up, V [m^3].

    Valid: V_m, p >= 0, p_r > 0; measured at or above p it gives the least, as most hoses swell less and
        less: measure near the pressure that counts.
    Source: [firmpedal-derivation], proportional to pressure.
    """
    require_not_negative(taken, "the volume taken")
    require_not_negative(pressure, "the pressure")
    require_positive(reference_pressure, "the reference pressure")
    return taken * pressure / reference_pressure


def hose_volume(bore: float, length: float) -> float:
    """Volume of the bore of a length of hose.

    V = (pi / 4) d^2 L

    Args:
        bore: d, of the hose [m].
        length: L, of the hose [m].

    Returns:
        Volume of the bore, V [m^3].

    Valid: d > 0, L >= 0.
    Source: [firmpedal-derivation], volume of a cylinder.
    """
    require_positive(bore, "the bore of the hose")
    require_not_negative(length, "the length")
    return math.pi * bore**2 / 4 * length
