"""An elbow turned in among boxes and balls, beside a brute force: its leg as thousands of points.

The leg is a round bar with a flat outlet, and round where it leaves the body; the brute force fills it with
points at every fourth degree and asks of each whether it lies in the other body. No distance, no search and
nothing of the product's geometry is used.
"""

from __future__ import annotations

from math import cos, hypot, pi, sin

import numpy as np
from hypothesis import event, example, given, settings
from hypothesis import strategies as st
from scipy.spatial import cKDTree

from firmpedal.lay.near import Bar, Box
from firmpedal.lay.turning import Leg, cross, lies_in, swept, swept_beside
from firmpedal.quantity import Answer

STEP = np.radians(4)
ANGLES = np.arange(0, 2 * pi, STEP)
TURNS = (pi / 4, pi / 2)
places = st.tuples(*[st.floats(-2, 2)] * 3)
sizes = st.floats(0.05, 1.0)
axes = st.sampled_from([(0.0, 0.0, 1.0), (0.0, -1.0, 0.0), (0.6, 0.8, 0.0), (2 / 3, 2 / 3, -1 / 3)])


def square_to(axis):
    one = np.cross(axis, (0.3, -0.5, 0.81))
    one = one / np.linalg.norm(one)
    return one, np.cross(axis, one)


def way(axis, turn, angle):
    one, other = square_to(axis)
    return cos(turn) * np.array(axis) + sin(turn) * (cos(angle) * one + sin(angle) * other)


def filled(leg: Leg, angle: float, length: float, radius: float):
    """Points all through a leg with a flat outlet and the round knee at its crossing, shape (n, 3)."""
    along = way(leg.axis, leg.turn, angle)
    own = np.concatenate([BAR * (length, radius, radius), KNEE * radius])
    return np.array(leg.crossing) + own @ np.array([along, *square_to(along)])


def bar_and_knee():
    """The points of a leg of length and radius 1, each along it and to its two sides."""
    rounds = np.linspace(0, 1, 5)
    s, r, t = grid(np.linspace(0, 1, 25), rounds, np.linspace(0, 2 * pi, 12, endpoint=False))
    bar = np.concatenate([s, r * np.cos(t), r * np.sin(t)], axis=1)
    p, r, t = grid(np.linspace(0, pi, 13), rounds, np.linspace(0, 2 * pi, 24, endpoint=False))
    knee = r * np.concatenate([np.cos(p), np.sin(p) * np.cos(t), np.sin(p) * np.sin(t)], axis=1)
    return bar, knee


def grid(*ways):
    return (each.reshape(-1, 1) for each in np.meshgrid(*ways))


BAR, KNEE = bar_and_knee()


def inside(points, solid):
    if isinstance(solid, Box):
        return ((points >= solid.low) & (points <= solid.high)).all(axis=1).any()
    return (np.linalg.norm(points - np.array(solid.start), axis=1) <= solid.radius).any()


@st.composite
def solids(draw):
    centre = draw(places)
    if draw(st.booleans()):
        return Bar(centre, centre, draw(sizes))
    half = [draw(sizes) for _ in range(3)]
    return Box(
        tuple(c - h for c, h in zip(centre, half, strict=True)),
        tuple(c + h for c, h in zip(centre, half, strict=True)),
    )


@st.composite
def elbows(draw):
    length, radius = draw(st.floats(0.4, 1.2)), draw(st.floats(0.05, 0.3))
    more, wider = draw(st.floats(0, 0.3)), draw(st.floats(0, 0.05))
    axis, turn = draw(axes), draw(st.sampled_from(TURNS))
    angle = draw(st.floats(0, 2 * pi))
    arm = tuple(map(float, way(axis, pi / 2, angle)))
    crossing = draw(st.tuples(*[st.floats(-0.5, 0.5)] * 3))
    return Leg(crossing, axis, turn, (length, length + more), (radius, radius + wider), 0.0, arm), angle


def ends(leg):
    return [(length, radius) for length in leg.length for radius in leg.radius]


@settings(max_examples=60, deadline=None)
@given(elbows(), solids())
def test_a_turn_that_surely_meets_does_so_by_brute_force_and_one_that_misses_never_does(elbow, solid):
    leg, _ = elbow
    answer = swept((leg,), solid)
    event(answer.value)
    met = [any(inside(filled(leg, a, *size), solid) for a in ANGLES) for size in ends(leg)]
    if answer is Answer.NO:
        assert not any(met)
    elif answer is Answer.YES:
        for size in ends(leg):
            larger = grown(solid, spacing(*size, STEP))
            assert any(inside(filled(leg, a, *size), larger) for a in ANGLES)


def spacing(length, radius, step=0.0):
    """How far any point of a leg is at most from one of the brute force, with a step between angles."""
    return hypot(length / 48, radius * pi / 12, radius / 8) + length * step / 2


def grown(solid, by):
    """A body that the brute force cannot miss between its points."""
    if isinstance(solid, Bar):
        return Bar(solid.start, solid.finish, solid.radius + by)
    return Box(tuple(c - by for c in solid.low), tuple(c + by for c in solid.high))


@settings(max_examples=80, deadline=None)
@given(elbows(), solids())
@example(  # a ball behind the crossing, which only the round knee reaches
    (Leg((0.0, 0.0, 0.25), (0.0, 0.0, 1.0), pi / 4, (1.0, 1.0), (0.25, 0.25), 0.0, (1.0, 0.0, 0.0)), 0.0),
    Bar((0.0, 0.0, 0.0), (0.0, 0.0, 0.0), 0.0625),
)
def test_where_a_leg_ends_agrees_with_brute_force(elbow, solid):
    leg, angle = elbow
    answer = lies_in((leg,), solid)
    event(answer.value)
    if answer is Answer.NO:
        assert not any(inside(filled(leg, angle, *size), solid) for size in ends(leg))
    elif answer is Answer.YES:
        assert all(inside(filled(leg, angle, *size), grown(solid, spacing(*size))) for size in ends(leg))


@settings(max_examples=60, deadline=None)
@given(elbows(), solids())
def test_figures_without_a_range_leave_only_a_thin_doubt(elbow, solid):
    """With exact figures the answer is open only where the surfaces all but touch."""
    leg, _ = elbow
    exact = Leg(leg.crossing, leg.axis, leg.turn, (leg.length[0],) * 2, (leg.radius[0],) * 2)
    if swept((exact,), solid) is Answer.UNKNOWN:
        doubt = 2 * leg.radius[0] + 0.1  # the rounded end against the flat one, and the step of the circle
        assert any(inside(filled(leg, a, leg.length[0], leg.radius[0]), grown(solid, doubt)) for a in ANGLES)


@settings(max_examples=60, deadline=None)
@given(elbows(), elbows())
def test_two_legs_lie_in_each_other_as_their_points_do(one, other):
    (leg, angle), (second, at) = one, other
    answer = cross((leg,), (second,))
    event(answer.value)
    assert cross((second,), (leg,)) in (answer, Answer.UNKNOWN) or answer is Answer.UNKNOWN
    trees = [cKDTree(filled(leg, angle, *size)) for size in ends(leg)[::3]]
    apart = [tree.query(filled(second, at, *size))[0].min() for tree in trees for size in ends(second)[::3]]
    if answer is Answer.YES:
        assert max(apart) < 0.25  # twice the spacing of the points
    elif answer is Answer.NO:
        assert min(apart) > 0


def test_a_readings_range_decides_only_where_all_readings_agree():
    near_one, far_one = (Leg((0, 0, z), (0.0, 0.0, 1.0), pi / 2, (1.0, 1.0), (0.1, 0.1)) for z in (0.0, 5.0))
    ball = Bar((0.7, 0.0, 0.0), (0.7, 0.0, 0.0), 0.2)
    assert swept((near_one,), ball) is Answer.YES
    assert swept((far_one,), ball) is Answer.NO
    assert swept((near_one, far_one), ball) is Answer.UNKNOWN


def test_a_leg_without_a_direction_is_unknown_where_it_can_reach_and_clear_where_it_cannot():
    leg = Leg((0, 0, 0), (0.0, 0.0, 1.0), pi / 2, (1.0, 1.0), (0.1, 0.1))
    assert lies_in((leg,), Bar((0.9, 0, 0), (0.9, 0, 0), 0.05)) is Answer.UNKNOWN
    assert lies_in((leg,), Bar((1.5, 0, 0), (1.5, 0, 0), 0.05)) is Answer.NO


def test_a_leg_cannot_be_turned_beside_one_that_points_at_its_port():
    turned = Leg((0, 0, 0), (0.0, 0.0, 1.0), pi / 2, (0.8, 0.9), (0.2, 0.2))
    towards, away = (
        Leg((1.5, 0, 0), (0.0, 0.0, 1.0), pi / 2, (0.8, 0.9), (0.2, 0.2), 0.0, (x, 0.0, 0.0))
        for x in (-1.0, 1.0)
    )
    assert swept_beside((turned,), (towards,)) is Answer.YES
    assert swept_beside((turned,), (away,)) is Answer.NO
