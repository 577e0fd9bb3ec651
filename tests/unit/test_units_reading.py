"""Units: every way of writing a number."""

from __future__ import annotations

import math
from dataclasses import FrozenInstanceError
from fractions import Fraction

import pytest

from firmpedal.units import Dimension, Measurement, from_unit, read

D = Dimension
INCH = Fraction("0.0254")


def _inches(text: str, default: str | None = "in") -> Fraction:
    return read(text, D.LENGTH, default).low / INCH


class TestNumbers:
    @pytest.mark.parametrize(
        ("text", "inches"),
        [
            ("3/16", "3/16"),
            ("5/8", "5/8"),
            (".035", "7/200"),
            ("0.75", "3/4"),
            ("5.", "5"),
            ("-2.5", "-5/2"),
            ("+1.5 in", "3/2"),
            ("10-1/2 in", "21/2"),
            ('10 1/2"', "21/2"),
            ("10 1/2 in", "21/2"),
            ("10-1/2in.", "21/2"),
            ("10\N{VULGAR FRACTION ONE HALF} in", "21/2"),
            ("10-\N{VULGAR FRACTION ONE HALF}", "21/2"),
            ("\N{VULGAR FRACTION ONE QUARTER}", "1/4"),
            ("\N{VULGAR FRACTION THREE QUARTERS}", "3/4"),
            ("\N{VULGAR FRACTION ONE EIGHTH}", "1/8"),
            ("\N{VULGAR FRACTION THREE EIGHTHS}", "3/8"),
            ("\N{VULGAR FRACTION FIVE EIGHTHS}", "5/8"),
            ("\N{VULGAR FRACTION SEVEN EIGHTHS}", "7/8"),
            ("7\N{FRACTION SLASH}8", "7/8"),
            ("\N{MINUS SIGN}5 in", "-5"),
            ("10\N{EN DASH}1/2 in", "21/2"),
            ("10\N{HYPHEN}1/2 in", "21/2"),
            ("10\N{NON-BREAKING HYPHEN}1/2 in", "21/2"),
            ("-10-1/2 in", "-21/2"),
            ("-10 1/2 in", "-21/2"),
            ("1' 3-1/2\"", "31/2"),
            ("1'-3 1/2\"", "31/2"),
            ("1'3\"", "15"),
            ("1' 3-1/2", "31/2"),
            ("1\N{PRIME} 3-1/2\N{DOUBLE PRIME}", "31/2"),
            ("1\N{RIGHT SINGLE QUOTATION MARK} 3\N{RIGHT DOUBLE QUOTATION MARK}", "15"),
            ("1 ft 3-1/2 in", "31/2"),
            ("1 foot 3.5 inches", "31/2"),
            ("-1 ft 3-1/2 in", "-31/2"),
            ("1\N{LEFT SINGLE QUOTATION MARK} 3\N{LEFT DOUBLE QUOTATION MARK}", "15"),
            ("1' 14\"", "26"),
            ("2'", "24"),
            ("2 ft.", "24"),
            ("2 1/2 ft", "30"),
            ("3''", "3"),
            ("1,500 in", "1500"),
            ("1,234,567.5 in", "2469135/2"),
            ("1e-3 m", "5/127"),
            ("25.4 mm", "1"),
            ("2.54 cm", "1"),
            ("  10\t1/2   in ", "21/2"),
            ("10\N{NO-BREAK SPACE}1/2\N{NO-BREAK SPACE}in", "21/2"),
        ],
    )
    def test_lengths(self, text, inches):
        assert _inches(text) == Fraction(inches)

    @pytest.mark.parametrize(
        ("text", "inches"),
        [("12 1/2 in", "25/2"), ("3 1/2 in", "7/2"), ("1' 3-1/2\"", "31/2"), ('12 1/2"', "25/2")],
    )
    def test_what_general_parsers_get_wrong(self, text, inches):
        assert _inches(text, default=None) == Fraction(inches)

    @pytest.mark.parametrize(
        ("text", "dimension", "unit", "number"),
        [
            ("4.76 mm", D.LENGTH, "mm", 4.76),
            ("1,500 lb", D.MASS, "lb", 1500),
            ("2 oz", D.MASS, "oz", 2),
            ("600 psi", D.PRESSURE, "psi", 600),
            ("600 PSI", D.PRESSURE, "psi", 600),
            ("41 bar", D.PRESSURE, "bar", 41),
            ("75 lbf", D.FORCE, "lbf", 75),
            ("75 lb", D.FORCE, "lbf", 75),
            ("-30 degF", D.TEMPERATURE, "degF", -30),
            ("20%", D.NUMBER, "%", 20),
            ("3/4", D.NUMBER, "-", 0.75),
            ("13.1 ppm/°F", D.EXPANSION, "ppm/degF", 13.1),
            ("23.6e-6 1/K", D.EXPANSION, "1/K", 23.6e-6),
            ("0.098 lb/in3", D.DENSITY, "lb/in^3", 0.098),
            ("40 in-lb", D.TORQUE, "lbf in", 40),
            ("44,471 ft\N{MIDDLE DOT}lbf", D.ENERGY, "ft-lbf", 44471),
            ("2 U.S. fl. oz.", D.VOLUME, "US fl oz", 2),
            ("1 imperial pint", D.VOLUME, "imp pt", 1),
            ("2 in\N{SUPERSCRIPT THREE}", D.VOLUME, "cu in", 2),
            ("2 in\N{SUPERSCRIPT TWO}", D.AREA, "sq in", 2),
            ("2 N\N{DOT OPERATOR}m", D.TORQUE, "N m", 2),
        ],
    )
    def test_other_dimensions(self, text, dimension, unit, number):
        found = read(text, dimension)
        assert (found.unit, found.dimension) == (unit, dimension)
        assert found.span == (from_unit(number, unit),) * 2
        assert (found.about, found.swing) == (False, False)


class TestRanges:
    @pytest.mark.parametrize(
        ("text", "low", "high"),
        [
            ("1/8 to 1/4 in", "1/8", "1/4"),
            ("1/8 in to 1/4 in", "1/8", "1/4"),
            ("1/8 in to 1/4", "1/8", "1/4"),
            ("0.5..0.75", "1/2", "3/4"),
            (".5 .. .75 in", "1/2", "3/4"),
            ("2..3 in", "2", "3"),
            ("1 in to 50.8 mm", "1", "2"),
            ("1' to 2'", "12", "24"),
            ("-2 to -1-1/2 in", "-2", "-3/2"),
            ("5 in +/- 1/8 in", "39/8", "41/8"),
            ("5 +/- 1/8 in", "39/8", "41/8"),
            ("5\N{PLUS-MINUS SIGN}1/8", "39/8", "41/8"),
            ("5 in +/- 12.7 mm", "9/2", "11/2"),
            ("+/- 1-1/2 in", "-3/2", "3/2"),
        ],
    )
    def test_ends(self, text, low, high):
        found = read(text, D.LENGTH, "in")
        assert (found.low / INCH, found.high / INCH) == (Fraction(low), Fraction(high))

    def test_temperature_range(self):
        found = read("68 to 77 degF", D.TEMPERATURE)
        assert (found.low, found.high) == (Fraction("293.15"), Fraction("298.15"))

    def test_a_measurement_is_a_plain_frozen_value(self):
        found = read("5 in", D.LENGTH)
        assert {found: "key"}[read("5 in", D.LENGTH)] == "key"
        with pytest.raises(FrozenInstanceError):
            found.unit = "mm"

    def test_metric_range(self):
        found = read("2.3..2.6 mm", D.LENGTH, "in")
        assert found == Measurement(
            Fraction(23, 10**4), Fraction(26, 10**4), D.LENGTH, "mm", about=False, swing=False
        )

    @pytest.mark.parametrize("text", ["+/- 17 deg", "+/-17deg", "\N{PLUS-MINUS SIGN}17°", "+- 17 degrees"])
    def test_swing(self, text):
        found = read(text, D.ANGLE)
        assert (found.low, found.high, found.swing) == (-17, 17, True)
        assert found.span == (math.radians(-17), math.radians(17))

    @pytest.mark.parametrize(
        "word", ["about ", "About ", "~", "~ ", "ca. ", "ca ", "approx. ", "roughly ", "circa "]
    )
    def test_about(self, word):
        found = read(f"{word}5 in", D.LENGTH)
        assert (found.low, found.about, found.swing) == (5 * INCH, True, False)

    def test_radians_are_held_in_degrees(self):
        quarter_turn = read(f"{math.pi / 2} rad", D.ANGLE)
        assert float(quarter_turn.low) == pytest.approx(90, rel=1e-15)
        assert quarter_turn.span[0] == math.pi / 2
