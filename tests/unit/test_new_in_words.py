"""A new aircraft, of which nearly nothing is known, in words: no sentence says that something is unknown."""

from __future__ import annotations

from itertools import product

import pytest

from firmpedal.pipeline import evaluate_text
from firmpedal.project.layouts import CHOICES, Layout, layout_text
from firmpedal.report.buying import parts_sheet
from firmpedal.report.cards import card_sheets
from firmpedal.report.consumables import fluid_rows
from firmpedal.report.lines import line_sheets
from firmpedal.report.measure_groups import measure_groups
from firmpedal.report.remarks import NAMED
from firmpedal.report.sheet import Bullets, Figures, Heading, Paragraph, Table
from firmpedal.report.to_measure import to_measure

# Every leg and every kind of brake, with one seat and with two.
LAYOUTS = [
    Layout("tailwheel", leg, brakes, seats, "no" if seats == "1" else "yes")
    for leg, (brakes, seats) in product(
        CHOICES["leg"], [("toe", "1"), ("heel", "tandem"), ("hand", "1"), ("toe", "tandem")]
    )
]
ROW = 260  # letters; a row of a table in three columns, read at a glance


def name_of(layout):
    return f"{layout.leg} {layout.brakes} {layout.seats}"


def begun(layout):
    return evaluate_text(layout_text(layout, "begun.yaml"), "begun.yaml")


def words_of(sheet):
    for block in sheet.blocks:
        match block:
            case Paragraph(text):
                yield text
            case Table():
                yield from (cell for row in block.rows for cell in row)
            case Figures(items):
                yield from (f"{item.text} {item.note}" for item in items)


@pytest.mark.parametrize("layout", LAYOUTS, ids=name_of)
def test_nothing_to_buy_or_to_make_is_said_to_be_unknown(layout):
    evaluation = begun(layout)
    sheets = (parts_sheet(evaluation), *line_sheets(evaluation), *card_sheets(evaluation))
    words = [each for sheet in sheets for each in words_of(sheet)]
    assert len(words) > 20
    assert [each for each in words if "unknown" in each] == []


@pytest.mark.parametrize("layout", LAYOUTS, ids=name_of)
def test_the_row_of_the_fluid_is_short_and_what_it_waits_for_stands_by_itself(layout):
    evaluation = begun(layout)
    ((what, amount, why),) = fluid_rows(evaluation)
    assert len(what) + len(amount) + len(why) < ROW
    blocks = parts_sheet(evaluation).blocks
    at = next(n for n, each in enumerate(blocks) if isinstance(each, Heading) and "fluid" in each.text)
    listed = blocks[at + 1]
    assert isinstance(listed, Bullets)
    assert len(listed.items) > NAMED
    assert amount == f"not known until {len(listed.items)} things are measured"
    asked = {each.what for each in to_measure(evaluation)}
    assert set(listed.items) <= asked  # each of them is a row of what is to be measured


@pytest.mark.parametrize("layout", LAYOUTS, ids=name_of)
def test_what_is_to_be_measured_is_gathered_by_thing_and_nothing_is_lost(layout):
    evaluation = begun(layout)
    rows = to_measure(evaluation)
    groups = measure_groups(evaluation, rows)
    assert sorted(row.what for group in groups for row in group.rows) == sorted(row.what for row in rows)
    assert len({group.name for group in groups}) == len(groups) < len(rows) / 2
    caliper = next(group for group in groups if group.name == "left_caliper")
    assert caliper.words.startswith(f"{len(caliper.rows)} to measure: ")
    assert "pistons bore" in caliper.words
