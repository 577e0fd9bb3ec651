"""The pages that a packet has of other options: what they hold, and that they can be read at the bench."""

from __future__ import annotations

from functools import cache
from itertools import combinations

import pytest
from evaluated import awkward, example
from options_text import OPTIONS, thistlemoor
from printed_pages import reader, runs

from firmpedal.export.typst import pdf
from firmpedal.pipeline import usable_options
from firmpedal.report.compare import TITLE as COMPARED
from firmpedal.report.packet import footer_of, packet_sheets
from firmpedal.report.retrofit import TITLE as WORK
from firmpedal.report.sheet import Table

SIDE, WIDTH, BLANK = 51.0, 595.3, 7.0  # margins of 18 mm on A4, in points
LOWEST = 62.0  # US letter is 18 mm shorter, and printers leave white
SMALLEST = 10.4

PACKETS = {
    "brindlewick": lambda: (example("rigid"), usable_options(example("rigid").reading)),
    "many": lambda: (thistlemoor("dash 3"), tuple(map(thistlemoor, OPTIONS))),
    "moved": lambda: (thistlemoor("floor moved"), (thistlemoor(), thistlemoor("floor moved"))),
    "metals": lambda: (thistlemoor("steel leg"), (thistlemoor(), thistlemoor("steel leg"))),
}


@cache
def printed(which: str) -> bytes:
    """The two pages alone: the others are tested without options."""
    evaluation, options = PACKETS[which]()
    sheets = [sheet for sheet in packet_sheets(evaluation, options) if sheet.title in (COMPARED, WORK)]
    return pdf(tuple(sheets), footer_of(evaluation))


def titles(evaluation, options) -> list[str]:
    return [sheet.title for sheet in packet_sheets(evaluation, options)]


def test_a_file_without_options_has_neither_page():
    assert not {COMPARED, WORK} & set(titles(awkward(), usable_options(awkward().reading)))


def test_as_written_is_compared_and_needs_no_work():
    found = titles(example(), usable_options(example().reading))
    assert COMPARED in found
    assert WORK not in found


def test_an_option_is_compared_and_its_work_is_told_from_the_file_as_written():
    found = packet_sheets(example("rigid"), usable_options(example("rigid").reading))
    assert [sheet.title for sheet in found].count(COMPARED) == 1
    (work,) = [sheet for sheet in found if sheet.title == WORK]
    assert work.subtitle == "from as written to rigid"


def test_options_are_set_side_by_side_before_anything_is_bought():
    found = titles(example("rigid"), usable_options(example("rigid").reading))
    assert found.index(COMPARED) < found.index("Parts to order") < found.index(WORK)


def test_nothing_else_of_the_packet_changes():
    plain = packet_sheets(example("rigid"))
    full = packet_sheets(example("rigid"), usable_options(example("rigid").reading))
    assert [sheet for sheet in full if sheet.title not in (COMPARED, WORK)] == list(plain)


def used(order: str) -> str:
    """What of an order is used: `4` of `6` with `4 + 2` under it."""
    return order.splitlines()[-1].partition(" + ")[0]


def test_the_list_to_buy_is_the_list_of_parts_where_nothing_stays():
    found = packet_sheets(example("rigid"), usable_options(example("rigid").reading))
    sheets = [sheet for sheet in found if sheet.title in ("Parts to order", WORK)]
    tables = [next(block for block in sheet.blocks if isinstance(block, Table)) for sheet in sheets]
    listed, bought = ({(used(row[0]), row[1]) for row in table.rows} for table in tables)
    assert bought <= listed


@pytest.mark.parametrize("which", PACKETS)
def test_nothing_is_cut_off_or_too_small(which):
    for page in reader(printed(which)).pages:
        for run in runs(page):
            assert run.left >= SIDE
            assert run.right <= WIDTH - SIDE + BLANK
            assert run.foot >= LOWEST
            assert run.size >= SMALLEST


@pytest.mark.parametrize("which", PACKETS)
def test_no_text_runs_over_other_text(which):
    for number, page in enumerate(reader(printed(which)).pages, 1):
        assert not [(number, one, other) for one, other in combinations(runs(page), 2) if one.covers(other)]


def test_two_pages_tell_all_of_three_options():
    pages = [page.extract_text() for page in reader(printed("brindlewick")).pages]
    assert sum(COMPARED in page[:60] for page in pages) <= 3
    assert any("So: all hose" in " ".join(page.split()) for page in pages)
