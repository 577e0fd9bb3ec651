"""What flows through the lines of whole aircraft: all of the cylinder's stroke, cold and hot, rings too."""

from __future__ import annotations

import math

import pytest

from firmpedal.analysis.network.flows import flows
from firmpedal.pipeline import evaluate_text
from texts import edited, small

TUBE = "made of: tube 5052-O 1/4 x .035\n"
NYLON = (TUBE, "made of: plastic nylon 1/4 x .040\n")
HEAT = ("lines:\n", "zones:\n  hot: {where: {up above: -99}, heat: brake, temperature: 80 degC}\nlines:\n")
GIVES = ("pad gap: 0.020\n", "pad gap: 0.020\n    gives: {travel: 0.004, under: 500}\n")
AREA = math.pi / 4 * (0.625 * 0.0254) ** 2

# One pedal for two wheels, the second named like a word of our own; from it back to the first a ring.
PORT = "{{thread: 1/8 NPT female, faces: forward, seat: [{}]}}"
CALIPER = "      inlet: {thread: 1/8 NPT female, faces: forward, seat: [16, 0, -6]}\n"
SECOND = f"""\
      other: {PORT.format("16, 1, -6")}
      third: {PORT.format("16, 2, -6")}
  its:
    like: caliper
    shift: {{right: 10}}
"""
PLUMBED = """\
bulkheads:
  between: {through panel: no, sides: {here: {seat: [20, 5, -6]}, there: {seat: [20, 6, -6]}}}
lines:
  across: {from: caliper.other, to: its.inlet, made of: hose -4 PTFE braided}
  out: {from: caliper.third, to: between.here, made of: hose -4 PTFE braided}
  back: {from: between.there, to: its.other, made of: hose -4 PTFE braided}
"""
TWO = ((CALIPER, CALIPER + SECOND), ("lines:\n", PLUMBED))


def flowing(*edits, hot=False):
    evaluation = evaluate_text(edited(small("quillfen"), *edits), "text")
    (pressing,) = evaluation.results.presses
    budget = next(each for each in evaluation.results.budgets if each.foot == "hard")
    names = tuple(each.name for each in pressing.calipers)
    return budget, {
        each.line: each for each in flows(evaluation.results.plumbing.graph, budget, names, hot=hot)
    }


@pytest.mark.parametrize("edits", [(), (GIVES,), (NYLON, HEAT), (NYLON, HEAT, GIVES)])
def test_all_that_the_stroke_pushes_out_goes_through_the_first_line(edits):
    """Without free stroke, spring and friction: the stroke of the budget times 5/8 in of bore."""
    for hot in (False, True):
        budget, found = flowing(*edits, hot=hot)
        stroke = budget.hot if hot else budget.cold
        expected = tuple(AREA * bound for bound in stroke.span)
        assert found["run"].through.span == pytest.approx(expected, rel=1e-9)


def test_what_the_line_keeps_is_its_own_and_the_rest_goes_to_the_wheel():
    """Gap and give of one piston of 1.5 in: 0.020 in, and 0.004 in at 500 psi of 150 lb times 2 on 5/8 in."""
    _, found = flowing(GIVES)
    run = found["run"]
    piston = math.pi / 4 * (1.5 * 0.0254) ** 2
    psi = 150 * 2 / (math.pi / 4 * 0.625**2)
    wheel = piston * (0.020 + 0.004 * psi / 500) * 0.0254
    assert run.through.middle - run.taken.middle == pytest.approx(wheel, rel=1e-6)
    assert (run.enters, run.leaves) == ("cylinder.outlet", "caliper.inlet")


@pytest.mark.parametrize("edits", [TWO, (*TWO, GIVES)])
def test_where_lines_make_a_ring_nothing_is_lost_and_nothing_counted_twice(edits):
    """All of the stroke goes through the first line; what closes the ring is filled from its nearer end."""
    budget, found = flowing(*edits)
    assert found["run"].through.span == pytest.approx(
        tuple(AREA * each for each in budget.cold.span), rel=1e-9
    )
    assert len(budget.gaps) == 2
    assert set(found) < {each.line for each in budget.swells}
    kept = found["run"].through.middle - found["run"].taken.middle
    own = budget.gaps[0].middle + (budget.gives[0].middle if budget.gives else 0)
    beyond = sum(found[line].through.middle for line in ("across", "out"))
    assert kept == pytest.approx(own + beyond, rel=1e-9)
