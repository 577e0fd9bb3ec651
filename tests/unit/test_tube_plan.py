"""The cutting plan of an aircraft: what is in hand, what is bought, what is not known."""

from __future__ import annotations

import json

import pytest
from evaluated import EXAMPLE, of_kind, words

from commands import prints
from firmpedal.decide.tube_plan import tube_plans
from firmpedal.pipeline import evaluate_text
from firmpedal.report.cutplan import cutplan_sheet
from firmpedal.report.sheet import Table
from firmpedal.units import to_unit

TEXT = EXAMPLE.read_text(encoding="utf-8")
BENCH = "bench:\n  bend radius: 3/4\n"


def plan(*bench: str):
    text = TEXT.replace(BENCH, BENCH + "".join(f"  {line}\n" for line in bench), 1)
    return evaluate_text(text, "brindlewick", "rigid")


def test_two_legs_of_forty_inches_take_two_sticks_of_six_feet():
    (found,) = tube_plans(plan())
    assert found.phrase == "tube 5052-O 1/4 x .035"
    assert found.usual_sticks
    assert [[piece.name for piece in cut.pieces] for cut in found.plan.cuts] == [["left_leg"], ["right_leg"]]
    assert to_unit(found.plan.bought, "in") == pytest.approx(144)
    assert [to_unit(cut.left_over, "in") for cut in found.plan.cuts] == pytest.approx([32.33] * 2, abs=0.01)


def test_one_coil_in_hand_is_enough_for_both():
    coil = plan("tube: {coil: {made of: tube 5052-O 1/4 x .035, pieces: [90]}}")
    (found,) = tube_plans(coil)
    assert found.plan.bought == 0
    assert [[piece.name for piece in cut.pieces] for cut in found.plan.cuts] == [["left_leg", "right_leg"]]
    # 10.66 in are left, two practice pieces of 4 in where three are wanted
    said = "What you have is enough for the lines. Buy 72.00 in of it to practise on."
    assert said in words(cutplan_sheet(coil))
    longer = plan("tube: {coil: {made of: tube 5052-O 1/4 x .035, pieces: [92]}}")
    assert "What you have is enough." in words(cutplan_sheet(longer))


def test_the_cutter_can_take_what_the_second_tube_lacks():
    coil = "tube: {coil: {made of: tube 5052-O 1/4 x .035, pieces: [79.4]}}"
    assert tube_plans(plan(coil))[0].plan.bought == 0
    assert tube_plans(plan(coil, "cutter loss: 0.1"))[0].plan.bought > 0


def test_tube_of_another_kind_is_of_no_use():
    (found,) = tube_plans(plan("tube: {coil: {made of: tube 3003-O 1/4 x .035, pieces: [300]}}"))
    assert found.plan.bought > 0


def test_a_tube_that_no_stick_holds_is_told():
    sheet = cutplan_sheet(plan("longest tube: 36"))
    assert "left_leg is 39.67 in long, and no stick holds it" in words(sheet)


def test_a_tube_of_unknown_length_is_named():
    corners = "- [9.0, -11.6, -5.2]\n          - [5.6, -32.2, -28.6]"
    unknown = evaluate_text(TEXT.replace(corners, "- unknown"), "brindlewick", "rigid")
    (found,) = tube_plans(unknown)
    assert found.unknown == ("left_leg", "right_leg")
    assert "its length is not known yet: left_leg, right_leg" in words(cutplan_sheet(unknown))


def test_an_aircraft_without_tube_has_no_plan():
    assert cutplan_sheet(evaluate_text(TEXT, "brindlewick")) is None


def test_left_overs_are_practice_pieces():
    (table,) = of_kind(cutplan_sheet(plan()), Table)
    assert [row[4] for row in table.rows] == ["8 practice pieces"] * 2


def test_the_command_prints_and_gives_json():
    said = prints("cutplan", EXAMPLE, "--option", "rigid")
    assert "Buy 144.00 in of it." in said
    data = json.loads(prints("cutplan", EXAMPLE, "--option", "rigid", "--json"))
    assert data["tubes"][0]["to_buy"] == pytest.approx(144 * 0.0254)
    assert [cut["pieces"][0]["line"] for cut in data["tubes"][0]["cuts"]] == ["left_leg", "right_leg"]
    plain = prints("cutplan", EXAMPLE)
    assert "There is no metal tube" in plain
