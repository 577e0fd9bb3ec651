"""A thread of which nobody knows how far it screws in: nothing is cut by it, and the fluid is known well."""

from __future__ import annotations

import math

import pytest
from chained_calipers import FACE, SEAT, TEXT

from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Mark
from texts import edited

BORE = (6.35 - 2 * 0.889) / 1000  # of 1/4 in x .035 in tube [m]


def evaluated(*edits):
    return evaluate_text(edited(TEXT, *edits))


def volume(evaluation):
    names = [line.name for line in evaluation.laid]
    return evaluation.results.volumes[names.index("down")]


def test_the_cut_stays_unknown_and_the_volume_is_a_range():
    evaluation = evaluated((SEAT, FACE))
    down = next(line for line in evaluation.laid if line.name == "down")
    assert not down.cut_length.known
    assert volume(evaluation).known
    assert volume(evaluation).mark is Mark.ESTIMATE


def test_the_range_is_as_wide_as_the_thread_and_the_fitting_leave_open():
    """0 to 15 mm of thread, and 1.00 to 1.35 in of adapter, in a bore of 4.57 mm."""
    found = volume(evaluated((SEAT, FACE)))
    wide = (0.015 + 0.35 * 0.0254) * math.pi * BORE**2 / 4
    assert found.high - found.low == pytest.approx(wide, rel=0.02)


def test_the_range_holds_what_the_same_line_takes_from_a_measured_seat():
    """Of an adapter 1.2 in long that screws in 10 mm the seat is 20.48 mm below the face."""
    seat = "thread: M10 x 1 female, faces: down, seat: [300, -150, -0.48], seat measured with: MET-S-M10x1x4D"
    open_one, measured = (volume(evaluated((SEAT, words))) for words in (FACE, seat))
    assert measured.exact
    assert open_one.low < measured.middle < open_one.high


def test_what_rests_on_the_fluid_is_worked_out():
    results = evaluated((SEAT, FACE)).results
    assert all(budget.cold.known and budget.gap.known for budget in results.budgets)


def test_the_question_names_the_way_out():
    evaluation = evaluated((SEAT, FACE))
    asked = {missing for each in evaluation.not_shown for missing in each.missing}
    (one,) = (each for each in asked if "M10x1 screws in" in each.what)
    assert "cylinder.outlet" in one.what
    assert "write it as the seat of this port" in one.what
    assert one.place == "components.cylinder.ports.outlet.seat"
