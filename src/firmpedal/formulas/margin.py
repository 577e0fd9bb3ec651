"""How many times over a part holds what is asked of it."""

from __future__ import annotations

from firmpedal.formulas._validity import require, require_not_negative, require_positive


def factor(strength: float, load: float) -> float:
    """How many times the load would have to grow to reach the strength.

    n = S / L

    Args:
        strength: S, pressure that the part holds [Pa].
        load: L, pressure that comes [Pa].

    Returns:
        Factor, n [-].

    Valid: S >= 0, L > 0.
    Source: [firmpedal-derivation], the usual meaning of a factor.
    """
    require_not_negative(strength, "the strength")
    require_positive(load, "the load")
    return strength / load


def kept(strength: float, share: float) -> float:
    """Strength that is left of the room-temperature strength when hot.

    S_T = S f

    Args:
        strength: S, at room temperature [Pa].
        share: f, share kept at the temperature [-].

    Returns:
        Strength at the temperature, S_T [Pa].

    Valid: S >= 0, 0 <= f <= 1.
    Source: [firmpedal-derivation], meaning of a retained share.
    """
    require_not_negative(strength, "the strength")
    require_not_negative(share, "the share")
    require(share <= 1, "the share kept cannot be more than all")
    return strength * share
