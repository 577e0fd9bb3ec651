"""Free air in the fluid: what it takes as it is pressed together, and how soft it makes the fluid.

The share of air is always counted at no gauge pressure, where it can be pictured; a formula that wants the
share at pressure says so. Air that is dissolved does not count, it takes no room of its own.
"""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require, require_not_negative, require_positive


def free_air_taken(volume: float, pressure: float, ambient_pressure: float, exponent: float) -> float:
    """Volume that free air gives up as it is pressed together.

    dV = V (1 - (P_0 / (P_0 + p))^(1 / n))

    Args:
        volume: V, of the air at no gauge pressure [m^3].
        pressure: p, gauge pressure [Pa].
        ambient_pressure: P_0, absolute pressure of the air outside [Pa].
        exponent: n, 1 if pressed so slowly that the air stays as cool as the fluid, 1.4 if fast [-].

    Returns:
        Volume given up dV [m^3].

    Valid: V >= 0, p >= 0, P_0 > 0, n >= 1; none of the air dissolves.
    Source: [fluid-power-engineering], page 32, polytropic air, with absolute pressures.
    """
    require_not_negative(volume, "the volume of air")
    _require_pressed(pressure, ambient_pressure, exponent)
    return volume * -math.expm1(-math.log1p(pressure / ambient_pressure) / exponent)


def volume_with_air(
    air_share: float, pressure: float, bulk_modulus: float, ambient_pressure: float, exponent: float
) -> float:
    """Volume of fluid with free air under pressure, as a share of the volume at no gauge pressure.

    v = (1 - a) exp(-p / B) + a (P_0 / (P_0 + p))^(1 / n)

    Args:
        air_share: a, share of air in the volume at no gauge pressure [-].
        pressure: p, gauge pressure [Pa].
        bulk_modulus: B, of the fluid without air [Pa].
        ambient_pressure: P_0, absolute pressure of the air outside [Pa].
        exponent: n, 1 if pressed so slowly that the air stays as cool as the fluid, 1.4 if fast [-].

    Returns:
        Share of the volume that is left, v [-].

    Valid: 0 <= a <= 1, p >= 0, B > 0, P_0 > 0, n >= 1; none of the air dissolves.
    Source: [fluid-power-engineering], page 32, with the share taken at no gauge pressure.
    """
    _require_share(air_share)
    _require_pressed(pressure, ambient_pressure, exponent)
    require_positive(bulk_modulus, "the bulk modulus")
    left = math.exp(-math.log1p(pressure / ambient_pressure) / exponent)
    return (1 - air_share) * math.exp(-pressure / bulk_modulus) + air_share * left


def modulus_with_air(
    air_share_at_pressure: float, absolute_pressure: float, bulk_modulus: float, exponent: float
) -> float:
    """Bulk modulus of fluid with free air, for a small step from where it stands.

    B_e = 1 / (a / (n P) + (1 - a) / B)

    Args:
        air_share_at_pressure: a, share of air in the volume as it is at this pressure [-].
        absolute_pressure: P, absolute pressure [Pa].
        bulk_modulus: B, of the fluid without air [Pa].
        exponent: n, 1 if pressed so slowly that the air stays as cool as the fluid, 1.4 if fast [-].

    Returns:
        Bulk modulus of the mixture, B_e [Pa].

    Valid: 0 <= a <= 1, P > 0, B > n P, n >= 1.
    Source: [fluid-power-engineering], page 32, equations 2.49 to 2.57.
    """
    _require_share(air_share_at_pressure)
    require_positive(absolute_pressure, "the absolute pressure")
    require(1 <= exponent < math.inf, "the exponent of air cannot be below one")
    require(
        exponent * absolute_pressure < bulk_modulus < math.inf,
        "the fluid has to be stiffer than its air",
    )
    share = air_share_at_pressure
    return 1 / (share / (exponent * absolute_pressure) + (1 - share) / bulk_modulus)


def _require_share(share: float) -> None:
    require(0 <= share <= 1, "the share of air has to be between nothing and all")


def _require_pressed(pressure: float, ambient_pressure: float, exponent: float) -> None:
    require_not_negative(pressure, "the gauge pressure")
    require_positive(ambient_pressure, "the pressure of the air outside")
    require(1 <= exponent < math.inf, "the exponent of air cannot be below one")
