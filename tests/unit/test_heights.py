"""Ways up from the caliper, high points on them and columns over the cap, in texts with one thing changed."""

from __future__ import annotations

from math import radians, sin

import pytest

from firmpedal.finding import Level
from firmpedal.pipeline import Evaluation, evaluate_text
from texts import edited, small

INCH = 0.0254
FEED = "  feed: {from: pot.out, to: second.inlet, made of: hose -4 PTFE braided}\n"
DOWN = "  down: {from: first.outlet, to: valve.in, made of: hose -4 PTFE braided}\n"
LEG = "  leg: {from: belly.below, to: caliper.inlet, made of: hose -4 PTFE braided, via: [[49, -18, -5], "


def evaluated(*edits: tuple[str, str], name: str = "withyford") -> Evaluation:
    return evaluate_text(edited(small(name), *edits), name)


def depths(evaluation: Evaluation) -> dict[str, tuple[float, float]]:
    """The deepest each high point can be, in inches, at least and at most."""
    traps = evaluation.results.heights.traps
    return {trap.spot.near: tuple(bound / INCH for bound in trap.deepest.span) for trap in traps}


def of_rule(evaluation: Evaluation, rule: str):
    found = [finding for finding in evaluation.findings if finding.rule == rule]
    unclear = [item for item in evaluation.not_shown if item.rule == rule]
    return found, unclear


class TestWays:
    def test_the_way_goes_through_both_cylinders_and_the_valve(self):
        (way,) = evaluated().results.heights.ways
        assert (way.caliper, way.top, way.has_reservoir) == ("caliper", "pot", True)
        order = [spot.near for spot in way.spots if not spot.near.startswith("point")]
        assert order == ["caliper.inlet", "belly", "belly", "valve.out", "valve.in", "first.outlet",
                         "first.inlet", "second.outlet", "second.inlet", "pot.out"]  # fmt: skip

    def test_a_line_written_the_other_way_round_changes_nothing(self):
        turned = evaluated((DOWN, DOWN.replace("first.outlet, to: valve.in", "valve.in, to: first.outlet")))
        assert depths(turned) == depths(evaluated())

    def test_lines_joined_to_each_other_are_one_way(self):
        two = (
            "  down: {from: first.outlet, to: more.from, made of: hose -4 PTFE braided}\n"
            "  more: {from: down.to, to: valve.in, made of: hose -4 PTFE braided}\n"
        )
        evaluation = evaluated((DOWN, two))
        (way,) = evaluation.results.heights.ways
        assert way.top == "pot"
        assert [item.what for item in way.missing] == ["where down and more meet"]

    def test_a_way_that_is_cut_is_no_way(self):
        assert evaluated((DOWN, "")).results.heights.ways == ()

    def test_a_cylinder_without_a_reservoir_is_the_top_where_there_is_none(self):
        (way,) = evaluated((FEED, "")).results.heights.ways
        assert (way.top, way.has_reservoir, way.cap) == ("first", False, None)


class TestTraps:
    def test_what_two_wheels_share_is_said_once(self):
        """A tee under the first seat's cylinder feeds two calipers; the inlet over it keeps air for both."""
        other = "  other: {from: belly.third, to: caliper_2.inlet, made of: hose -4 PTFE braided}\n"
        evaluation = evaluated(
            (
                "below: {seat: [46.6, -15.6, -3.6]}",
                "below: {seat: [46.6, -15.6, -3.6]}, third: {seat: [46, -14, -3]}",
            ),
            ("pedals:\n", "  caliper_2: {like: caliper, shift: {right: 78}}\npedals:\n"),
            (LEG, other + LEG),
        )
        (trap,) = evaluation.results.heights.traps
        assert trap.calipers == ("caliper", "caliper_2")
        assert len(of_rule(evaluation, "air-trap")[0]) == 1

    def test_a_point_that_has_a_range_gives_a_depth_with_a_range(self):
        ranged = evaluated(("seat: [8.6, 7, 8.4]", "seat: [8.6, 7, 8.0 to 8.8]"))
        assert depths(ranged)["first.inlet"] == pytest.approx((5.8, 6.6))

    def test_an_attitude_that_has_a_range_moves_both_points_together(self):
        """The inlet is 0.6 behind the outlet: nose up by 10 takes 0.6 sin 10 off, not the whole sink."""
        ranged = evaluated(("level: {nose up: 0}", "parked: {nose up: 0 to 10}"))
        low, high = depths(ranged)["first.inlet"]
        assert high == pytest.approx(6.2)
        assert low == pytest.approx(6.2 * (1 - sin(radians(10)) ** 2) ** 0.5 - 0.6 * sin(radians(10)))

    def test_where_another_attitude_has_none_it_is_a_note_and_says_so(self):
        """The tube's level stretch of 32 in: nose down by 20 its aft end is a high point, level it is not."""
        cured = (
            ("seat: [8.6, 7, 8.4]", "seat: [8.6, 7, 20.4]"),
            ("seat: [8.0, 7, 2.2]", "seat: [8.0, 7, 14.2]"),
            ("shift: {left: 21}", "shift: {left: 21, down: 12}"),
        )
        both = evaluated(*cured, ("level: {nose up: 0}", "level: {nose up: 0}, parked: {nose up: -20}"))
        found, _ = of_rule(both, "air-trap")
        assert {finding.level for finding in found} == {Level.NOTE}
        assert all(
            finding.tries[0].startswith("fill and bleed it in the attitude level") for finding in found
        )
        only = evaluated(*cured, ("level: {nose up: 0}", "parked: {nose up: -20}"))
        assert Level.CAUTION in {finding.level for finding in of_rule(only, "air-trap")[0]}

    def test_an_unknown_point_is_asked_for_where_no_trap_is_known(self):
        found, unclear = of_rule(evaluated(("[50, -38, -25]", "unknown")), "air-trap")
        assert found
        assert not unclear
        bare = evaluated(("[50, -38, -25]", "unknown"), ("  cross: ", "  loose: "), (FEED, ""))
        found, unclear = of_rule(bare, "air-trap")
        assert not found
        assert [missing.what for item in unclear for missing in item.missing] == [
            "leg via 2 (aft, right, up)"
        ]

    def test_an_unknown_attitude_is_asked_for(self):
        found, unclear = of_rule(evaluated(("level: {nose up: 0}", "parked: {nose up: unknown}")), "air-trap")
        assert not found
        assert [missing.what for item in unclear for missing in item.missing] == ["parked nose up"]

    def test_without_attitudes_it_is_looked_at_as_measured(self):
        evaluation = evaluated(("attitudes: {level: {nose up: 0}}\n", ""))
        assert depths(evaluation) == depths(evaluated())


class TestColumns:
    def test_the_cap_is_asked_for_only_where_a_line_comes_near_it(self):
        away = evaluated(("    fill cap: [-3, 0, 27]\n", ""))
        assert of_rule(away, "line-above-reservoir") == ([], [])
        near = evaluated(
            ("    fill cap: [-3, 0, 27]\n", ""),
            (FEED, FEED.replace("braided}", "braided, via: [[0, 0, 26]]}")),
        )
        found, (unclear,) = of_rule(near, "line-above-reservoir")
        assert not found
        assert any("fill cap" in missing.what for missing in unclear.missing)

    def test_half_an_inch_over_the_reservoirs_port_is_near_to_no_cap(self):
        feed = FEED.replace("braided}", "braided, via: [[0, 0, 24.5]]}")
        low = evaluated(("    fill cap: [-3, 0, 27]\n", ""), (FEED, feed))
        assert of_rule(low, "line-above-reservoir") == ([], [])

    def test_a_cap_that_has_a_range_may_stand_above_the_line(self):
        feed = FEED.replace("braided}", "braided, via: [[0, 0, 27.5]]}")
        for up, sure in (("26 to 28", False), ("26 to 27", True)):
            over = evaluated(("fill cap: [-3, 0, 27]", f"fill cap: [-3, 0, {up}]"), (FEED, feed))
            found, unclear = of_rule(over, "line-above-reservoir")
            assert (len(found), len(unclear)) == ((1, 0) if sure else (0, 1))

    def test_a_column_over_the_cap_is_weighed(self):
        """2 in of fluid of 859 to 875 kg/m^3: 0.0621 to 0.0632 psi."""
        over = evaluated((FEED, FEED.replace("braided}", "braided, via: [[0, 0, 29]]}")))
        (finding,), _ = of_rule(over, "line-above-reservoir")
        assert finding.measured.middle / INCH == pytest.approx(2)
        assert "presses 0.062 to 0.063 psi" in finding.message

    def test_an_unknown_point_may_stand_above_the_cap(self):
        found, (unclear,) = of_rule(evaluated(("[50, -38, -25]", "unknown")), "line-above-reservoir")
        assert not found
        assert [missing.what for missing in unclear.missing] == ["leg via 2 (aft, right, up)"]

    def test_a_line_that_may_stand_above_the_cap_is_asked_for(self):
        ranged = evaluated((FEED, FEED.replace("braided}", "braided, via: [[0, 0, 26 to 28]]}")))
        found, unclear = of_rule(ranged, "line-above-reservoir")
        assert not found
        assert unclear
