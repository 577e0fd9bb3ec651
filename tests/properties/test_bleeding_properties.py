"""Volumes on the way from a wheel to the top: nothing is counted twice and nothing is lost."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from firmpedal.analysis.bleeding import bleeding
from firmpedal.pipeline import evaluate_text
from texts import edited, small

LEG = "[50, -38, -25]"
HEIGHT = st.floats(-30, 25).map(lambda number: round(number, 2))
few = settings(max_examples=25, deadline=None)


def evaluated(heights, inlet, name="withyford"):
    """The two seats in series with its leg led over some corners, and the first inlet at some height."""
    corners = ", ".join(f"[{50 + 0.1 * n}, {-38 - 0.1 * n}, {up}]" for n, up in enumerate(heights))
    text = edited(small(name), (LEG, corners), ("seat: [8.6, 7, 8.4]", f"seat: [8.6, 7, {inlet}]"))
    return evaluate_text(text, name)


@few
@given(heights=st.lists(HEIGHT, min_size=1, max_size=5), inlet=st.floats(2.5, 20).map(lambda n: round(n, 2)))
def test_shares_of_a_line_add_up_to_all_of_it(heights, inlet):
    for way in evaluated(heights, inlet).results.heights.ways:
        for line in {spot.line for spot in way.spots}:
            shares = [spot.share for spot in way.spots if spot.line == line]
            assert {shares[0], shares[-1]} == {0.0, 1.0}
            steps = [abs(one - other) for one, other in pairwise(shares)]
            assert sum(steps) == pytest.approx(1)


@few
@given(heights=st.lists(HEIGHT, min_size=1, max_size=5), inlet=st.floats(2.5, 20).map(lambda n: round(n, 2)))
def test_a_high_point_never_holds_more_than_the_lines_and_both_its_sides_are_the_whole_way(heights, inlet):
    evaluation = evaluated(heights, inlet)
    found = bleeding(evaluation.aircraft, evaluation.laid, evaluation.results)
    volumes = dict(zip((line.name for line in evaluation.laid), evaluation.results.volumes, strict=True))
    (rise,) = found.rises
    assert rise.volume.middle == pytest.approx(sum(volumes[line].middle for line in rise.lines))
    for pocket in found.pockets:
        assert 0 <= pocket.air.low <= pocket.air.high <= rise.volume.high * (1 + 1e-9)
    for each in found.pumping:
        beyond = {"first": ("cross", "feed"), "second": ("feed",)}[each.cylinder]  # above that cylinder
        above = sum(volumes[line].middle for line in beyond)
        assert each.down.middle + each.between.middle + above == pytest.approx(rise.volume.middle)
