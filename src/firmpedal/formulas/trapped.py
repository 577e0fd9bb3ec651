"""Fluid shut in between a closed valve and the wheel, when it grows warm."""

from __future__ import annotations

from firmpedal.formulas._validity import require, require_not_negative, require_positive


def trapped_pressure_rise(
    expansion: float, bulk_modulus: float, cool_temperature: float, warm_temperature: float
) -> float:
    """Rise of pressure of fluid that fills a rigid closed space and grows warm.

    p = B beta (T_w - T_c)

    Args:
        expansion: beta, thermal expansion of the fluid's volume [1/K].
        bulk_modulus: B, of the fluid [Pa].
        cool_temperature: T_c, when it was shut in [K].
        warm_temperature: T_w, later [K].

    Returns:
        Rise of the pressure p [Pa].

    Valid: walls that do not give (tube and above all hose give, so the true rise is smaller), no free air,
        beta >= 0, B > 0, 0 < T_c <= T_w.
    Source: [firmpedal-derivation], growth by warmth and shrinking by pressure set equal.
    """
    require_not_negative(expansion, "the thermal expansion")
    require_positive(bulk_modulus, "the bulk modulus")
    require_positive(cool_temperature, "the cool temperature")
    require(cool_temperature <= warm_temperature, "the warm temperature has to be above the cool one")
    return bulk_modulus * expansion * (warm_temperature - cool_temperature)
