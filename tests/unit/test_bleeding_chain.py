"""Filling calipers in series: the far end first, those on the way with it, the pedal at the very last."""

from __future__ import annotations

import pytest
from chained_calipers import TEXT

from firmpedal.analysis.bleeding.bleeders import way_out
from firmpedal.model.aircraft import find
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Answer
from firmpedal.report.bleeding import bleeding_of, bleeding_sheet
from firmpedal.report.bleeding_steps import steps_for
from texts import edited

PLUG = "outlet: {thread: 1/8 NPT female, faces: down, at: [520, -850, -600], closed: yes}"
BLEEDER = "outlet: {thread: 1/8 NPT female, faces: down, at: [520, -850, -600], open: the bleed screw}"
BRIDGE = "  bridge: {from: front.outlet, to: rear.inlet, made of: hose -4 PTFE braided}\n"
FRONT = "      outlet: {thread: 1/8 NPT female, faces: aft, seat: [400"
OUTLET = f"{FRONT}, -850, -540], seat measured with: AN816-4D}}\n"
ALONE = ((OUTLET, ""), (f"      {PLUG}\n", ""), (BRIDGE, ""))


def steps(*edits):
    evaluation = evaluate_text(edited(TEXT, *edits))
    found = bleeding_of(evaluation)
    return {rise.caliper: steps_for(evaluation, found, rise) for rise in found.rises}


def outs(name, *edits):
    aircraft = evaluate_text(edited(TEXT, *edits)).aircraft
    return way_out(aircraft, find(aircraft.calipers, name))


def test_the_far_end_comes_first_and_the_pedal_last():
    found = steps()
    assert list(found) == ["rear", "front"]
    assert not any(step.startswith("Press pedal") for step in found["rear"])
    assert found["front"][-1] == "Press pedal left_heel: firm, and let go it frees the wheel."
    assert any("Push the pistons of rear and front fully home" in step for step in found["rear"])


def test_the_sheet_says_where_to_push_fluid_up():
    evaluation = evaluate_text(TEXT)
    lead = bleeding_sheet(evaluation).blocks[0].text
    assert lead.startswith("Push fluid up from rear: 1.0 to 1.4 bar")  # 15 and 20 psi are 1.034 and 1.379 bar


def test_nobody_is_sent_to_a_bleeder_that_the_file_does_not_have():
    rear = " ".join(steps()["rear"])
    assert "rear.outlet, in place of its plug" in rear
    assert "the bleeder that the maker names" not in rear
    assert "front.inlet faces up, and its air leaves that way" in rear
    assert "the bleeder that the maker names" in " ".join(steps((PLUG, BLEEDER))["rear"])


def test_a_caliper_on_the_way_is_bled_at_its_own_bleeder_while_the_pump_presses():
    own = (FRONT, "      screw: {thread: 1/8 NPT female, faces: up, open: the bleed screw}\n" + FRONT)
    rear = steps(own)["rear"]
    bled = next(n for n, step in enumerate(rear) if "open front.screw into a jar" in step)
    assert rear[bled + 1].startswith("Shut the bleeder while the pump still presses")


@pytest.mark.parametrize(
    ("name", "edits", "answer"),
    [
        ("front", (), Answer.YES),  # its inlet faces up
        ("rear", (), Answer.NO),  # forward, and a plug below
        ("rear", ((PLUG, BLEEDER),), Answer.YES),
        ("rear", ((PLUG, PLUG.replace("faces: down", "faces: unknown")),), Answer.UNKNOWN),
        ("front", ALONE, None),  # one port is named: its bleeder is left out
    ],
)
def test_where_air_leaves_a_caliper(name, edits, answer):
    assert outs(name, *edits).lets_out is answer


def test_wheels_of_one_circuit_are_pressed_once():
    """Two wheels behind one pedal: the first is filled while the other is empty."""
    tee = (
        "bulkheads: {tee: {through panel: no, sides: {up: {seat: [350, -850, -420]},\n  "
        "one: {seat: [350, -830, -440]}, two: {seat: [350, -870, -440]}}}}\nlines:\n"
    )
    split = (
        ("lines:\n", tee),
        ("{from: cylinder.outlet, to: front.inlet,", "{from: cylinder.outlet, to: tee.up,"),
        (
            BRIDGE,
            "".join(
                f"  {name}: {{from: tee.{name}, to: {caliper}.inlet, made of: hose -4 PTFE braided}}\n"
                for name, caliper in (("one", "front"), ("two", "rear"))
            ),
        ),
    )
    found = steps(*split)
    assert list(found) == ["front", "rear"]
    pressed = [name for name, said in found.items() if any(each.startswith("Press pedal") for each in said)]
    assert pressed == ["rear"]
