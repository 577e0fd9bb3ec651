"""Units: which unit is meant, by spelling and by default."""

from __future__ import annotations

from fractions import Fraction

import pytest

from firmpedal.units import Dimension, UnitError, canonical_unit, from_unit, read, show, to_unit, units_of
from firmpedal.units.table import UNITS

D = Dimension


SPELLINGS = {
    (D.LENGTH, "in"): "in, in., inch, inches, \", '', IN, INCHES",
    (D.LENGTH, "ft"): "ft, ft., foot, feet, ', FT",
    (D.LENGTH, "mm"): "mm, millimetre, millimetres, millimeter, millimeters, MM",
    (D.LENGTH, "cm"): "cm, centimetre, centimetres, centimeter, centimeters",
    (D.LENGTH, "m"): "m, metre, metres, meter, meters",
    (D.ANGLE, "deg"): "deg, °, degree, degrees, DEG",
    (D.ANGLE, "rad"): "rad, radian, radians",
    (D.PRESSURE, "psi"): "psi, PSI, lb/in^2, lbf/in^2, lb/in2, lb/sq in, lbf/sq in, lb / sq. in.",
    (D.PRESSURE, "ksi"): "ksi, KSI",
    (D.PRESSURE, "bar"): "bar, bars, BAR",
    (D.PRESSURE, "Pa"): "Pa, pascal, pascals, N/m^2",
    (D.PRESSURE, "MPa"): "MPa, MPA, N/mm^2, N/mm\N{SUPERSCRIPT TWO}",
    (D.PRESSURE, "kgf/cm2"): "kgf/cm2, kgf/cm^2, kgf / cm2, kg/cm2",
    (D.FORCE, "lbf"): "lbf, lb, lbs, pound, pounds, pounds force, pounds-force",
    (D.FORCE, "N"): "N, newton, newtons",
    (D.FORCE, "daN"): "daN",
    (D.FORCE, "kN"): "kN, KN",
    (
        D.VOLUME,
        "cu in",
    ): "cu in, cu. in., in3, in^3, in\N{SUPERSCRIPT THREE}, cubic inch, cubic inches, CU IN",
    (D.VOLUME, "ml"): "ml, mL, cc, cm3, cm^3, millilitre, millilitres",
    (D.VOLUME, "l"): "l, L, litre, litres, liter, liters",
    (D.VOLUME, "US fl oz"): "US fl oz, US floz, US fluid ounce, US fluid ounces, U.S. fl. oz.",
    (D.VOLUME, "US pt"): "US pt, US pint, US pints, U.S. pt, US PINT",
    (D.VOLUME, "US qt"): "US qt, US quart, US quarts",
    (D.VOLUME, "US gal"): "US gal, US gallon, US gallons",
    (D.AREA, "sq in"): "sq in, sq. in., in2, in^2, square inch, square inches",
    (D.AREA, "mm^2"): "mm^2, mm2, sq mm",
    (D.AREA, "cm^2"): "cm^2, cm2, sq cm",
    (D.AREA, "m^2"): "m^2, m2, sq m",
    (D.TEMPERATURE, "degF"): "degF, deg F, °F, ° F, F",
    (D.TEMPERATURE, "degC"): "degC, deg C, °C, ° C, C",
    (D.TEMPERATURE, "K"): "K, kelvin",
    (D.MASS, "lb"): "lb, lb., lbs, pound, pounds, LB",
    (D.MASS, "oz"): "oz, oz., ounce, ounces",
    (D.MASS, "kg"): "kg, KG, kilogram, kilograms",
    (D.MASS, "g"): "g, gram, grams",
    (
        D.TORQUE,
        "lbf in",
    ): "lbf in, lbf-in, lb in, in-lb, in lb, in lbs, in lbf, inch pound, inch pounds, inch-pounds",
    (
        D.TORQUE,
        "lbf ft",
    ): "lbf ft, lb ft, ft-lb, ft lb, ft lbs, ft lbf, lbf\N{DOT OPERATOR}ft, foot pound, foot pounds",
    (D.TORQUE, "N m"): "N m, Nm, N\N{MIDDLE DOT}m",
    (D.NUMBER, "%"): "%, percent, per cent",
    (D.DENSITY, "kg/m^3"): "kg/m^3, kg/m3, kg/m\N{SUPERSCRIPT THREE}",
    (D.DENSITY, "lb/in^3"): "lb/in^3, lb/in3, lb/cu in",
    (D.DENSITY, "g/cm^3"): "g/cm^3, g/cm3, g/cc, g/ml, kg/l",
    (D.EXPANSION, "1/K"): "1/K, /K, 1/degC, /degC, 1/°C, /°C",
    (D.EXPANSION, "1/degF"): "1/degF, /degF, 1/°F, /°F",
    (D.EXPANSION, "ppm/K"): "ppm/K, ppm/degC, ppm/°C",
    (D.EXPANSION, "ppm/degF"): "ppm/degF, ppm/°F",
    (D.VOLUME_PER_LENGTH, "cu in/in"): "cu in/in, in^3/in, in3/in",
    (D.VOLUME_PER_LENGTH, "cu in/ft"): "cu in/ft, in^3/ft",
    (D.VOLUME_PER_LENGTH, "ml/m"): "ml/m, mL/m, cc/m, cm^3/m",
    (D.ENERGY, "ft-lbf"): "ft-lbf, ft lbf, ft-lb, ft lb, ft lbs, foot pound, foot pounds",
    (D.ENERGY, "J"): "J, joule, joules",
    (D.SPEED, "kt"): "kt, kts, kn, knot, knots",
    (D.SPEED, "mph"): "mph, mi/h",
    (D.SPEED, "km/h"): "km/h, kph",
    (D.SPEED, "ft/s"): "ft/s, fps",
    (D.TIME, "s"): "s, sec, second, seconds",
    (D.TIME, "min"): "min, minute, minutes",
    (D.TIME, "h"): "h, hr, hour, hours",
    (D.KINEMATIC_VISCOSITY, "mm^2/s"): "mm^2/s, mm2/s, cSt, centistokes",
    (D.KINEMATIC_VISCOSITY, "m^2/s"): "m^2/s",
    (D.SURFACE_TENSION, "mN/m"): "mN/m, dyn/cm, dynes/cm",
    (D.SURFACE_TENSION, "N/m"): "N/m",
    (D.FLOW, "cu in/s"): "cu in/s, in^3/s",
    (D.FLOW, "ml/s"): "ml/s, mL/s, cc/s, cm^3/s",
    (D.FLOW, "m^3/s"): "m^3/s",
} | {
    (D.VOLUME, f"imp {short}"): ", ".join(
        f"{word} {spelling}"
        for word in ("imp", "Imp", "imperial", "Imperial", "UK")
        for spelling in (short, *words)
    )
    for short, words in {
        "fl oz": ("floz", "fluid ounce", "fluid ounces"),
        "pt": ("pint", "pints"),
        "qt": ("quart", "quarts"),
        "gal": ("gallon", "gallons"),
    }.items()
}


class TestWhichUnit:
    def test_dimensions_are_called_what_people_call_them(self):
        assert " ".join(sorted(Dimension)) == (
            "acceleration angle area density energy flow force heat conductance heat transfer "
            "coefficient kinematic viscosity length mass mass per length number power pressure specific "
            "heat speed surface tension temperature thermal expansion time torque volume volume per "
            "length"
        )

    def test_bare_number_takes_the_default(self):
        assert read("10-1/2", D.LENGTH, "in") == read("10-1/2 in", D.LENGTH)
        assert read("10", D.LENGTH, "inches").unit == "in"
        assert read("50", D.NUMBER, "%").low == Fraction(1, 2)

    def test_written_unit_wins(self):
        assert read("10 mm", D.LENGTH, "in") == read("10 mm", D.LENGTH)

    def test_a_wrong_default_is_refused(self):
        with pytest.raises(UnitError, match="'psi' measures pressure, and a length is wanted"):
            read("10", D.LENGTH, "psi")

    @pytest.mark.parametrize(("dimension", "unit"), SPELLINGS)
    def test_spellings(self, dimension, unit):
        spellings = SPELLINGS[dimension, unit].split(", ")
        found = {spelling: canonical_unit(spelling, dimension) for spelling in spellings}
        assert found == dict.fromkeys(spellings, unit)

    def test_no_spelling_is_accepted_untested(self):
        listed = {
            (dimension, unit, spelling)
            for (dimension, unit), spellings in SPELLINGS.items()
            for spelling in spellings.split(", ")
        }
        accepted = {(unit.dimension, unit.name, spelling) for unit in UNITS for spelling in unit.spellings}
        assert accepted - listed - {(D.NUMBER, "-", "")} == set()
        assert canonical_unit("", D.NUMBER) == canonical_unit("-", D.NUMBER) == "-"

    def test_choices_are_canonical_names(self):
        assert units_of(D.LENGTH) == ("in", "ft", "mm", "cm", "m")
        for dimension in Dimension:
            assert [canonical_unit(unit, dimension) for unit in units_of(dimension)] == list(
                units_of(dimension)
            )

    def test_canonical_names_are_unique(self):
        names = [unit for dimension in Dimension for unit in units_of(dimension)]
        assert len(names) == len(set(names))

    def test_converting_takes_clear_spellings_and_refuses_others(self):
        assert from_unit(1.0, "in^3") == from_unit(1.0, "cu in")
        with pytest.raises(UnitError, match="'ft lb' could mean ft-lbf or lbf ft") as refused:
            to_unit(1.0, "ft lb")
        assert refused.value.choices == ("ft-lbf", "lbf ft")
        with pytest.raises(UnitError, match="'furlong' is not a unit known here"):
            show(1.0, "furlong")
