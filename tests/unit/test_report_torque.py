"""Torque and flare: the figures in use, with every source beside them."""

from __future__ import annotations

from dataclasses import replace

import pytest
from evaluated import EXAMPLE, awkward, example, of_kind, sheets, words

from firmpedal.catalog import catalogue
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Mark
from firmpedal.report.nuts import Tightened, tightened, torque_at, torque_rows, torque_used
from firmpedal.report.sheet import BOX, Figures, Table
from firmpedal.report.torque import USED, torque_sheet


def nut(kind: str, dash: str, metal: str) -> Tightened:
    return Tightened("joint", "line", "AN818", kind, dash, metal)


def test_every_flared_nut_is_on_the_list_once():
    # by hand: two at each floor and axle fitting, one at each cylinder and caliper
    nuts = tightened(example("rigid"))
    assert len(nuts) == len({(each.joint, each.line) for each in nuts}) == 12
    assert sum(each.kind == "coupling nut" for each in nuts) == 4


def test_a_coupling_nut_belongs_to_the_line_whose_tube_it_holds():
    nuts = {(each.joint, each.line): each for each in tightened(example("rigid"))}
    assert nuts["left_floor", "left_leg"].nut == "AN818-4D"
    assert nuts["left_floor", "left_pedal"].kind == "hose end"


@pytest.mark.parametrize(
    ("kind", "dash", "metal", "low", "high"),
    # maintenance-manual torque chart for AN818 nuts, and NAVEDTRA 14018 table 5-9 for hose ends
    [
        ("coupling nut", "-3", "aluminium", 25, 35),
        ("coupling nut", "-4", "aluminium", 50, 65),
        ("coupling nut", "-4", "steel", 135, 150),
        ("hose end", "-4", "aluminium", 50, 65),
        ("hose end", "-4", "steel", 100, 120),  # TM 55-1520-240-23-1, lower than NAVEDTRA 14018
    ],
)
def test_the_torque_in_use_is_the_printed_one(kind, dash, metal, low, high):
    row = torque_used(nut(kind, dash, metal))
    assert row.torque.low == pytest.approx(low * 0.1129848, rel=1e-5)
    assert row.torque.high == pytest.approx(high * 0.1129848, rel=1e-5)


def test_the_row_in_use_comes_first_and_no_source_is_left_out():
    for kind, metal in (("coupling nut", "aluminium"), ("hose end", "steel")):
        rows = torque_rows(nut(kind, "-4", metal))
        assert rows[0].preferred
        every = [row for row in catalogue().torques if (row.dash, row.joint, row.tube) == ("-4", kind, metal)]
        assert set(every) <= set(rows)
        assert len(rows) > 1


def test_the_figure_in_use_was_seen_in_print_wherever_one_was():
    for dash in ("-3", "-4", "-5", "-6", "-8"):
        for metal in ("aluminium", "steel"):
            rows = torque_rows(nut("coupling nut", dash, metal))
            if any(row.torque.mark is Mark.READ for row in rows):
                assert torque_used(nut("coupling nut", dash, metal)).torque.mark is Mark.READ


def test_aluminium_anywhere_in_a_joint_takes_the_aluminium_figure():
    text = EXAMPLE.read_text(encoding="utf-8")
    steel_tube = text.replace("made of: tube 5052-O", "made of: tube 304 annealed")
    evaluation = evaluate_text(steel_tube, option="rigid")
    materials = {joint.name: {part.material for part in joint.parts} for joint in evaluation.assembly.joints}
    nuts = [each for each in tightened(evaluation) if each.kind == "coupling nut"]
    assert len(nuts) == 4
    for each in nuts:
        assert each.metal == ("aluminium" if "aluminium" in materials[each.joint] else "steel")


def test_the_sheet_gives_the_figure_first_and_then_every_source():
    sheet = sheets("rigid")["Torque and flare"]
    first = sheet.blocks[0]
    assert isinstance(first, Figures)
    assert {item.text for item in first.items} == {"50 to 65 lbf in"}
    tables = [table for table in of_kind(sheet, Table) if "source" in table.columns]
    assert all(sum(row[0] == USED for row in table.rows) == 1 for table in tables)
    assert "not verified against the source" in words(sheet)
    assert "0.349 to 0.359 in" in words(sheet)  # MS33584, from memory, and so marked


def test_every_nut_gets_a_box_and_its_torque():
    table = next(
        table for table in of_kind(sheets("rigid")["Torque and flare"], Table) if "joint" in table.columns
    )
    assert len(table.rows) == 12
    assert all(row[0] == BOX and row[4] == "50 to 65 lbf in" for row in table.rows)


@pytest.mark.parametrize(
    "rule",
    [
        "metal of the tube",
        "Two wrenches",
        "under pressure",
        "No sealant",
        "leaks at full torque is taken apart",
    ],
)
def test_the_rules_of_tightening_are_on_the_sheet(rule):
    assert rule in words(sheets("rigid")["Torque and flare"])


def test_without_a_flared_joint_no_flare_is_spoken_of():
    said = words(sheets()["Torque and flare"])
    assert "There is no flared joint here" in said
    assert "No sealant, tape or paste on a flare" not in said
    assert "Never loosen or tighten a joint under pressure." in said
    assert "1/8-27: by hand 4.4 turns, then with a wrench 1.5 to 3" in said


def test_torques_follow_the_units_of_the_file():
    # 50 and 65 lbf in are 5.65 and 7.34 N m
    assert "5.6 to 7.3 N m" in words(torque_sheet(awkward()))
    assert "1.6 to 3.2 mm above the seated sleeve" in words(torque_sheet(awkward()))


def test_a_joint_without_torque_stays_without():
    bare = replace(example("rigid"), assembly=replace(example("rigid").assembly, joints=()))
    assert torque_at(bare, "left_floor", "left_leg") == ""
