"""The parts of a joint as they are printed: washers, O-rings, inserts and banjos in the order they go on.

What goes on in which order, and that a washer, O-ring, sleeve or insert is never used twice, is common
practice, no source.
"""

from __future__ import annotations

import pytest
from test_fit_sealed import ALUMINIUM, PLASTIC, TEXT

from firmpedal.fit.chain import chain_at
from firmpedal.pipeline import evaluate_text
from firmpedal.report.chain import chain_words
from firmpedal.report.ends import end_groups
from firmpedal.report.sheet import Facts
from texts import example

STRAIGHT, ELBOW = "to fitting: straight", "to fitting: 90 degrees"
TUBE_END = ["AN819-4D", "AN818-4D"]
BANJO = ["BANJO-BOLT-M10x1D", "WASHER-C-M10", "BANJO-M10x4D", "WASHER-C-M10"]


def at_caliper(inlet, asked, stock=ALUMINIUM):
    """An aircraft with this port at the caliper, and its joint there."""
    text = TEXT.format(
        outlet="1/8 NPT female", inlet=inlet, second="1/8 NPT female", stock=stock, asked=asked
    )
    evaluation = evaluate_text(text, "text")
    return evaluation, evaluation.assembly.joint_of("run", "to")


def facts_at_end(evaluation, line=0):
    group = end_groups(evaluation, evaluation.laid[line])[1]
    (found,) = [block for block in group.blocks if isinstance(block, Facts)]
    return dict(found.rows)


@pytest.mark.parametrize(
    ("inlet", "asked", "after_the_nut", "words"),
    [
        ("M10 x 1 female", STRAIGHT, ["MET-S-M10x1x4D", "WASHER-C-M10"], "MET-S-M10x1x4D with WASHER-C-M10"),
        ("M10 x 1 female", ELBOW, BANJO, f"BANJO-M10x4D (bolt first: {', '.join(BANJO)})"),
        (
            "-4 boss female",
            ELBOW,
            ["AN833-4D in a boss", "AN924-4D", "MS28778-4"],
            "AN833-4D in a boss with AN924-4D and MS28778-4",
        ),
        ("1/8 NPT female", ELBOW, ["AN822-4D"], "AN822-4D"),
    ],
)
def test_the_chain_from_the_line_to_the_port(inlet, asked, after_the_nut, words):
    _, joint = at_caliper(inlet, asked)
    assert [part.designation for part in chain_at(joint, "run", "to")] == [*TUBE_END, *after_the_nut]
    assert chain_words(joint, "run", "to") == f"AN819-4D on AN818-4D on {words}"


def test_a_panel_ends_the_chain_and_its_nut_is_told_apart():
    evaluation = evaluate_text(example("brindlewick"), "text", "rigid")
    joint = evaluation.assembly.joint_of("left_leg", "from")
    names = [part.designation for part in chain_at(joint, "left_leg", "from")]
    assert names[-1] == "AN833-4D"  # the elbow whose thread is in the floor
    assert "AN924-4D" not in names
    number = next(n for n, line in enumerate(evaluation.laid) if line.name == "left_leg")
    group = end_groups(evaluation, evaluation.laid[number])[0]
    (facts,) = [block for block in group.blocks if isinstance(block, Facts)]
    assert "held by jam nut AN924-4D" in dict(facts.rows)["parts"]


class TestOrder:
    def test_a_banjo(self):
        evaluation, _ = at_caliper("M10 x 1 female", ELBOW)
        order = facts_at_end(evaluation)["order"]
        assert "bolt, sealing washer, banjo body, sealing washer, port" in order
        assert "never a used one again" in order

    def test_a_straight_fitting_with_a_washer(self):
        evaluation, _ = at_caliper("M10 x 1 female", STRAIGHT)
        order = facts_at_end(evaluation)["order"]
        assert "WASHER-C-M10 between MET-S-M10x1x4D and the port" in order
        assert "never a used one again" in order

    @pytest.mark.parametrize("asked", [STRAIGHT, ELBOW])
    def test_an_o_ring(self, asked):
        evaluation, _ = at_caliper("-4 boss female", asked)
        facts = facts_at_end(evaluation)
        assert "O-ring MS28778-4" in facts["order"]
        assert "never a used one again" in facts["order"]
        assert ("AN924-4D" in facts["order"]) == (asked is ELBOW)
        assert "held by" not in facts["parts"]  # in a boss the nut is one of the chain

    def test_soft_tube(self):
        evaluation, _ = at_caliper("1/8 NPT female", ELBOW, PLASTIC)
        order = facts_at_end(evaluation)["order"]
        places = [order.index(name) for name in ("COMP-NUT-1/4", "COMP-SLEEVE-1/4", "COMP-INSERT-1/4")]
        assert places == sorted(places)
        assert "never used ones again" in order

    def test_a_flared_tube_in_a_pipe_port_needs_none(self):
        evaluation, _ = at_caliper("1/8 NPT female", ELBOW)
        assert "order" not in facts_at_end(evaluation)
