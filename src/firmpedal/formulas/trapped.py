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


def freed_by_warmth(
    volume: float,
    expansion: float,
    wall_expansion: float,
    cool_temperature: float,
    warm_temperature: float,
) -> float:
    """Volume for which shut-in fluid finds no room when it and its walls grow warm.

    V_f = V (beta - 3 a) (T_w - T_c)

    Args:
        volume: V, shut in [m^3].
        expansion: beta, thermal expansion of the fluid's volume [1/K].
        wall_expansion: a, thermal expansion of the wall's length [1/K].
        cool_temperature: T_c, when it was shut in [K].
        warm_temperature: T_w, later, of fluid and wall alike [K].

    Returns:
        Volume without room V_f [m^3].

    Valid: V >= 0, 0 <= 3 a <= beta, 0 < T_c <= T_w.
    Source: [firmpedal-derivation], growth of the fluid less that of what holds it.
    """
    require_not_negative(volume, "the volume")
    require_not_negative(wall_expansion, "the thermal expansion of the wall")
    require(3 * wall_expansion <= expansion, "the wall must not grow more than the fluid")
    require_positive(cool_temperature, "the cool temperature")
    require(cool_temperature <= warm_temperature, "the warm temperature has to be above the cool one")
    return volume * (expansion - 3 * wall_expansion) * (warm_temperature - cool_temperature)


def pressure_that_makes_room(freed: float, taken: float, reference_pressure: float) -> float:
    """Pressure at which fluid and walls together give as much as has no room.

    p = p_r V_f / V_t

    Args:
        freed: V_f, volume without room [m^3].
        taken: V_t, what fluid, walls and all that is shut in give at the reference pressure [m^3].
        reference_pressure: p_r, at which that is given [Pa].

    Returns:
        Rise of the pressure p [Pa].

    Valid: all give in proportion to the pressure; no free air; V_f >= 0, V_t, p_r > 0.
    Source: [firmpedal-derivation], volume that has no room and volume given set equal.
    """
    require_not_negative(freed, "the volume without room")
    require_positive(taken, "what gives")
    require_positive(reference_pressure, "the reference pressure")
    return reference_pressure * freed / taken


def degrees_until(limit: float, start: float, rise: float) -> float:
    """Degrees that shut-in fluid may warm until its pressure comes from one figure to another.

    n = max(0, (p_l - p_s) / r)

    Args:
        limit: p_l, the pressure that must not be passed [Pa].
        start: p_s, the pressure at which it was shut in [Pa].
        rise: r, rise of the pressure with one degree [Pa].

    Returns:
        Degrees n [-].

    Valid: p_l >= 0, p_s >= 0, r > 0; none where it is at the limit already. For cooling, from p_l to p_s.
    Source: [firmpedal-derivation], the pressure goes with the degrees.
    """
    require_not_negative(start, "the pressure at which it was shut in")
    require_not_negative(limit, "the limit")
    require_positive(rise, "the rise")
    return max(0.0, (limit - start) / rise)
