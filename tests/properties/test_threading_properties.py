"""Bent tubes pushed through a hole, against a search over every lean of the tube, written apart.

The other way of looking at it: the panel is a slab with a round hole, the tube a row of balls along its
centreline. At each station the square to the panel is tried in many directions and the hole is shifted
about; where no ball touches the slab the tube can be held like that.
"""

from math import pi

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from firmpedal.formulas.bends import hole_for_bend, hole_for_lean
from firmpedal.lay.centreline import Centreline, centreline, point_at, sample
from firmpedal.lay.threading import Opening, goes_through, greatest_lean
from firmpedal.quantity import Answer

INCH = 0.0254
OUTSIDE, RADIUS = INCH / 4, 3 * INCH / 4
GRID = 0.1  # radians between directions that are tried
FINE = INCH / 5  # between stations and between balls

whole = st.integers(-6, 6).map(lambda n: n * 1.5 * INCH)
corners = st.lists(st.tuples(whole, whole, whole), min_size=3, max_size=5, unique=True)
openings = st.builds(
    lambda width, thickness: Opening(width * INCH, thickness * INCH, 100.0),
    st.sampled_from([0.3, 0.4, 0.7, 1.0]),
    st.sampled_from([0.03, 0.1, 0.3]),
)


def directions(lead, lean):
    """Unit vectors all round a direction, out to an angle."""
    side = np.cross(lead, [1, 0, 0] if abs(lead[0]) < 0.8 else [0, 1, 0])
    side /= np.linalg.norm(side)
    other = np.cross(lead, side)
    found = [lead]
    for ring in np.arange(GRID, lean + GRID, GRID):
        for turn in np.linspace(0, 2 * pi, max(6, int(2 * pi * np.sin(ring) / GRID)), endpoint=False):
            aside = np.cos(turn) * side + np.sin(turn) * other
            found.append(np.cos(ring) * lead + np.sin(ring) * aside)
    return np.array(found)


def clear_of(away, squares, opening, thick):
    """For which directions no ball touches the slab; the places are seen from the middle of the hole."""
    high = away @ squares.T
    aside = np.sqrt(np.maximum((away**2).sum(axis=1)[:, None] - high**2, 0))
    gap = np.hypot(np.maximum(abs(high) - opening.thickness / 2, 0), np.maximum(opening.width / 2 - aside, 0))
    sides = (high[0] >= -opening.width) & (high[-1] <= opening.width)
    return np.all(gap >= thick / 2, axis=0) & sides


def held(points, number, opening, thick, spare):
    """Whether the tube can be held in the hole at one of its points, by trying."""
    lead = points[max(number - 1, 0)] - points[min(number + 1, len(points) - 1)]
    squares = directions(lead / np.linalg.norm(lead), 1.3)
    shifts = [np.zeros(3), *(sign * spare * axis for axis in np.eye(3) for sign in (1, -1))]
    return any(clear_of(points - points[number] - shift, squares, opening, thick).any() for shift in shifts)


def tube(points):
    line = centreline(tuple(points), RADIUS)
    return line if isinstance(line, Centreline) and line.straights[0] > INCH else None


@settings(max_examples=100, deadline=None)
@given(corners, openings, st.sampled_from(["from", "to"]), st.floats(0.2, 0.98))
def test_what_surely_goes_is_held_at_every_station_without_touching(points, opening, end, share):
    line = tube(points)
    if line is None:
        return
    station = share * line.developed_length
    width = max([OUTSIDE, *(_bend_width(bend, opening) for bend in line.bends)])
    if goes_through(line, end, station, (opening, OUTSIDE), (opening, width)) is not Answer.YES:
        return
    places, stations = sample(line, FINE)
    passed = stations <= station if end == "from" else stations >= station
    for number in np.flatnonzero(passed)[1:-1:6]:
        # the grid of directions misses by half its step, which at arm's length is a good part of the tube
        assert held(_from_end(places, end), _number(number, stations, end), opening, OUTSIDE * 0.4, INCH / 16)


@settings(max_examples=25, deadline=None)
@given(corners, openings, st.sampled_from(["from", "to"]), st.floats(0.2, 0.98))
def test_what_surely_does_not_go_cannot_be_held_somewhere(points, opening, end, share):
    line = tube(points)
    if line is None:
        return
    station = share * line.developed_length
    if goes_through(line, end, station, (opening, OUTSIDE), (opening, OUTSIDE)) is not Answer.NO:
        return
    places, stations = sample(line, INCH / 16)
    passed = np.flatnonzero(stations <= station if end == "from" else stations >= station)[::3]
    assert not all(
        held(_from_end(places, end), _number(number, stations, end), opening, OUTSIDE, INCH / 16)
        for number in (passed if end == "from" else passed[::-1])
    )


def _bend_width(bend, opening):
    return hole_for_bend(bend.radius, OUTSIDE, opening.thickness, bend.angle)


def _from_end(places, end):
    return places if end == "from" else places[::-1]


def _number(number, stations, end):
    return number if end == "from" else len(stations) - 1 - number


@given(st.floats(0.1, 1.0), st.floats(0.0, 0.6))
def test_the_greatest_lean_is_the_one_that_fills_the_hole(width, thickness):
    lean = greatest_lean(Opening(width, thickness, 1.0), 0.1)
    assert abs(hole_for_lean(0.1, thickness, lean) - width) < 1e-9


@settings(max_examples=100, deadline=None)
@given(st.floats(0.3, 2.5), st.floats(0.05, 1.2), st.floats(0.3, 1.5))
def test_a_bend_needs_the_hole_that_its_outline_needs(radius, thickness, angle):
    """Against the outline itself: at every station the lean is chosen that needs the narrowest gap."""
    if thickness >= (2 * radius - 0.25) * 0.95:
        return
    legs = 3 * thickness + 1
    turn = (np.cos(angle), np.sin(angle))
    setback = radius * np.tan(angle / 2)
    line = centreline(
        (
            (0.0, 0.0, 0.0),
            (legs + setback, 0.0, 0.0),
            (legs + setback + (legs + setback) * turn[0], (legs + setback) * turn[1], 0.0),
        ),
        radius,
    )
    needed = hole_for_bend(radius, 0.25, thickness, angle)
    middle = legs + radius * angle / 2
    outline, stations = _outline(line)
    gaps = [
        _narrowest(outline, stations, line, station, thickness)
        for station in np.linspace(legs - thickness, middle, 11)
    ]
    assert max(gaps) == pytest.approx(needed, rel=0.01, abs=0.01)


def _bend_width(bend, opening):
    return hole_for_bend(bend.radius, OUTSIDE, opening.thickness, bend.angle)


def _from_end(places, end):
    return places if end == "from" else places[::-1]


def _number(number, stations, end):
    return number if end == "from" else len(stations) - 1 - number


def _outline(line):
    """Both edges of the flat picture of the tube, with the station of each point."""
    points, stations = sample(line, 0.005)
    normals = np.gradient(points[:, :2], stations, axis=0) @ np.array([[0, 1], [-1, 0]])
    edges = [points[:, :2] + side * normals for side in (0.125, -0.125)]
    return np.concatenate(edges), np.tile(stations, 2)


def _narrowest(outline, stations, line, station, thickness):
    """The narrowest gap, of all leans, that the outline needs within a slab at a station."""
    here, ahead = (np.array(point_at(line, station + step))[:2] for step in (0.0, 1e-6))
    near = abs(stations - station) <= 2 * thickness + 0.5
    away = outline[near] - here
    along = (ahead - here) / np.linalg.norm(ahead - here)
    found = []
    for lean in np.linspace(-0.4, 0.4, 41):
        turn = np.array([[np.cos(lean), -np.sin(lean)], [np.sin(lean), np.cos(lean)]])
        feed = turn @ along
        sides = (away @ np.array([-feed[1], feed[0]]))[abs(away @ feed) <= thickness / 2]
        found.append(float(sides.max() - sides.min()))
    return min(found)
