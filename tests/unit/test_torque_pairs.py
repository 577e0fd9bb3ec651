"""Torque by the pair of metals: the printed figure in each cell, and the pairs that occur marked."""

from __future__ import annotations

import pytest
from evaluated import EXAMPLE, example, of_kind, sheets, words

from firmpedal.pipeline import evaluate_text
from firmpedal.report.nuts import Tightened, metal_of, tightened, torque_used
from firmpedal.report.sheet import Table
from firmpedal.report.torque import torque_sheet
from firmpedal.report.torque_pairs import COLUMNS, NO_FIGURE, pair_table

TEXT = EXAMPLE.read_text(encoding="utf-8")


def pairs(evaluation, nuts=None):
    """The cells of the table by size and row: on aluminium, on steel."""
    (table,) = of_kind(pair_table(evaluation, nuts or tightened(evaluation)), Table)
    assert table.columns == COLUMNS
    return {(row[0], row[1]): row[2:] for row in table.rows}


def nut(dash, tube="", fitting="steel"):
    return Tightened("joint", "line", "AN818", "coupling nut", dash, metal_of(tube, fitting), tube, fitting)


# In lbf in. Tubes: light-aircraft maintenance manual, torque chart for AN818 nuts, 1982: one column for
# aluminium, which it also gives for copper and wherever any part is aluminium, and one for steel. Hose ends:
# NAVEDTRA 14018 table 5-9, for steel the lower of it and TM 55-1520-240-23-1.
@pytest.mark.parametrize(
    ("dash", "aluminium", "steel", "hose", "steel_hose"),
    [
        ("-3", "25 to 35", "95 to 105", "25 to 35", "95 to 105"),
        ("-4", "50 to 65", "135 to 150", "50 to 65", "100 to 120"),
        ("-6", "110 to 130", "270 to 300", "110 to 130", "215 to 245"),
        ("-8", "230 to 260", "450 to 500", "230 to 260", "340 to 420"),
    ],
)
def test_the_printed_figure_stands_in_each_cell(dash, aluminium, steel, hose, steel_hose):
    cells = pairs(example("rigid"), (nut(dash, "steel"),))
    figures = {name: [cell.split("\n")[:2] for cell in row] for (_, name), row in cells.items()}
    low = [f"{aluminium} lbf in", "aluminium figure"]
    assert figures == {
        "hose end": [[f"{hose} lbf in", "aluminium figure"], [f"{steel_hose} lbf in", "steel figure"]],
        "tube of aluminium": [low, low],
        "tube of copper": [low, low],
        "tube of steel, stainless too": [low, [f"{steel} lbf in", "steel figure"]],
    }


def test_the_pairs_that_occur_are_marked_with_how_often():
    # by hand: an aluminium tube with two ends on each side, two hoses with two ends on each side
    cells = pairs(example("rigid"))
    marked = {
        (name, n): cell.split("\n")[-1]
        for (_, name), row in cells.items()
        for n, cell in enumerate(row)
        if "HERE" in cell
    }
    assert marked == {("hose end", 0): "HERE: 8 nuts", ("tube of aluminium", 0): "HERE: 4 nuts"}


def test_steel_throughout_and_one_nut_of_aluminium_are_two_pairs():
    nuts = (nut("-4", "steel"), nut("-4", "steel"), nut("-4", "steel", "aluminium"))
    on_aluminium, on_steel = pairs(example("rigid"), nuts)["-4", "tube of steel, stainless too"]
    assert "HERE: 1 nut" in on_aluminium
    assert "HERE: 2 nuts" in on_steel
    assert "name no stainless" in words(torque_sheet(_of("tube 304 annealed 1/4 x .035")))


def test_a_pair_that_no_source_names_is_unknown():
    on_aluminium, on_steel = pairs(example("rigid"), (nut("-4", "titanium"),))["-4", "tube of titanium"]
    assert "aluminium figure" in on_aluminium  # any part of aluminium takes its figure
    assert on_steel == f"{NO_FIGURE}\nHERE: 1 nut"
    assert torque_used(nut("-4", "titanium")) is None
    assert torque_used(nut("-4", "titanium", "aluminium")) == torque_used(nut("-4", "aluminium"))


def test_a_size_that_does_not_occur_is_left_out_and_each_that_does_is_there():
    assert {dash for dash, _ in pairs(example("rigid"))} == {"-4"}
    both = pairs(example("rigid"), (nut("-10", "steel"), nut("-3", "steel")))
    assert list(dict.fromkeys(dash for dash, _ in both)) == ["-3", "-10"]
    assert both["-10", "tube of aluminium"][0] == NO_FIGURE  # nothing is printed for that size


def test_a_metal_that_nobody_knows_takes_the_lower_figure_and_says_so():
    group = pair_table(example("rigid"), (nut("-4", "steel", ""),))
    said = "\n".join(map(words, group.blocks))
    assert "line at joint: the metal that its nut goes onto is not known" in said


def test_the_table_stands_before_the_rules():
    said = words(sheets("rigid")["Torque and flare"])
    assert 0 < said.index("Which torque for which pair") < said.index("How to tighten")


def _of(stock):
    changed = TEXT.replace("made of: tube 5052-O 1/4 x .035", f"made of: {stock}")
    assert changed != TEXT
    return evaluate_text(changed, "brindlewick", "rigid")
