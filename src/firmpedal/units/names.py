"""Names of units: from what people write to the unit meant, or to a kind word about why not."""

from __future__ import annotations

from collections import defaultdict
from difflib import get_close_matches

from firmpedal.units.table import UNITS, Dimension, Unit

EXAMPLES: dict[Dimension, tuple[str, str]] = {
    Dimension.LENGTH: ("9-1/4 in", "235 mm"),
    Dimension.ANGLE: ("17 deg", "0.3 rad"),
    Dimension.PRESSURE: ("600 psi", "41 bar"),
    Dimension.FORCE: ("75 lbf", "330 N"),
    Dimension.VOLUME: ("0.35 cu in", "5.7 ml"),
    Dimension.AREA: ("0.44 sq in", "285 mm^2"),
    Dimension.TEMPERATURE: ("68 degF", "20 degC"),
    Dimension.MASS: ("1,500 lb", "680 kg"),
    Dimension.TORQUE: ("40 lbf in", "4.5 N m"),
    Dimension.NUMBER: ("0.25", "25 %"),
    Dimension.DENSITY: ("0.098 lb/in^3", "2,710 kg/m^3"),
    Dimension.LINEAR_DENSITY: ("0.2 lb/ft", "0.3 kg/m"),
    Dimension.EXPANSION: ("13 ppm/degF", "23.4 ppm/K"),
    Dimension.VOLUME_PER_LENGTH: ("0.025 cu in/in", "16 ml/m"),
    Dimension.ENERGY: ("44,500 ft-lbf", "60 kJ"),
    Dimension.SPEED: ("50 kt", "26 m/s"),
    Dimension.TIME: ("90 s", "1.5 min"),
    Dimension.ACCELERATION: ("10 ft/s^2", "3.05 m/s^2"),
    Dimension.POWER: ("1,200 W", "1.2 kW"),
    Dimension.SPECIFIC_HEAT: ("486 J/kg K", "0.486 kJ/kg K"),
    Dimension.HEAT_TRANSFER: ("20 W/m^2 K", "20.0 W/m^2 K"),
    Dimension.CONDUCTANCE: ("0.5 W/K", "500 mW/K"),
    Dimension.KINEMATIC_VISCOSITY: ("14 mm^2/s", "14 cSt"),
    Dimension.SURFACE_TENSION: ("30 mN/m", "30 dyn/cm"),
    Dimension.FLOW: ("0.2 cu in/s", "3.3 ml/s"),
}
"""Two ways to write one value of each dimension, for messages."""

_BARE_FLUID_MEASURES = {
    "fl oz": ("fl oz", "floz", "fluid ounce", "fluid ounces", "oz", "ounce", "ounces"),
    "pt": ("pt", "pint", "pints"),
    "qt": ("qt", "quart", "quarts"),
    "gal": ("gal", "gallon", "gallons"),
}

_SAME_CHARACTER = str.maketrans(
    {
        "^": None,
        ".": None,
        "-": " ",
        "\N{DOT OPERATOR}": " ",
        "\N{MIDDLE DOT}": " ",
        "\N{SUPERSCRIPT TWO}": "2",
        "\N{SUPERSCRIPT THREE}": "3",
    }
)


class UnitError(ValueError):
    """A number or a unit could not be understood; the message is for the person who wrote it.

    `suggestion` is the unit probably meant, or empty; `choices` are the units to choose from.
    """

    def __init__(self, message: str, *, suggestion: str = "", choices: tuple[str, ...] = ()) -> None:
        super().__init__(message)
        self.suggestion = suggestion
        self.choices = choices


def _key(text: str) -> str:
    """Bring spellings that differ only in dots, dashes, carets and blanks to one form."""
    key = " ".join(text.translate(_SAME_CHARACTER).split())
    return key.replace(" /", "/").replace("/ ", "/").replace("° ", "°")


def _spellings_of(dimension: Dimension) -> dict[str, Unit]:
    """Map every accepted spelling, and the same in capitals as drawings are lettered, to its unit."""
    exact = {
        _key(spelling): unit
        for unit in UNITS
        if unit.dimension is dimension
        for spelling in (unit.name, *unit.spellings)
    }
    capitals: defaultdict[str, set[str]] = defaultdict(set)
    for spelling, unit in exact.items():
        capitals[spelling.upper()].add(unit.name)
    clear = {
        spelling.upper(): unit for spelling, unit in exact.items() if len(capitals[spelling.upper()]) == 1
    }
    return clear | exact


_SPELLINGS = {dimension: _spellings_of(dimension) for dimension in Dimension}
_BY_NAME = {unit.name: unit for unit in UNITS}
_WHICH_MEASURE = {
    letters: measure
    for measure, spellings in _BARE_FLUID_MEASURES.items()
    for spelling in spellings
    for letters in (spelling, spelling.upper())
}


def units_of(dimension: Dimension) -> tuple[str, ...]:
    """Give the canonical names of a dimension's units, for lists of choices."""
    return tuple(unit.name for unit in UNITS if unit.dimension is dimension)


def canonical_unit(text: str, dimension: Dimension) -> str:
    """Give the canonical name of a unit as somebody wrote it: `inches` is `in`.

    Raises:
        UnitError: Not a unit of this dimension; says the near miss or the choices.
    """
    return unit_of_dimension(text, dimension).name


def unit_of_dimension(text: str, dimension: Dimension) -> Unit:
    """Find the unit of a dimension that a spelling means.

    Raises:
        UnitError: Not a unit of this dimension; says the near miss or the choices.
    """
    unit = _SPELLINGS[dimension].get(_key(text))
    if unit is None:
        raise _not_a_unit(text, dimension)
    return unit


def unit_by_name(name: str) -> Unit:
    """Find a unit by its canonical name, or by a spelling that only one dimension has.

    Raises:
        UnitError: No such unit, or the spelling means different units in different dimensions.
    """
    if (unit := _BY_NAME.get(name)) is not None:
        return unit
    found = {spellings[_key(name)] for spellings in _SPELLINGS.values() if _key(name) in spellings}
    if len(found) == 1:
        return found.pop()
    choices = tuple(sorted(unit.name for unit in found))
    meaning = f"could mean {' or '.join(choices)}" if choices else "is not a unit known here"
    raise UnitError(f"{quoted(name)} {meaning}", choices=choices)


def quoted(text: str) -> str:
    """Quote what somebody wrote, short and printable, for use in a message."""
    words = " ".join(text.split())
    short = words if len(words) <= 40 else words[:37] + "..."
    return "'" + "".join(letter if letter.isprintable() else "?" for letter in short) + "'"


def with_article(dimension: Dimension) -> str:
    """Say a dimension as a thing wanted: a length, an angle."""
    return f"{'an' if dimension.value[0] in 'aeiou' else 'a'} {dimension.value}"


def _not_a_unit(text: str, dimension: Dimension) -> UnitError:
    measure = _WHICH_MEASURE.get(_key(text))
    if dimension is Dimension.VOLUME and measure is not None:
        which = (f"US {measure}", f"imp {measure}")
        return UnitError(
            f"{quoted(text)} has one size in US and another in imperial measure: "
            f"write {which[0]} or {which[1]}",
            choices=which,
        )
    choices = units_of(dimension)
    suggestion = _near_miss(text, dimension)
    advice = f"did you mean {suggestion}?" if suggestion else f"write one of {', '.join(choices)}"
    other = [each for each, spellings in _SPELLINGS.items() if _key(text) in spellings]
    wrong = (
        f"{quoted(text)} measures {' or '.join(other)}, and {with_article(dimension)} is wanted here"
        if other
        else f"{quoted(text)} is not a unit of {dimension.value} known here"
    )
    return UnitError(f"{wrong}: {advice}", suggestion=suggestion, choices=choices)


def _near_miss(text: str, dimension: Dimension) -> str:
    """Give the unit whose spelling is nearest, capitals apart, or an empty string."""
    spellings = {spelling.lower(): unit.name for spelling, unit in _SPELLINGS[dimension].items() if spelling}
    close = get_close_matches(_key(text).lower(), spellings, n=1, cutoff=0.7)
    return spellings[close[0]] if close else ""
