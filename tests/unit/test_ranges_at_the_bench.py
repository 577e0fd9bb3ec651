"""Figures with a range at the bench: each list takes the end of the range that cannot spoil a tube."""

from __future__ import annotations

from dataclasses import replace

import pytest
from evaluated import EXAMPLE
from test_through_hole import BENT, STRAIGHT, evaluated, place_of, work
from test_tube_plan import plan

from firmpedal.decide.tube_plan import tube_plans
from firmpedal.fit.chain import chain_at
from firmpedal.pipeline import evaluate_text
from firmpedal.units import to_unit
from texts import example

COIL = "tube: {{coil: {{made of: tube 5052-O 1/4 x .035, pieces: [{}]}}}}"


def bought(*bench):
    (found,) = tube_plans(plan(*bench))
    return found.plan.bought


# Two legs of 39.67 in each, cut at the upper end of their range, are 79.34 in and a little.
@pytest.mark.parametrize(("coil", "enough"), [("79.4", True), ("79.4 to 90", True), ("70 to 90", False)])
def test_a_coil_counts_for_its_least_length(coil, enough):
    assert (bought(COIL.format(coil)) == 0) is enough


@pytest.mark.parametrize(("loss", "enough"), [("0", True), ("0.1", False), ("0 to 0.1", False)])
def test_a_cutter_takes_its_most(loss, enough):
    assert (bought(COIL.format("79.4"), f"cutter loss: {loss}") == 0) is enough


@pytest.mark.parametrize(("longest", "held"), [("40", True), ("40 to 80", True), ("36 to 80", False)])
def test_the_longest_tube_on_sale_is_the_least_that_it_may_be(longest, held):
    (found,) = tube_plans(plan(f"longest tube: {longest}"))
    assert (not found.plan.without_stick) is held


def test_tube_that_stays_whole_is_there_to_practise_on():
    # 90 in less both legs leaves 10.66 in, two pieces of 4 in; another 30 in, which stays whole, gives seven
    (found,) = tube_plans(plan(COIL.format("90, 30")))
    assert (found.coupons, found.to_buy) == (2 + 7, 0)
    (alone,) = tube_plans(plan(COIL.format("90")))
    assert alone.coupons == 2
    assert to_unit(alone.to_buy, "in") == pytest.approx(72)


def test_practice_pieces_of_a_range_are_its_most():
    text = EXAMPLE.read_text(encoding="utf-8").replace(
        "bench:\n", "buying: {practice pieces: 2 to 5}\nbench:\n", 1
    )
    (found,) = tube_plans(evaluate_text(text, "brindlewick", "rigid"))
    assert found.practice == 5


def test_a_nut_that_may_or_may_not_pass_is_no_reason_to_flare_in_place():
    # 0.649 in across the corners, and a hole of 0.6 to 0.7 in: somebody has to try it first
    steps = work(evaluated(STRAIGHT, "hole: 0.6 to 0.7"))
    assert place_of(steps, "End A: nut") < place_of(steps, "Try a wire bent like it first")
    assert "Flare last, in the same way" in steps[place_of(steps, "End B: nut")]


def test_bends_that_may_or_may_not_pass_are_no_reason_to_flare_in_place():
    steps = work(evaluated(BENT, "hole: unknown"))
    assert "Flare last, in the same way" in steps[place_of(steps, "End B: nut")]


@pytest.mark.parametrize(
    ("text", "hole", "end"),
    # a nut of 0.649 in does not pass 3/8 in, and the bend that goes through needs more than 0.3 in
    [(STRAIGHT, "hole: 3/8", "A"), (BENT, "hole: 0.3", "B")],
)
def test_what_does_not_pass_is_flared_in_place(text, hole, end):
    steps = work(evaluated(text, hole))
    assert "Flare last, in place" in steps[place_of(steps, f"Push end {end}, bare") + 2]


def chains(evaluation):
    for line in evaluation.laid:
        for end in ("from", "to"):
            joint = evaluation.assembly.joint_of(line.name, end)
            if joint is not None:
                yield joint, line.name, end


@pytest.mark.parametrize(
    ("name", "option"), [("brindlewick", "rigid"), ("oatmere", None), ("fennimoss", "rigid")]
)
def test_a_chain_does_not_hang_on_which_half_of_a_joint_is_named_first(name, option):
    evaluation = evaluate_text(example(name), name, option)
    for joint, line, end in chains(evaluation):
        turned = tuple(replace(one, one=one.other, other=one.one) for one in joint.matings)
        assert chain_at(replace(joint, matings=turned), line, end) == chain_at(joint, line, end)


def test_a_chain_ends_at_the_panel_with_tube_on_both_sides():
    """Nut and sleeve beyond the union belong to the other tube."""
    tail = "        from: left_axle.lower\n        to: left_caliper.inlet\n        made of: {}\n"
    hose, tube = (tail.format(stock) for stock in ("hose -4 PTFE braided", "tube 5052-O 1/4 x .035"))
    text = example("brindlewick")
    assert hose in text
    text = text.replace(hose, tube)
    evaluation = evaluate_text(text, "text", "rigid")
    joint = evaluation.assembly.joint_of("left_leg", "to")
    assert sorted(part.designation for part in joint.parts).count("AN818-4D") == 2
    for line, end in (("left_leg", "to"), ("left_tail", "from")):
        names = [part.designation for part in chain_at(joint, line, end)]
        assert names == ["AN819-4D", "AN818-4D", "AN832-4D"]
