"""Where a part of the bender holds the tube: lengths by hand along a straight that is laid in."""

from __future__ import annotations

import pytest

from firmpedal.lay.bender_hold import held_lengths, next_to_bend
from firmpedal.lay.near import Box, Disc

TOUCH, NEARBY = 0.5, 1.0  # from the axis to a body that touches; the tube lies along the first axis


def held(low, high, *, turns=False, straights=(8.0, 9.0), off=0.25):
    """A block under the tube from one place along it to another, so far off its axis."""
    return held_lengths(Box((low, -2, -1), (high, -off, 1)), NEARBY, straights, TOUCH, turns=turns)


def test_a_former_touches_as_far_as_its_flanges_reach():
    """R 3, r 1, and 1 more to the body: the root of 25 less 9 is 4."""
    assert next_to_bend(3.0, 1.0, 1.0) == pytest.approx(4.0)


def reach(end):
    """A block's end is touched a little further on, by the leg of 0.5 and 0.25."""
    return end + (TOUCH**2 - 0.25**2) ** 0.5


def test_what_stands_still_holds_the_tube_before_the_bend_as_far_as_it_touches_it():
    before, after = held(-5, 3)
    assert before == pytest.approx(reach(5), abs=1e-6)
    assert after == NEARBY  # the other side only comes past it


def test_what_goes_with_the_lever_holds_the_tube_after_the_bend():
    before, after = held(-5, 3, turns=True)
    assert before == NEARBY
    assert after == pytest.approx(reach(3), abs=1e-6)


def test_no_more_is_held_than_is_straight():
    assert held(-50, 50) == (8.0, NEARBY)
    assert held(-50, 50, turns=True) == (NEARBY, 9.0)


def test_a_straight_shorter_than_the_former_is_held_as_far_as_that():
    assert held(-50, 50, straights=(0.3, 0.2)) == (NEARBY, NEARBY)


def test_what_touches_it_further_off_than_the_former_can_holds_nothing():
    assert held(-5, -1.6) == (0.0, 0.0)
    assert held(-5, -1.4)[0] == pytest.approx(reach(5), abs=1e-6)


def test_what_lies_beside_it_without_a_touch_holds_nothing():
    assert held(-5, 3, off=0.51) == (0.0, 0.0)
    assert held(-5, 3, off=0.49)[0] > 5


def test_what_touches_only_next_to_the_bend_holds_that():
    """A pin under the bend's start, thinner than the former's reach: it ends before 1 on either side."""
    pin = Disc((0.0, -0.25, 0.0), (0.0, 0.0, 1.0), 0.2, 2.0)
    assert held_lengths(pin, NEARBY, (8.0, 9.0), TOUCH, turns=False) == (NEARBY, NEARBY)
