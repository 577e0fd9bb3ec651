"""The first aircraft from end to end: every answer out of the same engine that any file goes through.

Brindlewick is invented. Its right answers were worked out by hand before the program was written; they
are nobody's published data. Where a figure is checked to its last digit, it is worked out here once more,
with formulas of the test's own.
"""

from __future__ import annotations

import itertools
import math
from collections import Counter

import pytest

from firmpedal.finding import Verdict
from firmpedal.model.part import Form
from firmpedal.model.stock import LineKind
from firmpedal.pipeline import Evaluation, evaluate_text
from firmpedal.report.parts import parts_list
from firmpedal.units import to_unit
from texts import example

# The builder's measurements, in inches.
T1 = [(7.0, -9.0, -0.9), (7.0, -9.0, -3.2), (9.0, -11.6, -5.2), (5.6, -32.2, -28.6), (6.6, -33.4, -30.2)]
WHEEL_HOSE = [
    (6.9, -33.7, -30.8),
    (7.6, -33.9, -33.2),
    (9.4, -33.4, -34.4),
    (10.2, -32.8, -32.6),
    (9.4, -32.6, -31.4),
]
BENDER_RADIUS = 0.75
SIDES = ("left", "right")
FEET = ("normal", "hard", "panic")


@pytest.fixture(scope="module")
def rigid() -> Evaluation:
    return evaluate_text(example("brindlewick"), "brindlewick.yaml", "rigid")


@pytest.fixture(scope="module")
def written() -> Evaluation:
    return evaluate_text(example("brindlewick"), "brindlewick.yaml")


def inches(value) -> float:
    return to_unit(value.middle, "in")


def span(value) -> tuple[float, float]:
    return to_unit(value.low, "in"), to_unit(value.high, "in")


def line(evaluation, name):
    return next(item for item in evaluation.laid if item.name == name)


def cylinder_area() -> float:
    return math.pi / 4 * 0.625**2


def stroke_for_walls(budget, walls: str) -> tuple[float, float]:
    """Stroke that the walls of the lines alone take, without fluid and pad gap."""
    bounds = [to_unit(getattr(swell, walls).low, "cu in") for swell in budget.swells]
    upper = [to_unit(getattr(swell, walls).high, "cu in") for swell in budget.swells]
    return sum(bounds) / cylinder_area(), sum(upper) / cylinder_area()


class TestWhatToBuy:
    def test_fittings_nuts_and_sleeves_are_exactly_these(self, rigid):
        counted = Counter()
        for item in parts_list(rigid):
            if item.category.value in (
                "fitting",
                "jam nut",
                "coupling nut",
                "sleeve",
                "washer",
                "cap",
                "other",
            ):
                counted[item.designation] += item.quantity
        assert counted == {
            "AN816-4D": 2,
            "AN833-4D": 2,
            "AN832-4D": 2,
            "AN924-4D": 4,
            "AN822-4D": 2,
            "AN818-4D": 4,
            "AN819-4D": 4,
        }

    def test_tubes_and_hoses(self, rigid):
        kinds = Counter()
        for item in parts_list(rigid):
            kinds[item.category.value] += item.quantity
        assert (kinds["tube"], kinds["hose"]) == (2, 4)

    def test_joints_by_kind(self, rigid):
        forms = Counter(
            mating.one.interface.form for joint in rigid.assembly.joints for mating in joint.matings
        )
        assert forms[Form.FLARE_37] == 12
        assert forms[Form.PIPE] == 4

    def test_every_end_has_its_partner(self, rigid):
        assert rigid.violations == ()
        assert all(not joint.mismatches and not joint.open_ends for joint in rigid.assembly.joints)


class TestTheLegTube:
    def test_developed_length(self, rigid):
        developed = inches(line(rigid, "left_leg").developed_length)
        assert developed == pytest.approx(39.6, abs=0.3)
        assert f"{developed:.2f}" == f"{developed_length(T1, BENDER_RADIUS):.2f}" == "39.63"

    def test_polyline(self, rigid):
        assert inches(line(rigid, "left_leg").path_length) == pytest.approx(39.7, abs=0.05)

    @pytest.mark.parametrize("side", SIDES)
    def test_bends(self, rigid, side):
        angles = [math.degrees(bend.angle.middle) for bend in line(rigid, f"{side}_leg").tube.bends]
        assert angles == pytest.approx([58.6, 39.1, 33.1], abs=0.05)

    def test_rotations_and_their_mirror_image(self, rigid):
        left, right = (
            [math.degrees(bend.rotation.middle) for bend in line(rigid, f"{side}_leg").tube.bends]
            for side in SIDES
        )
        assert left == pytest.approx([0, 129.5, 157.5], abs=0.05)
        assert right == pytest.approx([-angle for angle in left])

    @pytest.mark.parametrize("side", SIDES)
    def test_straights(self, rigid, side):
        straights = [inches(value) for value in line(rigid, f"{side}_leg").tube.straights]
        assert straights[0] == pytest.approx(1.88, abs=0.005)
        assert straights[-1] == pytest.approx(2.01, abs=0.005)
        assert max(straights) == pytest.approx(30.9, abs=0.05)

    def test_clamps_hold_the_longest_straight(self, rigid):
        """At 13-1/2 spacing two between its ends, and one near each of them."""
        leg = line(rigid, "left_leg")
        first, second, third, _ = (inches(value) for value in leg.tube.straights)
        arcs = [inches(bend.arc) for bend in leg.tube.bends]
        start = first + arcs[0] + second + arcs[1]
        places = [inches(value) for value in leg.supports.stations]
        assert sum(start < place < start + third for place in places) == 4
        assert places[0] == pytest.approx(start, abs=1)
        assert places[-1] == pytest.approx(start + third, abs=1)
        assert inches(leg.supports.longest_gap) <= 13.5


def developed_length(points, radius) -> float:
    """Polyline less, at each corner, two setbacks R tan(a/2), plus the arc R a."""
    legs = [[b - a for a, b in zip(one, other, strict=True)] for one, other in itertools.pairwise(points)]
    length = sum(math.hypot(*leg) for leg in legs)
    for one, other in itertools.pairwise(legs):
        along = sum(a * b for a, b in zip(one, other, strict=True))
        turn = math.acos(along / (math.hypot(*one) * math.hypot(*other)))
        length += radius * (turn - 2 * math.tan(turn / 2))
    return length


class TestHoses:
    @pytest.mark.parametrize("side", SIDES)
    def test_wheel_hose(self, rigid, side):
        hose = line(rigid, f"{side}_tail").hose
        path = sum(math.dist(one, other) for one, other in itertools.pairwise(WHEEL_HOSE))
        assert inches(hose.path_length) == pytest.approx(path)
        assert inches(hose.path_length) == pytest.approx(8.2, abs=0.05)
        assert inches(hose.path_length) * (1 + hose.slack.middle) == pytest.approx(8.7, abs=0.05)
        assert 9.0 <= inches(hose.order_length) <= 10.0

    def test_the_caliper_floats_further_out_before_slack_is_counted(self, rigid):
        hose = line(rigid, "left_tail").hose
        moved = [*WHEEL_HOSE[:-1], (9.4, -32.4, -31.4)]
        path = sum(math.dist(one, other) for one, other in itertools.pairwise(moved))
        assert inches(hose.longest_path) == pytest.approx(path)
        assert inches(hose.least_length) == pytest.approx(path * 1.06)

    @pytest.mark.parametrize("side", SIDES)
    def test_pedal_swing(self, rigid, side):
        travel = line(rigid, f"{side}_pedal").travel
        assert inches(travel.nearest) == pytest.approx(5.3, abs=0.05)
        assert inches(travel.farthest) == pytest.approx(6.7, abs=0.05)
        assert inches(travel.play) == pytest.approx(1.6, abs=0.05)
        radius = math.hypot(13.1 - 15.0, 3.0 - 1.0)
        assert inches(travel.play) == pytest.approx(2 * radius * math.sin(math.radians(17)), rel=1e-6)

    def test_pedal_hose_reaches_its_farthest_state(self, rigid):
        assert 7.5 <= inches(line(rigid, "left_pedal").order_length) <= 8.5

    def test_a_tube_may_not_go_to_the_pedal_nor_into_the_caliper(self, rigid):
        kinds = {item.name: item.kind for item in rigid.laid}
        assert kinds["left_pedal"] is kinds["left_tail"] is LineKind.HOSE


class TestPressureAndStrength:
    def test_pressure_at_each_foot(self, rigid):
        for made in rigid.results.cylinders:
            pressures = [round(to_unit(value.middle, "psi")) for value in made.pressures]
            assert pressures == [489, 978, 1304]

    def test_soft_aluminium_is_almost_at_its_yield(self):
        text = example("brindlewick").replace("tube 5052-O 1/4 x .035", "tube 3003-O 1/4 x .035")
        evaluation = evaluate_text(text, "brindlewick.yaml", "rigid")
        (left, right) = evaluation.results.strengths
        for strength in (left, right):
            assert round(to_unit(strength.yield_pressure.middle, "psi")) == 1390
            assert round(100 / strength.yield_factor.middle) == 94

    def test_strong_aluminium_has_half_to_spare(self, rigid):
        for strength in rigid.results.strengths:
            assert round(to_unit(strength.yield_pressure.middle, "psi")) == 2781
            assert round(100 / strength.yield_factor.middle) == 47


class TestStroke:
    def test_pad_gap(self, rigid):
        for budget in rigid.results.budgets:
            assert inches(budget.gap) == pytest.approx(0.115, abs=0.0005)

    def test_wear_takes_this_from_each_built_in_reservoir(self, rigid):
        volumes = [to_unit(wear.volume.middle, "cu in") for wear in rigid.results.wear]
        assert volumes == pytest.approx([0.35, 0.35], abs=0.005)

    def test_the_old_nylon_is_57_inches_long(self, written):
        assert inches(line(written, "left_line").path_length) == pytest.approx(57, abs=1)

    @pytest.mark.parametrize(
        ("foot", "walls", "stroke"),
        [("normal", "wall", 0.17), ("normal", "hot_wall", 0.43), ("hard", "hot_wall", 0.87)],
    )
    def test_the_nylon_wall_swells(self, written, foot, walls, stroke):
        """The path has a range, because nobody knows how far the brass elbows stand off their ports.

        The stiffness has one too: nobody knows the grade of the old nylon.
        """
        budget = next(item for item in written.results.budgets if item.foot == foot)
        low, high = stroke_for_walls(budget, walls)
        assert low - 0.005 <= stroke <= high + 0.005

    @pytest.mark.parametrize(
        ("foot", "walls", "stroke"),
        [("normal", "wall", 0.17), ("normal", "hot_wall", 0.43), ("hard", "hot_wall", 0.87)],
    )
    def test_with_the_stiffness_of_the_usual_sums_it_swells_just_so(self, foot, walls, stroke):
        """480 MPa cool and 186 hot, a rounded grade: what is left of the range is the fittings'."""
        nylon = "    made of: plastic nylon 1/4 x .040\n"
        told = example("brindlewick").replace(
            nylon, f"{nylon}    stiffness: {{cool: 480 MPa, hot: 186 MPa}}\n"
        )
        budget = next(item for item in evaluate_text(told).results.budgets if item.foot == foot)
        low, high = stroke_for_walls(budget, walls)
        assert low - 0.005 <= stroke <= high + 0.005
        assert high - low < 0.05 * high + 0.005

    def test_gap_and_hot_swell_use_up_the_stroke(self, written):
        budget = next(item for item in written.results.budgets if item.foot == "hard")
        low, _ = stroke_for_walls(budget, "hot_wall")
        assert inches(budget.gap) + low > 0.80
        found = [finding for finding in written.findings if finding.rule == "stroke-short"]
        assert [finding.place for finding in found] == [
            "components.left_cylinder",
            "components.right_cylinder",
        ]
        assert all(finding.measured.low >= budget.hot.low for finding in found)

    def test_metal_leaves_stroke(self, rigid):
        panic = [budget for budget in rigid.results.budgets if budget.foot == "panic"]
        assert all(inches(budget.gap) < budget.hot.high / 0.0254 < 0.5 for budget in panic)


class TestVerdict:
    def test_as_written_it_is_not_sound(self, written):
        assert written.verdict is Verdict.NOT_SOUND

    def test_rigid_has_nothing_against_it_but_what_nobody_measured(self, rigid):
        assert rigid.verdict is Verdict.NOT_SHOWN
        asked = {(item.rule, missing.place) for item in rigid.not_shown for missing in item.missing}
        by_rule = {rule: {place for one, place in asked if one == rule} for rule, _ in asked}
        assert by_rule.keys() == {
            "rigid-line-between-moving-ends",
            "pressure-above-rating",
            "hose-bend-radius",
            "reservoir-too-small",
            "fluid-too-hot",
            "seals-too-hot",
        }
        trials = {f"components.{side}_caliper.heat trial.{key}" for side in SIDES for key in ("air", "port")}
        assert by_rule["fluid-too-hot"] == trials
        assert by_rule["reservoir-too-small"] == {f"components.{side}_cylinder.capacity" for side in SIDES}
        assert by_rule["rigid-line-between-moving-ends"] == {
            f"moving.{side}_wheel.gear.on jacks" for side in SIDES
        }
        assert by_rule["pressure-above-rating"] == {
            f"components.{side}_{part}.rated pressure" for side in SIDES for part in ("cylinder", "caliper")
        }
