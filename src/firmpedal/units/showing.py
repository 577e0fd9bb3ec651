"""From SI to text: numbers in the reader's units, rounded as people round."""

from __future__ import annotations

import math
from fractions import Fraction
from functools import lru_cache

from firmpedal.units.names import unit_by_name
from firmpedal.units.table import RADIANS_PER_DEGREE, Dimension, Unit

_SIGNIFICANT_DIGITS = 4
_FIRST_WITH_COMMA = 1000
_DIGITS_THAT_MEAN_SOMETHING = 12  # a float's last digits are noise that must not decide a rounding


def to_unit(si: float, unit: str, *, difference: bool = False) -> float:
    """Convert from SI to the number in a unit; a temperature difference has no offset."""
    size, zero = _scale(unit)
    return (si if difference else si - zero) / size


@lru_cache(maxsize=1024)
def _scale(unit: str) -> tuple[float, float]:
    """The size of a unit, and where its scale starts, in SI."""
    known = unit_by_name(unit)
    return float(_si_size(known)), float(known.zero)


@lru_cache(maxsize=4096)
def from_unit(number: float, unit: str, *, difference: bool = False) -> float:
    """Convert a number in a unit to SI.

    The number is taken as the decimal it prints as, so that 0.035 from a table and `.035 in` from
    a file give the very same float, and comparing the two is safe.
    """
    known = unit_by_name(unit)
    if not math.isfinite(number):
        return number
    zero = Fraction(0) if difference else known.zero
    return float(Fraction(str(float(number))) * _si_size(known) + zero)


@lru_cache(maxsize=16384)
def show(
    si: float,
    unit: str,
    *,
    decimals: int | None = None,
    fraction: int | None = None,
    difference: bool = False,
) -> str:
    """Show an SI value in a unit: `9.24 in`, or with `fraction=16` the nearest sixteenth, `9-1/4 in`.

    Args:
        si: The value in SI.
        unit: Canonical name of the unit to show it in.
        decimals: Decimals to round to; without it, what is usual for the unit.
        fraction: Round to this part of the unit and write a mixed number instead of decimals.
        difference: The value is a temperature difference.

    Raises:
        ValueError: The value is not finite.
    """
    known = unit_by_name(unit)
    return _with_unit(_figures(to_unit(si, unit, difference=difference), known, decimals, fraction), known)


def written(si: float, unit: str, *, within: float, fraction: int | None = None) -> str:
    """Write an SI value as a bare number in a unit, in as few figures as keep it.

    Args:
        si: The value in SI.
        unit: Canonical name of the unit to write it in.
        within: How far off it may read back [SI].
        fraction: Where it lies on this part of the unit, write a mixed number: `9-1/4`.

    Raises:
        ValueError: The value is not finite.
    """
    number, known = to_unit(si, unit), unit_by_name(unit)
    if not math.isfinite(number):
        raise ValueError(f"{number} {unit} cannot be written: it is not a finite number")
    room = within / float(_si_size(known))
    if fraction is not None and abs(number) < _FIRST_WITH_COMMA:
        steps = round(number * fraction)
        if abs(number - steps / fraction) <= room:
            return _mixed(Fraction(steps, fraction), fraction)
    shown = next(
        (text for places in range(17) if abs(float(text := f"{number:.{places}f}") - number) <= room),
        repr(number),
    )
    return shown.removeprefix("-") if float(shown) == 0 else shown


def show_span(
    span: tuple[float, float],
    unit: str,
    *,
    decimals: int | None = None,
    fraction: int | None = None,
    difference: bool = False,
) -> str:
    """Show a range as `9.1 to 9.4 in`, or as one number where both ends round to the same.

    Raises:
        ValueError: An end is not finite.
    """
    known = unit_by_name(unit)
    low, high = (
        _figures(to_unit(end, unit, difference=difference), known, decimals, fraction) for end in span
    )
    return _with_unit(low if low == high else f"{low} to {high}", known)


def _si_size(unit: Unit) -> Fraction:
    return unit.size * RADIANS_PER_DEGREE if unit.dimension is Dimension.ANGLE else unit.size


def _with_unit(figures: str, unit: Unit) -> str:
    return figures if unit.name == "-" else f"{figures} {unit.name}"


def _figures(number: float, unit: Unit, decimals: int | None, fraction: int | None) -> str:
    if not math.isfinite(number):
        raise ValueError(f"{number} {unit.name} cannot be shown: it is not a finite number")
    exact = Fraction(f"{number:.{_DIGITS_THAT_MEAN_SOMETHING}g}")
    if fraction is not None:
        return _mixed(exact, fraction)
    if decimals is not None:
        return _rounded(exact, decimals)
    if exact == 0:
        return "0"
    return _significant(exact) if unit.decimals is None else _rounded(exact, unit.decimals)


def _steps(exact: Fraction, parts: int) -> int:
    """Count whole parts of one, a half rounding away from zero as on a tape measure."""
    steps = math.floor(abs(exact) * parts + Fraction(1, 2))
    return -steps if exact < 0 else steps


def _rounded(exact: Fraction, decimals: int) -> str:
    steps = _steps(exact, 10**decimals)
    whole, rest = divmod(abs(steps), 10**decimals)
    tail = f".{rest:0{decimals}d}" if decimals else ""
    return f"{'-' if steps < 0 else ''}{whole:,}{tail}"


def _mixed(exact: Fraction, parts: int) -> str:
    steps = _steps(exact, parts)
    whole, rest = divmod(abs(steps), parts)
    pieces = ([f"{whole:,}"] if whole or not rest else []) + ([str(Fraction(rest, parts))] if rest else [])
    return ("-" if steps < 0 else "") + "-".join(pieces)


def _significant(exact: Fraction) -> str:
    if 1000 <= abs(exact) < 10**9:
        return _rounded(exact, 0)  # plain digits read better than a power of ten
    return f"{float(exact):.{_SIGNIFICANT_DIGITS}g}"
