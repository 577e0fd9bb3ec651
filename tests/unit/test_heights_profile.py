"""High points of rows of heights that anybody can draw."""

import pytest

from firmpedal.analysis.heights_profile import Bounds, bounded, humps


def found(row, least=1.0):
    return [(hump.peak, hump.rise, hump.depth) for hump in humps(row, least)]


@pytest.mark.parametrize(
    ("row", "expected"),
    [
        ([], []),
        ([3], []),
        ([0, 5, 9], []),  # rises all the way
        ([9, 5, 0], []),  # the high end is the caliper's own
        ([5, 0, 9], []),  # a dip keeps no air
        ([0, 7, -3, 8], [(1, 7, 10)]),  # 7 over -3
        ([0, 7, -3, 2], [(1, 7, 10)]),  # the reservoir lower than the high point
        ([0, 7, 5, 9, -3, 10], [(1, 7, 2), (3, 9, 12)]),  # pushed over the first it is caught at the second
        ([0, 9, 5, 7, -3, 10], [(1, 9, 12), (3, 2, 10)]),
        ([0, 7, 7, 7, 2, 8], [(1, 7, 5)]),  # a flat top is one high point
        ([0, 7, 6.5, 7.2, 2, 8], [(3, 7.2, pytest.approx(5.2))]),  # a ripple on top is left out
        ([0, 1, 0, 5], []),  # no more than the least
        ([6.8, 7, 0, 9], []),  # it has hardly risen from the caliper's end
    ],
)
def test_high_points_of_a_row(row, expected):
    assert found(row) == expected


def test_plain_heights_have_plain_depths():
    (only,) = bounded([0, 7, -3, 8], [0, 0, 0, 0], 1)
    assert (only.low, only.high) == (10, 10)


def test_slack_at_top_and_bottom_adds_up():
    """The top at 6.5 to 7.5 over the bottom at -3.25 to -2.75."""
    (only,) = bounded([0, 7, -3, 8], [0, 0.5, 0.25, 0], 1)
    assert (only.low, only.high) == (9.25, 10.75)


def test_a_hump_that_may_not_be_there_has_a_least_depth_of_nothing():
    """The middle at 2 may be at 0.5, under the start at 1."""
    (only,) = bounded([1, 3, 0, 5], [0, 2.5, 0, 0], 1)
    assert only.low == 0
    assert only.high == 5.5


def test_a_hump_that_shows_only_in_the_range_is_said_with_nothing_at_least():
    (only,) = bounded([0, 4, 4, 8], [0, 2, 0, 0], 1)
    assert isinstance(only, Bounds)
    assert (only.hump.peak, only.low, only.high) == (1, 0, 2)


def test_a_neighbour_on_the_same_hump_is_not_told_again():
    """Point 2 raised would be the top; it is the same hump, whose depth stays sure."""
    (only,) = bounded([0, 7.0, 6.9, -3, 9], [0, 0.3, 0.3, 0, 0], 1)
    assert only.hump.peak == 1
    assert only.low == pytest.approx(9.7)
