"""The cutting plan of an aircraft: what is in hand, what is bought, what is not known."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest
from evaluated import EXAMPLE, of_kind, words

from commands import prints
from firmpedal.decide.cutting import Piece, Stick, cutting_plan
from firmpedal.decide.tube_plan import TubePlan, tube_plans
from firmpedal.pipeline import evaluate_text
from firmpedal.report.cutplan import cutplan_sheet
from firmpedal.report.sheet import Table
from firmpedal.units import from_unit, to_unit
from texts import edited, example

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
    (table,) = of_kind(cutplan_sheet(coil), Table)
    assert table.rows[0][4] == "2 practice pieces"


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


def unlike(**words):
    """An aircraft whose right run is told apart from the left one."""
    old = "  right_run: {from: valve.right_out}"
    more = ", ".join(f"{key.replace('_', ' ')}: {word}" for key, word in words.items())
    return evaluate_text(edited(example("oatmere"), (old, f"{old[:-1]}, {more}}}")), "oatmere.yaml")


def test_each_kind_of_tube_has_a_plan_of_its_own():
    plans = tube_plans(unlike(made_of="tube 3003-O 1/4 x .035"))
    named = [[piece.name for cut in each.plan.cuts for piece in cut.pieces] for each in plans]
    assert named == [["left_run"], ["right_run"]]
    assert [each.phrase for each in plans] == ["tube 5052-O 1/4 x .035", "tube 3003-O 1/4 x .035"]


def test_what_to_buy_is_told_by_kind_where_there_are_two_of_them():
    said = words(cutplan_sheet(unlike(made_of="tube 3003-O 1/4 x .035")))
    for phrase in ("tube 5052-O 1/4 x .035", "tube 3003-O 1/4 x .035"):
        assert f"{phrase}: Buy 72.00 in of it." in said
    assert "\nBuy 144.00 in of it." in words(cutplan_sheet(plan()))


def test_of_two_tubes_only_the_unknown_one_is_left_out():
    (found,) = tube_plans(unlike(via="[[9.0, 0.6, 1.5], unknown, [44.5, 14.0, -1.2]]"))
    assert found.unknown == ("right_run",)
    assert [[piece.name for piece in cut.pieces] for cut in found.plan.cuts] == [["left_run"]]


def test_without_a_tube_to_cut_no_stick_is_bought_to_practise_on():
    corners = "- [9.0, -11.6, -5.2]\n          - [5.6, -32.2, -28.6]"
    (found,) = tube_plans(evaluate_text(TEXT.replace(corners, "- unknown"), "brindlewick", "rigid"))
    assert (found.sticks_to_buy, found.to_buy) == ((), 0)


@pytest.mark.parametrize(
    ("pieces", "names"),
    [("[90]", ["coil"]), ("[50, 60]", ["coil 2", "coil 1"]), ("[unknown, 90]", ["coil 2"])],
)
def test_a_stick_in_hand_is_called_as_in_the_file(pieces, names):
    """Of two the first is cut for whichever tube stands first; an unknown length is nothing to cut from."""
    found = plan(f"tube: {{coil: {{made of: tube 5052-O 1/4 x .035, pieces: {pieces}}}}}")
    cuts = tube_plans(found)[0].plan.cuts
    assert sorted(cut.stick.name for cut in cuts) == sorted(names)


def test_the_usual_sticks_are_told_where_any_stick_is_bought():
    """45 in in hand are enough for one leg; the other comes from a stick that is bought."""
    half = plan("tube: {coil: {made of: tube 5052-O 1/4 x .035, pieces: [45]}}")
    assert "taken as what can be had" in words(cutplan_sheet(half))
    assert "Sticks of 6 ft and 12 ft are taken as what can be had" in words(cutplan_sheet(plan()))
    for known in (
        plan("longest tube: 84"),
        plan("tube: {coil: {made of: tube 5052-O 1/4 x .035, pieces: [90]}}"),
    ):
        assert "taken as what can be had" not in words(cutplan_sheet(known))


def test_tubes_are_named_at_the_sticks_that_they_come_from():
    """By hand: 10 ft needs 12 ft, and 5 ft and 6 ft a stick of 6 ft each: no two of them go into 12 ft."""
    feet = {"mast": 10.0, "keel": 6.0, "leg": 5.0}
    sticks = [Stick("to buy", from_unit(long, "ft"), in_hand=False) for long in (6, 12)]
    cut = cutting_plan([Piece(name, from_unit(long, "ft")) for name, long in feet.items()], sticks)
    found = TubePlan("tube", cut, (), usual_sticks=True, shortest_on_sale=from_unit(6, "ft"), practice=9)
    told = [
        (to_unit(each.length, "ft"), each.used, each.practice, each.tubes) for each in found.sticks_to_buy
    ]
    # left over are 2 ft and 1 ft, six and three pieces of 4 in
    assert told == [(pytest.approx(6), 2, 0, ("keel", "leg")), (pytest.approx(12), 1, 0, ("mast",))]
    assert to_unit(found.to_buy, "ft") == pytest.approx(24)
    more = replace(found, practice=10)
    assert [(each.used, each.practice) for each in more.sticks_to_buy] == [(2, 1), (1, 0)]
    assert to_unit(more.to_buy, "ft") == pytest.approx(30)


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
