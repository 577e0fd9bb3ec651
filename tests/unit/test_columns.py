"""Tables in a narrow terminal: no name is broken in the middle of a word while there is a way round it."""

from __future__ import annotations

import io

from hypothesis import given
from hypothesis import strategies as st
from rich.console import Console

from firmpedal.cli.columns import filled, pieces, widths
from firmpedal.cli.terminal import print_block
from firmpedal.report.sheet import Table

NAME = "the_left_master_cylinder_with_a_long_name.outlet_at_the_very_bottom"
ROWS = (("2", "AN816-4D", "nipple, flared tube to pipe thread", NAME),)


def drawn(rows, width=80):
    out = io.StringIO()
    columns = ("order", "designation", "what", "where")
    print_block(Console(file=out, width=width, highlight=False), Table(columns, rows, frozenset({0})))
    return out.getvalue()


def test_a_long_name_breaks_at_its_joints():
    lines = drawn(ROWS).splitlines()
    parts = [line.split()[-1] for line in lines if "_" in line]
    assert "".join(parts) == NAME
    assert all(part.endswith(("_", ".", "bottom")) for part in parts)
    assert max(map(len, lines)) <= 80


def test_a_name_that_has_room_stays_whole():
    name = "left_master_cylinder.outlet"
    text = drawn((("2", "COMP-INSERT-3/16", "fitting " * 12, f"{name}, {name}"),))
    assert text.count(name) == 2
    assert "COMP-INSERT-3/16" in text


def test_what_fits_is_left_alone():
    assert widths((("a", "bb"), ("ccc", "d e f")), 20) == (3, 5)


@given(st.text("ab_./- ", max_size=60), st.integers(1, 30))
def test_no_letter_is_lost_and_no_line_is_too_long(text, width):
    lines = filled(text, width).split("\n")
    assert all(len(line) <= width for line in lines)
    assert "".join("".join(lines).split()) == "".join(text.split())


@given(st.text("ab_./- ", max_size=60))
def test_pieces_put_together_are_the_words(text):
    assert "".join(pieces(text)) == "".join(text.split())


@given(st.lists(st.tuples(*[st.text("abc_. ", max_size=40)] * 3), min_size=1, max_size=6), st.integers(9, 90))
def test_columns_share_the_room(rows, room):
    found = widths(rows, room)
    assert sum(found) <= room or max(found) <= 1
