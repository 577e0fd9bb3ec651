"""One pedal's curves from an aircraft's values: the figures of the budget, and what comes with each key."""

from __future__ import annotations

import math

import numpy as np
import pytest

from firmpedal.analysis.feel.cases import CASES, FAST, Case, Warmth
from firmpedal.analysis.feel.pedals import Feel, feel
from firmpedal.pipeline import evaluate_text
from firmpedal.project import read_text
from firmpedal.report.story import cautions
from firmpedal.units import to_unit
from texts import edited, example, small

TUBE = "made of: tube 5052-O 1/4 x .035\n"
NYLON = (TUBE, "made of: plastic nylon 1/4 x .040\n")
HOSE = (TUBE, "made of: hose -4 PTFE braided\n")
HEAT = ("lines:\n", "zones:\n  hot: {where: {up above: -99}, heat: brake, temperature: 80 degC}\nlines:\n")
STROKE, GAP = "stroke: 3/4\n", "pad gap: 0.020\n"
ARMS = "brake: {brake: {pad: 5, arm: 2-1/2}}"
PINS = (
    ARMS,
    "brake: {brake: {pivot: [0, 0, 0], pad at: [0, 0, 5], rod end: [2.5, 0, 0], cylinder base: [2.5, 0, 8]}}",
)
AREA = math.pi / 4 * 0.625**2
COLD, HOT = Case(), Case(Warmth.HOT)


def evaluated(*edits: tuple[str, str]):
    return evaluate_text(edited(small("quillfen"), *edits), "text")


def felt(evaluation, number: int = 0):
    results = evaluation.results
    return feel(results.presses[number], results.forces)


def key(text: str, more: str) -> tuple[str, str]:
    """One more key after a line of the file."""
    return text, f"{text}    {more}\n"


def inches(value) -> tuple[float, float]:
    return to_unit(value.low, "in"), to_unit(value.high, "in")


@pytest.mark.parametrize("edits", [(), (HOSE,), (NYLON, HEAT)], ids=["tube", "hose", "hot nylon"])
def test_the_curves_and_the_budget_are_one(edits):
    evaluation = evaluated(*edits)
    found = felt(evaluation)
    for number, budget in enumerate(evaluation.results.budgets):
        assert found.stroke(COLD, number).span == pytest.approx(budget.cold.span, rel=1e-9)
        assert found.travel(COLD, number).span == pytest.approx(budget.pads[0].span, rel=1e-9)
        if HOT in found.cases:
            assert found.stroke(HOT, number).span == pytest.approx(budget.hot.span, rel=1e-9)
            assert found.travel(HOT, number).span == pytest.approx(budget.pads[1].span, rel=1e-9)


def test_metal_has_no_hot_cases():
    assert {case.warmth for case in felt(evaluated(HEAT)).cases} == {Warmth.COLD, Warmth.FROST}


def test_a_hotter_case_is_softer_and_an_hour_softer_still():
    found = felt(evaluated(NYLON, HEAT))
    travels = [found.travel(Case(warmth), 1) for warmth in Warmth]
    assert [each.low for each in travels] == sorted(each.low for each in travels)
    assert travels[2].high < travels[3].low


def test_air_takes_what_boyle_says():
    """2 % of the tube's bore, pressed from one atmosphere to that and 150 lb times 2 on 5/8 in."""
    evaluation = evaluated()
    found, air = felt(evaluation), Case(air=0.02)
    pressure, outside = 300 / AREA, 14.6959
    (volume,) = evaluation.results.volumes
    taken = to_unit(volume.middle, "cu in") * 0.02 * (1 - outside / (outside + pressure))
    spared = to_unit(volume.middle, "cu in") * 0.02 * pressure / 260_000  # less fluid to squeeze
    more = found.stroke(air, 1).middle - found.stroke(COLD, 1).middle
    assert to_unit(more, "in") == pytest.approx((taken - spared) / AREA, rel=1e-3)


def test_air_pressed_fast_gives_less():
    found = felt(evaluated())
    fast, slow = (found.travel(Case(air=0.02, exponent=n), 1) for n in (FAST, 1.0))
    assert fast.high < slow.high


def test_free_stroke_comes_on_top_of_everything():
    plain, more = felt(evaluated()), felt(evaluated(key(STROKE, "free stroke: 0.06")))
    for number in range(3):
        a, b = inches(plain.travel(COLD, number)), inches(more.travel(COLD, number))
        assert b == pytest.approx([each + 0.06 * 2 for each in a], rel=1e-9)


def test_caliper_and_pads_give():
    """0.004 in of a 1.5 in piston at 500 psi; at 150 lb times 2 on 5/8 in it is that in proportion."""
    plain, more = felt(evaluated()), felt(evaluated(key(GAP, "gives: {travel: 0.004, under: 500}")))
    taken = math.pi / 4 * 1.5**2 * 0.004 * 300 / AREA / 500
    a, b = inches(plain.stroke(COLD, 1)), inches(more.stroke(COLD, 1))
    assert b == pytest.approx([each + taken / AREA for each in a], rel=1e-9)


def test_a_spring_takes_from_the_pressure():
    """10 lb at rest and 25 at the end of 3/4 in: at the stroke s found it holds back 10 + 15 s / 0.75."""
    evaluation = evaluated(key(STROKE, "return spring: {at rest: 10, pressed: 25}"))
    found = felt(evaluation)
    for number, force in enumerate((75, 150, 200)):
        stroke = to_unit(found.pressed.stroke[0, number], "in")
        psi = to_unit(found.pressed.pressure[0, number], "psi")
        assert psi == pytest.approx((force * 2 - 10 - 20 * stroke) / AREA, rel=1e-6)
        budget = evaluation.results.budgets[number]
        assert inches(budget.cold) == pytest.approx(inches(found.stroke(COLD, number)), rel=1e-5)


def test_friction_takes_from_the_pressure():
    found = felt(evaluated(key(STROKE, "seal friction: 12")))
    assert to_unit(found.pressed.pressure[0, 0], "psi") == pytest.approx((75 * 2 - 12) / AREA, rel=1e-6)


def test_a_foot_that_does_not_move_the_spring_makes_no_pressure():
    evaluation = evaluated(key(STROKE, "return spring: {at rest: 400}"))
    assert felt(evaluation).pressed.pressure[0, 0] == pytest.approx(0, abs=1e-3)
    assert not evaluation.results.budgets[0].cold.known


def test_a_measured_hose_swells_as_measured():
    """0.02 cu in under 800 psi, at 150 lb times 2 on 5/8 in."""
    evaluation = evaluated((HOSE[0], f"{HOSE[1]}    swells: {{volume: 0.02 cu in, under: 800}}\n"))
    (swell,) = next(each for each in evaluation.results.budgets if each.foot == "hard").swells
    assert to_unit(swell.wall.middle, "cu in") == pytest.approx(0.02 * 300 / AREA / 800)
    assert swell.wall.exact
    travel = felt(evaluation).travel(COLD, 1)
    assert travel.high - travel.low < 0.01 * travel.high


class TestCurveOfAHose:
    """0.2 ml/m under 400 psi and 0.3 ml/m under 1000: steep at first, as hoses are."""

    POINTS = "[{under: 400, per length: 0.2 ml/m}, {under: 1000, per length: 0.3 ml/m}]"
    CURVE = (HOSE[0], f"{HOSE[1]}    expansion curve: {POINTS}\n")

    def wall(self, foot: str, *edits):
        evaluation = evaluated(self.CURVE, *edits)
        budget = next(each for each in evaluation.results.budgets if each.foot == foot)
        (line,) = evaluation.laid
        return budget.swells[0].wall, line.order_length, to_unit(budget.pressure.middle, "psi")

    @pytest.mark.parametrize("foot", ["normal", "hard"])
    def test_it_is_read_between_its_points(self, foot):
        """Against numpy's own straight lines between points; 489 and 978 psi are between them."""
        taken, length, psi = self.wall(foot)
        per_length = np.interp(psi, [0, 400, 1000], [0, 0.2e-6, 0.3e-6])
        assert taken.span == pytest.approx([per_length * end for end in length.span], rel=1e-9)
        assert cautions(taken) == ()

    def test_beyond_its_end_it_is_a_range_and_says_so(self):
        """1304 psi: from 0.3 ml/m to 0.3 and 304 psi of its steepest, 0.2 ml/m in 400."""
        taken, length, psi = self.wall("panic")
        most = 0.3e-6 + (psi - 1000) * 0.2e-6 / 400
        assert taken.span == pytest.approx([0.3e-6 * length.low, most * length.high], rel=1e-9)
        assert any("its curve ends at a lower pressure" in words for words in cautions(taken))

    def test_the_curve_of_the_pedal_follows_it(self):
        evaluation = evaluated(self.CURVE)
        found = felt(evaluation)
        for number, budget in enumerate(evaluation.results.budgets):
            assert found.stroke(COLD, number).span == pytest.approx(budget.cold.span, rel=1e-9)

    def test_an_unknown_point_is_asked_for(self):
        unknown = (self.CURVE[0], self.CURVE[1].replace("0.3 ml/m", "unknown"))
        assert any("per length" in each.place for each in felt(evaluated(unknown)))

    @pytest.mark.parametrize(
        ("points", "more", "words"),
        [
            (
                "[{under: 400, per length: 0.2 ml/m}, {under: 300, per length: 0.3 ml/m}]",
                "",
                "does not follow",
            ),
            (
                "[{under: 400, per length: 0.2 ml/m}, {under: 800, per length: 0.1 ml/m}]",
                "",
                "does not follow",
            ),
            (POINTS, "    swells: {volume: 0.02 cu in, under: 800}\n", "a curve and a measurement"),
        ],
    )
    def test_what_no_hose_does_is_said(self, points, more, words):
        curve = f"{HOSE[1]}    expansion curve: {points}\n{more}"
        (problem,) = read_text(edited(small("quillfen"), (HOSE[0], curve)), "text").problems
        assert words in problem.message

    def test_a_tube_has_no_such_curve(self):
        text = edited(small("quillfen"), (TUBE, f"{TUBE}    expansion curve: {self.POINTS}\n"))
        (problem,) = read_text(text, "text").problems
        assert problem.message.startswith("run is no hose")


class TestFrost:
    """At -40 degrees, the same in both scales."""

    FROST = Case(Warmth.FROST)

    def test_nylon_by_hand(self):
        """135 to 190 kgf/mm^2, 1324 to 1863 MPa, and the fluid from nothing to what it gives warm."""
        evaluation = evaluated(NYLON)
        (cold,) = [each for each in evaluation.results.budgets if each.foot == "hard"]
        stroke, wall, fluid = (
            felt(evaluation).stroke(self.FROST, 1),
            cold.swells[0].wall,
            cold.swells[0].fluid,
        )
        gap = cold.gap.middle
        area = math.pi / 4 * (0.625 * 0.0254) ** 2
        least = gap + wall.low * 980.665 / 1863 / area
        most = gap + (wall.high * 343.23 / 1324 + fluid.high) / area
        assert stroke.span == pytest.approx([least, most], rel=2e-3)

    def test_metal_hardly_feels_it(self):
        found = felt(evaluated())
        assert found.stroke(self.FROST, 1).high == pytest.approx(found.stroke(COLD, 1).high)

    def test_a_hose_takes_from_nothing_to_what_it_takes_warm(self):
        measured = (HOSE[0], f"{HOSE[1]}    swells: {{volume: 0.02 cu in, under: 800}}\n")
        for edit in (measured, TestCurveOfAHose.CURVE):
            found = felt(evaluated(edit))
            warm, frost = found.stroke(COLD, 1), found.stroke(self.FROST, 1)
            assert frost.high == pytest.approx(warm.high)
            assert frost.low == pytest.approx(evaluated().results.budgets[1].gap.low)

    def test_plastic_without_a_row_there_is_not_worked_out(self):
        evaluation = evaluated((NYLON[0], NYLON[1].replace("nylon", "polyethylene")))
        found = felt(evaluation)
        assert self.FROST not in found.cases
        assert any("at -40 degrees" in each.what for each in found.filled.frost_missing)

    def test_a_fluid_that_may_not_flow_there_is_asked_about(self):
        found = felt(evaluated(("fluid: MIL-PRF-5606", "fluid: DOT 3")))
        assert self.FROST not in found.cases
        assert "how thick DOT 3 is at -40 degrees" in {each.what for each in found.filled.frost_missing}


def test_a_tube_is_not_measured_for_its_swelling():
    text = edited(small("quillfen"), (TUBE, f"{TUBE}    swells: {{volume: 0.02 cu in, under: 800}}\n"))
    (problem,) = read_text(text, "text").problems
    assert problem.message == "run is no hose, and what it takes is worked out from its wall"


class TestPins:
    """The rod stands square to the lever at rest: ratio 2 there, and the arm shortens as it swings."""

    def test_ratio_and_travel_from_a_triangle(self):
        """At a stroke s the pins are 8 - s apart; the angle at the pivot is by the law of cosines."""
        evaluation = evaluated(PINS)
        found = felt(evaluation)
        base = math.hypot(2.5, 8)
        for number in range(3):
            stroke = to_unit(found.pressed.stroke[0, number], "in")
            cosine = (2.5**2 + base**2 - (8 - stroke) ** 2) / (2 * 2.5 * base)
            swung = math.atan2(8, 2.5) - math.acos(cosine)
            assert inches(found.travel(COLD, number))[0] == pytest.approx(5 * swung, rel=1e-6)
            budget = evaluation.results.budgets[number]
            assert budget.pads[0].span == pytest.approx(found.travel(COLD, number).span, rel=1e-4)

    def test_force_and_travel_hang_together_by_work(self):
        line = felt(evaluated(PINS)).curves
        arms = felt(evaluated()).curves
        assert line.travel[0] != pytest.approx(arms.travel[0], rel=1e-4)
        ratio = (line.travel[0, 1:] - line.travel[0, :-1]) / (line.stroke[0, 1:] - line.stroke[0, :-1])
        push = line.pressure[0] * math.pi / 4 * 0.015875**2
        middle = (push[1:] + push[:-1]) / (line.force[0, 1:] + line.force[0, :-1])
        assert middle == pytest.approx(ratio, rel=1e-3)

    def test_a_lever_at_its_dead_point_is_unknown(self):
        points = "pivot: [0, 0, 0], pad at: [0, 0, 5], rod end: [0.3, 0, 0.1], cylinder base: [0.3, 0, 0.5]"
        evaluation = evaluated((ARMS, f"brake: {{brake: {{{points}}}}}"), (STROKE, "stroke: 0.6\n"))
        found = felt(evaluation)
        assert not found.full_travel.known
        assert "dead point" in found.full_travel.missing[0].what


class TestEnds:
    def test_the_force_that_bottoms_the_cylinder(self):
        """Hot nylon at 80 C with 3/4 in: at that force the stroke found is the whole stroke."""
        evaluation = evaluated(NYLON, HEAT, (STROKE, "stroke: 0.2\n"))
        found = felt(evaluation)
        low, high = found.force_of(found.bottoms, HOT)
        for force, end in ((low, 1), (high, 0)):
            forces = (evaluation.results.forces[0].named("force"),)
            there = feel(found.pressing, _at(forces, force))
            row = 2 * there.cases.index(HOT) + end
            assert to_unit(there.pressed.stroke[row, 0], "in") == pytest.approx(0.2, rel=1e-6)

    def test_a_stop_is_met_before_the_end(self):
        found = felt(evaluated((ARMS, "brake: {brake: {pad: 5, arm: 2-1/2, travel to stop: 0.5}}")))
        stops, bottoms = (found.force_of(each, COLD) for each in (found.stops, found.bottoms))
        assert stops[1] < bottoms[0]

    def test_no_stop_is_given(self):
        assert felt(evaluated()).stops is None


def _at(forces, newtons):
    (force,) = forces
    return (force.__class__(force.label, force.dimension, (newtons, newtons), force.mark),)


class TestUnknown:
    @pytest.mark.parametrize(
        ("edit", "asked"),
        [
            ((GAP, "pad gap: unknown\n"), "pad gap"),
            (("fluid: MIL-PRF-5606", "fluid: unknown"), "which brake fluid is used"),
            (("[10, 0, -6]", "[10, unknown, -6]"), "right"),
        ],
    )
    def test_what_it_cannot_do_without_is_asked_for(self, edit, asked):
        missing = felt(evaluated(edit))
        assert not isinstance(missing, Feel)
        assert any(asked in each.what for each in missing)

    def test_unknown_wear_leaves_worn_pads_out(self):
        found = felt(evaluated(("pad wear: 0.10", "pad wear: unknown")))
        assert Case() in found.cases
        assert not any(case.worn for case in found.cases)

    def test_unknown_heat_leaves_hot_out(self):
        found = felt(evaluated(NYLON, (HEAT[0], HEAT[1].replace("80 degC", "unknown"))))
        assert {case.warmth for case in found.cases} == {Warmth.COLD, Warmth.FROST}
        assert found.filled.hot_missing

    def test_what_is_left_out_is_said(self):
        words = " ".join(each.what for each in felt(evaluated()).filled.not_counted)
        for thing in ("free stroke", "return spring", "seal friction", "caliper and its pads give"):
            assert thing in words
        given = (
            key(
                STROKE,
                "free stroke: 0.06\n    return spring: {at rest: 10, pressed: 10}\n    seal friction: 5",
            ),
            key(GAP, "gives: {travel: 0.004, under: 500}"),
        )
        assert felt(evaluated(*given)).filled.not_counted == ()

    @pytest.mark.parametrize("pressed", [10, 14, 30])
    def test_a_spring_given_at_rest_alone_is_a_bound_and_said_to_be_one(self, pressed):
        """Whatever it is at the end, if no less than 10 lbf: pressure and stroke are no more."""
        alone = felt(evaluated(key(STROKE, "return spring: {at rest: 10}")))
        given = felt(evaluated(key(STROKE, f"return spring: {{at rest: 10, pressed: {pressed}}}")))
        for number in range(3):
            most = alone.pressed.pressure[0, number]
            assert given.pressed.pressure[0, number] <= most * (1 + 1e-12)
            assert given.pressed.stroke[0, number] <= alone.pressed.stroke[0, number] * (1 + 1e-12)
        asked = "by how much the return spring of cylinder gets stronger as it is pressed"
        assert asked in [each.what for each in alone.filled.held_back]
        assert asked not in [each.what for each in given.filled.held_back]

    def test_a_range_stays_a_range(self):
        exact, wide = felt(evaluated()), felt(evaluated((GAP, "pad gap: 0.018 to 0.022\n")))
        assert wide.travel(COLD, 1).low < exact.travel(COLD, 1).low
        assert wide.travel(COLD, 1).high > exact.travel(COLD, 1).high


def test_cases_have_names_of_their_own():
    assert len({case.words for case in CASES}) == len(CASES)
    assert Case(air=0.005).words == "cold, 0.5 % of air"
    assert Case(air=0.02).words == "cold, 2 % of air"


def test_two_seats_press_each_by_itself():
    evaluation = evaluate_text(example("oatmere"), "text")
    found = [felt(evaluation, number) for number in range(4)]
    assert all(isinstance(each, Feel) for each in found)
    pilot, copilot = found[0], found[2]
    fluids = [len(each.pressing.lines) for each in (pilot, copilot)]
    assert fluids[0] != fluids[1]  # the seat further from the wheel fills the line between them too
