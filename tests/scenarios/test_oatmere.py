"""Two seats in series with a parking valve: every answer out of the engine that any file goes through.

Oatmere is invented. Its right answers were worked out by hand before its file was written, apart from
this program; they are nobody's published data. Lengths of hoses are along the paths that the file
declares, and only the path of the gear hose was given: of the others no figure is checked but the
distance of their ends.
"""

from __future__ import annotations

import math
from collections import Counter

import pytest
from answers import (
    SIDES,
    asked,
    bends,
    closes,
    developed_length,
    inches,
    joints_by_form,
    line,
    polyline,
    pressures,
    totals,
)

from firmpedal.finding import Level, Verdict
from firmpedal.model.part import Form
from firmpedal.model.stock import LineKind
from firmpedal.pipeline import Evaluation, evaluate_text
from firmpedal.units import to_unit
from texts import edited, example

# The builder's corners on the left, in inches.
RUN = [
    *[(6.0, -0.6, 1.5), (9.0, -0.6, 1.5), (10.5, -2.5, -0.5)],
    *[(43.0, -2.5, -0.5), (44.5, -14.0, -1.2), (46.0, -15.0, -1.9)],
]
GEAR = [(46.6, -15.6, -3.6), (49.0, -18.0, -5.0), (50.0, -38.0, -25.0), (50.8, -39.0, -27.0)]
BENDER_RADIUS = 0.75
RUDDER = 3.0  # 1.5 in to either side


@pytest.fixture(scope="module")
def oatmere() -> Evaluation:
    return evaluate_text(example("oatmere"), "oatmere.yaml")


@pytest.fixture(scope="module")
def single() -> Evaluation:
    return evaluate_text(example("oatmere"), "oatmere.yaml", "single brakes")


class TestWhatToBuy:
    def test_fittings_nuts_and_sleeves_are_exactly_these(self, oatmere):
        assert totals(oatmere) == {
            "AN816-4": 2,
            "AN832-4": 2,
            "AN924-4": 2,
            "AN822-4D": 8,
            "AN816-4D": 4,
            "AN833-4D": 2,
            "AN924-4D": 2,
            "AN823-4D": 2,
            "AN818-4D": 4,
            "AN819-4D": 4,
        }

    def test_two_tubes_and_ten_hoses(self, oatmere):
        assert Counter(item.kind for item in oatmere.laid) == {LineKind.TUBE: 2, LineKind.HOSE: 10}

    def test_joints_by_kind(self, oatmere):
        forms = joints_by_form(oatmere)
        assert (forms[Form.FLARE_37], forms[Form.PIPE]) == (24, 16)

    def test_every_end_has_its_partner(self, oatmere):
        assert closes(oatmere)

    def test_steel_is_forward_of_the_firewall_and_nowhere_else(self, oatmere):
        steel = {
            joint.name
            for joint in oatmere.assembly.joints
            for part in joint.parts
            if part.material == "steel"
        }
        assert steel == {"reservoir.left_out", "reservoir.right_out", "left_firewall", "right_firewall"}


class TestTheTubeUnderTheFloor:
    @pytest.mark.parametrize("side", SIDES)
    def test_developed_length(self, oatmere, side):
        developed = inches(line(oatmere, f"{side}_run").developed_length)
        assert developed == pytest.approx(51.7, abs=0.3)
        assert f"{developed:.2f}" == f"{developed_length(RUN, BENDER_RADIUS):.2f}"

    @pytest.mark.parametrize("side", SIDES)
    def test_bends(self, oatmere, side):
        angles, _ = bends(line(oatmere, f"{side}_run"))
        assert angles == pytest.approx([61.5, 61.5, 82.6, 50.7], abs=0.05)

    def test_rotations_and_their_mirror_image(self, oatmere):
        (_, left), (_, right) = (bends(line(oatmere, f"{side}_run")) for side in SIDES)
        assert left[0] == pytest.approx(180, abs=0.05)  # half a turn either way is the same
        assert abs(right[0]) == pytest.approx(180, abs=0.05)
        assert left[1:] == pytest.approx([137.0, 154.8], abs=0.05)
        assert right[1:] == pytest.approx([-137.0, -154.8], abs=0.05)

    @pytest.mark.parametrize("side", SIDES)
    def test_last_straight(self, oatmere, side):
        assert inches(line(oatmere, f"{side}_run").tube.straights[-1]) == pytest.approx(1.58, abs=0.005)

    @pytest.mark.parametrize("side", SIDES)
    def test_clamps(self, oatmere, side):
        """Four at least at 13-1/2 spacing; five are better."""
        supports = line(oatmere, f"{side}_run").supports
        assert len(supports.stations) == 5
        assert inches(supports.longest_gap) <= 13.5


class TestHoses:
    @pytest.mark.parametrize("side", SIDES)
    def test_gear_hose(self, oatmere, side):
        hose = line(oatmere, f"{side}_gear").hose
        assert inches(hose.path_length) == pytest.approx(polyline(GEAR))
        assert inches(hose.path_length) == pytest.approx(34.35, abs=0.005)
        assert inches(hose.least_length) == pytest.approx(36.4, abs=0.05)
        assert 36.5 <= inches(hose.order_length) <= 37.5

    @pytest.mark.parametrize("side", SIDES)
    def test_cross_hoses_join_ends_21_9_apart_that_move_together(self, oatmere, side):
        cross = line(oatmere, f"{side}_cross")
        chord = math.dist((8.0, 7.0, 2.2), (8.6, -14.0, 8.4))
        assert inches(cross.travel.nearest) == inches(cross.travel.farthest) == pytest.approx(chord)
        assert chord == pytest.approx(21.9, abs=0.05)
        assert inches(cross.travel.play) == pytest.approx(0, abs=1e-9)

    @pytest.mark.parametrize("side", SIDES)
    @pytest.mark.parametrize("name", ["cabin", "to_valve"])
    def test_to_the_copilot_and_to_the_valve_the_rudder_moves_one_end(self, oatmere, side, name):
        assert inches(line(oatmere, f"{side}_{name}").travel.play) == pytest.approx(RUDDER)


class TestPressureAndStroke:
    def test_pressure_at_each_foot(self, oatmere):
        assert pressures(oatmere) == {(611, 1222, 1630)}
        assert len(oatmere.results.cylinders) == 4

    def test_pad_gap(self, oatmere):
        by_hand = 0.020 * 1.75**2 / 0.625**2
        assert by_hand == pytest.approx(0.157, abs=0.0005)
        gaps = [inches(budget.gap) for budget in oatmere.results.budgets]
        assert gaps == pytest.approx([by_hand] * len(gaps))
        assert gaps

    def test_soft_aluminium_would_yield(self):
        """Minimum strength: 1,390 psi against 1,630; 5052-O has half as much again to spare, for one foot.

        If two feet add up it has to bear 3,259, and yields.
        """
        soft = edited(example("oatmere"), ("tube 5052-O 1/4 x .035\n", "tube 3003-O 1/4 x .035\n"))
        for text, psi, factor in ((soft, 1390, 0.85), (example("oatmere"), 2781, 1.71)):
            strengths = evaluate_text(text, "oatmere.yaml").results.strengths
            assert len(strengths) == 2
            for strength in strengths:
                assert round(to_unit(strength.yield_pressure.middle, "psi")) == psi
                ends = (factor / 2, factor)
                assert strength.yield_factor.span == pytest.approx(ends, abs=0.01)


class TestSingleBrakes:
    def test_what_to_buy(self, single):
        """Four elbows fewer at two cylinders fewer, and two hoses fewer; nothing else changes."""
        assert totals(single) == {
            "AN816-4": 2,
            "AN832-4": 2,
            "AN924-4": 2,
            "AN822-4D": 4,
            "AN816-4D": 4,
            "AN833-4D": 2,
            "AN924-4D": 2,
            "AN823-4D": 2,
            "AN818-4D": 4,
            "AN819-4D": 4,
        }
        assert Counter(item.kind for item in single.laid) == {LineKind.TUBE: 2, LineKind.HOSE: 8}
        assert closes(single)

    def test_no_cylinders_in_series_to_ask_about(self, single):
        assert "series-capability-unknown" not in asked(single)


class TestVerdict:
    @pytest.mark.parametrize("option", [None, "single brakes"])
    def test_nothing_that_could_hurt_somebody(self, option):
        evaluation = evaluate_text(example("oatmere"), "oatmere.yaml", option)
        assert evaluation.verdict is Verdict.NOT_SHOWN
        assert all(finding.level is not Level.WARNING for finding in evaluation.findings)

    def test_the_first_sketch_is_not_sound(self):
        sketch = evaluate_text(example("oatmere"), "oatmere.yaml", "first sketch")
        assert sketch.verdict is Verdict.NOT_SOUND

    def test_its_cylinders_makers_have_to_be_asked(self, oatmere):
        assert asked(oatmere)["series-capability-unknown"] == {
            f"components.pilot_{side}.seals when pressed" for side in SIDES
        }
