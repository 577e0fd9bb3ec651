"""Units: how numbers are shown."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from firmpedal.units import Dimension, from_unit, read, show, show_span, units_of, written


class TestShowing:
    @pytest.mark.parametrize(
        ("number", "unit", "shown"),
        [
            (9.238, "in", "9.24 in"),
            (489.2, "psi", "489 psi"),
            (1304.0, "psi", "1,304 psi"),
            (1_234_567.0, "psi", "1,234,567 psi"),
            (1.05, "m", "1.05 m"),
            (4.7625, "mm", "4.8 mm"),
            (41.0, "bar", "41.0 bar"),
            (13.449, "MPa", "13.45 MPa"),
            (75.0, "lbf", "75 lbf"),
            (17.0, "deg", "17.0 deg"),
            (0.349, "cu in", "0.35 cu in"),
            (5.74, "ml", "5.7 ml"),
            (1500.0, "lb", "1,500.00 lb"),
            (680.4, "kg", "680.40 kg"),
            (-30.0, "degF", "-30 degF"),
            (20.0, "degC", "20 degC"),
            (2.0, "%", "2.0 %"),
            (2.5, "-", "2.5"),
            (12345.6, "-", "12,346"),
            (0.123456, "-", "0.1235"),
            (999.4, "-", "999.4"),
            (1000.0, "-", "1,000"),
            (999_999_999.0, "-", "999,999,999"),
            (1e9, "-", "1e+09"),
            (2.36e-5, "1/K", "2.36e-05 1/K"),
            (0.0, "in", "0 in"),
            (-9.238, "in", "-9.24 in"),
            (-0.001, "in", "0.00 in"),
            (0.125, "in", "0.13 in"),
            (-0.125, "in", "-0.13 in"),
        ],
    )
    def test_usual_decimals(self, number, unit, shown):
        assert show(from_unit(number, unit), unit) == shown

    def test_every_unit_has_its_usual_decimals(self):
        usual = {
            0: "psi, Pa, kPa, lbf, N, mm^3, degF, degC, K, lbf in, kg/m^3, ft-lbf, J, W, J/kg K, mW/K",
            1: "mm, deg, ksi, Msi, bar, GPa, kgf/cm2, daN, kgf, ml, US fl oz, imp fl oz, mm^2, oz, g, "
            "lbf ft, N m, %, g/m, ppm/K, ppm/degF, kJ, kt, mph, km/h, ft/s, s, min, mN/m, ml/s, ft/s^2, "
            "W/m^2 K",
            2: "in, ft, cm, m, MPa, kN, cu in, l, US pt, US qt, US gal, imp pt, imp qt, imp gal, cm^2, lb, "
            "kg, ml/m, m/s, h, cu in/s, m/s^2, kW, W/K",
            3: "rad, sq in, lb/in^3, g/cm^3, lb/ft, kg/m, cu in/ft, kJ/kg K",
            4: "cu in/in",
        }
        shown = {0: "12", 1: "12.3", 2: "12.35", 3: "12.346", 4: "12.3457"}
        expected = {
            unit: f"{shown[decimals]} {unit}" for decimals, line in usual.items() for unit in line.split(", ")
        }
        assert {unit: show(from_unit(12.345678, unit), unit) for unit in expected} == expected
        significant = {"m^3", "m^2", "-", "1/K", "1/degF", "m^3/m", "mm^2/s", "m^2/s", "N/m", "m^3/s"}
        assert set(expected) | significant == {
            unit for dimension in Dimension for unit in units_of(dimension)
        }

    @pytest.mark.parametrize(
        ("number", "decimals", "shown"),
        [
            (0.035, 3, "0.035 in"),
            (0.0355, 3, "0.036 in"),
            (9.5, 0, "10 in"),
            (0.0, 2, "0.00 in"),
            (999.96, 1, "1,000.0 in"),
        ],
    )
    def test_decimals_asked_for(self, number, decimals, shown):
        assert show(from_unit(number, "in"), "in", decimals=decimals) == shown

    @pytest.mark.parametrize(
        ("number", "parts", "shown"),
        [
            (10.5, 16, "10-1/2 in"),
            (9.24, 16, "9-1/4 in"),
            (9.24, 32, "9-1/4 in"),
            (9.21, 32, "9-7/32 in"),
            (15.5, 16, "15-1/2 in"),
            (0.1875, 16, "3/16 in"),
            (-0.0625, 16, "-1/16 in"),
            (-10.5, 16, "-10-1/2 in"),
            (3.0, 16, "3 in"),
            (2.99, 16, "3 in"),
            (0.0, 16, "0 in"),
            (0.01, 16, "0 in"),
            (-0.01, 16, "0 in"),
            (1 / 32, 16, "1/16 in"),
            (-1 / 32, 16, "-1/16 in"),
            (1500.25, 16, "1,500-1/4 in"),
        ],
    )
    def test_fractions(self, number, parts, shown):
        assert show(from_unit(number, "in"), "in", fraction=parts) == shown

    def test_spans(self):
        span = (from_unit(9.1, "in"), from_unit(9.4, "in"))
        assert show_span(span, "in", decimals=1) == "9.1 to 9.4 in"
        assert show_span(span, "in", decimals=0) == "9 in"
        assert show_span(span, "in", fraction=16) == "9-1/8 to 9-3/8 in"
        assert show_span((293.15, 298.15), "degF") == "68 to 77 degF"
        assert show_span((0.2, 0.3), "-") == "0.2 to 0.3"
        assert show_span((0.2, 0.3), "%") == "20.0 to 30.0 %"

    @pytest.mark.parametrize("number", [math.nan, math.inf, -math.inf])
    def test_what_is_no_number_is_never_shown(self, number):
        with pytest.raises(ValueError, match="not a finite number"):
            show(number, "in")
        with pytest.raises(ValueError, match="not a finite number"):
            show_span((0.0, number), "in")
        assert from_unit(number, "in") is number


@pytest.mark.parametrize(
    ("si", "unit", "fraction", "expected"),
    [
        (7 * 0.0254, "in", None, "7"),
        (-0.2286, "in", None, "-9"),
        (0.0127, "in", None, "0.5"),
        (0.0127, "in", 16, "1/2"),
        (-33.25 * 0.0254, "in", 16, "-33-1/4"),
        (33.26 * 0.0254, "in", 16, "33.26"),
        (1234.5 * 0.0254, "in", 16, "1234.5"),  # a comma would cut a list in two
        (1.2345, "mm", None, "1234.5"),
        (1e-12, "mm", None, "0"),
        (-1e-12, "in", 16, "0"),
        (1 / 3, "m", None, "0.3333333333"),  # a third to a tenth of a nanometre: ten places
    ],
)
def test_a_written_figure_is_as_short_as_keeps_it(si, unit, fraction, expected):
    assert written(si, unit, within=1e-10, fraction=fraction) == expected


@given(st.floats(-50, 50), st.sampled_from(["in", "mm", "cm", "m", "ft"]), st.sampled_from([None, 16, 32]))
def test_a_written_figure_reads_back_as_near_as_asked(si, unit, fraction):
    text = written(si, unit, within=1e-10, fraction=fraction)
    assert read(text, Dimension.LENGTH, unit).span[0] == pytest.approx(si, abs=1.01e-10, rel=0)
