"""Drawings cut into pieces: nothing is lost, nothing is moved, and neighbours share their crosses."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest

from firmpedal.report.marks import bounds, label_box, moved, row, row_width
from firmpedal.report.placing import Box
from firmpedal.report.sheet import Dot, Label, Stroke
from firmpedal.report.strip import CLEAR, Flag, Strip, joints, pieces
from firmpedal.report.tiling import FLAP, clip_line, clipped, piece, tiles, words_inside

SQUARE = Box(0.0, 0.0, 10.0, 10.0)


def length(lines) -> float:
    return sum(math.dist(a, b) for line in lines for a, b in pairwise(line))


def test_line_through_a_box_is_cut_at_its_edges():
    assert clip_line(((-5.0, 5.0), (15.0, 5.0)), SQUARE) == (((0.0, 5.0), (10.0, 5.0)),)


def test_line_that_leaves_and_comes_back_gives_two():
    found = clip_line(((5.0, 5.0), (15.0, 5.0), (15.0, 8.0), (5.0, 8.0)), SQUARE)
    assert found == (((5.0, 5.0), (10.0, 5.0)), ((10.0, 8.0), (5.0, 8.0)))


def test_line_inside_stays_one_line():
    inside = ((1.0, 1.0), (9.0, 1.0), (9.0, 9.0))
    assert clip_line(inside, SQUARE) == (inside,)


@pytest.mark.parametrize(
    "line", [((-1.0, 12.0), (11.0, 12.0)), ((-3.0, 8.0), (2.0, 13.0)), ((12.0, 0.0), (12.0, 9.0))]
)
def test_line_outside_gives_nothing(line):
    assert clip_line(line, SQUARE) == ()


def test_slanting_line_keeps_its_place():
    ((first, last),) = clip_line(((-10.0, -5.0), (20.0, 10.0)), SQUARE)
    assert first == pytest.approx((0.0, 0.0))
    assert last == pytest.approx((10.0, 5.0))


def test_dots_and_words_are_shown_whole_or_not_at_all():
    inside, across = Label("x", (5.0, 5.0), 4.0), Label("a long word", (9.0, 5.0), 4.0)
    assert clipped((inside, across, Dot((1.0, 1.0), 2.0)), SQUARE) == (inside,)


def test_cores_cover_a_drawing_once():
    whole = Box(3.0, -20.0, 1200.0, 900.0)
    spiral = tuple((600 + n * math.cos(n / 7), 430 + n * 0.8 * math.sin(n / 7)) for n in range(500))
    cut = tiles(whole, (400.0, 300.0), FLAP)
    assert len(cut) == 16
    assert all(
        tile.shown.right - tile.shown.left <= 400 and tile.shown.high - tile.shown.low <= 300 for tile in cut
    )
    assert sum(length(clip_line(spiral, tile.core)) for tile in cut) == pytest.approx(length([spiral]))


def test_what_fits_is_not_cut():
    (only,) = tiles(Box(0, 0, 400, 300), (400.0, 300.0), FLAP)
    assert only.joints == ()
    assert only.core == only.shown == Box(0, 0, 400, 300)


def test_each_joint_stands_on_two_pieces_in_the_same_place_and_inside_both():
    cut = tiles(Box(0.0, 0.0, 1000.0, 500.0), (400.0, 300.0), FLAP)
    names = sorted(joint.name for tile in cut for joint in tile.joints)
    assert names == sorted(2 * [f"J{n}" for n in range(1, 8)])
    places = {(joint.name, joint.crosses) for tile in cut for joint in tile.joints}
    assert len(places) == 7
    for tile in cut:
        frame = tile.shown.grown(0.5)
        assert all(bounds([mark]).inside(frame) for mark in piece((), tile))


def test_words_that_no_piece_shows_are_shifted_into_one():
    cut = tiles(Box(0.0, 0.0, 1000.0, 100.0), (400.0, 300.0), FLAP)
    word = Label("a word of some length across the joint", (cut[0].core.right, 50.0), 11.0)
    (shifted,) = words_inside([word], cut)
    assert sum(label_box(shifted).inside(tile.shown) for tile in cut) == 1
    assert shifted.at[1] == word.at[1]


def test_ring_in_a_row_stands_by_itself():
    marks = row("to \u2461 now", (100.0, 0.0), 10.0)
    assert [mark.text for mark in marks] == ["to ", "\u2461", " now"]
    box = bounds(marks)
    assert box.right - box.left == pytest.approx(row_width("to \u2461 now", 10.0), abs=0.5)


def strip(stations, ending=2000.0) -> Strip:
    flags = tuple(Flag(station, (f"{station:g} in", "39.1\u00b0, set ____\u00b0")) for station in stations)
    return Strip(18.0, (-1.0, ending + 1), (0.0, ending), ((100.0, 150.0),), flags, "some_line", 72.0, 1)


def test_strip_is_cut_clear_of_marks():
    close = strip([700.0, 715.0, 730.0, 1380.0])
    cuts = joints(close, 750.0)
    assert len(cuts) == 2
    assert all(abs(flag.station - cut) >= CLEAR for flag in close.flags for cut in cuts)


def test_strip_is_cut_even_where_marks_stand_everywhere():
    crowded = strip([float(n) for n in range(0, 2000, 20)])
    assert len(joints(crowded, 750.0)) == 2


@pytest.mark.parametrize("stations", [[100.0, 700.0], [100.0, 110.0, 120.0, 130.0], [1990.0, 1970.0, 1950.0]])
def test_words_on_a_strip_stand_clear_of_each_other_and_of_lines(stations):
    for marks in pieces(strip(stations), 750.0):
        words = [label_box(mark).grown(-1.0) for mark in marks if isinstance(mark, Label)]
        assert not any(one.meets(other) for n, one in enumerate(words) for other in words[n + 1 :])
        flags = [mark for mark in marks if isinstance(mark, Stroke) and mark.weight == 0.9]
        assert not any(box.cuts((flag.points[0], flag.points[1])) for box in words for flag in flags)


def test_every_piece_of_a_strip_fits_the_width_and_says_what_it_is():
    found = pieces(strip([100.0, 900.0, 1800.0]), 750.0)
    assert len(found) == 3
    for number, marks in enumerate(found, 1):
        box = bounds(marks)
        assert box.right - box.left <= 751
        assert f"some_line, {number} of 3" in [mark.text for mark in marks if isinstance(mark, Label)]


def test_moved_marks_keep_their_size():
    marks = (Stroke(((0.0, 0.0), (3.0, 4.0))), Dot((1.0, 1.0), 2.0), Label("x", (5.0, 5.0)))
    before, after = bounds(marks), bounds(moved(marks, (10.0, -7.0)))
    assert (after.left, after.low) == pytest.approx((before.left + 10, before.low - 7))
    assert (after.right, after.high) == pytest.approx((before.right + 10, before.high - 7))
