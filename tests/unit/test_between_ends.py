"""A bent tube laid between two places: against brute force, and by hand."""

from __future__ import annotations

from itertools import combinations
from math import cos, dist, pi, radians, sin

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from firmpedal.lay.between_ends import laid_between
from firmpedal.lay.centreline import waypoints
from firmpedal.lay.half_bent import BendData
from firmpedal.lay.shape import Bend

NEAR = 1e-12
PLACES = st.tuples(*[st.floats(-2, 2)] * 3)
UP, AFT, BACK = (0.0, 0.0, 1.0), (1.0, 0.0, 0.0), (-1.0, 0.0, 0.0)


def tube(*bends, straights):
    return BendData(straights, tuple(Bend(n, *each, 0.0) for n, each in enumerate(bends, 1)))


# one bend of 90 degrees: corner 0.3 m up, then 0.4 m aft; the ends are 0.5 m apart
ELBOW = tube((pi / 2, 0.0, 0.1), straights=(0.2, 0.3))
TWISTED = tube((1.1, 0.0, 0.05), (0.7, 2.0, 0.05), (1.4, -1.2, 0.05), straights=(0.3, 0.2, 0.25, 0.3))


def test_an_elbow_stands_as_its_first_straight_should():
    found = laid_between(ELBOW, (1.0, 2.0, 3.0), (1.4, 2.0, 3.3), (UP, None))
    assert found.corners == tuple(pytest.approx(p) for p in ((1, 2, 3), (1, 2, 3.3), (1.4, 2, 3.3)))
    assert found.overshoot == pytest.approx(0, abs=NEAR)
    assert found.off == (pytest.approx(0, abs=1e-7), None)


def test_the_other_way_round_it_lies_on_the_other_side():
    found = laid_between(ELBOW, (1.0, 2.0, 3.0), (1.4, 2.0, 3.3), (AFT, None))
    # mirrored at the line between the ends: the corner (0, 0.3) goes to (0.288, -0.084), by 3-4-5 triangles
    assert found.corners[1] == pytest.approx((1 + 0.288, 2, 3 - 0.084))


def test_the_last_straight_alone_can_say_it_too():
    found = laid_between(ELBOW, (0.0, 0.0, 0.0), (0.4, 0.0, 0.3), (None, BACK))
    assert found.corners[1] == pytest.approx((0, 0, 0.3))


def test_ends_too_far_apart_are_told_and_the_first_one_holds():
    found = laid_between(ELBOW, (0.0, 0.0, 0.0), (0.4 * 0.98, 0.0, 0.3 * 0.98), (UP, None))
    assert found.overshoot == pytest.approx(0.5 * 0.02)
    assert found.corners[0] == (0, 0, 0)
    assert dist(found.corners[-1], (0.4 * 0.98, 0.0, 0.3 * 0.98)) == pytest.approx(0.5 * 0.02)


def test_nothing_said_and_nothing_that_leans_is_not_known():
    along = (0.8, 0.0, 0.6)
    for leaving in ((None, None), (along, None), (None, (-0.8, 0.0, -0.6))):
        assert laid_between(ELBOW, (0.0, 0.0, 0.0), (0.4, 0.0, 0.3), leaving) is None


def test_a_straight_tube_needs_no_word():
    found = laid_between(tube(straights=(0.5,)), (0.0, 0.0, 0.0), (0.4, 0.0, 0.3), (None, None))
    assert found.corners[-1] == pytest.approx((0.4, 0, 0.3))


def test_ends_in_one_place_are_refused():
    # a triangle with sides of 1.3 m; 120 degrees of bend, setback R tan 60, at two of its corners
    setback = 0.1 * 3**0.5
    triangle = tube(
        *[(2 * pi / 3, 0.0, 0.1)] * 2, straights=(1.3 - setback, 1.3 - 2 * setback, 1.3 - setback)
    )
    for wanted in ((0, 0, 0), (1, 0, 0)):
        with pytest.raises(ValueError, match="one place"):
            laid_between(triangle, (0, 0, 0), wanted, (UP, None))
    with pytest.raises(ValueError, match="one place"):
        laid_between(ELBOW, (0, 0, 0), (0, 0, 0), (UP, None))


@given(PLACES, PLACES, PLACES, PLACES)
def test_it_is_moved_as_a_whole_and_turned_as_well_as_can_be(start, finish, first, last):
    assume(dist(start, finish) > 0.1)
    assume(min(np.linalg.norm(first), np.linalg.norm(last)) > 0.1)
    aims = [np.array(one) / np.linalg.norm(one) for one in (first, last)]
    found = laid_between(TWISTED, start, finish, tuple(tuple(aim) for aim in aims))
    assume(found is not None)
    corners = np.array(found.corners)
    plain = waypoints(TWISTED.straights, TWISTED.bends, (0, 0, 0), AFT, UP)
    for n, m in combinations(range(len(plain)), 2):
        assert dist(corners[n], corners[m]) == pytest.approx(dist(plain[n], plain[m]), abs=1e-12)
    handed = np.linalg.det(corners[1:4] - corners[0])
    assert handed == pytest.approx(np.linalg.det(np.array(plain[1:4]) - np.array(plain[0])), abs=1e-12)
    axis = (np.array(finish) - np.array(start)) / dist(start, finish)
    assert np.cross(corners[-1] - corners[0], axis) == pytest.approx(np.zeros(3), abs=1e-12)
    best = agreement(corners, axis, 0.0, aims)
    assert all(agreement(corners, axis, radians(n), aims) <= best + 1e-9 for n in range(1, 360))


def agreement(corners, axis, angle, aims):
    """How well the end straights point, the corners turned on by an angle."""
    cross = np.array([[0, -axis[2], axis[1]], [axis[2], 0, -axis[0]], [-axis[1], axis[0], 0]])
    turn = np.eye(3) + sin(angle) * cross + (1 - cos(angle)) * cross @ cross
    ends = corners[1] - corners[0], corners[-2] - corners[-1]
    return sum(
        float(np.dot(turn @ (end / np.linalg.norm(end)), aim)) for end, aim in zip(ends, aims, strict=True)
    )
