"""Figures that only the part in hand has: an elbow's leg, where its middle stands, how a line is held."""

from __future__ import annotations

import pytest

from firmpedal.lay.port_fittings import port_fittings
from firmpedal.pipeline import evaluate_text
from firmpedal.report.to_measure import to_measure
from firmpedal.units import from_unit, to_unit
from texts import edited, small

INLET = "inlet: {thread: 1/8 NPT female, faces: forward, seat: [16, 0, -6]"
TUBE = "made of: tube 5052-O 1/4 x .035"
NYLON = "made of: plastic nylon 1/4 x .040"


def evaluated(*edits):
    return evaluate_text(edited(small("quillfen"), *edits), "text")


def elbow(words):
    port = "inlet: {thread: 1/8 NPT female, faces: forward, at: [16, 0, -6], arm: up"
    evaluation = evaluated((INLET, f"{port}{words}"))
    caliper = evaluation.aircraft.calipers[0]
    return port_fittings(caliper, evaluation.assembly, evaluation.laid)[0]


def test_a_leg_in_hand_takes_the_place_of_its_estimate():
    assert not elbow("").length.exact
    assert to_unit(elbow(", outlet leg: 0.91").length.middle, "in") == pytest.approx(0.91)


def test_a_middle_as_measured_needs_no_thread():
    """By hand: its middle is the face of the thread and .62 in along the port's way, and no range is left."""
    assert not elbow("").along.exact
    found = elbow(", outlet leg: 0.91, stands off: 0.62")
    assert found.along.exact
    (leg,) = found.legs
    place = [to_unit(part, "in") for part in leg.crossing]
    assert place == pytest.approx([16 - 0.62, 0, -6])


def spacing(stock, words=""):
    line = f"{stock}\n    clamp spacing: {words}" if words else stock
    return next(one for one in evaluated((TUBE, line)).laid if one.name == "run").supports.spacing


def test_the_makers_spacing_counts_where_no_table_has_one():
    assert not spacing(NYLON).known
    assert [one.place for one in spacing(NYLON).missing] == ["lines.run.clamp spacing"]
    assert spacing(NYLON, "10").high == from_unit(10, "in")


def test_the_makers_spacing_never_loosens_the_table():
    table = spacing(TUBE)
    assert spacing(TUBE, "10").high == from_unit(10, "in") < table.low
    assert spacing(TUBE, "90") == table


def test_the_question_has_a_box():
    asked = {one.at: one for one in to_measure(evaluated((TUBE, NYLON)))}
    assert asked["lines.run.clamp spacing"].unit == "in"
    assert "maker" in asked["lines.run.clamp spacing"].how
