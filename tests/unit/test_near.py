"""How near a path comes to a body: by hand, and beside a general-purpose minimiser."""

from itertools import pairwise
from math import sqrt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import lsq_linear

from firmpedal.lay.near import Bar, Box, Disc, distance, nearest, segments_under

LEG = np.array([(0, 0, 0), (0, 0, -10), (10, 0, -10)], dtype=float)
CUBE = Box((-1, -1, -1), (1, 1, 1))


def ball(centre, radius):
    return Bar(centre, centre, radius)


@pytest.mark.parametrize(
    ("solid", "by_hand"),
    [
        (ball((0, 3, -5), 1), 2),
        (ball((0, 3, -5), 3.5), 0),
        (ball((-3, 0, 4), 0), 5),
        (Box((2, 1, -7), (5, 4, -3)), sqrt(5)),
        (Box((3, -2, -13), (5, 2, -13)), 3),
        (Bar((-5, 4, -5), (5, 4, -5), 1.5), 2.5),  # crosses 4 beside the first straight
        (Bar((4, 0, -14), (4, 0, -20), 1), 3),  # points at the second straight with its end
        (Disc((4, 3, -14), (0, 1, 0), 2, 1), sqrt(2**2 + 2.5**2)),  # over rim and face
        (Disc((5, 0, -12), (0, 0, 1), 3, 1), 1.5),  # over its face
        (Disc((-6, 0, -5), (0, 1, 0), 4, 0.25), 2),  # over its rim
        (Disc((0, 0, -5), (0, 1, 0), 4, 0.25), 0),  # the path runs through it
    ],
)
def test_distances_by_hand(solid, by_hand):
    assert nearest(LEG, solid).distance == pytest.approx(by_hand, abs=1e-9)


def test_the_nearest_place_is_told():
    found = nearest(LEG, ball((4, 3, -14), 1))
    assert found.point == pytest.approx((4, 0, -10), abs=1e-6)
    assert found.share == pytest.approx((1 + 0.4) / 2, abs=1e-6)


@pytest.mark.parametrize("start", [1.2, 1.3, 1.7, 1.8])
@pytest.mark.parametrize("length", [1.0, 4.7, 5.7])
def test_a_straight_that_leads_straight_away_is_as_far_off_as_its_start(start, length):
    """Its two ends are off by its length more and less, and rounding must not lose it."""
    box = Box((0, -1, -1), (4, 1, 1))
    found = nearest(np.array([[4 + start, 0.0, 0.0], [4 + start + length, 0.0, 0.0]]), box)
    assert found.distance == pytest.approx(start)
    assert found.point == pytest.approx((4 + start, 0, 0))


def test_a_path_of_one_point():
    assert nearest(np.array([[3.0, 4.0, 0.0]]), ball((0, 0, 0), 1)).distance == pytest.approx(4)


COORDINATE = st.floats(-10, 10)
POINTS = st.tuples(COORDINATE, COORDINATE, COORDINATE)
SIZES = st.floats(0.05, 5)
AXES = st.sampled_from([(1.0, 0.0, 0.0), (0.0, 0.6, 0.8), (2 / 3, -1 / 3, 2 / 3)])
BOXES = st.builds(
    lambda low, size: Box(low, tuple(a + b for a, b in zip(low, size, strict=True))),
    POINTS,
    st.tuples(SIZES, SIZES, SIZES),
)
SOLIDS = st.one_of(BOXES, st.builds(Bar, POINTS, POINTS, SIZES), st.builds(Disc, POINTS, AXES, SIZES, SIZES))
PATHS = st.lists(POINTS, min_size=2, max_size=4).map(np.array)


def by_minimiser(a, b, solid):
    """Least distance of a straight from a body: bounded least squares in the shares along both."""
    if isinstance(solid, Box):
        corner, edges, radius = np.array(solid.low), np.diag(np.array(solid.high) - np.array(solid.low)), 0.0
    else:
        corner, radius = np.array(solid.start), solid.radius
        edges = (np.array(solid.finish) - corner)[:, None]
    found = lsq_linear(np.column_stack([b - a, -edges]), corner - a, bounds=(0, 1), tol=1e-14, max_iter=500)
    return max(sqrt(2 * found.cost) - radius, 0.0)


@given(PATHS, st.one_of(BOXES, st.builds(Bar, POINTS, POINTS, SIZES)))
def test_the_least_distance_is_what_a_minimiser_finds(path, solid):
    searched = min(by_minimiser(a, b, solid) for a, b in pairwise(path))
    assert nearest(path, solid).distance == pytest.approx(searched, abs=2e-4)
    assert nearest(path, solid).distance <= searched + 1e-6


@given(PATHS, SOLIDS)
def test_no_sampled_place_of_the_path_is_nearer(path, solid):
    found = nearest(path, solid).distance
    for a, b in pairwise(path):
        shares = np.linspace(0, 1, 400)[:, None]
        sampled = distance(a + shares * (b - a), solid).min()
        assert found <= sampled + 1e-9


@given(st.builds(Disc, POINTS, AXES, SIZES, SIZES), st.lists(POINTS, min_size=1, max_size=5))
def test_distance_from_a_disc_beside_points_spread_over_it(disc, points):
    """Of points that fill a disc the nearest is never nearer than what is found, and close to it."""
    axis = np.array(disc.axis)
    side = np.cross(axis, [0.0, 0.0, 1.0])
    side = side / np.linalg.norm(side)
    other = np.cross(axis, side)
    turns, radii = np.linspace(0, 2 * np.pi, 61), np.linspace(0, disc.radius, 21)
    heights = np.linspace(-disc.thickness / 2, disc.thickness / 2, 11)
    turn, radius, height = (each.ravel()[:, None] for each in np.meshgrid(turns, radii, heights))
    filled = np.array(disc.centre) + radius * (np.cos(turn) * side + np.sin(turn) * other) + height * axis
    coarse = np.hypot(disc.radius * np.pi / 60 + disc.radius / 40, disc.thickness / 20)
    for point, found in zip(points, distance(np.array(points), disc), strict=True):
        nearest_filled = np.linalg.norm(filled - np.array(point), axis=1).min()
        assert found <= nearest_filled + 1e-9
        assert nearest_filled <= found + coarse


@given(PATHS, SOLIDS, st.floats(0, 8))
def test_a_distance_under_a_limit_is_exact_and_else_never_too_great(path, solid, enough):
    exact, quick = nearest(path, solid).distance, segments_under(path[None], solid, enough).min()
    assert quick <= exact + 1e-9
    if exact < enough:
        assert quick == pytest.approx(exact, abs=1e-9)
    else:
        assert quick >= min(enough, exact) - 1e-9
