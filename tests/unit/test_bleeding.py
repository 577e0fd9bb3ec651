"""Filling and bleeding in texts with one thing changed: what is unknown stays unknown and is asked for."""

from __future__ import annotations

import json

import pytest
from typer.testing import CliRunner

from firmpedal.analysis.bleeding import bleeding
from firmpedal.analysis.bleeding.rises import POT
from firmpedal.cli.main import app
from firmpedal.model.display import usual_display
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Answer
from firmpedal.report.bleeding import bleeding_sheet
from firmpedal.report.bleeding_contract import bleed_data
from firmpedal.report.bleeding_words import pot_words
from firmpedal.report.story import every_value
from firmpedal.units import to_unit
from texts import EXAMPLES, edited, small

LEG = "[50, -38, -25]"
SIX_FLUIDS = ("MIL-PRF-5606", "MIL-PRF-83282", "MIL-PRF-87257", "DOT 3", "DOT 4", "DOT 5")


def evaluated(*edits, name="withyford"):
    return evaluate_text(edited(small(name), *edits), name)


def found_in(evaluation):
    return bleeding(evaluation.aircraft, evaluation.laid, evaluation.results)


def words_of(evaluation):
    return json.dumps(bleed_data(evaluation)) + str(bleeding_sheet(evaluation))


class TestUnknown:
    def test_without_a_fluid_volumes_are_known_and_pressures_are_not(self):
        evaluation = evaluated(("fluid: MIL-PRF-5606\n", ""))
        (rise,) = found_in(evaluation).rises
        assert rise.volume.known
        assert rise.flow.known
        assert not rise.pressure.known
        assert rise.enough is Answer.UNKNOWN
        assert "which brake fluid is used" in words_of(evaluation)
        assert all(each.stays is Answer.UNKNOWN for each in found_in(evaluation).bores)

    @pytest.mark.parametrize("name", SIX_FLUIDS)
    def test_a_fluid_whose_thickness_is_not_known_gives_no_pressure(self, name):
        (rise,) = found_in(evaluated(("fluid: MIL-PRF-5606\n", f"fluid: {name}\n"))).rises
        assert rise.pressure.known is (name not in ("MIL-PRF-87257", "DOT 3"))

    def test_an_unknown_corner_leaves_the_weight_above_and_gravity_open(self):
        evaluation = evaluated((LEG, "unknown"))
        (rise,) = found_in(evaluation).rises
        assert not rise.column.known
        assert not rise.pressure.known
        assert [each.enough for each in rise.gravity] == [Answer.UNKNOWN]
        assert "leg via 2 (aft, right, up)" in words_of(evaluation)

    def test_a_high_point_with_a_range_holds_air_with_a_range(self):
        """The inlet between 8.0 and 8.8 changes nothing below it: the hose fills all the same."""
        (exact,) = found_in(evaluated()).pockets
        (ranged,) = found_in(evaluated(("seat: [8.6, 7, 8.4]", "seat: [8.6, 7, 8.0 to 8.8]"))).pockets
        assert ranged.depth.low < exact.depth.middle < ranged.depth.high
        assert ranged.air.low <= exact.air.low
        assert ranged.air.high >= exact.air.high

    def test_a_cylinder_whose_stroke_is_unknown_is_not_said_to_reach_anything(self):
        evaluation = evaluated(("    stroke: 0.9\n", "    stroke: unknown\n"))
        (pumping,) = found_in(evaluation).pumping
        assert pumping.reaches is Answer.UNKNOWN
        assert not pumping.strokes.known
        assert "not known yet what it does with air at first.inlet" in words_of(evaluation)

    def test_without_a_caliper_on_a_line_there_is_no_sheet(self):
        bare = "firmpedal: 1\naircraft: {name: Bare, gear: nosewheel, brakes: toe}\nunits: {length: in}\n"
        assert bleeding_sheet(evaluate_text(bare, "bare")) is None


class TestWays:
    def test_a_cylinder_that_shuts_at_rest_lets_nothing_past(self):
        shut = evaluated(("    stroke: 0.9\n", "    stroke: 0.9\n    opens at rest: no\n"))
        words = words_of(shut)
        assert "first and second let nothing up at rest, and nothing gets past from below" in words
        assert "cannot be filled from the wheel up" in words
        assert "Ask their makers how to fill it" in words
        assert "do not pump fluid in at caliper" in words
        for step in ("Pump MIL-PRF-5606", "pump still presses", "Push fluid up from", "under the pump"):
            assert step not in words

    def test_a_cylinder_that_may_be_shut_is_pumped_at_with_care(self):
        doubtful = evaluated(("    stroke: 0.9\n", "    stroke: 0.9\n    opens at rest: unknown\n"))
        words = words_of(doubtful)
        assert "if nothing comes at the top, stop and ask" in words
        assert "Pump MIL-PRF-5606" in words

    def test_a_thick_fluid_may_want_more_than_a_pot_gives(self):
        thin, thick = (
            found_in(evaluated(("fluid: MIL-PRF-5606\n", f"fluid: {name}\n"))).rises[0].pressure
            for name in ("MIL-PRF-5606", "DOT 5")
        )
        assert thick.high > thin.high

    def test_words_for_a_pot_that_is_enough_too_little_or_nobody_knows(self):
        assert "are enough" in pot_words({Answer.YES}, usual_display("in"))
        assert "too little" in pot_words({Answer.YES, Answer.NO}, usual_display("in"))
        assert "may be enough" in pot_words({Answer.YES, Answer.UNKNOWN}, usual_display("in"))
        assert (to_unit(POT.low, "psi"), to_unit(POT.high, "psi")) == pytest.approx((15, 20))

    def test_every_figure_can_be_asked_for_by_its_place(self):
        values = every_value(evaluated())
        assert "components.caliper.filling.pressure" in values
        assert "lines.cross.sweep" in values
        assert any(place.endswith("air at first.inlet when level") for place in values)


class TestCommand:
    @staticmethod
    def printed(*more):
        result = CliRunner(env={"COLUMNS": "80"}).invoke(
            app, ["bleed", str(EXAMPLES / "oatmere.yaml"), *more]
        )
        assert result.exit_code == 0
        return result.stdout

    def test_prints_the_sheet(self):
        text = " ".join(self.printed().split())
        assert "Air stays at" in text
        assert "[ ] Open valve, and leave it open until the end." in text

    def test_json_is_one_object_in_si(self):
        data = json.loads(self.printed("--json"))
        assert {each["from"] for each in data["wheels"]} == {"left_caliper", "right_caliper"}
        assert data["wheels"][0]["flow"]["unit"] == "m3/s"
        assert data["high_points"][0]["air"]["most"] == pytest.approx(12e-6, rel=0.01)
