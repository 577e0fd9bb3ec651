"""Panels as plates, what sits on them, and how their holes lie on paper, each worked out by hand."""

from __future__ import annotations

import pytest
from test_panels import passed
from test_through_hole import BENT, STRAIGHT

from firmpedal.lay.around import things_about
from firmpedal.lay.panels import lies_on
from firmpedal.model.space import Position
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Mark, exactly
from firmpedal.report.line_holes import line_hole_marks
from firmpedal.units import Dimension, from_unit, to_unit

INCH = from_unit(1, "in")


def plate(where, thickness):
    text = STRAIGHT.replace("where: {up: 0}", f"where: {where}").replace("0.040", thickness)
    (thing,) = things_about(evaluate_text(text).aircraft)
    return thing


@pytest.mark.parametrize(
    ("where", "thickness", "low", "high", "off"),
    [  # half the thickness to either side; half of every range is how far the surface can be off
        ("{up: 2}", "0.5", 1.75, 2.25, 0),
        ("{up: 2}", "0.4 to 0.6", 1.75, 2.25, 0.05),
        ("{up: 1.9 to 2.1}", "0.5", 1.75, 2.25, 0.1),
        ("{up: 1.9 to 2.1}", "0.4 to 0.6", 1.75, 2.25, 0.15),
        ("{up: 2}", "unknown", 2, 2, 0),
    ],
)
def test_a_panel_is_a_plate_with_half_its_thickness_to_either_side(where, thickness, low, high, off):
    thing = plate(where, thickness)
    assert to_unit(thing.solid.low[2], "in") == pytest.approx(low)
    assert to_unit(thing.solid.high[2], "in") == pytest.approx(high)
    assert to_unit(thing.off, "in") == pytest.approx(off, abs=1e-12)
    assert thing.through == ("run",)


@pytest.mark.parametrize(
    ("place", "on"),
    [  # a quarter of an inch, as closely as such places are measured
        ((0, 0, 2), True),
        ((0, 0, 2.24), True),
        ((0, 0, 1.76), True),
        ((0, 0, 2.26), False),
        ((0, 0, 1.74), False),
        ((3.24, 0, 2), True),
        ((3.26, 0, 2), False),
        ((0, -1.24, 2), True),
        ((0, -1.26, 2), False),
    ],
)
def test_what_lies_on_a_sheet(place, on):
    text = STRAIGHT.replace("where: {up: 0}", "where: {up: 2, within: [[-3, -1, 2], [3, 1, 2]]}")
    (panel,) = evaluate_text(text).aircraft.panels
    numbers = [exactly("place", Dimension.LENGTH, one * INCH, Mark.MEASURED) for one in place]
    assert lies_on(Position(*numbers), panel.where) is on


@pytest.mark.parametrize(
    ("where", "asked"),
    # the tube runs down from 4 to -6 and then aft: both ends of the range count, not the middle alone
    [("{up: 2 to 4.5}", True), ("{up: -7 to 0}", True), ("{up: -5 to 3.9}", False)],
)
def test_both_ends_of_where_a_panel_may_be_are_looked_at(where, asked):
    assert bool(passed(where).unsure) is asked


@pytest.mark.parametrize(
    ("where", "top", "face"),
    [  # a floor is seen from above, its top is forward; on a wall up is up
        ("{up: 0}", "forward", "seen from above or below"),
        ("{aft: 17}", "up", "seen from ahead or behind"),
    ],
)
def test_the_hole_of_a_line_says_which_end_is_top(where, top, face):
    text = BENT.replace("where: {up: 0}", f"where: {where}")
    (marks,) = line_hole_marks(evaluate_text(text))
    words = [mark.text for mark in marks if hasattr(mark, "text")]
    assert top in words
    assert {"forward", "up"} - {top} not in ({word} for word in words)
    assert face in words


def test_the_hole_in_a_wall_that_faces_sideways():
    text = STRAIGHT.replace("where: {up: 0}", "where: {right: 3}").replace("[16, 0, -6]", "[10, 6, -6]")
    (marks,) = line_hole_marks(evaluate_text(text))
    words = [mark.text for mark in marks if hasattr(mark, "text")]
    assert "up" in words
    assert "seen from either side" in words


@pytest.mark.parametrize("hole", ["0.7 to 0.8", "unknown"])
def test_a_hole_that_is_not_known_exactly_is_not_cut_out(hole):
    assert line_hole_marks(evaluate_text(BENT.replace("hole: 3/4", f"hole: {hole}"))) == []
