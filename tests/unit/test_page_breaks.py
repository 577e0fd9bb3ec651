"""Where sheets break into pages: nothing runs off the paper, no step is left behind alone."""

from __future__ import annotations

import re

import pytest
from evaluated import example
from printed_pages import reader, runs

from firmpedal.export.typst import pdf
from firmpedal.report.packet import footer_of
from firmpedal.report.sheet import Bullets, Group, Heading, Paragraph, Sheet, Table

FOOT = 62.0  # points: what the margins of the paper leave for the text ends above it
FEWEST = 3


def pages(*blocks):
    made = pdf((Sheet("t", blocks),), footer_of(example()))
    return reader(made).pages


def filler(count: int) -> tuple[Paragraph, ...]:
    return tuple(Paragraph("something above") for _ in range(count))


def test_a_group_taller_than_a_page_goes_on_over_the_page():
    rows = tuple((f"row{number:03}", "x") for number in range(120))
    found = pages(Group((Heading("Each nut"), Table(("name", "what"), rows))))
    assert len(found) > 2
    assert all(run.foot >= FOOT for page in found for run in runs(page))
    printed = re.findall(r"row\d{3}", "".join(page.extract_text() for page in found))
    assert printed == [name for name, _ in rows]
    assert all("name" in page.extract_text() for page in found)  # the head of the table, on every page


@pytest.mark.parametrize("above", range(20, 40, 3))
def test_a_group_that_a_page_can_hold_stays_together(above):
    rows = tuple((f"row{number:03}", "x") for number in range(20))
    found = pages(*filler(above), Group((Heading("Each nut"), Table(("name", "what"), rows))))
    counts = [page.extract_text().count("row0") for page in found]
    assert max(counts) == len(rows)
    assert sum("Each nut" in page.extract_text() and "row000" in page.extract_text() for page in found) == 1


@pytest.mark.parametrize("above", range(22, 36))
def test_of_a_list_over_two_pages_at_least_three_items_stand_on_each(above):
    items = tuple(f"step{number:02}" for number in range(10))
    found = pages(*filler(above), Heading("Order of work"), Bullets(items, boxes=True))
    counts = [page.extract_text().count("step") for page in found]
    assert sum(counts) == len(items)
    assert all(count == 0 or count >= FEWEST for count in counts), counts
    head = next(page.extract_text() for page in found if "Order of work" in page.extract_text())
    assert "step00" in head


def sizes(page):
    """The sizes of type in which most of a page is set."""
    return {round(run.size, 1) for run in runs(page)}


def fits(count: int) -> int:
    return len(pages(*filler(count)))


def test_a_sheet_a_few_lines_too_long_is_set_closer_and_stays_on_its_page():
    """In the plain size a page holds some lines; a few more are taken in, and no smaller than small print."""
    plain = next(count for count in range(20, 80) if 11.5 not in sizes(pages(*filler(count))[0])) - 1
    assert fits(plain) == 1
    closer = pages(*filler(plain + 1))
    assert len(closer) == 1
    assert min(sizes(closer[0])) >= 10.5
    assert max(run.foot for run in runs(closer[0])) < 842 - 42  # points: the upper margin
    assert min(run.foot for run in runs(closer[0]) if run.size < 24) >= FOOT


def test_a_sheet_much_too_long_goes_on_over_the_page_in_plain_type():
    long = pages(*filler(70))
    assert len(long) > 1
    assert 11.5 in sizes(long[0])


def test_sheets_one_after_another_begin_a_page_each():
    made = pdf(tuple(Sheet(f"sheet{number}", filler(3)) for number in range(3)), footer_of(example()))
    texts = [page.extract_text() for page in reader(made).pages]
    assert [sum(f"sheet{number}" in text for text in texts) for number in range(3)] == [1, 1, 1]
    assert len(texts) == 3
