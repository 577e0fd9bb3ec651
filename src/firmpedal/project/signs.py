"""The same number with the other sign, as text, the way a person would write it."""

from __future__ import annotations

import re

from firmpedal.units import Dimension, Measurement, UnitError, read

_ABOUT = r"(?P<about>(?:about|around|roughly|circa|ca|approx|approximately)\.?\s+|~\s*)?"
_MINUS = "\\-\N{MINUS SIGN}\N{HYPHEN}\N{NON-BREAKING HYPHEN}\N{EN DASH}"
_SIGNED = re.compile(
    rf"{_ABOUT}(?P<sign>[+{_MINUS}](?![/{_MINUS}]))?\s*(?P<rest>.*)", re.IGNORECASE | re.DOTALL
)
_BETWEEN = re.compile(r"(\s+to\s+|\s*(?<!\.)\.\.(?!\.)\s*)", re.IGNORECASE)
_BOTH_SIDES = re.compile(r"^\s*(?:\+/-|\+-|±)\s*")
_BASE = {Dimension.LENGTH: "m", Dimension.ANGLE: "deg"}  # in which the units count exactly


def negated(text: str, dimension: Dimension = Dimension.LENGTH) -> str:
    """Turn the sign of a length round: `-9.0` becomes `9.0`, `2 to 3 in` becomes `-3 in to -2`.

    A text that is no number comes back as it is; it is spoken of where it was written.
    """
    before = _read(text, dimension, _BASE[dimension])
    if before is None or before.low == before.high == 0:
        return text
    turned = _turned(text)
    after = _read(turned, dimension, _BASE[dimension])
    if after is not None and (after.low, after.high) == (-before.high, -before.low):
        return turned
    # Written in a way that only the units know: then in their own exact fractions.
    unit = "" if _read(text, dimension, None) is None else f" {_BASE[dimension]}"
    return f"{-before.high}{unit} to {-before.low}{unit}"


def negated_swing(text: str) -> str:
    """Turn a swing round: `+/- 17 deg` goes to both sides, so at full travel it becomes `-17 deg`."""
    if _BOTH_SIDES.match(text) and _read(text, Dimension.ANGLE, "deg") is not None:
        return "-" + _BOTH_SIDES.sub("", text)
    return negated(text, Dimension.ANGLE)


def _turned(text: str) -> str:
    if _BOTH_SIDES.match(text):
        return text
    parts = _BETWEEN.split(text, maxsplit=1)
    if len(parts) == 3:
        found = _SIGNED.fullmatch(parts[0])
        about = (found["about"] or "") if found else ""
        return about + _flipped(parts[2]) + parts[1] + _flipped(parts[0][len(about) :])
    return _flipped(text)


def _flipped(text: str) -> str:
    found = _SIGNED.fullmatch(text.strip())
    if not found:
        return text
    sign = "" if found["sign"] and found["sign"] != "+" else "-"
    return (found["about"] or "") + sign + found["rest"]


def _read(text: str, dimension: Dimension, unit: str | None) -> Measurement | None:
    try:
        return read(text, dimension, unit)
    except UnitError:
        return None
