"""Units: the size of each against published figures.

Sources of the sizes:
  SP 811  A. Thompson, B. N. Taylor, Guide for the Use of the International System of Units (SI),
          NIST Special Publication 811, 2008 edition, appendix B.8, factors listed alphabetically;
          digits as printed there (read in copies of its rows). Factors in boldface are exact.
  SI      The International System of Units, 9th edition, BIPM 2019: prefixes (table 7) and units
          accepted for use with the SI (table 8); from memory.
  WMA     Weights and Measures Act 1985 (UK), schedule 1: gallon 4.54609 cubic decimetres, quart 1/4
          gallon, pint 1/2 quart, fluid ounce 1/20 pint; the chain read in a copy of the like
          ordinance of Hong Kong.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from scipy import constants

from firmpedal.units import Dimension, dimension_of, from_unit, read, show, show_span, to_unit, units_of

D = Dimension

PUBLISHED = {
    # SP 811, B.8; boldface there, so exact
    (D.LENGTH, "in"): "=2.54 E-02",
    (D.LENGTH, "ft"): "=3.048 E-01",
    (D.PRESSURE, "bar"): "=1.0 E+05",
    (D.PRESSURE, "kgf/cm2"): "=9.80665 E+04",
    (D.FORCE, "kgf"): "=9.80665 E+00",
    (D.VOLUME, "l"): "=1.0 E-03",
    (D.VOLUME, "imp gal"): "=4.54609 E-03",
    (D.AREA, "sq in"): "=6.4516 E-04",
    (D.DENSITY, "g/cm^3"): "=1.0 E+03",
    (D.SPEED, "mph"): "=4.4704 E-01",
    (D.SPEED, "ft/s"): "=3.048 E-01",
    (D.ACCELERATION, "ft/s^2"): "=3.048 E-01",
    # SP 811, B.8; rounded there
    (D.ANGLE, "deg"): "1.745329 E-02",
    (D.PRESSURE, "psi"): "6.894757 E+03",
    (D.PRESSURE, "ksi"): "6.894757 E+06",
    (D.FORCE, "lbf"): "4.448222 E+00",
    (D.VOLUME, "cu in"): "1.638706 E-05",
    (D.VOLUME, "US fl oz"): "2.957353 E-05",
    (D.VOLUME, "US pt"): "4.731765 E-04",
    (D.VOLUME, "US qt"): "9.463529 E-04",
    (D.VOLUME, "US gal"): "3.785412 E-03",
    (D.VOLUME, "imp fl oz"): "2.841306 E-05",
    (D.MASS, "lb"): "4.535924 E-01",
    (D.MASS, "oz"): "2.834952 E-02",
    (D.TORQUE, "lbf in"): "1.129848 E-01",
    (D.TORQUE, "lbf ft"): "1.355818 E+00",
    (D.DENSITY, "lb/in^3"): "2.767990 E+04",
    (D.LINEAR_DENSITY, "lb/ft"): "1.488164 E+00",
    (D.ENERGY, "ft-lbf"): "1.355818 E+00",
    (D.SPEED, "kt"): "5.144444 E-01",
    (D.SPEED, "km/h"): "2.777778 E-01",
    # WMA
    (D.VOLUME, "imp qt"): "=1.1365225 E-03",
    (D.VOLUME, "imp pt"): "=5.6826125 E-04",
    # derived: 10^6 psi; a cubic inch per inch is a square inch; a cubic inch per foot, 1.638706 E-05 / 0.3048
    (D.PRESSURE, "Msi"): "6.894757 E+09",
    (D.VOLUME_PER_LENGTH, "cu in/in"): "=6.4516 E-04",
    (D.VOLUME_PER_LENGTH, "cu in/ft"): "5.37633 E-05",
    # SP 811, B.8: an interval of one degree Fahrenheit is 1/1.8 K, so "per degF" is 1.8 "per K"
    (D.EXPANSION, "1/degF"): "=1.8 E+00",
    (D.EXPANSION, "ppm/degF"): "=1.8 E-06",
    (D.EXPANSION, "ppm/K"): "=1.0 E-06",
    # SI prefixes and units accepted beside the SI
    (D.LENGTH, "mm"): "=1 E-03",
    (D.LENGTH, "cm"): "=1 E-02",
    (D.PRESSURE, "kPa"): "=1 E+03",
    (D.PRESSURE, "MPa"): "=1 E+06",
    (D.PRESSURE, "GPa"): "=1 E+09",
    (D.FORCE, "daN"): "=1 E+01",
    (D.FORCE, "kN"): "=1 E+03",
    (D.VOLUME, "ml"): "=1 E-06",
    (D.VOLUME, "mm^3"): "=1 E-09",
    (D.AREA, "mm^2"): "=1 E-06",
    (D.AREA, "cm^2"): "=1 E-04",
    (D.MASS, "g"): "=1 E-03",
    (D.NUMBER, "%"): "=1 E-02",
    (D.LINEAR_DENSITY, "g/m"): "=1 E-03",
    (D.VOLUME_PER_LENGTH, "ml/m"): "=1 E-06",
    (D.ENERGY, "kJ"): "=1 E+03",
    (D.POWER, "kW"): "=1 E+03",
    (D.SPECIFIC_HEAT, "kJ/kg K"): "=1 E+03",
    (D.CONDUCTANCE, "mW/K"): "=1 E-03",
    (D.TIME, "min"): "=6 E+01",
    (D.TIME, "h"): "=3.6 E+03",
    (D.KINEMATIC_VISCOSITY, "mm^2/s"): "=1 E-06",
    (D.SURFACE_TENSION, "mN/m"): "=1 E-03",
    (D.FLOW, "cu in/s"): "1.638706 E-05",
    (D.FLOW, "ml/s"): "=1 E-06",
}

COHERENT = {
    (D.LENGTH, "m"),
    (D.ANGLE, "rad"),
    (D.PRESSURE, "Pa"),
    (D.FORCE, "N"),
    (D.VOLUME, "m^3"),
    (D.AREA, "m^2"),
    (D.TEMPERATURE, "K"),
    (D.MASS, "kg"),
    (D.TORQUE, "N m"),
    (D.NUMBER, "-"),
    (D.DENSITY, "kg/m^3"),
    (D.LINEAR_DENSITY, "kg/m"),
    (D.EXPANSION, "1/K"),
    (D.VOLUME_PER_LENGTH, "m^3/m"),
    (D.ENERGY, "J"),
    (D.SPEED, "m/s"),
    (D.TIME, "s"),
    (D.ACCELERATION, "m/s^2"),
    (D.POWER, "W"),
    (D.SPECIFIC_HEAT, "J/kg K"),
    (D.HEAT_TRANSFER, "W/m^2 K"),
    (D.CONDUCTANCE, "W/K"),
    (D.KINEMATIC_VISCOSITY, "m^2/s"),
    (D.SURFACE_TENSION, "N/m"),
    (D.FLOW, "m^3/s"),
}


def _printed(text: str) -> tuple[Fraction, Fraction]:
    """Give a printed factor and half a unit of its last digit, which is nothing where it is exact."""
    mantissa, exponent = text.removeprefix("=").split()
    power = Fraction(10) ** int(exponent.removeprefix("E"))
    decimals = len(mantissa.partition(".")[2])
    half_a_digit = Fraction(0) if text.startswith("=") else power / 10**decimals / 2
    return Fraction(mantissa) * power, half_a_digit


class TestSizes:
    @pytest.mark.parametrize(("dimension", "unit"), PUBLISHED)
    def test_is_the_published_factor(self, dimension, unit):
        factor, half_a_digit = _printed(PUBLISHED[dimension, unit])
        one = read(f"1 {unit}", dimension)
        if dimension is D.ANGLE:
            assert abs(Fraction(one.span[0]) - factor) <= half_a_digit
        else:
            assert abs(one.low - factor) <= half_a_digit
        assert to_unit(from_unit(1.0, unit), unit) == pytest.approx(1.0, rel=1e-15)

    @pytest.mark.parametrize(("dimension", "unit"), sorted(COHERENT))
    def test_coherent_units_are_one(self, dimension, unit):
        text = "1" if unit == "-" else f"1 {unit}"
        assert read(text, dimension).span == (1.0, 1.0)
        assert dimension_of(unit) is dimension

    def test_no_unit_is_without_a_published_value(self):
        scales = {(D.TEMPERATURE, "degF"), (D.TEMPERATURE, "degC")}  # points, not a factor: tested below
        known = {(dimension, unit) for dimension in Dimension for unit in units_of(dimension)}
        assert known == set(PUBLISHED) | COHERENT | scales

    def test_definitions_of_1959_and_standard_gravity_are_exact(self):
        # International yard and pound agreement of 1959; 3rd CGPM 1901 for standard gravity.
        assert read("36 in", D.LENGTH).low == Fraction("0.9144")
        assert read("1 lb", D.MASS).low == Fraction("0.45359237")
        assert read("1 lbf", D.FORCE).low == Fraction("0.45359237") * Fraction("9.80665")
        assert read("1 US gal", D.VOLUME).low == read("231 cu in", D.VOLUME).low
        assert read("1 psi", D.PRESSURE).low * read("1 sq in", D.AREA).low == read("1 lbf", D.FORCE).low

    @pytest.mark.parametrize(
        ("unit", "constant"),
        [
            ("in", constants.inch),
            ("ft", constants.foot),
            ("psi", constants.psi),
            ("bar", constants.bar),
            ("lbf", constants.lbf),
            ("kgf", constants.kgf),
            ("lb", constants.lb),
            ("oz", constants.oz),
            ("US gal", constants.gallon_US),
            ("imp gal", constants.gallon_imp),
            ("US fl oz", constants.fluid_ounce_US),
            ("imp fl oz", constants.fluid_ounce_imp),
            ("l", constants.liter),
            ("kt", constants.knot),
            ("mph", constants.mph),
            ("km/h", constants.kmh),
            ("deg", constants.degree),
            ("min", constants.minute),
            ("h", constants.hour),
        ],
    )
    def test_agrees_with_an_independent_library(self, unit, constant):
        assert from_unit(1.0, unit) == pytest.approx(constant, rel=1e-15)

    @pytest.mark.parametrize(
        ("text", "kelvin"),
        [
            # SP 811, B.8: K = (degF + 459.67)/1.8 and K = degC + 273.15
            ("32 degF", "273.15"),
            ("212 °F", "373.15"),
            ("-40 degF", "233.15"),
            ("-40 °C", "233.15"),
            ("20 °C", "293.15"),
            ("-459.67 F", "0"),
            ("300 K", "300"),
        ],
    )
    def test_temperature_scales(self, text, kelvin):
        found = read(text, D.TEMPERATURE)
        assert found.low == Fraction(kelvin)
        written = float(text.split()[0])
        assert to_unit(float(kelvin), found.unit) == pytest.approx(written, abs=1e-12)

    def test_temperature_differences_have_no_offset(self):
        assert to_unit(100.0, "degF", difference=True) == pytest.approx(180.0, rel=1e-15)
        assert from_unit(180.0, "degF", difference=True) == 100.0
        assert show(155.1, "degF", difference=True) == "279 degF"
        assert show_span((10.0, 20.0), "degC", difference=True) == "10 to 20 degC"
        assert read("20 +/- 9 degF", D.TEMPERATURE).high - read("20 degF", D.TEMPERATURE).high == 5

    def test_a_bracket_that_is_not_si_is_refused(self):
        with pytest.raises(ValueError, match=r"\[psi\] is none of m, rad, Pa"):
            dimension_of("psi")
