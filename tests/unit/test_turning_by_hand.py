"""Legs beside bodies, on the edge between meeting and missing, each distance worked out by hand."""

from __future__ import annotations

from math import cos, pi, radians, sin

import pytest

from firmpedal.lay.near import Bar, Box
from firmpedal.lay.turning import Leg, cross, lies_in, swept, swept_beside
from firmpedal.quantity import Answer

NO, UNKNOWN, YES = Answer.NO, Answer.UNKNOWN, Answer.YES


def leg(slack=0.0, radius=0.1, crossing=(0.0, 0.0, 0.0), arm=(1.0, 0.0, 0.0)):
    """One unit long and square to its port, which faces up."""
    return Leg(crossing, (0.0, 0.0, 1.0), pi / 2, (1.0, 1.0), (radius, radius), slack, arm)


def ball(x, y, z=0.0, radius=0.2):
    return Bar((x, y, z), (x, y, z), radius)


@pytest.mark.parametrize(("doubt", "answer"), [(0.0, NO), (0.29, NO), (0.31, UNKNOWN)])
def test_a_ball_beside_a_leg_is_missed_by_what_is_left_between(doubt, answer):
    """Its centre is 0.6 beside, less 0.2 of the ball and 0.1 of the leg leaves 0.3."""
    beside = ball(0.5, 0.6)
    assert lies_in((leg(doubt),), beside) is answer
    assert lies_in((leg(),), beside, doubt) is answer
    assert lies_in((leg(doubt / 2),), beside, doubt / 2) is answer  # what both can be off adds up


@pytest.mark.parametrize(("doubt", "answer"), [(0.0, YES), (0.04, YES), (0.06, UNKNOWN)])
def test_a_ball_that_a_leg_meets_is_sure_as_long_as_neither_can_be_off_by_more_than_they_overlap(
    doubt, answer
):
    """Its centre is 0.25 beside: ball and leg overlap by 0.05."""
    met = ball(0.5, 0.25)
    assert lies_in((leg(doubt),), met) is answer
    assert lies_in((leg(),), met, doubt) is answer


@pytest.mark.parametrize(("slack", "answer"), [(0.15, NO), (0.35, UNKNOWN)])
def test_what_lies_beyond_the_outlet_can_be_reached_by_a_leg_that_lies_off(slack, answer):
    """The ball begins 0.3 beyond the outlet, where the leg is 0.1 thick at most."""
    assert lies_in((leg(slack),), ball(1.5, 0)) is answer


def test_the_corner_of_a_flat_end_reaches_further_than_its_middle():
    """The corner of a leg of radius 0.5 is sqrt(1 + 0.25) = 1.12 from the crossing, the box 1.05."""
    assert lies_in((leg(radius=0.5),), Box((0.95, 0.45, -0.1), (1.2, 0.8, 0.1))) is not NO


def test_a_rounded_end_in_place_of_the_flat_one_surely_meets_nothing_beyond_the_flat_one():
    assert lies_in((leg(),), ball(1.203, 0)) is UNKNOWN  # begins at 1.003; the leg ends at 1.0
    assert lies_in((leg(),), ball(1.15, 0)) is YES  # begins at 0.95


@pytest.mark.parametrize("half_degrees", range(0, 720, 7))
def test_nothing_slips_through_between_two_directions_of_the_circle(half_degrees):
    """A needle of a leg passes every place at its own height; at 0.05 above it passes by 0.044 off."""
    needle, angle = leg(radius=0.005), radians(half_degrees / 2)
    x, y = 0.99 * cos(angle), 0.99 * sin(angle)
    assert swept((needle,), ball(x, y, 0.0, 0.001)) is not NO
    assert swept((needle,), ball(x, y, 0.05, 0.001)) is NO


@pytest.mark.parametrize(
    ("beside", "slack", "answer"),
    # a leg that starts at `beside` and points away: less 0.1 of each, 0.3 are left or 0.1 overlaps
    [(0.5, 0.29, NO), (0.5, 0.31, UNKNOWN), (0.05, 0.09, YES), (0.05, 0.11, UNKNOWN)],
)
def test_what_the_other_leg_can_be_off_counts_as_well(beside, slack, answer):
    other = leg(slack, crossing=(0.5, beside, 0.0), arm=(0.0, 1.0, 0.0))
    assert cross((leg(),), (other,)) is answer


@pytest.mark.parametrize(
    ("away", "slack", "answer"), [(1.5, 0.35, NO), (1.5, 0.41, UNKNOWN), (0.8, 0.09, YES)]
)
def test_what_the_other_leg_can_be_off_counts_in_a_turn_too(away, slack, answer):
    """It starts at `away` and points off: 1.5 less 0.1 of its own and 1.005 of the corner leaves 0.395."""
    other = leg(slack, crossing=(away, 0.0, 0.0))
    assert swept_beside((leg(),), (other,)) is answer
