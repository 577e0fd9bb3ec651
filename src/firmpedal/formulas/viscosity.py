"""How thick a fluid is at a temperature, between two temperatures at which that is known."""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require

_CENTISTOKE = 1e-6  # m^2/s
_SHIFT = 0.7  # mm^2/s, in the standard's equation


def walther_number(viscosity: float) -> float:
    """Number of a viscosity that falls along a straight line with the logarithm of the temperature.

    w = log10(log10(10^6 nu + 0.7))

    Args:
        viscosity: nu, kinematic viscosity [m^2/s].

    Returns:
        Height on the chart w [-].

    Valid: nu above 0.3 mm^2/s.
    Source: [astm-d341], log log (nu + 0.7) with nu in mm^2/s.
    """
    require(0.3 * _CENTISTOKE < viscosity < math.inf, "a viscosity on this chart is above 0.3 mm^2/s")
    return math.log10(math.log10(viscosity / _CENTISTOKE + _SHIFT))


def viscosity_between(
    temperature: float, colder: float, colder_number: float, warmer: float, warmer_number: float
) -> float:
    """Kinematic viscosity between two temperatures, on the straight line of the chart after Walther.

    nu = (10^10^w - 0.7) / 10^6, w = w_c + (w_w - w_c) log10(T / T_c) / log10(T_w / T_c)

    Args:
        temperature: T, of the fluid [K].
        colder: T_c, the colder of the two temperatures [K].
        colder_number: w_c, height on the chart there [-].
        warmer: T_w, the warmer one [K].
        warmer_number: w_w, height on the chart there [-].

    Returns:
        Kinematic viscosity at T, nu [m^2/s].

    Valid: 0 < T_c <= T <= T_w, T_c < T_w, w_c >= w_w. Between the two and not beyond: a fluid that is
        thickened with polymer follows no single line, so its known points are joined piece by piece.
    Source: [astm-d341], log log (nu + 0.7) against log T.
    """
    require(0 < colder < warmer < math.inf, "the colder of two temperatures has to be below the warmer one")
    rounding = 1e-9 * warmer  # 68 F may arrive a hair beyond 20 C
    within = colder - rounding <= temperature <= warmer + rounding
    require(within, "viscosities are read between two temperatures, not beyond")
    require(warmer_number <= colder_number, "fluid is thicker in the cold")
    share = math.log10(temperature / colder) / math.log10(warmer / colder)
    height = colder_number + (warmer_number - colder_number) * share
    return (10**10**height - _SHIFT) * _CENTISTOKE
