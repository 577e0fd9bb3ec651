"""Tables in a narrow terminal: no name is broken in the middle of a word while there is a way round it."""

from __future__ import annotations

import io

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.console import Console

from firmpedal.cli.columns import filled, pieces, widths
from firmpedal.cli.terminal import print_block
from firmpedal.report.sheet import Table
from firmpedal.units import HELD, held, let_go

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


def test_a_figure_stays_with_its_unit_and_is_printed_with_a_plain_space():
    cells = ("disc 104 to 122 degC", "1,117 N", "21 %")
    assert filled(cells[0], 12) == "disc 104 to\n122 degC"
    out = io.StringIO()
    table = Table(("what", "a", "b", "c"), (("name " * 20, *cells),), frozenset({1, 2, 3}))
    print_block(Console(file=out, width=44, highlight=False), table)
    text = out.getvalue()
    assert "122 degC" in text
    assert "1,117 N" in text
    assert "\u00a0" not in text


@pytest.mark.parametrize(
    "text", ["12 in from it", "9-1/4 in", "3.7 ml/s", "15.0 W/m^2 K", "-40 degC", "5 N m"]
)
def test_what_is_held_together_is_let_go_as_it_was(text):
    assert HELD in held(text)
    assert let_go(held(text)) == text


@pytest.mark.parametrize("text", ["AN816-4D in left", "3 lines", "tube 5052-O", "2 metres", "v1.2 mark"])
def test_a_number_before_another_word_is_left_alone(text):
    assert HELD not in held(text)
