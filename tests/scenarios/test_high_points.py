"""High points of two small aircraft against figures worked out by hand, and what cures them.

Heights by hand: h = z cos(theta) - x sin(theta), from the points in the files, bends left out; a bend of
1/2 in radius rounds off less than a tenth of an inch.
"""

from __future__ import annotations

from math import cos, radians, sin

import pytest

from firmpedal.finding import Level
from firmpedal.pipeline import Evaluation, evaluate_text
from texts import edited, small

INCH = 0.0254
BEND = 0.1  # inches that a bend of half an inch can take off a corner


def evaluated(name: str, *edits: tuple[str, str]) -> Evaluation:
    return evaluate_text(edited(small(name), *edits), name)


def depths(evaluation: Evaluation) -> dict[str, dict[str, float]]:
    """For each high point its depth in each attitude, in inches."""
    return {
        trap.spot.near: {attitude: depth.middle / INCH for attitude, depth in trap.depths}
        for trap in evaluation.results.heights.traps
    }


def levels(evaluation: Evaluation, rule: str) -> list[Level]:
    return [finding.level for finding in evaluation.findings if finding.rule == rule]


def by_hand(aft: float, up: float, nose_up: float) -> float:
    return up * cos(radians(nose_up)) - aft * sin(radians(nose_up))


class TestClimbFromTheKeel:
    """The bulkhead at the gear stands at z 7.0, the keel at z -3.0; it parks nose down."""

    def test_depth_in_every_attitude_as_worked_out(self):
        """10 in level; 7.5 nose up 4, over the keel's aft end; 29.2 parked, over its forward end."""
        found = depths(evaluated("sedgeholm"))["gear"]
        assert found["taxi"] == pytest.approx(10, abs=BEND)
        assert found["jig"] == pytest.approx(7.5, abs=BEND)
        assert by_hand(94.5, 7.0, 4) - by_hand(88.0, -1.0, 4) == pytest.approx(7.5, abs=0.05)
        parked = by_hand(94.5, 7.0, -14) - by_hand(14.0, -3.0, -14)
        assert found["parked"] == pytest.approx(parked, abs=BEND)

    def test_parked_the_line_stands_22_in_above_the_cap(self):
        """The bulkhead's end at 29.7, the fill cap at 7.3."""
        evaluation = evaluated("sedgeholm")
        (column,) = [
            each
            for each in evaluation.results.heights.columns
            if (each.line, each.attitude) == ("keel", "parked")
        ]
        upper, lower = (value.middle / INCH for _, value in column.above.step.inputs)
        assert upper == pytest.approx(29.7, abs=0.05)
        assert lower == pytest.approx(7.3, abs=0.05)
        assert column.above.middle / INCH == pytest.approx(22, abs=0.5)

    def test_both_are_said_with_what_to_do(self):
        evaluation = evaluated("sedgeholm")
        said = {
            finding.rule: finding
            for finding in evaluation.findings
            if finding.level is Level.CAUTION and finding.rule in ("air-trap", "line-above-reservoir")
        }
        assert said.keys() == {"air-trap", "line-above-reservoir"}
        for attitude in ("parked", "taxi", "jig"):
            assert f"({attitude})" in said["air-trap"].message
        assert "(parked)" in said["line-above-reservoir"].message
        assert said["line-above-reservoir"].place == "lines.keel"  # the highest of two that stand above
        assert "leg 22.31 in" in said["line-above-reservoir"].message
        assert all("15 to 20 psi" in " ".join(finding.tries) for finding in said.values())

    def test_lowering_the_bulkhead_cures_it_level_and_nose_up(self):
        cured = evaluated(
            "sedgeholm",
            ("[94.5, -14.0, 7.0]", "[94.5, -14.0, -7.5]"),
            ("[95.0, -14.4, 6.8]", "[95.0, -14.4, -7.6]"),
            ("[14.0, -2.2, -3.0], [88.0, -2.2, -1.0], [92.0, -6.0, 3.0]", "[14, -2.2, -0.5], [88, -2.2, -7]"),
            ("[98.5, -18.0, 5.0]", "[98.5, -18.0, -9.0]"),
        )
        assert "taxi" not in depths(cured).get("gear", {})
        assert "jig" not in depths(cured).get("gear", {})

    def test_a_reservoir_above_the_parked_line_keeps_it_filled(self):
        assert levels(evaluated("sedgeholm"), "line-above-reservoir") == [Level.CAUTION]
        high = evaluated("sedgeholm", ("fill cap: [6, -4, 6]", "fill cap: [6, -4, 30]"))
        assert not levels(high, "line-above-reservoir")

    def test_a_cylinder_that_shuts_at_rest_lets_nothing_back(self):
        shut = evaluated("sedgeholm", ("    stroke: 0.7\n", "    stroke: 0.7\n    opens at rest: no\n"))
        assert not levels(shut, "line-above-reservoir")


class TestCylindersInSeries:
    """The first seat's inlet at z 8.4 is fed from the second seat's outlet at z 2.2."""

    def test_the_inlet_fed_from_below_keeps_air(self):
        evaluation = evaluated("withyford")
        assert depths(evaluation) == {"first.inlet": {"level": pytest.approx(8.4 - 2.2)}}
        (finding,) = [each for each in evaluation.findings if each.rule == "air-trap"]
        assert finding.level is Level.CAUTION
        assert "first.inlet" in finding.message
        assert any("pedals of every seat" in words for words in finding.tries)

    def test_fed_from_above_it_keeps_none(self):
        """The second seat's cylinder a foot higher: then everything rises."""
        higher = evaluated(
            "withyford",
            ("seat: [8.6, 7, 8.4]", "seat: [8.6, 7, 20.4]"),
            ("seat: [8.0, 7, 2.2]", "seat: [8.0, 7, 14.2]"),
            ("shift: {left: 21}", "shift: {left: 21, down: 12}"),
        )
        assert depths(higher) == {}

    def test_a_cross_hose_over_the_tunnel_is_the_high_point_instead(self):
        before = "cross: {from: second.outlet, to: first.inlet, made of: hose -4 PTFE braided"
        hump = evaluated("withyford", (f"{before}}}", f"{before}, via: [[8, 0, 11]]}}"))
        assert depths(hump) == {"point 2 of cross": {"level": pytest.approx(11 - 2.2)}}
