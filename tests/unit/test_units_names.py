"""Units: which unit is meant, by spelling and by default."""

from __future__ import annotations

from fractions import Fraction

import pytest

from firmpedal.units import Dimension, UnitError, canonical_unit, from_unit, read, show, to_unit, units_of

D = Dimension


class TestWhichUnit:
    def test_bare_number_takes_the_default(self):
        assert read("10-1/2", D.LENGTH, "in") == read("10-1/2 in", D.LENGTH)
        assert read("10", D.LENGTH, "inches").unit == "in"
        assert read("50", D.NUMBER, "%").low == Fraction(1, 2)

    def test_written_unit_wins(self):
        assert read("10 mm", D.LENGTH, "in") == read("10 mm", D.LENGTH)

    def test_a_wrong_default_is_refused(self):
        with pytest.raises(UnitError, match="'psi' measures pressure, and a length is wanted"):
            read("10", D.LENGTH, "psi")

    @pytest.mark.parametrize(
        ("dimension", "unit", "spellings"),
        [
            (D.LENGTH, "in", ["in", "in.", "inch", "inches", '"', "''", "IN", "INCHES"]),
            (D.LENGTH, "ft", ["ft", "foot", "feet", "'", "FT"]),
            (D.LENGTH, "mm", ["mm", "millimetre", "millimetres", "millimeter", "millimeters", "MM"]),
            (D.LENGTH, "cm", ["cm", "centimetres", "centimeters"]),
            (D.LENGTH, "m", ["m", "metre", "metres", "meters"]),
            (D.ANGLE, "deg", ["deg", "°", "degree", "degrees", "DEG"]),
            (D.ANGLE, "rad", ["rad", "radian", "radians"]),
            (D.PRESSURE, "psi", ["psi", "PSI", "lbf/in^2", "lb/sq in"]),
            (D.PRESSURE, "MPa", ["MPa", "MPA", "N/mm^2", "N/mm\N{SUPERSCRIPT TWO}"]),
            (D.PRESSURE, "kgf/cm2", ["kgf/cm2", "kgf/cm^2", "kgf / cm2"]),
            (D.FORCE, "lbf", ["lbf", "lb", "lbs", "pounds"]),
            (D.FORCE, "daN", ["daN"]),
            (
                D.VOLUME,
                "cu in",
                ["cu in", "cu. in.", "in3", "in^3", "in\N{SUPERSCRIPT THREE}", "cubic inches", "CU IN"],
            ),
            (D.VOLUME, "ml", ["ml", "mL", "cc", "cm3", "cm^3", "millilitres"]),
            (D.VOLUME, "l", ["l", "L", "litre", "litres", "liter"]),
            (D.VOLUME, "US pt", ["US pt", "US pint", "US pints", "U.S. pt", "US PINT"]),
            (D.VOLUME, "US fl oz", ["US fl oz", "US fluid ounces"]),
            (D.VOLUME, "US qt", ["US qt", "US quart"]),
            (D.VOLUME, "US gal", ["US gal", "US gallons"]),
            (D.VOLUME, "imp pt", ["imp pt", "imp. pt", "imperial pint", "UK pint", "Imperial pints"]),
            (D.VOLUME, "imp fl oz", ["imp fl oz", "imperial fluid ounces"]),
            (D.VOLUME, "imp qt", ["imp qt", "imperial quarts"]),
            (D.VOLUME, "imp gal", ["imp gal", "imperial gallons"]),
            (D.TEMPERATURE, "degF", ["degF", "deg F", "°F", "° F", "F"]),
            (D.TEMPERATURE, "degC", ["degC", "°C", "C"]),
            (D.MASS, "lb", ["lb", "lbs", "lb.", "pounds", "LB"]),
            (D.MASS, "kg", ["kg", "KG", "kilograms"]),
            (D.TORQUE, "lbf in", ["lbf in", "lbf-in", "in-lb", "in lb", "in-lbs", "in lbf", "inch pounds"]),
            (D.TORQUE, "lbf ft", ["lbf ft", "ft-lb", "ft lb", "lbf\N{DOT OPERATOR}ft", "foot-pounds"]),
            (D.TORQUE, "N m", ["N m", "Nm", "N\N{MIDDLE DOT}m"]),
            (D.NUMBER, "%", ["%", "percent", "per cent"]),
            (D.NUMBER, "-", ["-", ""]),
            (D.DENSITY, "kg/m^3", ["kg/m3", "kg/m^3", "kg/m\N{SUPERSCRIPT THREE}"]),
            (D.DENSITY, "lb/in^3", ["lb/in3", "lb/cu in"]),
            (D.ENERGY, "ft-lbf", ["ft-lbf", "ft lbf", "ft-lb"]),
            (D.SPEED, "kt", ["kt", "kts", "knots"]),
            (D.TIME, "h", ["h", "hr", "hours"]),
        ],
    )
    def test_spellings(self, dimension, unit, spellings):
        assert {spelling: canonical_unit(spelling, dimension) for spelling in spellings} == dict.fromkeys(
            spellings, unit
        )

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
