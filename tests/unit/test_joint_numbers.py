"""Joints by number: along the fluid, left before right, and the same on every sheet."""

from __future__ import annotations

import re
from io import StringIO

import pytest
from drawn_circuits import CASES, evaluated
from evaluated import awkward, of_kind, words
from ruamel.yaml import YAML

from firmpedal.pipeline import evaluate_text
from firmpedal.report.cards import card_sheets
from firmpedal.report.joint_checks import OPEN, TITLE, joint_checks_sheet
from firmpedal.report.joint_numbers import joint_numbers
from firmpedal.report.packet import packet_sheets
from firmpedal.report.schematic.picture import circuit_drawing
from firmpedal.report.sheet import BOX, Heading, Label, Table

# Read off the file by hand: down the left side to its wheel, then down the right side.
BY_HAND = {
    ("brindlewick", "rigid"): [
        "left_cylinder.outlet", "left_floor", "left_axle", "left_caliper.inlet",
        "right_cylinder.outlet", "right_floor", "right_axle", "right_caliper.inlet",
    ],
    ("oatmere", "single brakes"): [
        "reservoir.left_out", "left_firewall", "pilot_left.inlet", "pilot_left.outlet",
        "valve.left_in", "valve.left_out", "left_belly", "left_caliper.inlet",
        "reservoir.right_out", "right_firewall", "pilot_right.inlet", "pilot_right.outlet",
        "valve.right_in", "valve.right_out", "right_belly", "right_caliper.inlet",
    ],
    ("withyford", None): [
        "pot.out", "second.inlet", "second.outlet", "first.inlet", "first.outlet",
        "valve.in", "valve.out", "belly", "caliper.inlet",
    ],
    ("tee", None): [
        "cylinder.outlet", "tee", "left.a", "left.b", "left.c", "right.a", "right.b", "right.c",
        "cylinder.inlet",
    ],
}  # fmt: skip


@pytest.mark.parametrize("case", BY_HAND, ids=str)
def test_numbers_follow_the_fluid_left_before_right(case):
    assert joint_numbers(evaluated(*case)) == {name: n for n, name in enumerate(BY_HAND[case], 1)}


def test_a_line_that_crosses_over_takes_its_numbers_with_it():
    numbers = joint_numbers(evaluated("oatmere", "first sketch"))
    assert numbers["pilot_right.inlet"] == numbers["copilot_left.outlet"] + 1


@pytest.mark.parametrize("case", CASES, ids=str)
def test_every_joint_has_one_number_from_one_up(case):
    evaluation = evaluated(*case)
    numbers = joint_numbers(evaluation)
    assert sorted(numbers) == sorted(joint.name for joint in evaluation.assembly.joints)
    assert list(numbers.values()) == list(range(1, len(numbers) + 1))


@pytest.mark.parametrize("name", ["tarnholt", "withyford", "tee", "four"])
def test_the_order_of_the_file_does_not_matter(name):
    yaml = YAML()
    file = yaml.load(evaluated(name).reading.text)
    for key in ("components", "bulkheads", "lines"):
        if key in file and not any("like" in entry for entry in file[key].values()):
            file[key] = dict(reversed(list(file[key].items())))
    text = StringIO()
    yaml.dump(file, text)
    turned = evaluate_text(text.getvalue())
    if name != "four":  # its cylinders of one side are alike in all but the file's order
        assert joint_numbers(turned) == joint_numbers(evaluated(name))
    assert set(joint_numbers(turned)) == set(joint_numbers(evaluated(name)))
    assert circuit_drawing(turned) is not None


def test_the_two_ends_of_a_card_have_the_numbers_of_their_joints():
    evaluation = evaluated("brindlewick", "rigid")
    card = next(sheet for sheet in card_sheets(evaluation) if sheet.title == "Tube left_leg")
    headings = [block.text for block in of_kind(card, Heading) if block.text.startswith("End ")]
    assert headings == ["End A (joint 2): left_floor, side below", "End B (joint 3): left_axle, side upper"]


def test_circuit_cards_and_check_sheet_have_the_same_numbers():
    evaluation = evaluated("oatmere")
    sheets = packet_sheets(evaluation)
    (table,) = of_kind(next(sheet for sheet in sheets if sheet.title == TITLE), Table)
    listed = {int(row[0]): row[1].partition("\n")[0] for row in table.rows}
    assert {name: number for number, name in listed.items()} == joint_numbers(evaluation)
    headings = [block.text for sheet in card_sheets(evaluation) for block in of_kind(sheet, Heading)]
    on_cards = {int(found[1]) for text in headings if (found := re.match(r"End . \(joint (\d+)\)", text))}
    assert on_cards == set(listed)
    drawing = next(sheet for sheet in sheets if sheet.title == "Circuit").blocks[0]
    drawn = {int(mark.text) for mark in drawing.marks if isinstance(mark, Label) and mark.text.isdigit()}
    assert drawn == set(listed)


def test_the_circuit_comes_next_after_the_cover():
    assert [sheet.title for sheet in packet_sheets(evaluated("fennimoss", "rigid"))][1] == "Circuit"


def rows(*case) -> dict[str, tuple[str, ...]]:
    (table,) = of_kind(joint_checks_sheet(evaluated(*case)), Table)
    return {row[1].partition("\n")[0]: row for row in table.rows}


def test_the_check_sheet_gives_parts_torque_and_two_boxes():
    row = rows("brindlewick", "rigid")["left_floor"]
    # AN818-4D on 5052-O tube, and a hose end on an aluminium body: 50 to 65 lbf in, NAVEDTRA 14105, as on
    # the sheet of torques
    assert row == (
        "2",
        "left_floor\nAN833-4D + AN924-4D + AN818-4D + AN819-4D",
        "50 to 65 lbf in\nhose end and AN818-4D",
        BOX,
        BOX,
    )


def test_a_pipe_thread_goes_by_turns_and_a_compression_nut_by_its_maker():
    assert (
        rows("brindlewick", "rigid")["left_cylinder.outlet"][2]
        == "50 to 65 lbf in\nhose end; pipe thread by turns"
    )
    assert (
        rows("brindlewick", None)["left_cylinder.outlet"][2]
        == "pipe thread by turns\ncompression nut by its maker's sheet"
    )


def test_a_plug_and_a_port_that_nothing_comes_to_are_on_the_sheet():
    assert "nothing is joined here" not in rows("tee")["left.c"][1]
    assert rows("tee")["left.c"][3:] == (BOX, BOX)
    assert rows("tee")["left.b"][1] == f"left.b\nnothing is joined here\n{OPEN}"


def test_an_open_port_has_nothing_to_tick_and_says_that_it_is_closed_first():
    (table,) = of_kind(joint_checks_sheet(awkward()), Table)
    closed, open_row = table.rows[1], table.rows[2]
    assert closed[3:] == (BOX, BOX)
    assert open_row == ("3", f"right_caliper.inlet\nnothing is joined here\n{OPEN}", "", "", "")


def test_the_sheet_says_how_hard_to_press_and_that_the_wheels_turn_again():
    """Brindlewick's panic pressure is that of the page of pressures, for every line."""
    said = words(joint_checks_sheet(evaluated("brindlewick", "rigid")))
    evaluation = evaluated("brindlewick", "rigid")
    for pressure in evaluation.results.pressures:
        assert f"{evaluation.display.value(pressure.at('panic'))} at the panic foot" in said
        assert pressure.line in said
    assert "each braked wheel must turn freely" in said


def test_compression_nuts_have_no_figure_and_it_is_said():
    assert "Compression nuts: no torque and no turns are published" in words(
        joint_checks_sheet(evaluated("brindlewick", None))
    )
    assert "Compression nuts" not in words(joint_checks_sheet(evaluated("brindlewick", "rigid")))
