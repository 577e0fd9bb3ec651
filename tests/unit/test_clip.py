"""Clipping of a path to convex zones: by hand, and beside dense sampling."""

from math import sqrt

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from firmpedal.lay.centreline import centreline, sample
from firmpedal.lay.clip import (
    Ball,
    Both,
    Box,
    HalfSpace,
    crossings,
    intervals,
    point_on,
)

TIGHT = 1e-8  # ten times what a zone is grown by


def path(*points):
    points = np.array(points, dtype=float)
    chords = np.linalg.norm(np.diff(points, axis=0), axis=1)
    return points, np.concatenate([[0.0], np.cumsum(chords)])


LEG = path((0, 0, 0), (0, 0, -10), (10, 0, -10))  # down ten, aft ten


class TestByHand:
    def test_half_space(self):
        assert intervals(*LEG, HalfSpace(2, -1, -4)) == (pytest.approx((4, 20), abs=TIGHT),)
        assert intervals(*LEG, HalfSpace(2, 1, -4)) == (pytest.approx((0, 4), abs=TIGHT),)
        assert intervals(*LEG, HalfSpace(0, 1, 7)) == (pytest.approx((17, 20), abs=TIGHT),)

    def test_box(self):
        inside = Box((-1, -1, -12), (3, 1, -8))
        assert intervals(*LEG, inside) == (pytest.approx((8, 13), abs=TIGHT),)

    def test_ball_about_the_corner_joins_both_sides_of_it(self):
        assert intervals(*LEG, Ball((0, 0, -10), 2)) == (pytest.approx((8, 12), abs=TIGHT),)

    def test_ball_off_the_path(self):
        half = sqrt(5**2 - 3**2)
        assert intervals(*LEG, Ball((0, 3, -5), 5)) == (pytest.approx((5 - half, 5 + half), abs=TIGHT),)

    def test_a_path_that_leaves_and_comes_back_has_two_stretches(self):
        there_and_back = path((0, 0, 0), (10, 0, 0), (10, 2, 0), (0, 2, 0))
        stretches = intervals(*there_and_back, HalfSpace(0, -1, 4))
        assert stretches == (pytest.approx((0, 4), abs=TIGHT), pytest.approx((18, 22), abs=TIGHT))

    def test_both(self):
        between = Both((HalfSpace(2, -1, -5), HalfSpace(2, 1, -28)))
        leg = path((0, 0, 0), (0, 0, -40))
        assert intervals(*leg, between) == (pytest.approx((5, 28), abs=TIGHT),)

    def test_both_of_nothing_is_everywhere(self):
        assert intervals(*LEG, Both(())) == ((0.0, 20.0),)

    def test_nothing_in_common_is_nowhere(self):
        assert intervals(*LEG, Both((HalfSpace(2, 1, -3), HalfSpace(2, -1, -4)))) == ()
        assert intervals(*LEG, Box((5, 5, 5), (6, 6, 6))) == ()

    def test_a_path_along_a_face_is_in_the_zone_whatever_its_rounding(self):
        noise = 1e-13
        along = path((0, 0, -35), (1, 0, -35 + noise), (2, 0, -35 - noise), (3, 0, -35))
        for zone in (HalfSpace(2, 1, -35), HalfSpace(2, -1, -35), Box((-1, -1, -35), (4, 1, 0))):
            assert intervals(*along, zone) == (pytest.approx((0, 3), abs=TIGHT),)

    def test_a_touch_is_no_stretch(self):
        assert intervals(*LEG, HalfSpace(2, 1, 0)) == ()  # the path starts on the plane
        assert intervals(*LEG, HalfSpace(0, 1, 10)) == ()  # and ends on this one

    def test_a_repeated_point_changes_nothing(self):
        points, stations = LEG
        twice = np.repeat(points, 2, axis=0), np.repeat(stations, 2)
        for zone in (HalfSpace(2, -1, -4), Ball((0, 0, -10), 2)):
            assert intervals(*twice, zone) == intervals(*LEG, zone)

    def test_stations_need_not_be_the_chords(self):
        """On an arc the station runs a little further than the chord; it is shared out along it."""
        points, stations = LEG
        assert intervals(points, 2 * stations, HalfSpace(2, -1, -4)) == (pytest.approx((8, 40), abs=TIGHT),)

    def test_crossings_are_not_the_ends_of_the_path(self):
        ((station, point),) = crossings(*LEG, HalfSpace(2, -1, -4))
        assert station == pytest.approx(4, abs=TIGHT)
        assert point == pytest.approx((0, 0, -4), abs=TIGHT)
        two = crossings(*LEG, Ball((0, 0, -10), 2))
        assert [point for _, point in two] == [
            pytest.approx((0, 0, -8), abs=TIGHT),
            pytest.approx((2, 0, -10), abs=TIGHT),
        ]
        assert crossings(*LEG, HalfSpace(2, -1, 5)) == ()

    def test_point_on(self):
        assert point_on(*LEG, 12.5) == pytest.approx((2.5, 0, -10))
        with pytest.raises(ValueError, match="not on a path"):
            point_on(*LEG, 20.1)


class TestInventedAircraft:
    """Invented aircraft, worked by hand, in inches: where a keel tube goes through the cabin floor."""

    FLOOR = HalfSpace(2, -1, 0)

    def test_high_wing_with_the_valve_on_the_tunnel(self):
        corners = (
            (6.0, -0.6, 1.5),
            (9.0, -0.6, 1.5),
            (10.5, -2.5, -0.5),
            (43.0, -2.5, -0.5),
            (44.5, -14.0, -1.2),
            (46.0, -15.0, -1.9),
        )
        ((_, hole),) = crossings(*sample(centreline(corners, 0.75), 0.1), self.FLOOR)
        assert hole == pytest.approx((10.1, -2.0, 0), abs=0.05)

    def test_canard_with_the_bracket_at_the_heel_brakes(self):
        """The tube comes up again behind the seats; the first hole is the one through the floor."""
        corners = (
            (7.5, -4.0, 1.0),
            (12.0, -4.0, 1.0),
            (14.0, -2.2, -3.0),
            (88.0, -2.2, -1.0),
            (92.0, -6.0, 3.0),
            (94.5, -14.0, 7.0),
        )
        (_, hole), (_, rise) = crossings(*sample(centreline(corners, 0.5), 0.1), self.FLOOR)
        assert hole == pytest.approx((12.5, -3.6, 0), abs=0.0501)  # -3.55, rounded up by hand
        assert 88 < rise[0] < 92


COORDINATE = st.floats(-5, 5)
POINTS = st.tuples(COORDINATE, COORDINATE, COORDINATE)


@st.composite
def boxes(draw):
    low = np.array(draw(POINTS))
    size = np.array(draw(st.tuples(*[st.floats(0.2, 5)] * 3)))
    return Box(tuple(low.tolist()), tuple((low + size).tolist()))


BALLS = st.builds(Ball, POINTS, st.floats(0.1, 5))
HALVES = st.builds(HalfSpace, st.integers(0, 2), st.sampled_from([-1, 1]), COORDINATE)
SOLIDS = st.one_of(boxes(), BALLS, HALVES)
SHAPES = st.one_of(SOLIDS, st.builds(Both, st.tuples(SOLIDS, SOLIDS)))


@st.composite
def paths(draw):
    points = draw(st.lists(POINTS, min_size=2, max_size=5))
    path_points, stations = path(*points)
    assume(np.all(np.diff(stations) > 0.1))
    return path_points, stations


def depth(point, shape):
    """How deep a point is inside, negative outside; only its sign and its zero are exact."""
    match shape:
        case Box(low, high):
            return min(*(point - np.array(low)), *(np.array(high) - point))
        case Ball(centre, radius):
            return radius - np.linalg.norm(point - np.array(centre))
        case HalfSpace(axis, sign, offset):
            return sign * (point[axis] - offset)
        case Both(parts):
            return min(depth(point, part) for part in parts)


@given(paths(), SHAPES, st.lists(st.floats(0, 1), min_size=20, max_size=20))
def test_a_place_is_in_the_zone_exactly_where_the_stretches_say(the_path, shape, shares):
    points, stations = the_path
    stretches = intervals(points, stations, shape)
    for station in np.array(shares) * stations[-1]:
        deep = depth(np.array(point_on(points, stations, station)), shape)
        if abs(deep) > 1e-6:
            assert any(start <= station <= stop for start, stop in stretches) == (deep > 0)


@given(paths(), SHAPES)
def test_stretches_are_in_order_apart_and_end_on_the_boundary(the_path, shape):
    points, stations = the_path
    stretches = intervals(points, stations, shape)
    flat = [station for stretch in stretches for station in stretch]
    assert flat == sorted(flat)
    assert all(0 <= station <= stations[-1] + TIGHT for station in flat)
    for _, point in crossings(points, stations, shape):
        assert abs(depth(np.array(point), shape)) < TIGHT


@given(paths(), SHAPES)
def test_the_path_the_other_way_gives_the_same_stretches(the_path, shape):
    points, stations = the_path
    forth = intervals(points, stations, shape)
    back = intervals(points[::-1], stations[-1] - stations[::-1], shape)
    assume(all(stop - start > 1e-5 for start, stop in forth + back))
    mirrored = [(stations[-1] - stop, stations[-1] - start) for start, stop in back[::-1]]
    assert np.array(mirrored) == pytest.approx(np.array(forth), abs=1e-6)
