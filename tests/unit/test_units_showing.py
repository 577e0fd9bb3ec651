"""Units: how numbers are shown."""

from __future__ import annotations

import math

import pytest

from firmpedal.units import from_unit, show, show_span


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
        assert show_span((0.2, 0.3), "-") == "0.2 to 0.3"
        assert show_span((0.2, 0.3), "%") == "20.0 to 30.0 %"

    @pytest.mark.parametrize("number", [math.nan, math.inf, -math.inf])
    def test_what_is_no_number_is_never_shown(self, number):
        with pytest.raises(ValueError, match="not a finite number"):
            show(number, "in")
        with pytest.raises(ValueError, match="not a finite number"):
            show_span((0.0, number), "in")
        assert from_unit(number, "in") is number
