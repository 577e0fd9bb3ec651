"""From text to a number with a unit, in exact fractions from start to end.

General parsers of quantities take the dash in `10-1/2` for a minus or lose the half in `10 1/2`.
Here the whole text must fit one grammar, so nothing of it can be dropped without a word.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import TYPE_CHECKING

from firmpedal.units.names import EXAMPLES, UnitError, quoted, unit_of_dimension, units_of, with_article
from firmpedal.units.table import RADIANS_PER_DEGREE, Dimension

if TYPE_CHECKING:
    from firmpedal.units.table import Unit

_LONGEST_NUMBER = 40
_LONGEST_TEXT = 160

_COUNT = r"(?:[1-9][0-9]{0,2}(?:,[0-9]{3})+|[0-9]+)"
_WORD = r"""(?:[A-Za-z°%]+(?:\^?[23])?|"|''?)"""
_AMOUNT = rf"""
    (?P<SIDE_sign>[+-])?
    (?:(?P<SIDE_feet>{_COUNT})\ ?(?:(?:ft\.?|feet|foot)\ |'(?!')-?\ ?))?
    (?:
        (?:(?P<SIDE_whole>{_COUNT})[-\ ])?(?P<SIDE_top>[0-9]+)/(?P<SIDE_bottom>[0-9]+)
      | (?P<SIDE_decimal>(?:{_COUNT}(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]{{1,2}})?)
    )(?![0-9,])
    \ ?(?P<SIDE_unit>(?:1?/)?{_WORD}(?:[\ ./-]{{1,2}}{_WORD})*?\.?)?
"""
_PLUS_OR_MINUS = r"(?:\+/-|\+-|±)"
_SENTENCE = re.compile(
    rf"""
    (?P<about>(?i:about|around|roughly|circa|ca|approx|approximately)\.?\ |~\ ?)?
    (?P<swing>{_PLUS_OR_MINUS}\ ?)?
    {_AMOUNT.replace("SIDE", "first")}
    (?:
        (?:(?P<to>\ (?i:to)\ |\ ?(?<!\.)\.\.(?!\.)\ ?)|(?P<tolerance>\ ?{_PLUS_OR_MINUS}\ ?))
        {_AMOUNT.replace("SIDE", "second")}
    )?
    """,
    re.VERBOSE | re.ASCII,
)

_VULGAR_FRACTIONS = "¼½¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
_BESIDE_VULGAR = re.compile(f"(?<=[0-9])(?=[{_VULGAR_FRACTIONS}])|(?<=[{_VULGAR_FRACTIONS}])(?=[0-9])")
_PLAIN_CHARACTER = str.maketrans(
    {
        "\N{MINUS SIGN}": "-",
        "\N{HYPHEN}": "-",
        "\N{NON-BREAKING HYPHEN}": "-",
        "\N{EN DASH}": "-",
        "\N{FRACTION SLASH}": "/",
        "\N{PRIME}": "'",
        "\N{LEFT SINGLE QUOTATION MARK}": "'",
        "\N{RIGHT SINGLE QUOTATION MARK}": "'",
        "\N{DOUBLE PRIME}": '"',
        "\N{LEFT DOUBLE QUOTATION MARK}": '"',
        "\N{RIGHT DOUBLE QUOTATION MARK}": '"',
        "\N{DOT OPERATOR}": " ",
        "\N{MIDDLE DOT}": " ",
        "\N{SUPERSCRIPT TWO}": "2",
        "\N{SUPERSCRIPT THREE}": "3",
        **{
            letter: unicodedata.normalize("NFKC", letter).replace("\N{FRACTION SLASH}", "/")
            for letter in _VULGAR_FRACTIONS
        },
    }
)

_SLIPS = (
    (re.compile(r"^[^0-9]*$"), "there is no number in it"),
    (re.compile(r"[0-9] ?/ ?[0-9]+ ?/ ?[0-9]"), "a fraction has one bar, as in 3-1/4"),
    (
        re.compile(r"[0-9](?: -|- | - )[0-9.]|[0-9]-[0-9]*\.|[0-9]-[0-9]+(?![0-9/])|\.[0-9]+-[0-9]"),
        "a dash between numbers has several meanings; write 10-1/2 for ten and a half, 2 to 3 for a range",
    ),
    (
        re.compile(r"[0-9],(?![0-9]{3}(?![0-9]))|(?<![0-9])0[0-9]*,"),
        "a comma marks thousands only, as in 1,500; write a decimal with a point, as in 1.5",
    ),
    (
        re.compile(rf"[0-9]{{{_LONGEST_NUMBER}}}|[eE][+-]?[0-9]{{3}}"),
        "nothing here is measured with such a number",
    ),
)


@dataclass(frozen=True, slots=True)
class Measurement:
    """A number as somebody wrote it: exact, with its unit, perhaps a range.

    `low` and `high` are in the unit's exact base: SI, except that angles are in degrees.
    `swing` is true for a movement to both sides, such as `+/- 17 deg`.
    """

    low: Fraction
    high: Fraction
    dimension: Dimension
    unit: str
    about: bool
    swing: bool

    @property
    def span(self) -> tuple[float, float]:
        """Lowest and highest as SI floats; angles in radians."""
        if self.dimension is Dimension.ANGLE:
            return float(self.low * RADIANS_PER_DEGREE), float(self.high * RADIANS_PER_DEGREE)
        return float(self.low), float(self.high)


@lru_cache(maxsize=8192)  # an edit leaves nearly every number of a file as it was
def read(text: str, dimension: Dimension, default_unit: str | None = None) -> Measurement:
    """Read a number with a unit as people write it: `10-1/2 in`, `1' 3-1/2"`, `2.3 to 2.6 mm`.

    Args:
        text: What was written.
        dimension: What the number has to measure.
        default_unit: The unit of a bare number; a written unit always wins.

    Raises:
        UnitError: Not readable, no unit, or not a unit of this dimension; the message says which.
    """
    found = _SENTENCE.fullmatch(_plain(text)) if len(text) <= _LONGEST_TEXT else None
    if found is None:
        raise _not_readable(text, dimension)
    part = found.groupdict()
    unit = _unit(part, "first", dimension) or _unit(part, "second", dimension)
    if unit is None:
        unit = _default(text, dimension, default_unit)
    low, high = _ends(part, unit, _unit(part, "second", dimension) or unit)
    swing, about = part["swing"] is not None, part["about"] is not None
    if low > high:
        raise UnitError(f"{quoted(text)} runs backwards: write the smaller end first")
    if dimension is Dimension.TEMPERATURE:
        _check_temperature(text, low, swing=swing)
    return Measurement(low, high, dimension, unit.name, about, swing)


def _plain(text: str) -> str:
    """Replace typographic characters by the plain ones meant, and any blanks by single ones."""
    if not text.isascii():
        text = _BESIDE_VULGAR.sub(" ", text).translate(_PLAIN_CHARACTER)
    return " ".join(text.split())


def _unit(part: dict[str, str | None], side: str, dimension: Dimension) -> Unit | None:
    """Find the unit written on one side; feet in front make it inches."""
    written = part[f"{side}_unit"]
    if part[f"{side}_feet"] is None:
        return unit_of_dimension(written, dimension) if written else None
    unit = unit_of_dimension(written or "in", dimension)
    if unit.name != "in":
        raise UnitError(f"after feet come inches, not {unit.name}: write for example 1 ft 3-1/2 in")
    return unit


def _default(text: str, dimension: Dimension, default_unit: str | None) -> Unit:
    if default_unit is None and dimension is not Dimension.NUMBER:
        customary, metric = EXAMPLES[dimension]
        raise UnitError(
            f"{quoted(text)} has no unit: write it as in {customary} or {metric}, "
            f"or give the file a unit for {dimension.value}",
            choices=units_of(dimension),
        )
    return unit_of_dimension("-" if default_unit is None else default_unit, dimension)


def _ends(part: dict[str, str | None], unit: Unit, second_unit: Unit) -> tuple[Fraction, Fraction]:
    """Work out both ends in the exact base from one number, a range, a tolerance or a swing."""
    number = _number(part, "first")
    middle = number * unit.size + unit.zero
    if part["swing"] is not None:
        if part["first_sign"] or part["to"] or part["tolerance"]:
            raise UnitError("after +/- comes one number without a sign, as in +/- 17 deg")
        return unit.zero - number * unit.size, middle
    if part["to"] is not None:
        return middle, _number(part, "second") * second_unit.size + second_unit.zero
    if part["tolerance"] is not None:
        if part["second_sign"]:
            raise UnitError("a tolerance after +/- has no sign of its own: write 5 in +/- 1/8 in")
        either_way = _number(part, "second") * second_unit.size
        return middle - either_way, middle + either_way
    return middle, middle


def _number(part: dict[str, str | None], side: str) -> Fraction:
    """Put one side's number together; a sign in front of a mixed number is for all of it."""
    written = [part[f"{side}_{piece}"] or "" for piece in ("feet", "whole", "top", "bottom", "decimal")]
    if max(map(len, written)) > _LONGEST_NUMBER:
        raise UnitError(f"{quoted(max(written, key=len))} is longer than any number measured here")
    feet, whole, top, bottom, decimal = (piece.replace(",", "") for piece in written)
    size = Fraction(decimal) if decimal else _fraction(whole, int(top), int(bottom))
    if feet:
        size += 12 * int(feet)
    return -size if part[f"{side}_sign"] == "-" else size


def _fraction(whole: str, top: int, bottom: int) -> Fraction:
    if bottom == 0:
        raise UnitError(f"'{top}/{bottom}' divides by nothing: a fraction needs a number below the bar")
    if whole and top >= bottom:
        raise UnitError(f"'{whole}-{top}/{bottom}': after a whole number comes a fraction less than one")
    return int(whole or 0) + Fraction(top, bottom)


def _check_temperature(text: str, low: Fraction, *, swing: bool) -> None:
    if swing:
        raise UnitError(f"{quoted(text)}: write both temperatures, as in -20 to 20 degC")
    if low < 0:
        raise UnitError(f"{quoted(text)} is colder than absolute zero")


def _not_readable(text: str, dimension: Dimension) -> UnitError:
    """Say why a text does not fit the grammar, naming the likeliest slip."""
    customary, metric = EXAMPLES[dimension]
    plain = _plain(text[:_LONGEST_TEXT])
    slips = (advice for pattern, advice in _SLIPS if pattern.search(plain))
    reason = "nothing is written" if not plain else next(slips, "it does not fit any way of writing one")
    return UnitError(
        f"{quoted(text)} cannot be read as {with_article(dimension)}: {reason}. "
        f"Write for example {customary} or {metric}",
        choices=units_of(dimension),
    )
