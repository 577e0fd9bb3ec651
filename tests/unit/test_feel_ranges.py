"""A pedal's curves where figures are ranges or lines run hot: what each end of a band comes from."""

from __future__ import annotations

import math

import pytest
from test_feel import ARMS, GAP, HEAT, HOSE, HOT, NYLON, STROKE, evaluated, felt, key

from firmpedal.analysis.feel.cases import Case, Warmth
from firmpedal.analysis.feel.pedals import feel
from firmpedal.finding import Finding, Level
from firmpedal.quantity import Mark, Value
from firmpedal.units import Dimension, from_unit, to_unit

AREA = math.pi / 4 * from_unit(0.625, "in") ** 2
RULE = "pad-meets-stop"


def test_after_an_hour_the_plastic_has_given_as_much_more_as_its_stiffness_fell():
    """Of its stiffness six to seven tenths are left, from memory: a wall takes 1 / 0.7 to 1 / 0.6 as much.

    The least gap goes with the stiffest wall, and the widest with the softest.
    """
    evaluation = evaluated(NYLON, HEAT, (GAP, "pad gap: 0.018 to 0.022\n"))
    (swell,) = next(each for each in evaluation.results.budgets if each.foot == "hard").swells
    found, wall = felt(evaluation), swell.hot_wall
    hot, held = found.stroke(HOT, 1), found.stroke(Case(Warmth.HELD), 1)
    assert held.low - hot.low == pytest.approx(wall.low * (1 / 0.7 - 1) / AREA, rel=1e-6)
    assert held.high - hot.high == pytest.approx(wall.high * (1 / 0.6 - 1) / AREA, rel=1e-6)


def test_a_stroke_that_is_a_range_ends_soonest_in_the_softest_case():
    """Worked forwards: the least force is the soft row's at 0.2 in, the greatest the firm row's at 0.25."""
    found = felt(evaluated(HOSE, (STROKE, "stroke: 0.2 to 0.25\n")))
    forces = found.force_of(found.bottoms, Case())
    assert forces[0] < forces[1]
    for force, row, stroke in zip(forces, (1, 0), (0.2, 0.25), strict=True):
        there = feel(found.pressing, (Value("force", Dimension.FORCE, (force, force), Mark.DERIVED),))
        assert to_unit(there.pressed.stroke[row, 0], "in") == pytest.approx(stroke, rel=1e-6)


def stop(inches):
    return (ARMS, f"brake: {{brake: {{pad: 5, arm: 2-1/2, travel to stop: {inches}}}}}")


def met(*edits):
    """What the rule says with free stroke, caliper and pads given."""
    given = (
        key(STROKE, "free stroke: 0.01"),
        ("pad gap: 0.020\n", "pad gap: 0.020\n    gives: {travel: 0, under: 500}\n"),
    )
    found = evaluated(*given, *edits)
    return found, [each for each in found.findings if each.rule == RULE]


@pytest.fixture(scope="module")
def pads():
    """How far the hard foot presses the pad, cold and hot [in]."""
    evaluation, _ = met(NYLON, HEAT)
    budget = next(each for each in evaluation.results.budgets if each.foot == "hard")
    return tuple((to_unit(each.low, "in"), to_unit(each.high, "in")) for each in budget.pads)


class TestStop:
    def test_a_line_that_is_stiff_enough_only_while_it_is_cold_is_warned_of(self, pads):
        (_, cold), (hot, _) = pads
        assert cold < hot
        _, (found,) = met(NYLON, HEAT, stop((cold + hot) / 2))
        assert found.level is Level.WARNING
        assert isinstance(found, Finding)

    def test_a_stop_beyond_the_hot_travel_is_passed(self, pads):
        evaluation, found = met(NYLON, HEAT, stop(1.02 * pads[1][1]))
        assert not found
        assert RULE not in {each.rule for each in evaluation.not_shown}

    def test_what_is_too_far_cold_is_too_far_whatever_the_heat(self, pads):
        """How hot it runs is not known, so the hot travel is not; the cold one is past the stop."""
        unknown = (HEAT[0], HEAT[1].replace("80 degC", "unknown"))
        _, (found,) = met(NYLON, unknown, stop(0.9 * pads[0][0]))
        assert found.level is Level.WARNING

    def test_what_is_enough_cold_is_not_shown_where_the_heat_is_unknown(self, pads):
        unknown = (HEAT[0], HEAT[1].replace("80 degC", "unknown"))
        evaluation, found = met(NYLON, unknown, stop(1.02 * pads[0][1]))
        assert not found
        assert RULE in {each.rule for each in evaluation.not_shown}
