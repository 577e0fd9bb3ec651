"""Filling past a hump, above the cap, and on a slope that is a range: volumes and weights by hand."""

from __future__ import annotations

from itertools import pairwise
from math import cos, dist, pi, radians, sin

import pytest
from test_bleeding import evaluated, found_in, words_of

from firmpedal.units import to_unit

INCH, GRAVITY = 0.0254, 9.80665
LIGHT, HEAVY = 859, 875  # MIL-PRF-5606 [kg/m^3]
LEG = "via: [[49, -18, -5], [50, -38, -25]]"
INLET = "seat: [8.6, 7, 8.4]"
CALIPER, BELLY = (50.8, -39, -27), (46.6, -15.6, -3.6)


def hump(up):
    """The hose down the leg goes over a point this high between the belly and the wheel."""
    return LEG, f"via: [[49, -18, {up}], [50, -38, -25]]"


def cubic_inches(value):
    assert value.exact
    return to_unit(value.middle, "cu in")


@pytest.fixture(scope="module")
def humped():
    return evaluated(hump(12))


@pytest.fixture(scope="module")
def pumping(humped):
    (found,) = (each for each in found_in(humped).pumping if each.near == "point 2 of leg")
    return found


class TestHumpInTheLeg:
    def test_down_to_the_wheel_is_the_hose_from_the_hump_on(self, humped, pumping):
        far, near = self.sides(humped)
        assert far > near
        assert cubic_inches(pumping.down) == pytest.approx(pi / 4 * (3 / 16) ** 2 * far, rel=1e-6)

    def test_up_to_the_cylinder_are_the_rest_of_it_the_floor_and_the_hose_to_the_valve(self, humped, pumping):
        lines = {line.name: line for line in humped.laid}
        hoses = self.sides(humped)[1] + lines["down"].hose.order_length.middle / INCH
        tube = lines["floor"].developed_length.middle / INCH
        between = pi / 4 * ((3 / 16) ** 2 * hoses + (1 / 4 - 2 * 0.035) ** 2 * tube)
        assert cubic_inches(pumping.between) == pytest.approx(between, rel=1e-6)

    @staticmethod
    def sides(evaluation):
        """The hose as it is ordered, parted as its straights are by the hump: towards the wheel, and up."""
        points = [CALIPER, (50, -38, -25), (49, -18, 12), BELLY]
        straights = [dist(one, other) for one, other in pairwise(points)]
        (leg,) = (line.hose.order_length.middle / INCH for line in evaluation.laid if line.name == "leg")
        far = leg * sum(straights[:2]) / sum(straights)
        return far, leg - far

    def test_the_strokes_told_are_whole_and_enough(self, humped, pumping):
        """1.310 cu in by strokes of 0.9 in on 5/8 in, 0.276 cu in each: 4.7, so that the fifth brings it."""
        assert cubic_inches(pumping.stroke) == pytest.approx(pi / 4 * 0.625**2 * 0.9)
        strokes = cubic_inches(pumping.down) / cubic_inches(pumping.stroke)
        assert 4.6 < strokes < 4.8
        assert pumping.strokes.span == pytest.approx((strokes, strokes))
        said = words_of(humped)
        assert "it takes at least 5 full strokes, each pressed within" in said
        assert "until air from there comes at caliper: so much the lines hold," in said

    def test_one_stroke_is_one(self):
        """2 in of stroke on 1 in of bore are 1.571 cu in, more than the 1.310 down to the wheel."""
        bigger = (("    bore: 5/8\n", "    bore: 1\n"), ("    stroke: 0.9\n", "    stroke: 2\n"))
        assert "it takes at least 1 full stroke, pressed within" in words_of(evaluated(hump(12), *bigger))


class TestAboveTheCap:
    """The cap is 27 in up; fluid has to be pushed up to the highest point, and gravity stops at the worst."""

    def test_the_weight_is_that_up_to_the_highest_point_of_the_way(self):
        (rise,) = found_in(evaluated(hump(33))).rises
        low, high = ((33 + 27) * INCH * GRAVITY * density for density in (LIGHT, HEAVY))
        assert rise.column.span == pytest.approx((low, high), rel=1e-6)

    @pytest.mark.parametrize(("leg", "inlet", "line", "above"), [(30, 35, "cross", 8), (36, 29, "leg", 9)])
    def test_gravity_is_blocked_where_a_line_stands_highest_above_it(self, leg, inlet, line, above):
        (rise,) = found_in(evaluated(hump(leg), (INLET, f"seat: [8.6, 7, {inlet}]"))).rises
        (gravity,) = rise.gravity
        assert gravity.blocked.line == line
        assert to_unit(gravity.blocked.above.middle, "in") == pytest.approx(above)

    def test_on_a_slope_that_is_a_range_the_weight_has_one(self):
        """Cap and caliper are 54 in apart in height and 53.8 lengthwise, which counts nose up."""
        (rise,) = found_in(evaluated(("level: {nose up: 0}", "level: {nose up: 1 to 4}"))).rises
        heights = [54 * cos(radians(angle)) + 53.8 * sin(radians(angle)) for angle in (1, 4)]
        assert heights[0] < heights[1]
        low, high = (
            height * INCH * GRAVITY * density for height, density in zip(heights, (LIGHT, HEAVY), strict=True)
        )
        assert rise.column.span == pytest.approx((low, high), rel=1e-6)

    def test_a_line_that_only_may_stand_highest_does_not_block_it(self):
        """The leg is 5 in above the cap for sure, the inlet 2 to 9 in."""
        (rise,) = found_in(evaluated(hump(32), (INLET, "seat: [8.6, 7, 29 to 36]"))).rises
        (gravity,) = rise.gravity
        assert gravity.blocked.line == "leg"
        assert to_unit(gravity.blocked.above.middle, "in") == pytest.approx(5)

    def test_an_attitude_that_lifts_no_line_above_the_cap_beats_one_with_less_deep_traps(self):
        """Steeply nose up the traps are 21.9 in deep and not 24.3, but the feed's corner is above the cap."""
        feed = "feed: {from: pot.out, to: second.inlet, made of: hose -4 PTFE braided"
        steep = ("{level: {nose up: 0}}", "{level: {nose up: 0}, steep: {nose up: 40}}")
        found = evaluated(hump(12), steep, (feed, f"{feed}, via: [[-8, 0, 26.5]]"))
        (rise,) = found_in(found).rises
        over = {each.attitude: each.blocked for each in rise.gravity}
        above = (26.5 - 27) * cos(radians(40)) + (8 - 3) * sin(radians(40))
        assert rise.attitude == "level"
        assert over["level"] is None
        assert to_unit(over["steep"].above.middle, "in") == pytest.approx(above)
        traps = [dict(trap.depths) for trap in found.results.heights.traps]
        deep = [
            sum(each[name].middle for each in traps if name in each) / INCH for name in ("level", "steep")
        ]
        assert deep == pytest.approx([24.3, 21.94], abs=0.01)


def test_where_no_line_stands_above_the_cap_the_least_deep_traps_decide():
    """Nose up by 10 degrees the hump is 14.9 in deep and the inlet 6.0, on the level 15.6 and 6.2."""
    both = ("{level: {nose up: 0}}", "{level: {nose up: 0}, up: {nose up: 10}}")
    (rise,) = found_in(evaluated(hump(12), both)).rises
    assert [each.blocked for each in rise.gravity] == [None, None]
    assert rise.attitude == "up"


def test_the_friction_of_one_filling_is_that_of_each_line_in_its_bore():
    """Poiseuille, 128 rho nu L Q / (pi d^4): hoses of 3/16 in by what is ordered, the tube as it is bent."""
    evaluation = evaluated()
    found = found_in(evaluation)
    (rise,) = found.rises
    shape = 0.0
    for line in evaluation.laid:
        length = line.hose.order_length.middle if line.hose else line.developed_length.middle
        shape += length / ((3 / 16 if line.hose else 1 / 4 - 2 * 0.035) * INCH) ** 4
    friction = tuple(
        128 * density * thick * shape * rise.flow.middle / pi
        for density, thick in zip((LIGHT, HEAVY), found.viscosity.span, strict=True)
    )
    assert rise.friction.span == pytest.approx(friction, rel=1e-6)


def test_a_corner_that_is_unknown_sideways_leaves_the_air_unknown_though_its_height_is_known():
    """The hump is 15.6 in deep all the same; how much of the hose lies above the spill is not known."""
    found = found_in(evaluated((LEG, "via: [[49, -18, 12], [50, unknown, -25]]")))
    (pocket,) = (each for each in found.pockets if each.near == "point 2 of leg")
    assert to_unit(pocket.depth.middle, "in") == pytest.approx(12 + 3.6)
    assert [missing.what for missing in pocket.air.missing] == ["the corners of the lines at point 2 of leg"]


def test_a_line_far_aft_is_low_on_a_steep_slope_however_high_it_is_on_the_level():
    """At 40 degrees a corner 55 in up and 35 in aft comes to 19.6 in, the cap to 22.6."""
    steep = ("{level: {nose up: 0}}", "{steep: {nose up: 40}}")
    (rise,) = found_in(evaluated(steep, (LEG, "via: [[35, -18, 55], [50, -38, -25]]"))).rises
    cap, corner, caliper = (
        up * cos(radians(40)) - aft * sin(radians(40)) for aft, up in ((-3, 27), (35, 55), (50.8, -27))
    )
    assert caliper < corner < cap
    low, high = ((cap - caliper) * INCH * GRAVITY * density for density in (LIGHT, HEAVY))
    assert rise.column.span == pytest.approx((low, high), rel=1e-6)


def test_a_caliper_a_foot_and_a_half_below_the_cap_has_that_much_above_it():
    (rise,) = found_in(evaluated(("seat: [50.8, -39, -27]", "seat: [50.8, -39, 9]"))).rises
    low, high = (18 * INCH * GRAVITY * density for density in (LIGHT, HEAVY))
    assert rise.column.span == pytest.approx((low, high), rel=1e-6)


def test_what_may_be_no_high_point_may_hold_no_air():
    """The corner is 10 in down to 12 in up; below -3.6 in the hose only goes down to the wheel."""
    found = found_in(evaluated(hump("-10 to 12")))
    (pocket,) = (each for each in found.pockets if each.near == "point 2 of leg")
    assert (pocket.depth.low, pocket.air.low) == (0, 0)
    assert pocket.depth.high == pytest.approx((12 + 3.6) * INCH)
