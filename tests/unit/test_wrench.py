"""How far a wrench swings: by hand on walls, corners and slots."""

from __future__ import annotations

from math import acos, asin, degrees, hypot, sqrt

import pytest

from firmpedal.lay.near import Bar, Box, Disc
from firmpedal.lay.wrench import free_swing
from firmpedal.pipeline import evaluate_text
from texts import edited, small

NUT, ALONG = (0.0, 0.0, 0.0), (0.0, 0.0, 2.0)
LENGTH, THIN = 4.0, 0.002
STEP = 4.1  # two steps of two degrees, in which an edge can lie anywhere, and the wrench's thickness


def swing(*solids, nut=NUT, axis=ALONG, length=LENGTH, thickness=THIN):
    return degrees(free_swing(nut, axis, tuple(solids), length, thickness))


def wall(low, high=50):
    """A wall across the first axis."""
    return Box((low, -50, -50), (high, 50, 50))


def test_nothing_in_reach():
    assert swing() == 360
    assert swing(wall(4.1)) == 360


@pytest.mark.parametrize("off", [0.5, 2.0, 3.5])
def test_a_flat_wall_takes_its_share_of_the_circle(off):
    # the end of the wrench meets the wall where its reach towards it is the distance
    assert swing(wall(off)) == pytest.approx(360 - 2 * degrees(acos(off / LENGTH)), abs=STEP)


def test_a_corner_of_two_walls():
    corner = (wall(1.0), Box((-50, 1.0, -50), (50, 50, 50)))
    # each wall blocks acos(1/4) to either side of square to it, and they are square to each other
    assert swing(*corner) == pytest.approx(360 - 90 - 2 * degrees(acos(1 / LENGTH)), abs=STEP)


def test_the_widest_of_several_gaps_counts():
    posts = [Bar((2, 0, -1), (2, 0, 1), 0.1), Bar((0, 2, -1), (0, 2, 1), 0.1)]
    half = degrees(0.1 / 2)
    assert swing(*posts) == pytest.approx(270 - 2 * half, abs=STEP)


def test_a_slot_too_narrow_for_any_swing():
    slot = (wall(0.05), Box((-50, -50, -50), (-0.05, 50, 50)))
    assert swing(*slot) < 5


def test_what_lies_beside_the_plane_of_the_wrench_is_not_met():
    assert swing(Disc((0, 0, 0.5), (0, 0, 1), 10, 0.1)) == 360
    assert swing(Disc((0, 0, 0.0005), (0, 0, 1), 10, 0.1)) == 0


@pytest.mark.parametrize(("face", "swings"), [(0.26, 360), (0.24, 0)])
def test_a_wrench_is_as_thick_as_it_is_and_no_thicker(face, swings):
    """Half a wrench of 0.5 reaches 0.25 along the nut's axis; the plate's face is nearer or further."""
    plate = Disc((0, 0, face + 0.05), (0, 0, 1), 10, 0.1)
    assert swing(plate, thickness=0.5) == swings


@pytest.mark.parametrize(("off", "free"), [(4.24, False), (4.26, True)])
def test_a_wall_is_met_by_the_end_of_the_wrench_and_not_before(off, free):
    """Its end is round, by half its thickness: 4 and 0.25."""
    assert (swing(wall(off), thickness=0.5) == 360) is free


def test_no_more_swing_is_told_than_between_the_blocked_places():
    """Behind a wall, 0.1 off, and a post at 2 before it: a quarter and asin(0.1/4), less asin(0.2/2)."""
    both = Box((-50, -50, -9), (-0.1 - THIN / 2, 50, 9)), Bar((2, 0, -1), (2, 0, 1), 0.2 - THIN / 2)
    clear = 90 + degrees(asin(0.1 / LENGTH)) - degrees(asin(0.2 / 2))
    assert clear - STEP <= swing(*both) <= clear


def test_the_axis_may_point_anywhere():
    tilted = (1 / sqrt(2), 0.0, 1 / sqrt(2))
    assert swing(Box((-50, 2, -50), (50, 50, 50)), axis=tilted) == pytest.approx(240, abs=STEP)


@pytest.mark.parametrize("axis", [(1.0, 2.0, 3.0), (-3.0, 1.0, 2.0), (0.3, 0.2, -0.1), (0.0, 0.0, 5.0)])
def test_a_wrench_on_a_skew_nut_keeps_its_length(axis):
    """A wall square to the wrench's plane, at half its length: it takes 2 acos(1/2), a third of a turn.

    The wall is a wide disc; its axis is square to the nut's, found apart, from the first and second figure.
    """
    square = (axis[1], -axis[0], 0.0) if axis[0] else (1.0, 0.0, 0.0)
    unit = [each / hypot(*square) for each in square]
    wide = Disc(tuple(2.5 * each for each in unit), tuple(unit), 100, 1.0)
    assert swing(wide, axis=axis) == pytest.approx(240, abs=STEP)
    for off, free in ((3.9, False), (4.1, True)):  # of its face, half as thick
        face = Disc(tuple((off + 0.5) * each for each in unit), tuple(unit), 100, 1.0)
        assert (swing(face, axis=axis) == 360) is free


BLOCKS = """keep clear of:
  fore: {kind: structure, where: {box: [[5, -20, 2], [9.5, 20, 6]]}, distance: 0}
  aft: {kind: structure, where: {box: [[10.5, -20, 2], [15, 20, 6]]}, distance: 0}
lines:
"""
NO_CORNER = ("    via:\n      - [10, 0, -6]\n", "")


def hemmed(*edits):
    """The ends where the rule sees no room, with quillfen's outlet in a slot."""
    evaluation = evaluate_text(edited(small("quillfen"), ("lines:\n", BLOCKS), *edits), "text")
    return [item.place for item in evaluation.findings if item.rule == "no-room-for-wrench"]


def test_a_line_whose_ends_are_at_one_point_has_no_direction():
    assert hemmed() == ["lines.run.from"]
    assert hemmed(("seat: [16, 0, -6]", "seat: [10, 0, 4]"), NO_CORNER) == []


def test_a_corner_on_the_seat_gives_no_direction_but_the_next_point_does():
    assert hemmed(("- [10, 0, -6]", "- [10, 0, 4]")) == hemmed(NO_CORNER) == ["lines.run.from"]
