"""What must hold for the bend data of every tube, whatever its corners."""

from math import cos, isclose, pi, radians, sin

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from firmpedal.lay.centreline import (
    Bend,
    Centreline,
    ImpossibleKind,
    box,
    centreline,
    point_at,
    sample,
    waypoints,
)

LENGTH = 1e-9  # over lengths and coordinates of up to about 30
ANGLE = 1e-9

ROTATIONS = st.one_of(
    st.floats(-pi + 1e-3, pi - 1e-3),
    st.sampled_from([0.0, pi / 2, -pi / 2, pi]),
)


@st.composite
def bend_data(draw, *, touching=False):
    """Straights and bends of a tube with one to five bends, some straights of no length at all.

    Touching: the first two bends meet.
    """
    count = draw(st.integers(2 if touching else 1, 5))
    straights = [draw(st.floats(0.05, 5)) for _ in range(count + 1)]
    for n in range(1, count):
        meets = touching and n == 1
        straights[n] = 0.0 if meets else draw(st.sampled_from([straights[n], straights[n], 0.0]))
    bends = [
        Bend(
            corner=n + 1,
            angle=draw(st.floats(radians(2), radians(150))),
            rotation=0.0 if n == 0 else draw(ROTATIONS),
            radius=(radius := draw(st.floats(0.2, 1))),
            setback=radius,  # not read by waypoints()
        )
        for n in range(count)
    ]
    return tuple(straights), tuple(bends)


@st.composite
def tubes(draw, *, touching=False):
    """Corner points and radii of a tube that can be bent, somewhere in space."""
    straights, bends = draw(bend_data(touching=touching))
    direction, normal = draw(frames())
    start = tuple(draw(st.floats(-10, 10)) for _ in range(3))
    points = waypoints(straights, bends, start, direction, normal)
    return points, tuple(bend.radius for bend in bends)


@st.composite
def frames(draw):
    matrix = draw(turnings())
    return tuple(matrix[0]), tuple(matrix[1])


@st.composite
def turnings(draw):
    """Rotation matrices, from three angles about the axes in turn."""
    a, b, c = (draw(st.floats(-pi, pi)) for _ in range(3))
    about_x = np.array([[1, 0, 0], [0, cos(a), -sin(a)], [0, sin(a), cos(a)]])
    about_y = np.array([[cos(b), 0, sin(b)], [0, 1, 0], [-sin(b), 0, cos(b)]])
    about_z = np.array([[cos(c), -sin(c), 0], [sin(c), cos(c), 0], [0, 0, 1]])
    return about_z @ about_y @ about_x


def laid(points, radii) -> Centreline:
    line = centreline(tuple(tuple(map(float, point)) for point in points), radii)
    assert isinstance(line, Centreline), line
    return line


def assert_same_bends(line, other, sign=1.0):
    assert line.straights == pytest.approx(other.straights, abs=LENGTH)
    assert line.developed_length == pytest.approx(other.developed_length, abs=LENGTH)
    assert line.polyline_length == pytest.approx(other.polyline_length, abs=LENGTH)
    for one, two in zip(line.bends, other.bends, strict=True):
        assert one.angle == pytest.approx(two.angle, abs=ANGLE)
        assert one.radius == two.radius
        assert one.setback == pytest.approx(two.setback, abs=LENGTH)
        assert_same_turn(one.rotation, sign * two.rotation)


def assert_same_turn(one, other):
    assert (
        abs((one - other + pi) % (2 * pi) - pi) < 1e-7
    )  # a bend of 2 degrees makes its plane 30 times less sure
    assert -pi < one <= pi


@given(bend_data(), frames())
def test_bend_data_to_points_and_back(data, frame):
    straights, bends = data
    points = waypoints(straights, bends, (1.0, -2.0, 0.5), *frame)
    line = laid(points, tuple(bend.radius for bend in bends))
    assert line.straights == pytest.approx(straights, abs=LENGTH)
    for made, wanted in zip(line.bends, bends, strict=True):
        assert (made.corner, made.radius) == (wanted.corner, wanted.radius)
        assert made.angle == pytest.approx(wanted.angle, abs=ANGLE)
        assert_same_turn(made.rotation, wanted.rotation)


@given(tubes())
def test_points_to_bend_data_and_back(tube):
    points, radii = tube
    line = laid(points, radii)
    corners = np.array(points)
    first, second = corners[1] - corners[0], corners[2] - corners[1]
    again = waypoints(
        line.straights, line.bends, points[0], tuple(first), tuple(np.cross(first / 10, second))
    )
    assert np.array(again) == pytest.approx(corners, abs=1e-7)


@given(tubes(), turnings(), st.tuples(*[st.floats(-50, 50)] * 3))
def test_turning_and_moving_the_tube_changes_no_length_and_no_angle(tube, turning, move):
    points, radii = tube
    assert_same_bends(laid(np.array(points) @ turning.T + move, radii), laid(points, radii))


@given(tubes(), st.integers(0, 2))
def test_a_mirror_image_has_the_other_rotations_and_nothing_else(tube, axis):
    points, radii = tube
    mirror = np.ones(3)
    mirror[axis] = -1
    line = laid(points, radii)
    image = laid(np.array(points) * mirror, radii)
    assert_same_bends(image, line, sign=-1.0)
    for one, other in zip(line.bends, image.bends, strict=True):
        assert (one.rotation == pi) == (other.rotation == pi)


@given(tubes())
def test_the_other_end_first_reverses_the_lists_and_keeps_the_signs(tube):
    points, radii = tube
    line = laid(points, radii)
    back = laid(points[::-1], radii[::-1])
    assert back.straights == pytest.approx(line.straights[::-1], abs=LENGTH)
    assert [b.angle for b in back.bends] == pytest.approx([b.angle for b in line.bends[::-1]], abs=ANGLE)
    for one, other in zip(back.bends[1:], line.bends[:0:-1], strict=True):
        assert_same_turn(one.rotation, other.rotation)


@given(tubes(), st.floats(1e-3, 1e3))
def test_scaling_scales_lengths_and_no_angle(tube, factor):
    points, radii = tube
    line = laid(points, radii)
    scaled = laid(np.array(points) * factor, tuple(radius * factor for radius in radii))
    assert scaled.straights == pytest.approx([s * factor for s in line.straights], abs=LENGTH * factor)
    assert scaled.developed_length == pytest.approx(line.developed_length * factor, rel=1e-12)
    for one, other in zip(scaled.bends, line.bends, strict=True):
        assert one.angle == pytest.approx(other.angle, abs=ANGLE)
        assert_same_turn(one.rotation, other.rotation)


@given(tubes(), st.integers(0, 5), st.floats(0.1, 0.9))
def test_a_point_in_the_middle_of_a_straight_changes_nothing(tube, segment, share):
    points, radii = tube
    segment %= len(points) - 1
    extra = np.array(points[segment]) * (1 - share) + np.array(points[segment + 1]) * share
    more = (*points[: segment + 1], tuple(extra), *points[segment + 1 :])
    at = segment  # the extra point is the one numbered segment + 1, so its radius stands at segment
    line = laid(more, (*radii[:at], 99.0, *radii[at:]))
    assert_same_bends(line, laid(points, radii))
    assert len(line.corners) == len(points)
    assert segment + 1 not in [bend.corner for bend in line.bends]


@given(tubes())
def test_the_way_along_the_chords_is_short_by_the_second_order_of_the_step(tube):
    points, radii = tube
    line = laid(points, radii)
    for spacing in (0.1, 0.01, 0.001):
        samples, stations = sample(line, spacing)
        missing = line.developed_length - np.linalg.norm(np.diff(samples, axis=0), axis=1).sum()
        # A chord over a step s of radius R is short by s^3 / (24 R^2) at most; no radius is under 0.2.
        assert -LENGTH < missing <= np.sum(np.diff(stations) ** 3) / (24 * 0.2**2) + LENGTH


@given(tubes(), st.floats(0.03, 3))
def test_a_sample_lies_on_the_line_and_holds_its_tangent_points(tube, spacing):
    points, radii = tube
    line = laid(points, radii)
    samples, stations = sample(line, spacing)
    assert np.all(np.diff(stations) > 0)
    assert np.all(np.diff(stations) <= spacing * (1 + 1e-9))
    assert stations[0] == 0
    assert stations[-1] == pytest.approx(line.developed_length, rel=1e-12)
    for station, point in zip(line.tangent_stations, line.tangent_points, strict=True):
        nearest = np.argmin(abs(stations - station))
        assert stations[nearest] == pytest.approx(station, abs=LENGTH)
        assert samples[nearest] == pytest.approx(point, abs=LENGTH)
    for station, point in zip(stations, samples, strict=True):
        assert point_at(line, station) == pytest.approx(point, abs=LENGTH)


@given(tubes())
def test_every_sample_of_a_bend_is_its_radius_from_one_centre(tube):
    """The centre comes from the corner alone: on the bisector, R / cos(half the turn) away."""
    points, radii = tube
    line = laid(points, radii)
    samples, stations = sample(line, 0.05)
    corners = np.array(line.corners)
    for n, bend in enumerate(line.bends):
        start, stop = line.tangent_stations[2 * n + 1 : 2 * n + 3]
        to_before, to_after = corners[n] - corners[n + 1], corners[n + 2] - corners[n + 1]
        bisector = to_before / np.linalg.norm(to_before) + to_after / np.linalg.norm(to_after)
        centre = corners[n + 1] + bisector / np.linalg.norm(bisector) * bend.radius / cos(bend.angle / 2)
        inside = samples[(stations > start - LENGTH) & (stations < stop + LENGTH)]
        assert np.linalg.norm(inside - centre, axis=1) == pytest.approx(bend.radius, abs=1e-8)


@given(tubes(), st.floats(0.0, 0.3))
def test_the_box_touches_the_tube_on_all_six_sides(tube, diameter):
    points, radii = tube
    line = laid(points, radii)
    low, high = np.array(box(line, diameter))
    around = skin(line, diameter)
    assert np.all(around >= low - LENGTH)
    assert np.all(around <= high + LENGTH)
    assert around.min(axis=0) == pytest.approx(low, abs=2e-3)  # 24 points to a ring
    assert around.max(axis=0) == pytest.approx(high, abs=2e-3)


def skin(line, diameter):
    """Points on the skin of the tube: rings about a fine sample, square to the chords beside it."""
    samples, _ = sample(line, 0.01)
    feeds = np.gradient(samples, axis=0)
    feeds /= np.linalg.norm(feeds, axis=1, keepdims=True)
    across = np.cross(feeds, np.eye(3)[np.argmin(abs(feeds), axis=1)])
    across /= np.linalg.norm(across, axis=1, keepdims=True)
    turns = np.linspace(0, 2 * pi, 24, endpoint=False)[:, None, None]
    rings = samples + diameter / 2 * (np.cos(turns) * across + np.sin(turns) * np.cross(feeds, across))
    return rings.reshape(-1, 3)


@given(tubes(touching=True), st.floats(0.01, 0.5))
def test_a_straight_that_is_too_short_is_refused_with_its_corner_and_amount(tube, lack):
    points, radii = tube
    line = laid(points, radii)
    first = line.bends[0]
    longer = (first.setback + lack) / first.setback * first.radius
    short = centreline(points, (longer, *radii[1:]))
    assert short.kind is ImpossibleKind.NO_ROOM
    everything = {(found.corner, found.other): found.amount for found in (short, *short.also)}
    assert isclose(everything[1, 2], -lack, abs_tol=1e-8)
