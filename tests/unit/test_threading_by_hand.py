"""Tubes in a hole on the edge between going and not going, each worked out by hand. Lengths in inches.

The hole lies in the plane z = 0. A tube of 0.25 in in a plate of 0.5 in touches it with what lies beside the
hole as soon as its centre line is nearer to the middle of the plate than (0.5 + 0.25) / 2 = 0.375 in.
"""

from __future__ import annotations

import pytest

from firmpedal.lay.centreline import centreline
from firmpedal.lay.threading import Opening, goes_through
from firmpedal.quantity import Answer

INCH = 0.0254
TUBE = 0.25 * INCH


def line(*corners, radius=0.2):
    return centreline(tuple(tuple(one * INCH for one in corner) for corner in corners), radius * INCH)


def opening(width, thickness, reach=100.0):
    return Opening(width * INCH, thickness * INCH, reach * INCH)


def pushed(tube, station, hole, end="from"):
    return goes_through(tube, end, station * INCH, (hole, TUBE), (hole, TUBE))


# A hole as wide as the tube lets it not lean at all. The second leg runs along the plate, `high` above it.
SNUG = opening(0.25, 0.5)


@pytest.mark.parametrize(
    ("high", "answer"),
    [(0.36, Answer.UNKNOWN), (0.30, Answer.UNKNOWN), (0.39, Answer.YES), (0.7, Answer.YES)],
)
@pytest.mark.parametrize("leg", [1.0, 4.0])
def test_what_runs_along_the_plate_has_to_clear_half_the_plate_and_half_the_tube(high, answer, leg):
    tube = line((0, 0, -3), (0, 0, high), (leg, 0, high))
    assert pushed(tube, 3, SNUG) is answer


@pytest.mark.parametrize(("high", "answer"), [(0.36, Answer.UNKNOWN), (0.39, Answer.YES)])
def test_the_place_where_it_sits_at_last_is_looked_at_itself(high, answer):
    """At no whole step of the way is it as near to the plate as where it comes to rest."""
    tube = line((0, 0, -3.11), (0, 0, high), (4, 0, high))
    assert pushed(tube, 3.11, SNUG) is answer


@pytest.mark.parametrize(("high", "answer"), [(0.36, Answer.UNKNOWN), (0.39, Answer.YES)])
def test_with_the_other_end_first_it_is_the_same(high, answer):
    tube = line((4, 0, high), (0, 0, high), (0, 0, -3.11))
    assert pushed(tube, tube.developed_length / INCH - 3.11, SNUG, "to") is answer


# A U turned upside down: up through the hole, across by 2 in, and down again to 2 in below the plate.
U = line((0, 0, -3), (0, 0, 1), (2, 0, 1), (2, 0, -2))


@pytest.mark.parametrize(
    ("reach", "answer"),
    # the other leg meets the plate's plane 2 in from the hole, where there is plate or none
    [(1.9, Answer.UNKNOWN), (2.2, Answer.NO), (100, Answer.NO)],
)
def test_a_plate_that_ends_before_the_other_leg_is_not_in_its_way(reach, answer):
    assert pushed(U, 3, opening(0.3, 0.1, reach)) is answer


@pytest.mark.parametrize(("width", "answer"), [(0.9, Answer.NO), (1.5, Answer.UNKNOWN)])
def test_what_lies_inside_the_hole_itself_meets_no_plate(width, answer):
    """The other leg hangs 1 in beside, to 0.8 in below: sqrt(1 + 0.64) = 1.28 in from the middle at most.

    To get it off the plate the hole would have to lean by atan(0.8) = 39 degrees; 3 in thick and 1.5 in wide
    it leans by acos(0.25 / 3.35) - atan(3 / 1.5) = 22 degrees at most.
    """
    narrow = line((0, 0, -3), (0, 0, 0.5), (1, 0, 0.5), (1, 0, -0.8))
    wide, snug = opening(width, 3), opening(0.26, 3)
    assert goes_through(narrow, "from", 3 * INCH, (wide, TUBE), (snug, TUBE)) is answer


def test_a_tube_wider_than_the_hole_does_not_go_in():
    straight = line((0, 0, -3), (0, 0, 3))
    assert pushed(straight, 3, opening(0.24, 0.1)) is Answer.NO
    assert pushed(straight, 3, opening(0.25, 0.1)) is Answer.YES
    assert pushed(straight, 3, opening(0.26, 0.1)) is Answer.YES


def test_what_comes_in_the_way_late_is_seen_and_what_never_comes_there_is_not():
    """The U sits with its first leg: half-way up there its other leg is already through the plate's plane."""
    assert pushed(U, 0.9, opening(0.3, 0.1)) is Answer.YES
    assert pushed(U, 2, opening(0.3, 0.1)) is Answer.NO


def test_of_a_tube_of_a_mile_nobody_says_that_it_goes_in():
    """A slip of the pen, a point in metres perhaps: longer than any aircraft, it is not worked out."""
    for length, answer in ((24, Answer.YES), (5280, Answer.UNKNOWN)):
        straight = line((0, 0, -12 * length + 3), (0, 0, 3))
        assert pushed(straight, 12 * length - 3, opening(0.3, 0.1)) is answer
