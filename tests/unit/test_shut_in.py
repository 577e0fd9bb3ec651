"""Fluid shut in behind a parking valve, with what lines give, worked out by hand beside it."""

from __future__ import annotations

import pytest
from two_seats import TWO_SEATS

from firmpedal.analysis.shut_in import every_shut_in
from firmpedal.pipeline import evaluate_text
from firmpedal.report.sheet import Drawing, Paragraph
from firmpedal.report.story import every_value
from firmpedal.report.trapped import trapped_sheet
from texts import edited, example, small

PSI = 6894.757
EXPANSION, BULK = 8.28e-4, 1.793e9  # MIL-PRF-5606
INCH = 0.0254


def shut(evaluation, unit="degC"):
    return every_shut_in(evaluation.aircraft, evaluation.laid, evaluation.results, unit)


@pytest.fixture(scope="module")
def oatmere():
    return evaluate_text(example("oatmere"), "oatmere.yaml")


class TestOatmere:
    def test_each_side_shuts_in_its_tube_and_its_gear_hose(self, oatmere):
        assert [(each.caliper, set(each.lines)) for each in shut(oatmere)] == [
            ("left_caliper", {"left_run", "left_gear"}),
            ("right_caliper", {"right_run", "right_gear"}),
        ]

    def test_the_most_is_where_the_hose_takes_nothing(self, oatmere):
        """Aluminium 1/4 x .035 grows by 9.42e-11 of its volume per Pa and by 3 x 23.8e-6 per kelvin."""
        lines = {line.name: line for line in oatmere.laid}
        tube = 3.14159265 / 4 * (0.18 * INCH) ** 2 * lines["left_run"].developed_length.middle
        hose = 3.14159265 / 4 * (0.1875 * INCH) ** 2 * lines["left_gear"].hose.order_length.middle
        freed = tube * (EXPANSION - 3 * 23.8e-6) + hose * EXPANSION
        gives = (tube + hose) / BULK + tube * 9.42e-11
        assert shut(oatmere)[0].rise.high == pytest.approx(freed / gives, rel=2e-3)

    def test_it_is_always_less_than_if_nothing_gave(self, oatmere):
        for each in shut(oatmere):
            assert 0 < each.rise.low < each.rise.high < each.rigid.high

    def test_the_hose_is_the_weakest_and_the_room_is_what_is_left_above_a_hard_foot(self, oatmere):
        """1,500 psi less 1,222 leaves 278; both seats may have made twice as much, and leave nothing."""
        (left, _) = shut(oatmere, "degF")
        assert (left.first.name, left.first.holds.middle / PSI) == ("left_gear", pytest.approx(1500))
        room = (1500 - 1222.3) * PSI
        assert left.alone.low == pytest.approx(room / left.rise.high, rel=1e-3)
        assert left.degrees.low == 0
        assert left.degrees.high == left.alone.high == pytest.approx(room / left.rise.low, rel=1e-3)
        assert left.slack.low == pytest.approx(611.2 * PSI / left.rise.high, rel=1e-3)

    def test_where_the_harder_foot_counts_alone_there_is_room(self):
        answered = edited(example("oatmere"), ("    feet add up: unknown", "    feet add up: no"))
        evaluation = evaluate_text(answered, "oatmere.yaml")
        (left, _) = shut(evaluation, "degF")
        assert left.degrees.span == left.alone.span
        assert (
            trapped_sheet(evaluation)
            .blocks[0]
            .text.startswith("Never leave valve set where it may warm by more than 2 degrees Fahrenheit")
        )

    def test_what_nobody_knows_is_asked_for(self, oatmere):
        (left, _) = shut(oatmere)
        assert {each.what for each in left.not_known} == {
            "left_caliper rated pressure",
            "valve rated pressure",
        }

    def test_the_sheet_begins_with_the_placard_and_has_a_picture(self, oatmere):
        sheet = trapped_sheet(oatmere)
        first = sheet.blocks[0]
        assert isinstance(first, Paragraph)
        assert first.text.startswith(
            "Never leave valve set where it may warm at all after two seats have pressed one wheel: "
            "left_gear would come to what it holds. Set by one seat alone, it may warm by no more than 2 "
            "degrees"
        )
        assert any(isinstance(block, Drawing) for block in sheet.blocks)

    def test_every_figure_can_be_asked_for(self, oatmere):
        assert "components.valve.shut in at left_caliper.rise" in every_value(oatmere)


class TestOthers:
    def test_the_rule_tells_both_figures(self):
        evaluation = evaluate_text(TWO_SEATS, "two")
        (finding,) = [each for each in evaluation.findings if each.rule == "parking-valve-traps-heat"]
        assert "if nothing gives; with what its lines give" in finding.message

    def test_without_a_fluid_nothing_is_known_but_the_volume(self):
        evaluation = evaluate_text(edited(small("withyford"), ("fluid: MIL-PRF-5606\n", "")), "bare")
        (found,) = shut(evaluation)
        assert found.volume.known
        assert not found.rise.known
        assert not found.degrees.known
        assert "which brake fluid is used" in trapped_sheet(evaluation).blocks[0].text

    def test_a_rated_caliper_that_holds_less_gives_first(self):
        rated = edited(
            small("withyford"), ("    pad gap: 0.020\n", "    pad gap: 0.020\n    rated pressure: 1300\n")
        )
        (found,) = shut(evaluate_text(rated, "rated"))
        assert (found.first.name, found.first.holds.middle / PSI) == ("caliper", pytest.approx(1300))

    def test_without_a_valve_there_is_no_sheet(self):
        assert trapped_sheet(evaluate_text(example("brindlewick"), "brindlewick.yaml")) is None
