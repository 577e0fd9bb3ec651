"""Filling and bleeding of the three examples: the traps and the way out, against figures worked out by hand.

Volumes by hand: pi/4 times the bore squared times a length along straight lines; a bend takes off less than
a tenth of an inch. The flow that clears air upright is 1.075 sqrt(g d) times the area, by the paper cited.
"""

from __future__ import annotations

from math import cos, dist, pi, radians, sin, sqrt

import pytest

from firmpedal.analysis.bleeding import bleeding
from firmpedal.formulas.laminar import reynolds_number
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Answer
from firmpedal.report.bleeding import bleeding_sheet
from firmpedal.report.sheet import Bullets, Group, Paragraph
from firmpedal.units import to_unit
from texts import example

INCH, PSI = 0.0254, 6894.757
GRAVITY = 9.80665


def evaluated(name, option=None):
    return evaluate_text(example(name), f"{name}.yaml", option)


def found_in(evaluation):
    return bleeding(evaluation.aircraft, evaluation.laid, evaluation.results)


def cubic_inches(value):
    return to_unit(value.middle, "cu in")


def area(bore):
    return pi / 4 * bore**2


def words_of(blocks):
    for block in blocks:
        if isinstance(block, Paragraph):
            yield block.text
        elif isinstance(block, Bullets):
            yield from block.items
        elif isinstance(block, Group):
            yield from words_of(block.blocks)


@pytest.fixture(scope="module")
def oatmere():
    return evaluated("oatmere")


@pytest.fixture(scope="module")
def fennimoss():
    return evaluated("fennimoss", "rigid")


@pytest.fixture(scope="module")
def brindlewick():
    return evaluated("brindlewick", "rigid")


class TestSeatsInSeries:
    """The pilot's inlets at z 8.4 are fed through cross hoses from the copilot's outlets at z 2.2."""

    def test_the_inlet_can_hold_a_whole_cross_hose_of_air_and_more_inside_the_cylinder(self, oatmere):
        pockets = {each.near: each for each in found_in(oatmere).pockets}
        assert set(pockets) == {"pilot_left.inlet", "pilot_right.inlet"}
        for side in ("left", "right"):
            pocket = pockets[f"pilot_{side}.inlet"]
            (hose,) = (line.hose for line in oatmere.laid if line.name == f"{side}_cross")
            whole = area(3 / 16) * hose.order_length.middle / INCH
            assert cubic_inches(pocket.air) == pytest.approx(whole)
            assert pocket.inside == (f"pilot_{side}",)

    def test_that_is_more_than_a_stroke_so_pumping_only_moves_it_to_and_fro(self, oatmere):
        for each in found_in(oatmere).pumping:
            assert each.cylinder == each.near.replace("pilot", "copilot").partition(".")[0]
            assert cubic_inches(each.stroke) == pytest.approx(area(0.625) * 0.9)
            assert each.reaches is Answer.NO

    def test_fluid_is_pushed_up_from_the_wheel_through_the_open_valve_and_both_cylinders(self, oatmere):
        (left,) = (each for each in found_in(oatmere).rises if each.caliper == "left_caliper")
        order = ("gear", "run", "to_valve", "cross", "cabin", "feed")
        assert left.lines == tuple(f"left_{name}" for name in order)
        assert (left.top, left.enough) == ("reservoir", Answer.YES)
        column = (27 + 27) * INCH * 867 * GRAVITY  # caliper at z -27, fill cap at 27
        assert left.column.middle == pytest.approx(column, rel=0.001)

    def test_the_steps_name_valve_and_pedals_of_both_seats(self, oatmere):
        text = list(words_of(bleeding_sheet(oatmere).blocks))
        (valve,) = {each for each in text if each.startswith("Open valve")}
        assert "leave it open" in valve
        both = "press the pilot's left pedal and the copilot's left pedal"
        (work,) = (each for each in text if both in each)
        assert "pilot_left.inlet" in work
        assert "a level line does not cure this" in work

    def test_gravity_makes_less_than_half_of_what_surely_takes_air_along(self, oatmere):
        for rise in found_in(oatmere).rises:
            (gravity,) = rise.gravity
            assert gravity.enough is Answer.NO
            assert gravity.flow.high < rise.flow.low / 2

    def test_without_the_second_seat_there_is_no_such_place(self):
        found = found_in(evaluated("oatmere", "single brakes"))
        assert not found.pockets
        assert not found.pumping


class TestParkedNoseDown:
    """The gear bracket at z 7.0 is 10 in above the keel; parked it is 22 in and more above the cap."""

    def test_air_at_the_bracket_in_every_attitude(self, fennimoss):
        depths = {
            each.attitude: to_unit(each.depth.middle, "in")
            for each in found_in(fennimoss).pockets
            if each.near == "left_gear_bracket"
        }
        assert depths["taxi"] == pytest.approx(10, abs=0.25)  # the hose's end is a quarter of an inch higher
        assert depths["jig"] == pytest.approx(7.5, abs=0.1)

    def test_nose_up_it_can_hold_a_third_of_a_cubic_inch(self, fennimoss):
        """Down to the level of the keel's aft end: the tube from there up, and the hose as far down."""
        level = self.height(88.0, -1.0)
        keel = [(88.0, -2.2, -1.0), (92.0, -6.0, 3.0), (94.5, -14.0, 7.0)]
        tube = area(0.1875 - 0.070) * (dist(*keel[:2]) + dist(*keel[1:]))
        gear = [(96.6, -15.0, 7.2), (98.5, -18.0, 6.0), (105.0, -32.0, -18.0)]
        upper, lower = self.height(98.5, 6.0), self.height(105.0, -18.0)
        above = dist(*gear[:2]) + dist(*gear[1:]) * (upper - level) / (upper - lower)
        hose = area(0.125) * above * 40.5 / 38.08  # 40.5 are ordered for a path of 38.08
        (pocket,) = (
            each
            for each in found_in(fennimoss).pockets
            if (each.near, each.attitude) == ("left_gear_bracket", "jig")
        )
        assert cubic_inches(pocket.air) == pytest.approx(tube + hose, rel=0.02)

    @staticmethod
    def height(aft, up):
        return up * cos(radians(4)) - aft * sin(radians(4))

    def test_it_is_filled_nose_up_because_else_the_line_stands_above_the_cap(self, fennimoss):
        for rise in found_in(fennimoss).rises:
            assert rise.attitude == "jig"
            blocked = {each.attitude for each in rise.gravity if each.blocked is not None}
            assert blocked == {"taxi", "parked"}

    def test_it_takes_a_pump_at_15_to_20_psi(self, fennimoss):
        for rise in found_in(fennimoss).rises:
            assert rise.enough is Answer.YES
            assert 5 < rise.pressure.low / PSI < rise.pressure.high / PSI < 15

    def test_in_the_keel_tube_no_bubble_rises_by_itself(self, fennimoss):
        """Bore .1175 in: rho g r^2 / s is at most 875 9.81 (1.492 mm)^2 / 25 mN/m = 0.764, under 0.842."""
        found = found_in(fennimoss)
        assert found.bore_of("left_keel").stays is Answer.YES
        assert found.bore_of("left_keel").bond.high == pytest.approx(0.764, abs=0.001)
        assert found.bore_of("left_keel").creep.high == 0

    def test_in_its_hoses_nobody_knows(self, fennimoss):
        """Bore 1/8 in: at most 0.865, at least 0.607."""
        bore = found_in(fennimoss).bore_of("left_gear")
        assert bore.stays is Answer.UNKNOWN
        assert (bore.bond.low, bore.bond.high) == pytest.approx((0.607, 0.865), abs=0.001)

    def test_the_flow_that_surely_clears_it(self, fennimoss):
        """1/8 in: 1.075 sqrt(9.80665 0.003175) = 0.1897 m/s through 7.917 mm^2."""
        for rise in found_in(fennimoss).rises:
            assert rise.flow.middle == pytest.approx(1.075 * sqrt(GRAVITY * 0.003175) * area(0.003175))

    def test_pumping_only_moves_the_air_to_and_fro(self, fennimoss):
        (pumping,) = (each for each in found_in(fennimoss).pumping if each.near == "left_gear_bracket")
        assert cubic_inches(pumping.stroke) == pytest.approx(area(0.625) * 0.7)
        between = area(0.1175) * 99.3 + area(0.125) * 12  # the keel tube and the hose at the pedal
        assert cubic_inches(pumping.between) == pytest.approx(between, rel=0.03)
        assert pumping.reaches is Answer.NO


class TestStraightforward:
    def test_no_high_point_and_little_pressure(self, brindlewick):
        found = found_in(brindlewick)
        assert not found.pockets
        for rise in found.rises:
            assert rise.pressure.high / PSI < 5
            assert rise.enough is Answer.YES

    def test_the_lead_says_so(self, brindlewick):
        first = next(words_of(bleeding_sheet(brindlewick).blocks))
        assert first.startswith("Push fluid up from left_caliper and right_caliper")
        assert "No high point keeps air" in first


@pytest.mark.parametrize(
    ("name", "option"), [("oatmere", None), ("fennimoss", "rigid"), ("brindlewick", "rigid")]
)
class TestEverywhere:
    def test_flow_is_slow_enough_for_the_law_that_is_used(self, name, option):
        """Laminar below a Reynolds number of 2000."""
        found = found_in(evaluated(name, option))
        for rise in found.rises:
            for line in rise.lines:
                bore = found.bore_of(line).bore
                assert reynolds_number(rise.flow.high, bore.low, found.viscosity.low) < 200

    def test_no_high_point_holds_more_than_its_lines(self, name, option):
        evaluation = evaluated(name, option)
        volumes = dict(zip((line.name for line in evaluation.laid), evaluation.results.volumes, strict=True))
        for pocket in found_in(evaluation).pockets:
            for _, part in pocket.air.step.inputs:
                (line,) = (each for each in volumes if part.place.endswith(f".{each}"))
                assert part.high <= volumes[line].high * (1 + 1e-12)
