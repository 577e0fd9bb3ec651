"""The flaring card, and how far elbows on taper threads are turned."""

from __future__ import annotations

import re

import pytest
from evaluated import example, of_kind, sheets, words

from firmpedal.report.flare_card import flare_card, tube_sizes, used_diameter
from firmpedal.report.pipe_elbows import pipe_elbows
from firmpedal.report.sheet import Drawing, Table
from firmpedal.units import to_unit


def test_the_card_gives_the_flare_of_each_size_of_tube_that_is_there():
    # MS33584 (AS4330) as carried in the catalogue: 0.349 to 0.359 in across for -4
    (size,) = tube_sizes(example("rigid"))
    assert size.dash == "-4"
    assert to_unit(used_diameter(size).low, "in") == pytest.approx(0.349)
    assert to_unit(used_diameter(size).high, "in") == pytest.approx(0.359)
    assert "0.349 to 0.359 in across for -4" in words(flare_card(example("rigid")))


def test_an_aircraft_without_metal_tube_has_no_flaring_card():
    assert flare_card(example()) is None
    assert "Flaring a tube" not in sheets()


def test_nut_before_sleeve_before_block():
    said = words(flare_card(example("rigid")))
    assert said.index("Nut on first") < said.index("Then the sleeve") < said.index("Into the block")


def test_every_fault_has_a_cause_a_cure_and_a_drawing():
    card = flare_card(example("rigid"))
    faults = next(table for table in of_kind(card, Table) if "fault" in table.columns)
    assert len(faults.rows) == 6
    assert all(cell for row in faults.rows for cell in row)
    drawn = " ".join(words_of(drawing) for drawing in of_kind(card, Drawing))
    assert all(row[faults.columns.index("fault")] in drawn for row in faults.rows)


def words_of(drawing: Drawing) -> str:
    return " ".join(getattr(mark, "text", "") for mark in drawing.marks)


def test_three_practice_pieces_come_before_the_first_tube():
    card = flare_card(example("rigid"))
    pieces = next(table for table in of_kind(card, Table) if "piece" in table.columns)
    assert [row[pieces.columns.index("piece")] for row in pieces.rows] == ["1", "2", "3"]


def test_sources_that_disagree_on_single_or_double_are_all_shown():
    table = next(each for each in of_kind(flare_card(example("rigid")), Table) if "flare" in each.columns)
    assert {row[0] for row in table.rows} == {"single", "double"}
    assert all(row[-1] for row in table.rows)


def test_elbows_on_taper_threads_are_told_how_far_they_may_be_turned():
    # ASME B1.20.1: hand-tight engagement of 1/8-27 NPT is 0.1615 in, 4.36 turns; by wrench 1.5 to 3
    assert [name for _, name, _ in pipe_elbows(example("rigid"))] == [
        "left_caliper.inlet",
        "right_caliper.inlet",
    ]
    table = next(
        each for each in of_kind(sheets("rigid")["Torque and flare"], Table) if "elbow" in each.columns
    )
    hand, wrench, whole = table.rows[0][-3:]
    assert (hand, wrench, whole) == ("4.4", "1.5 to 3", "5.9 to 7.4")


def test_a_straight_nipple_need_not_point_anywhere():
    assert not any(part.turn == 0 for part, _, _ in pipe_elbows(example("rigid")))
    assert re.search(r"Never back", words(sheets("rigid")["Torque and flare"]))


def test_the_turns_by_hand_are_one_figure_on_the_sheet():
    # ASME B1.20.1: .1615 in of hand-tight engagement over a pitch of 1/27 in, in both places
    said = words(sheets("rigid")["Torque and flare"])
    assert f"by hand {0.1615 * 27:.1f} turns, then with a wrench" in said
    assert "by hand 4.5 turns" not in said
