"""The traps of a pusher that parks nose down: which rule finds each, where and how gravely, and its cure.

Each stands in the aircraft by its shape, or is laid in its right answer by one mistake of a builder; the
cure takes it out again. Not tested, since nothing works it out yet: how the volume of a smaller bore is
spent beyond the stroke that it needs; and a hose too short or too stiff for the swing of its cylinder.
"""

from __future__ import annotations

import pytest
from traps import cured, laid, level, said
from traps_of_fennimoss import AS_WRITTEN, BY_SHAPE, MISTAKES

from firmpedal.finding import Level
from firmpedal.pipeline import evaluate_text
from texts import example

NAME = "fennimoss"


@pytest.mark.parametrize("trap", [*AS_WRITTEN, *BY_SHAPE], ids=str)
def test_it_stands_in_the_aircraft(trap):
    assert [level(item) for item in said(trap, example(NAME), trap.option)] == [trap.level]


@pytest.mark.parametrize("trap", MISTAKES, ids=str)
def test_the_right_answer_does_not_have_it(trap):
    assert not said(trap, example(NAME), trap.option)


@pytest.mark.parametrize("trap", MISTAKES, ids=str)
def test_one_mistake_brings_it_in(trap):
    assert [level(item) for item in said(trap, laid(trap, example(NAME)), trap.option)] == [trap.level]


@pytest.mark.parametrize(
    "trap", [trap for trap in (*AS_WRITTEN, *BY_SHAPE, *MISTAKES) if trap.has_cure], ids=str
)
def test_the_cure_takes_it_away(trap):
    """A high point that another attitude does not have stays worth a note; it is no longer a fault."""
    left = [item for item in cured(trap, example(NAME)) if level(item) is not Level.NOTE]
    assert not left
    assert trap.level is not Level.NOTE or not cured(trap, example(NAME))


def test_bends_3_and_4_are_made_after_threading_in():
    (trap,) = [trap for trap in BY_SHAPE if trap.number == 6]
    (finding,) = said(trap, example(NAME), "rigid")
    assert finding.tries[0].startswith("thread it in before bends 3, 4 and the flare at the last end")


def test_the_floor_ends_before_the_tube_climbs_through_its_level_again():
    """It crosses z 0 near x 12.5 and near x 89, and only the first of them is floor."""
    (trap,) = [trap for trap in MISTAKES if (trap.number, trap.place) == (11, "lines.left_keel")]
    found = evaluate_text(laid(trap, example(NAME)), "text", "rigid").findings
    owed = [item for item in found if item.rule == trap.rule and item.place == trap.place]
    assert len(owed) == 1
