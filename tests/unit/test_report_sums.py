"""Sums and sources: what is printed can be followed, and every source that is used is named."""

from __future__ import annotations

import math
import re
from dataclasses import replace

import pytest
from evaluated import awkward, blocks, example, of_kind, sheets, words

from firmpedal.finding import Cited
from firmpedal.formulas.references import every_entry
from firmpedal.quantity import Mark
from firmpedal.report.packet import packet_sheets
from firmpedal.report.sheet import Sum, Table
from firmpedal.report.sources import sources_sheet, sources_used
from firmpedal.report.sums import chapters, main_values, sums_sheet


def sum_called(start: str, option: str | None = "rigid") -> Sum:
    return next(each for each in of_kind(sheets(option)["Sums"], Sum) if each.result.startswith(start))


def result_of(printed: Sum) -> float:
    return float(printed.result.rpartition("= ")[2].split(" ")[0].replace(",", ""))


def reckoned(printed: Sum) -> float:
    """Reckon a printed line of figures as a person would, without units."""
    line = printed.figures.rpartition("= ")[2]
    line = re.sub(r"\(([\d.,]+)[^()]*?\)", lambda found: f"({found[1].replace(',', '')})", line)
    line = re.sub(r"\)\s*\(", ")*(", line.replace("^", "**"))
    line = re.sub(r"\bpi\s*\(", "pi*(", line)
    line = re.sub(r"(\d)\s+\(", r"\1*(", line)
    return float(eval(line, {"pi": math.pi, "sqrt": math.sqrt}))  # noqa: S307  our own printed figures


@pytest.mark.parametrize(
    ("start", "figure"),
    [
        ("pressure at the normal foot", 489),  # published: 75 lbf, 2:1, 5/8 in bore
        ("pressure at the hard foot", 978),
        ("pressure at the panic foot", 1304),
        ("yield of left_leg by the trade's formula", 2800),  # Barlow: 2 x 10,000 psi x .035 / .25
        ("burst of left_leg", 7000),  # Barlow: 2 x 25,000 psi x .035 / .25
        (
            "stroke of left_cylinder to close the pad gap",
            0.1152,
        ),  # 1.5 in piston, .020 in: (1.5/.625)^2 x .020
    ],
)
def test_a_printed_sum_comes_out_when_reckoned_by_hand(start, figure):
    printed = sum_called(start)
    assert result_of(printed) == pytest.approx(figure, rel=1e-3)
    assert reckoned(printed) == pytest.approx(figure, rel=3e-3)


def test_yield_stands_before_the_trades_figure():
    results = [each.result for each in of_kind(sheets("rigid")["Sums"], Sum)]
    first = next(n for n, text in enumerate(results) if text.startswith("first yield of left_leg"))
    assert results[first + 1].startswith("yield of left_leg by the trade's formula")
    assert result_of(sum_called("first yield of left_leg")) == pytest.approx(2781, abs=1)


def test_left_and_right_that_come_out_alike_are_printed_once_under_both_names():
    printed = sum_called("developed length of left_leg")
    assert any("right_leg" in line for line in printed.where)
    results = [each.result for each in of_kind(sheets("rigid")["Sums"], Sum)]
    assert not [text for text in results if text.startswith("developed length of right")]


def test_every_main_value_is_on_the_sheet_by_its_name():
    for evaluation in (example(), example("rigid"), awkward()):
        said = words(sums_sheet(evaluation))
        assert not [value.label for value in main_values(evaluation) if value.label not in said]


def test_the_subjects_asked_for_are_there():
    titles = [title for title, _ in chapters(example("rigid"))]
    for title in ("Pressure", "Strength of the tubes", "Stroke", "Fluid in the lines",
                  "Fluid that follows the pads", "Length of the tubes", "Mass"):  # fmt: skip
        assert title in titles


def test_what_is_unknown_prints_no_figures_but_what_to_measure():
    said = [
        each for each in of_kind(sums_sheet(awkward()), Sum) if each.result.startswith("Not known before")
    ]
    assert any("which brake fluid is used" in each.result for each in said)
    assert not [each for each in of_kind(sums_sheet(awkward()), Sum) if "unknown" in each.result]


def test_the_parts_of_a_mass_are_counted():
    printed = sum_called("mass of lines, fittings and fluid")
    assert any(line.startswith("4 x AN818-4D mass") for line in printed.where)
    assert "rests on" in " ".join(printed.where)


def test_a_figure_from_memory_is_marked_where_it_stands():
    said = " ".join(sum_called("first yield of left_leg").where)
    assert "5052-O yield, drawn tube minimum (not verified against the source)" in said
    assert "rests on a figure not verified" in said


def test_a_formulas_own_source_is_not_blamed_for_its_figures():
    printed = sum_called("burst of left_leg")
    assert printed.source
    assert "not verified" not in printed.source


@pytest.mark.parametrize("option", [None, "rigid"])
def test_every_source_named_anywhere_is_on_the_list_and_no_other(option):
    evaluation = example(option)
    pages = [sheet for sheet in packet_sheets(evaluation) if sheet.title != "Sources used"]
    said = "\n".join(words(sheet) for sheet in pages)
    named = {
        key for key, reference in every_entry().items() if re.search(rf"\b{re.escape(reference.title)}", said)
    }
    used = set(sources_used(evaluation))
    assert named <= used
    listed = [
        row[0].split("\n")[0] for table in of_kind(sources_sheet(evaluation), Table) for row in table.rows
    ]
    assert listed == [every_entry()[key].title for key in every_entry() if key in used]


def test_sources_of_one_option_are_not_those_of_the_other():
    plastic, rigid = (set(sources_used(example(option))) for option in (None, "rigid"))
    assert "mil-h-27267" in rigid - plastic
    assert "tube-bend-lengths" in rigid - plastic


def test_a_source_that_only_a_finding_cites_is_on_the_list():
    cited = replace(example().findings[0], sources=(Cited("bisshopp-drucker", Mark.READ),))
    assert "bisshopp-drucker" not in sources_used(example())
    assert "bisshopp-drucker" in sources_used(replace(example(), findings=(cited,)))


def test_an_unverified_source_says_so_and_a_read_one_does_not():
    rows = {row[0].split("\n")[0]: row[1] for row in of_kind(sources_sheet(example("rigid")), Table)[0].rows}
    marks = sources_used(example("rigid"))
    for key, found in marks.items():
        text = rows[every_entry()[key].title]
        assert ("not verified against the source" in text) == (max(found) is Mark.MEMORY)


def test_blocks_of_the_sums_are_plain():
    assert all(block for block in blocks(sheets("rigid")["Sums"]))
