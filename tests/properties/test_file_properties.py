"""What a mirrored thing does is the mirror image of what the thing does."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from firmpedal.lay.moves import turned
from firmpedal.model.aircraft import find
from firmpedal.model.surroundings import Swing
from firmpedal.project import read_text

TEXT = """\
firmpedal: 1
aircraft: {{name: Test, gear: tailwheel, brakes: toe}}
units: {{length: in, angle: deg}}
states:
  rudder: {{from: -1, to: 1, opposite when mirrored: {opposite}}}
moving:
  left_thing: {{rudder: {movement}}}
mirror: [left_thing]
"""

COORDINATE = st.integers(-400, 400).map(lambda number: number / 8)
POINTS = st.tuples(COORDINATE, COORDINATE, COORDINATE)
AXES = st.tuples(*[st.integers(-5, 5)] * 3)
MIRROR = np.array([1.0, -1.0, 1.0])


def both(movement, opposite):
    reading = read_text(TEXT.format(movement=movement, opposite="yes" if opposite else "no"))
    assert reading.problems == ()
    moving = reading.aircraft.moving
    (left,), (right,) = find(moving, "left_thing").motions, find(moving, "right_thing").motions
    return left, right


def moved(motion, point, share):
    """Where a movement takes a point at some part of its full travel."""
    if isinstance(motion, Swing):
        centre = np.array(motion.about.point)
        return centre + turned(point - centre, np.array(motion.axis.vector), share * motion.angle.middle)
    return point + share * np.array(motion.by.point)


def check(movement, opposite, point, share):
    left, right = both(movement, opposite)
    own = np.array(point) * 0.0254
    image = moved(left, own, -share if opposite else share) * MIRROR
    assert moved(right, own * MIRROR, share) == pytest.approx(image, abs=1e-12)


@given(POINTS, AXES, st.integers(-90, 90), POINTS, st.booleans(), st.sampled_from([-1.0, 0.3, 1.0]))
def test_mirrored_swing_moves_the_mirrored_point_to_the_mirror_image(
    about, axis, angle, point, opposite, share
):
    assume(any(axis))
    movement = f"{{about: {list(about)}, axis: {list(axis)}, swing: {angle}}}"
    check(movement, opposite, point, share)


@given(POINTS, POINTS, st.booleans(), st.sampled_from([-1.0, 0.3, 1.0]))
def test_mirrored_shift_moves_the_mirrored_point_to_the_mirror_image(vector, point, opposite, share):
    check(str(list(vector)), opposite, point, share)


@given(POINTS, POINTS)
def test_mirroring_twice_gives_the_point_back(point, step):
    line = f"points: {{a: {list(point)}, b: {{from: a, aft: {step[0]}, left: {step[1]}, up: {step[2]}}}"
    text = TEXT.format(movement="[0, 0, 0]", opposite="no") + line
    text += ", x: {mirror of: a}, y: {mirror of: b}, p: {mirror of: x}, q: {mirror of: y}}\n"
    reading = read_text(text)
    assert reading.problems == ()
    found = {each.name: each.position for each in reading.aircraft.points}
    for first, image, back in (("a", "x", "p"), ("b", "y", "q")):
        assert found[image].point == pytest.approx(tuple(np.array(found[first].point) * MIRROR))
        assert found[back].point == pytest.approx(found[first].point)
