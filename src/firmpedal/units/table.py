"""The units we know, each with its exact size.

Sizes are fractions built from a few definitions: the inch and the pound of the international yard
and pound agreement of 1959, standard gravity, the US gallon of 231 cubic inches and the imperial
gallon of 4.54609 litres. Everything else in customary units follows from those.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction


class Dimension(StrEnum):
    """What a number measures; the values are the words shown to people."""

    LENGTH = "length"
    ANGLE = "angle"
    PRESSURE = "pressure"
    FORCE = "force"
    VOLUME = "volume"
    AREA = "area"
    TEMPERATURE = "temperature"
    MASS = "mass"
    TORQUE = "torque"
    NUMBER = "number"
    DENSITY = "density"
    LINEAR_DENSITY = "mass per length"
    EXPANSION = "thermal expansion"
    VOLUME_PER_LENGTH = "volume per length"
    ENERGY = "energy"
    SPEED = "speed"
    TIME = "time"
    ACCELERATION = "acceleration"
    POWER = "power"
    SPECIFIC_HEAT = "specific heat"
    HEAT_TRANSFER = "heat transfer coefficient"
    CONDUCTANCE = "heat conductance"
    KINEMATIC_VISCOSITY = "kinematic viscosity"
    SURFACE_TENSION = "surface tension"
    FLOW = "flow"


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: `size` in the exact base, and `zero`, where its scale starts, in the same base.

    The exact base is SI, except that angles count in degrees, because pi is no fraction.
    `decimals` is how many a person wants to see; None asks for significant digits instead.
    """

    name: str
    dimension: Dimension
    size: Fraction
    decimals: int | None
    spellings: tuple[str, ...] = ()
    zero: Fraction = Fraction(0)


_BRACKETS = {
    "m": Dimension.LENGTH,
    "rad": Dimension.ANGLE,
    "Pa": Dimension.PRESSURE,
    "N": Dimension.FORCE,
    "m^3": Dimension.VOLUME,
    "m^2": Dimension.AREA,
    "K": Dimension.TEMPERATURE,
    "kg": Dimension.MASS,
    "N m": Dimension.TORQUE,
    "-": Dimension.NUMBER,
    "kg/m^3": Dimension.DENSITY,
    "kg/m": Dimension.LINEAR_DENSITY,
    "1/K": Dimension.EXPANSION,
    "m^3/m": Dimension.VOLUME_PER_LENGTH,
    "J": Dimension.ENERGY,
    "m/s": Dimension.SPEED,
    "s": Dimension.TIME,
    "m/s^2": Dimension.ACCELERATION,
    "W": Dimension.POWER,
    "J/kg K": Dimension.SPECIFIC_HEAT,
    "W/m^2 K": Dimension.HEAT_TRANSFER,
    "W/K": Dimension.CONDUCTANCE,
    "m^2/s": Dimension.KINEMATIC_VISCOSITY,
    "N/m": Dimension.SURFACE_TENSION,
    "m^3/s": Dimension.FLOW,
}


def dimension_of(bracket: str) -> Dimension:
    """Give the dimension of an SI unit as docstrings write it in brackets, such as `Pa` or `m^3`.

    Raises:
        ValueError: No dimension has this SI unit.
    """
    try:
        return _BRACKETS[bracket]
    except KeyError:
        raise ValueError(f"[{bracket}] is none of {', '.join(_BRACKETS)}") from None


_ONE = Fraction(1)
_CENTI = Fraction(1, 100)
_MILLI = Fraction(1, 1000)
_KILO = Fraction(1000)
_MEGA = Fraction(10**6)
_PI = Fraction("3.14159265358979323846264338327950288")  # far finer than a float, so a float cannot tell
RADIANS_PER_DEGREE = _PI / 180

_INCH = Fraction("0.0254")
_FOOT = 12 * _INCH
_MILE = 5280 * _FOOT
_NAUTICAL_MILE = Fraction(1852)
_POUND = Fraction("0.45359237")
_GRAVITY = Fraction("9.80665")
_POUND_FORCE = _POUND * _GRAVITY
_PSI = _POUND_FORCE / _INCH**2
_US_GALLON = 231 * _INCH**3
_IMPERIAL_GALLON = Fraction("4.54609") * _MILLI
_LITRE = _MILLI
_MINUTE = Fraction(60)
_HOUR = Fraction(3600)
_DEGREE_F = Fraction(5, 9)


def _fluid_measures(system: str, gallon: Fraction, ounces: int, words: tuple[str, ...]) -> tuple[Unit, ...]:
    """Make one system's fluid ounce, pint, quart and gallon; a gallon has `ounces` fluid ounces."""
    measures = (
        ("fl oz", gallon / ounces, 1, ("floz", "fluid ounce", "fluid ounces")),
        ("pt", gallon / 8, 2, ("pint", "pints")),
        ("qt", gallon / 4, 2, ("quart", "quarts")),
        ("gal", gallon, 2, ("gallon", "gallons")),
    )
    return tuple(
        Unit(
            f"{system} {short}",
            Dimension.VOLUME,
            size,
            decimals,
            tuple(f"{word} {spelling}" for word in (system, *words) for spelling in (short, *spellings)),
        )
        for short, size, decimals, spellings in measures
    )


UNITS: tuple[Unit, ...] = (
    Unit("in", Dimension.LENGTH, _INCH, 2, ('"', "''", "inch", "inches")),
    Unit("ft", Dimension.LENGTH, _FOOT, 2, ("'", "foot", "feet")),
    Unit("mm", Dimension.LENGTH, _MILLI, 1, ("millimetre", "millimetres", "millimeter", "millimeters")),
    Unit("cm", Dimension.LENGTH, _CENTI, 2, ("centimetre", "centimetres", "centimeter", "centimeters")),
    Unit("m", Dimension.LENGTH, _ONE, 2, ("metre", "metres", "meter", "meters")),
    Unit("deg", Dimension.ANGLE, _ONE, 1, ("°", "degree", "degrees")),
    Unit("rad", Dimension.ANGLE, 1 / RADIANS_PER_DEGREE, 3, ("radian", "radians")),
    Unit("psi", Dimension.PRESSURE, _PSI, 0, ("lb/in^2", "lbf/in^2", "lb/sq in", "lbf/sq in")),
    Unit("ksi", Dimension.PRESSURE, _KILO * _PSI, 1),
    Unit("Msi", Dimension.PRESSURE, _MEGA * _PSI, 1),
    Unit("bar", Dimension.PRESSURE, Fraction(100_000), 1, ("bars",)),
    Unit("Pa", Dimension.PRESSURE, _ONE, 0, ("pascal", "pascals", "N/m^2")),
    Unit("kPa", Dimension.PRESSURE, _KILO, 0),
    Unit("MPa", Dimension.PRESSURE, _MEGA, 2, ("N/mm^2",)),
    Unit("GPa", Dimension.PRESSURE, _KILO * _MEGA, 1),
    Unit("kgf/cm2", Dimension.PRESSURE, _GRAVITY / _CENTI**2, 1, ("kg/cm2",)),
    Unit("lbf", Dimension.FORCE, _POUND_FORCE, 0, ("lb", "lbs", "pound", "pounds", "pounds force")),
    Unit("N", Dimension.FORCE, _ONE, 0, ("newton", "newtons")),
    Unit("daN", Dimension.FORCE, Fraction(10), 1),
    Unit("kN", Dimension.FORCE, _KILO, 2),
    Unit("kgf", Dimension.FORCE, _GRAVITY, 1),
    Unit("cu in", Dimension.VOLUME, _INCH**3, 2, ("in^3", "cubic inch", "cubic inches")),
    Unit("ml", Dimension.VOLUME, _LITRE * _MILLI, 1, ("mL", "cc", "cm^3", "millilitre", "millilitres")),
    Unit("l", Dimension.VOLUME, _LITRE, 2, ("L", "litre", "litres", "liter", "liters")),
    Unit("mm^3", Dimension.VOLUME, _MILLI**3, 0),
    Unit("m^3", Dimension.VOLUME, _ONE, None),
    *_fluid_measures("US", _US_GALLON, 128, ()),
    *_fluid_measures("imp", _IMPERIAL_GALLON, 160, ("Imp", "imperial", "Imperial", "UK")),
    Unit("sq in", Dimension.AREA, _INCH**2, 3, ("in^2", "square inch", "square inches")),
    Unit("mm^2", Dimension.AREA, _MILLI**2, 1, ("sq mm",)),
    Unit("cm^2", Dimension.AREA, _CENTI**2, 2, ("sq cm",)),
    Unit("m^2", Dimension.AREA, _ONE, None, ("sq m",)),
    Unit("degF", Dimension.TEMPERATURE, _DEGREE_F, 0, ("°F", "F", "deg F"), Fraction("459.67") * _DEGREE_F),
    Unit("degC", Dimension.TEMPERATURE, _ONE, 0, ("°C", "C", "deg C"), Fraction("273.15")),
    Unit("K", Dimension.TEMPERATURE, _ONE, 0, ("kelvin",)),
    Unit("lb", Dimension.MASS, _POUND, 2, ("lbs", "pound", "pounds")),
    Unit("oz", Dimension.MASS, _POUND / 16, 1, ("ounce", "ounces")),
    Unit("kg", Dimension.MASS, _ONE, 2, ("kilogram", "kilograms")),
    Unit("g", Dimension.MASS, _MILLI, 1, ("gram", "grams")),
    Unit(
        "lbf in",
        Dimension.TORQUE,
        _POUND_FORCE * _INCH,
        0,
        ("in lbf", "lb in", "in lb", "in lbs", "inch pound", "inch pounds"),
    ),
    Unit(
        "lbf ft",
        Dimension.TORQUE,
        _POUND_FORCE * _FOOT,
        1,
        ("ft lbf", "lb ft", "ft lb", "ft lbs", "foot pound", "foot pounds"),
    ),
    Unit("N m", Dimension.TORQUE, _ONE, 1, ("Nm",)),
    Unit("-", Dimension.NUMBER, _ONE, None, ("",)),
    Unit("%", Dimension.NUMBER, _CENTI, 1, ("percent", "per cent")),
    Unit("lb/in^3", Dimension.DENSITY, _POUND / _INCH**3, 3, ("lb/cu in",)),
    Unit("kg/m^3", Dimension.DENSITY, _ONE, 0),
    Unit("g/cm^3", Dimension.DENSITY, _KILO, 3, ("g/cc", "g/ml", "kg/l")),
    Unit("lb/ft", Dimension.LINEAR_DENSITY, _POUND / _FOOT, 3),
    Unit("kg/m", Dimension.LINEAR_DENSITY, _ONE, 3),
    Unit("g/m", Dimension.LINEAR_DENSITY, _MILLI, 1),
    Unit("1/K", Dimension.EXPANSION, _ONE, None, ("/K", "1/degC", "/degC", "1/°C", "/°C")),
    Unit("1/degF", Dimension.EXPANSION, 1 / _DEGREE_F, None, ("/degF", "1/°F", "/°F")),
    Unit("ppm/K", Dimension.EXPANSION, 1 / _MEGA, 1, ("ppm/degC", "ppm/°C")),
    Unit("ppm/degF", Dimension.EXPANSION, 1 / _MEGA / _DEGREE_F, 1, ("ppm/°F",)),
    Unit("cu in/in", Dimension.VOLUME_PER_LENGTH, _INCH**2, 4, ("in^3/in",)),
    Unit("cu in/ft", Dimension.VOLUME_PER_LENGTH, _INCH**3 / _FOOT, 3, ("in^3/ft",)),
    Unit("ml/m", Dimension.VOLUME_PER_LENGTH, _LITRE * _MILLI, 2, ("mL/m", "cc/m", "cm^3/m")),
    Unit("m^3/m", Dimension.VOLUME_PER_LENGTH, _ONE, None),
    Unit(
        "ft-lbf", Dimension.ENERGY, _POUND_FORCE * _FOOT, 0, ("ft lb", "ft lbs", "foot pound", "foot pounds")
    ),
    Unit("J", Dimension.ENERGY, _ONE, 0, ("joule", "joules")),
    Unit("kJ", Dimension.ENERGY, _KILO, 1),
    Unit("kt", Dimension.SPEED, _NAUTICAL_MILE / _HOUR, 1, ("kts", "kn", "knot", "knots")),
    Unit("mph", Dimension.SPEED, _MILE / _HOUR, 1, ("mi/h",)),
    Unit("km/h", Dimension.SPEED, _KILO / _HOUR, 1, ("kph",)),
    Unit("m/s", Dimension.SPEED, _ONE, 2),
    Unit("ft/s", Dimension.SPEED, _FOOT, 1, ("fps",)),
    Unit("s", Dimension.TIME, _ONE, 1, ("sec", "second", "seconds")),
    Unit("min", Dimension.TIME, _MINUTE, 1, ("minute", "minutes")),
    Unit("h", Dimension.TIME, _HOUR, 2, ("hr", "hour", "hours")),
    Unit("m/s^2", Dimension.ACCELERATION, _ONE, 2),
    Unit("ft/s^2", Dimension.ACCELERATION, _FOOT, 1),
    Unit("W", Dimension.POWER, _ONE, 0),
    Unit("kW", Dimension.POWER, _KILO, 2),
    Unit("J/kg K", Dimension.SPECIFIC_HEAT, _ONE, 0),
    Unit("kJ/kg K", Dimension.SPECIFIC_HEAT, _KILO, 3),
    Unit("W/m^2 K", Dimension.HEAT_TRANSFER, _ONE, 1),
    Unit("W/K", Dimension.CONDUCTANCE, _ONE, 2),
    Unit("mW/K", Dimension.CONDUCTANCE, _MILLI, 0),
    Unit("mm^2/s", Dimension.KINEMATIC_VISCOSITY, _MILLI**2, None, ("cSt", "centistokes", "mm2/s")),
    Unit("m^2/s", Dimension.KINEMATIC_VISCOSITY, _ONE, None),
    Unit("mN/m", Dimension.SURFACE_TENSION, _MILLI, 1, ("dyn/cm", "dynes/cm")),
    Unit("N/m", Dimension.SURFACE_TENSION, _ONE, None),
    Unit("cu in/s", Dimension.FLOW, _INCH**3, 2, ("in^3/s",)),
    Unit("ml/s", Dimension.FLOW, _LITRE * _MILLI, 1, ("mL/s", "cc/s", "cm^3/s")),
    Unit("m^3/s", Dimension.FLOW, _ONE, None),
)
