"""The clock face says which way the next bend goes: checked against bent tubes in space."""

from __future__ import annotations

import math
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from firmpedal.lay.centreline import Bend, centreline, waypoints
from firmpedal.quantity import Mark, exactly
from firmpedal.report.bend_blocks import turns_of
from firmpedal.report.clock import clock_time, faces, ring, turn_size, turn_words
from firmpedal.report.sheet import Label, Stroke
from firmpedal.units import Dimension


def turn(degrees: float):
    return exactly("rotation", Dimension.ANGLE, math.radians(degrees), Mark.DERIVED)


def seen_from_the_first_end(points, corner):
    """Where the next leg goes after `corner`, in degrees clockwise from the leg before the last bend.

    The eye looks along the tube. A watch held in front of the eye runs from up over right; right is
    the way of looking crossed with up.
    """
    before, here, there, after = (np.array(points[corner + n]) for n in (-2, -1, 0, 1))
    ahead = (there - here) / np.linalg.norm(there - here)
    up = (before - here) - np.dot(before - here, ahead) * ahead
    up /= np.linalg.norm(up)
    right = np.cross(ahead, up)
    away = after - there
    return math.degrees(math.atan2(float(away @ right), float(away @ up)))


@pytest.mark.parametrize("rotation", [0, 30, 90, 129.5, 157.5, 179, -30, -90, -129.5, 180])
@pytest.mark.parametrize("feed", [(0, 0, 1), (1, 0, 0), (0, -1, 0)])
def test_the_hand_points_to_where_the_next_bend_goes(rotation, feed):
    square = (0.0, 1.0, 0.0) if feed[1] == 0 else (1.0, 0.0, 0.0)
    bends = tuple(
        Bend(n, math.radians(angle), math.radians(turned), 1.0, math.tan(math.radians(angle) / 2))
        for n, (angle, turned) in enumerate(((60, 0), (40, rotation)), 1)
    )
    points = waypoints((5.0, 6.0, 7.0), bends, (0.0, 0.0, 0.0), tuple(map(float, feed)), square)
    seen = seen_from_the_first_end(points, 2)
    assert math.isclose(math.remainder(seen - rotation, 360), 0, abs_tol=1e-6)
    laid = centreline(points, 1.0)
    assert clock_time(laid.bends[1].rotation) == clock_time(math.radians(seen))


@pytest.mark.parametrize(
    ("degrees", "time"),
    [
        (0, "12:00"),
        (90, "3:00"),
        (-90, "9:00"),
        (180, "6:00"),
        (129.5, "4:20"),
        (-129.5, "7:40"),
        (359, "12:00"),
    ],
)
def test_a_turn_reads_as_a_time(degrees, time):
    assert clock_time(math.radians(degrees)) == time


def test_a_turn_in_words():
    assert turn_words(turn(20)) == "clockwise"
    assert turn_words(turn(-20)) == "anticlockwise"
    assert turn_words(turn(180)) == turn_words(turn(-180)) == "half a turn"
    assert turn_words(turn(0)) == "no turn"


def test_a_turn_with_its_size_is_read_off_without_a_sign():
    assert turn_size(turn(-129.5)) == "129.5\u00b0 anticlockwise"
    assert turn_size(turn(180)) == "half a turn"
    span = tuple(math.radians(end) for end in (-117.5, -112.5))
    assert turn_size(replace(turn(0), span=span)) == "112.5 to 117.5\u00b0 anticlockwise"


@pytest.mark.parametrize(
    ("rotations", "in_all"),
    [((120, 100), -140), ((-120, -78.4), 161.6), ((150, 30), 180), ((90, -30), 60)],
)
def test_turns_one_after_another_go_the_shorter_way_round(rotations, in_all):
    """A tube whose first and last bends are made before the one between is turned past the middle one."""
    bends = tuple(SimpleNamespace(rotation=turn(each)) for each in (0, *rotations))
    steps = tuple(SimpleNamespace(bend=bend) for bend in (0, 2, 1))
    found = turns_of(SimpleNamespace(bends=bends), steps)
    assert math.degrees(found[2].rotation.middle) == pytest.approx(in_all)
    assert math.degrees(found[1].rotation.middle) == pytest.approx(rotations[0])


@pytest.mark.parametrize(("rotation", "side"), [(90, 1), (-90, -1)])
def test_clockwise_is_drawn_to_the_right(rotation, side):
    drawing = faces([(2, turn(rotation))])
    hand = max((mark for mark in drawing.marks if isinstance(mark, Stroke)), key=lambda mark: mark.weight)
    (x, y), (x1, y1) = hand.points
    assert (x1 - x) * side > 20
    assert y1 == pytest.approx(y, abs=0.01)


def test_each_bend_gets_its_face_and_none_leaves_the_drawing():
    drawing = faces([(number, turn(20 * number)) for number in range(2, 13)])
    times = [mark.text for mark in drawing.marks if isinstance(mark, Label) and ":" in mark.text]
    assert len(times) == 11
    for label in (mark for mark in drawing.marks if isinstance(mark, Label)):
        wide = 0.602 * label.size * len(label.text)
        left = label.at[0] - (wide / 2 if label.anchor == "middle" else 0)
        assert left >= 0
        assert left + wide <= drawing.size[0]
        assert 0 <= label.at[1] <= drawing.size[1]


def test_numbers_beyond_the_rings_of_the_type_stand_in_brackets():
    assert [ring(1), ring(20), ring(21)] == ["\u2460", "\u2473", "(21)"]
