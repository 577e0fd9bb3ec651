"""What tube, hose and plastic hold where they run."""

from __future__ import annotations

import math

import pytest

from firmpedal.pipeline import evaluate_text
from firmpedal.units import to_unit
from texts import edited, small

TUBE = "made of: tube 5052-O 1/4 x .035\n"
HOSE = (TUBE, "made of: hose -4 PTFE braided\n")
NYLON = (TUBE, "made of: plastic nylon 1/4 x .040\n")
EVERYWHERE = "{up above: -99}"
NOWHERE = "{up above: 99}"


def results(*edits: tuple[str, str], zones: str = "", line: str = ""):
    text = edited(small("quillfen"), *edits)
    if zones:
        text = edited(text, ("lines:\n", f"zones:\n{zones}lines:\n"))
    if line:
        text = edited(text, ("    via:\n", f"    {line}\n    via:\n"))
    return evaluate_text(text, "text").results


def hot(temperature: str, where: str = EVERYWHERE, name: str = "hot") -> str:
    return f"  {name}: {{where: {where}, heat: brake, temperature: {temperature}}}\n"


class TestTube:
    def test_first_yield_by_von_mises_at_the_bore(self):
        """Where Lame's three stresses at the bore, of a closed tube, just reach the yield strength."""
        (strength,) = results().strengths
        load = strength.yield_pressure.middle
        outside, bore = 0.25, 0.25 - 2 * 0.035
        share = load / (outside**2 - bore**2)
        hoop, radial, axial = share * (outside**2 + bore**2), -load, share * bore**2
        squares = (hoop - radial) ** 2 + (radial - axial) ** 2 + (axial - hoop) ** 2
        (line,) = evaluate_text(small("quillfen"), "text").laid
        assert math.sqrt(squares / 2) == pytest.approx(line.stock.material.yield_strength.middle)

    def test_factors_are_against_panic_and_hard_foot(self):
        found = results()
        (strength,), (line,) = found.strengths, found.pressures
        assert strength.yield_factor.middle == pytest.approx(
            strength.yield_pressure.middle / line.at("panic").middle
        )
        assert strength.burst_factor.middle == pytest.approx(
            strength.burst_pressure.middle / line.at("hard").middle
        )

    def test_hose_and_plastic_are_rated_and_not_reckoned(self):
        assert results(HOSE).strengths == ()
        assert results(NYLON).strengths == ()
        assert results().ratings == ()


def rating(stock: tuple[str, str], zones: str = "", line: str = ""):
    (found,) = results(stock, zones=zones, line=line).ratings
    return found


class TestNylon:
    """Shares of strength kept, published: 23 C whole, 40 C 80 %, 100 C 37 %."""

    @pytest.mark.parametrize(
        ("temperature", "share"),
        [
            ("0 degC", 1),
            ("23 degC", 1),
            ("40 degC", 0.80),
            ("70 degC", 0.585),
            ("100 degC", 0.37),
            ("212 degF", 0.37),
        ],
    )
    def test_by_the_published_table(self, temperature, share):
        found = rating(NYLON, hot(temperature))
        assert to_unit(found.cold.middle, "psi") == pytest.approx(1000)
        assert to_unit(found.hot.middle, "psi") == pytest.approx(1000 * share)

    def test_a_range_of_temperature(self):
        found = rating(NYLON, hot("40 to 100 degC")).hot
        assert (to_unit(found.low, "psi"), to_unit(found.high, "psi")) == pytest.approx((370, 800))

    def test_beyond_the_table_nothing_is_known(self):
        found = rating(NYLON, hot("101 degC")).hot
        assert found.span is None
        assert found.missing

    def test_where_it_stays_cool(self):
        found = rating(NYLON, hot("100 degC", NOWHERE))
        assert found.temperature is None
        assert found.hot == found.cold


class TestTemperature:
    def test_the_hottest_of_several_zones(self):
        zones = hot("40 degC", name="warm") + hot("100 degC") + hot("90 degC", NOWHERE, name="far")
        assert to_unit(rating(NYLON, zones).temperature.middle, "degC") == pytest.approx(100)

    def test_a_declared_temperature_wins(self):
        found = rating(NYLON, hot("100 degC"), "temperature: 40 degC")
        assert to_unit(found.temperature.middle, "degC") == pytest.approx(40)

    def test_a_temperature_declared_unknown_is_unknown(self):
        found = rating(NYLON, hot("100 degC"), "temperature: unknown")
        assert found.temperature.span is None
        assert found.hot.span is None

    def test_a_zone_without_heat_is_no_hot_place(self):
        assert rating(NYLON, f"  shade: {{where: {EVERYWHERE}, temperature: 100 degC}}\n").temperature is None

    @pytest.mark.parametrize(
        ("zone", "place"),
        [
            (hot("unknown"), "zones.hot.temperature"),
            (hot("100 degC", "unknown"), "zones.hot.where"),
            (hot("100 degC", "{right above: -1 to 1}"), "zones.hot.where"),
        ],
    )
    def test_what_has_to_be_known_first(self, zone, place):
        found = rating(NYLON, zone)
        assert found.temperature.span is None
        assert found.hot.span is None
        assert [missing.place for missing in found.hot.missing] == [place]


class TestHose:
    def test_holds_its_rating_up_to_its_limit(self):
        """450 F, the limit of the hose's standard (from memory)."""
        found = rating(HOSE, hot("450 degF"))
        assert found.hot == found.cold

    def test_beyond_its_limit_nothing_is_published(self):
        found = rating(HOSE, hot("451 degF"))
        assert found.hot.span is None
        assert "a hose for the heat" in found.hot.missing[0].what

    def test_where_the_heat_is_unknown(self):
        found = rating(HOSE, hot("unknown"))
        assert found.hot.span is None
        assert found.hot.missing[0].place == "zones.hot.temperature"
