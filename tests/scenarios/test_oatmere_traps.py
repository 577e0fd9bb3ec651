"""The traps of two seats in series: which rule finds each, where and how gravely, and what cures it.

Each stands in the aircraft by its shape, or is laid in its right answer by one mistake of a builder; the
cure takes it out again. Not tested, since nothing works it out yet: how a cross hose bows between its
ends, where it may reach the pedal tube that moves against it (its declared path is what is looked at);
and the order in which to bleed the two seats.
"""

from __future__ import annotations

import pytest
from traps import cured, laid, level, said
from traps_of_oatmere import BY_SHAPE, CROSS_PATH, MISTAKES

from firmpedal.pipeline import evaluate_text
from texts import edited, example

NAME = "oatmere"


@pytest.mark.parametrize("trap", BY_SHAPE, ids=str)
def test_it_stands_in_the_aircraft_by_its_shape(trap):
    assert [level(item) for item in said(trap, example(NAME), None)] == [trap.level]


@pytest.mark.parametrize("trap", MISTAKES, ids=str)
def test_the_right_answer_does_not_have_it(trap):
    assert not said(trap, example(NAME), None)


@pytest.mark.parametrize("trap", MISTAKES, ids=str)
def test_one_mistake_brings_it_in(trap):
    assert [level(item) for item in said(trap, laid(trap, example(NAME)), None)] == [trap.level]


@pytest.mark.parametrize("trap", [trap for trap in (*BY_SHAPE, *MISTAKES) if trap.has_cure], ids=str)
def test_the_cure_takes_it_away(trap):
    assert not cured(trap, example(NAME))


def test_moving_the_cross_hose_does_not_let_the_air_out():
    """The high point is the cylinder itself, however the hose lies."""
    (trap,) = [trap for trap in BY_SHAPE if trap.rule == "air-trap"]
    lower = edited(example(NAME), (CROSS_PATH, CROSS_PATH.replace("7.5", "2.9")))
    assert said(trap, lower, None)


def test_the_first_sketch_shows_many_of_them_at_once():
    found = {item.rule for item in evaluate_text(example(NAME), "text", "first sketch").findings}
    assert found >= {"sides-crossed", "too-near-to-stay-clear", "parking-valve-without-stop", "tube-yields"}
