"""Clamp proposals: cases by hand, the invented aircraft, and what must hold for every line."""

from functools import cache
from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from firmpedal.lay.centreline import centreline
from firmpedal.lay.clamps import Gap, Place, gaps, misplaced, places, propose, too_long

NEAR = 1e-6


class TestByHand:
    """Lengths in inches; half-inch clamps a quarter inch clear: middles half an inch from each end."""

    def test_a_line_within_the_spacing_needs_none(self):
        assert propose((6, 6), (1.5,), 13.5, 0.25, 0.5) == ()

    def test_a_long_straight_has_one_near_each_end_and_even_ones_between(self):
        stations = propose((2, 30.9, 2), (0.7, 0.7), 13.5, 0.25, 0.5)
        low, high = 2.7 + 0.5, 2.7 + 30.9 - 0.5
        third = (high - low) / 3
        assert stations == pytest.approx((low, low + third, low + 2 * third, high))

    def test_a_straight_of_exactly_the_spacing_is_not_long(self):
        (only,) = propose((13.5, 3), (1,), 13.5, 0.25, 0.5)
        assert only == pytest.approx(17.5 / 2)  # one will do, in the middle

    def test_one_straight_line_that_is_long(self):
        assert propose((14,), (), 13.5, 0.25, 0.5) == pytest.approx((0.5, 13.5))

    def test_fewest_and_even_where_no_straight_is_long(self):
        """One would have to sit in the bend, so there are two, and neither beside a fitting."""
        stations = propose((13, 13), (1,), 13.5, 0.25, 0.5)
        assert stations == pytest.approx((9, 18))

    def test_a_clamp_moves_off_a_bend(self):
        """The middle of 24 lies in the bend from 11 to 13; either side of it is as near."""
        (only,) = propose((11, 11), (2,), 13.5, 0.25, 0.5)
        assert only == pytest.approx(10.5) or only == pytest.approx(13.5)

    def test_clamps_with_room_to_move_stand_in_the_middle_of_it(self):
        """The long bend asks for 25.7 and 38.7, 13 apart. With gaps of 13 the first two may be anywhere
        from 1.1 to 12.1 and from 14.1 to 25.1. The same places come out from the line's other end."""
        stations = propose((12.6, 12.6, 3), (1, 12), 13.2, 0.25, 0.5)
        assert stations == pytest.approx((6.6, 19.6, 25.7, 38.7))
        back = propose((3, 12.6, 12.6), (12, 1), 13.2, 0.25, 0.5)
        assert back == pytest.approx([41.2 - station for station in stations[::-1]])

    def test_near_the_end_of_the_line_where_that_costs_no_clamp(self):
        """From the long straight to the fitting are 14: one clamp will do, beside the fitting."""
        stations = propose((20, 12.5), (1,), 13.5, 0.25, 0.5, fitting_length=0.5)
        assert stations[-1] == pytest.approx(33.5 - 0.5 - 0.5)
        assert len(stations) == 4
        back = propose((12.5, 20), (1,), 13.5, 0.25, 0.5, fitting_length=0.5)
        assert back == pytest.approx([33.5 - station for station in stations[::-1]])

    def test_even_where_the_end_of_the_line_would_cost_one_more(self):
        """From the long straight to the fitting are 20; a clamp beside the fitting leaves 19."""
        stations = propose((20, 12, 6.5), (0.5, 0.5), 13.5, 0.25, 0.5, fitting_length=0.5)
        assert stations[-2:] == pytest.approx((19.5, 29.5))

    def test_bends_without_room_are_clamped_on_both_sides_and_the_gap_stays(self):
        """Bends and short straights from 8 to 24: 17 between the last places before and after."""
        straights, arcs = (8, 0.5, 0.5, 8), (5, 5, 5)
        stations = propose(straights, arcs, 13.5, 0.25, 0.5)
        assert stations == pytest.approx((7.5, 24.5))
        assert too_long(stations, 32, 13.5) == (Gap(7.5, 24.5),)

    def test_bends_everywhere_leave_no_place(self):
        straights, arcs = (0.4, 0.4, 0.4), (9, 9)
        stations = propose(straights, arcs, 13.5, 0.25, 0.5)
        assert stations == ()
        assert [gap.length for gap in too_long(stations, 19.2, 13.5)] == [19.2]

    def test_places(self):
        assert places((3, 0.9, 4), (1, 1), 0.25, 0.5, fitting_length=1.5) == (
            Place(0, 2.0, 2.5),
            Place(2, pytest.approx(6.4), pytest.approx(7.9)),
        )

    def test_clamps_that_a_builder_has_given(self):
        allowed = places((3, 4), (1,), 0.25, 0.5)
        assert misplaced((1.0, 2.6, 3.5, 4.4, 4.5), allowed) == (2.6, 3.5, 4.4)
        assert gaps((6, 1), 8) == (Gap(0, 1), Gap(1, 6), Gap(6, 8))
        assert too_long((6, 1), 8, 4) == (Gap(1, 6),)
        assert too_long((6, 1), 8, 5) == ()

    def test_what_cannot_be_is_refused(self):
        with pytest.raises(ValueError, match="2 straights for 2 arcs"):
            propose((1, 1), (1, 1), 5, 0.25, 0.5)
        with pytest.raises(ValueError, match="negative"):
            places((1, -1), (1,), 0.25, 0.5)
        with pytest.raises(ValueError, match="no width"):
            places((1, 1), (1,), 0.25, 0)
        with pytest.raises(ValueError, match="spacing"):
            propose((1,), (), 0, 0.25, 0.5)
        with pytest.raises(ValueError, match="not on the line"):
            gaps((9,), 8)


class TestInventedAircraft:
    """Invented aircraft, counted by hand. Inches; half-inch clamps a quarter inch clear of bends."""

    def proposed(self, corners, radius, spacing):
        line = centreline(corners, radius)
        stations = propose(line.straights, line.arcs, spacing, 0.25, 0.5, fitting_length=1.25)
        assert too_long(stations, line.developed_length, spacing) == ()
        return line, stations

    def test_round_rod_leg_two_between_and_one_near_each_end(self):
        corners = (
            (7.0, -9.0, -0.9),
            (7.0, -9.0, -3.2),
            (9.0, -11.6, -5.2),
            (5.6, -32.2, -28.6),
            (6.6, -33.4, -30.2),
        )
        line, stations = self.proposed(corners, 0.75, 13.5)
        start, stop = line.tangent_stations[4:6]
        assert len(stations) == 4
        assert stations[0] == pytest.approx(start + 0.5)
        assert stations[-1] == pytest.approx(stop - 0.5)

    def test_high_wing_at_least_four_and_five_preferred(self):
        corners = (
            (6.0, -0.6, 1.5),
            (9.0, -0.6, 1.5),
            (10.5, -2.5, -0.5),
            (43.0, -2.5, -0.5),
            (44.5, -14.0, -1.2),
            (46.0, -15.0, -1.9),
        )
        assert len(self.proposed(corners, 0.75, 13.5)[1]) == 5

    def test_canard_six_on_the_keel_and_eight_or_nine_in_all(self):
        corners = (
            (7.5, -4.0, 1.0),
            (12.0, -4.0, 1.0),
            (14.0, -2.2, -3.0),
            (88.0, -2.2, -1.0),
            (92.0, -6.0, 3.0),
            (94.5, -14.0, 7.0),
        )
        line, stations = self.proposed(corners, 0.5, 12)
        start, stop = line.tangent_stations[4:6]
        assert sum(start < station < stop for station in stations) >= 6
        assert len(stations) in {8, 9}


@st.composite
def lines(draw):
    """Straights, arcs, spacing, margin, clamp width and fitting length of a line."""
    arcs = draw(st.lists(st.floats(0, 4), max_size=6))
    straights = draw(st.lists(st.floats(0, 30), min_size=len(arcs) + 1, max_size=len(arcs) + 1))
    lengths = (draw(st.floats(3, 20)), draw(st.floats(0, 1)), draw(st.floats(0.2, 1)), draw(st.floats(0, 2)))
    return tuple(straights), tuple(arcs), *lengths


@st.composite
def whole_lines(draw):
    """The same with whole numbers, so that the fewest clamps are found among whole stations."""
    spacing = draw(st.integers(5, 12))
    arcs = draw(st.lists(st.integers(0, 3), min_size=1, max_size=5))
    straights = draw(st.lists(st.integers(0, spacing), min_size=len(arcs) + 1, max_size=len(arcs) + 1))
    return tuple(straights), tuple(arcs), spacing, draw(st.integers(0, 1)), 2, draw(st.integers(0, 1))


def feasible(allowed, total, spacing):
    """Whether nothing that cannot be clamped is longer than the spacing."""
    here = 0.0
    for place in allowed:
        if place.low - here > spacing:
            return False
        here = place.high
    return total - here <= spacing


def parts(line):
    straights, arcs, spacing, margin, width, fitting = line
    return places(straights, arcs, margin, width, fitting), sum(straights) + sum(arcs), spacing


@given(lines())
def test_no_gap_is_over_the_spacing_wherever_that_can_be(line):
    allowed, total, spacing = parts(line)
    stations = propose(*line)
    found = too_long(stations, total, spacing)
    if feasible(allowed, total, spacing):
        assert found == ()
    if not feasible(allowed, total, spacing * (1 + NEAR)):
        assert found != ()
    for gap in found:  # what remains holds no place for a clamp
        assert not any(place.low < gap.stop - NEAR and place.high > gap.start + NEAR for place in allowed)


@given(lines())
def test_every_clamp_is_on_a_straight_clear_of_bends_and_fittings(line):
    allowed, _, _ = parts(line)
    stations = propose(*line)
    assert misplaced(stations, allowed) == ()
    assert list(stations) == sorted(set(stations))
    _, arcs, *_ = line
    edges = [end for n in range(len(arcs)) for end in bend_ends(line, n)]
    clear = line[3] + line[4] / 2
    for start, stop in zip(edges[::2], edges[1::2], strict=True):
        assert not any(start - clear + NEAR < station < stop + clear - NEAR for station in stations)


def bend_ends(line, number):
    straights, arcs, *_ = line
    start = sum(straights[: number + 1]) + sum(arcs[:number])
    return start, start + arcs[number]


@given(lines())
def test_a_long_straight_is_clamped_near_both_ends(line):
    allowed, _, spacing = parts(line)
    stations = propose(*line)
    for place in allowed:
        if line[0][place.straight] > spacing * 1.001:
            assert place.low in stations
            assert place.high in stations


@given(lines())
def test_a_line_from_its_other_end_has_as_many_clamps(line):
    straights, arcs, *lengths = line
    back = propose(straights[::-1], arcs[::-1], *lengths)
    assert len(back) == len(propose(*line))


@given(whole_lines())
def test_no_clamp_is_too_many(line):
    """Where no straight is long, taking away any one of them leaves more that is too long."""
    _, total, spacing = parts(line)
    stations = propose(*line)
    for station in stations:
        rest = tuple(other for other in stations if other != station)
        assert excess(rest, total, spacing) > excess(stations, total, spacing)


def excess(stations, total, spacing):
    return sum(gap.length - spacing for gap in too_long(stations, total, spacing))


@given(whole_lines())
def test_there_are_as_few_as_a_search_of_every_whole_station_finds(line):
    """All data are whole, so stepping on as far as possible stays on whole stations: one is optimal."""
    allowed, total, spacing = parts(line)
    assume(feasible(allowed, total, spacing))
    spots = [s for s in range(total + 1) if any(place.low <= s <= place.high for place in allowed)]

    @cache
    def fewest(here):
        if total - here <= spacing:
            return 0
        return 1 + min(fewest(spot) for spot in spots if here < spot <= here + spacing)

    assert len(propose(*line)) == fewest(0)


@given(whole_lines())
def test_no_other_whole_stations_are_more_even(line):
    """Between the clamps at the ends of the line, if there are any, the longest gap is the shortest."""
    allowed, total, spacing = parts(line)
    assume(feasible(allowed, total, spacing))
    stations = propose(*line)
    first = {place.low for place in allowed[:1] if place.straight == 0}.intersection(stations)
    final = {place.high for place in allowed[-1:] if place.straight == len(line[1])}.intersection(stations)
    start, stop = min(first, default=0), max(final, default=total)
    inner = [station for station in stations if start < station < stop]
    spots = [s for s in range(total + 1) if any(place.low <= s <= place.high for place in allowed)]

    @cache
    def least(here, left):
        if left == 0:
            return stop - here
        onward = [max(spot - here, least(spot, left - 1)) for spot in spots if here < spot < stop]
        return min(onward, default=float("inf"))

    longest = max(high - low for low, high in pairwise((start, *inner, stop)))
    assert longest <= least(start, len(inner)) + NEAR


@given(lines(), st.floats(0.01, 100))
def test_scaling_a_line_scales_its_clamps(line, factor):
    straights, arcs, *lengths = line
    scaled = propose(
        tuple(s * factor for s in straights), tuple(a * factor for a in arcs), *(n * factor for n in lengths)
    )
    assert scaled == pytest.approx([station * factor for station in propose(*line)], rel=1e-6, abs=1e-9)
