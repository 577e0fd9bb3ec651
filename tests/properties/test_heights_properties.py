"""What holds of high points, whatever the lines: slower ways find the same, and turning changes none."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from firmpedal.analysis.heights import LEAST_DEPTH
from firmpedal.analysis.heights_profile import bounded, humps
from firmpedal.lay.along import sample
from firmpedal.pipeline import Evaluation, evaluate_text

heights = st.integers(-40, 40).map(lambda quarter: quarter / 4)
rows = st.lists(heights, min_size=1, max_size=14)
few = settings(max_examples=25, deadline=None)
INCH = 0.0254


def flooded(row: list[float], least: float) -> list[tuple[int, float]]:
    """The traps by lowering a level from each point until air under it gets away: slow and plain."""
    found = []
    for n, here in enumerate(row):
        after = next(level for level in _levels(row, here) if _away(row[n:], level, lambda h, top: h > top))
        before = next(
            level for level in _levels(row, here) if _away(row[n::-1], level, lambda h, top: h >= top)
        )
        if here - before > least and here - after > least:
            found.append((n, here - after))
    return found


def _levels(row, here):
    return sorted((level for level in set(row) if level <= here), reverse=True)


def _away(row, level, over) -> bool:
    """Whether something not under a level reaches the end of the row or comes over where it started."""
    for height in row[1:]:
        if height < level:
            return False
        if over(height, row[0]):
            return True
    return True


@given(row=rows, least=st.sampled_from([0.0, 0.3, 1.0, 3.0]))
def test_lowering_a_level_finds_the_same_traps(row, least):
    assert [(hump.peak, hump.depth) for hump in humps(row, least)] == flooded(row, least)


@given(row=rows, rises=st.lists(st.integers(0, 8), max_size=6))
def test_a_line_that_rises_on_to_the_reservoir_adds_no_trap(row, rises):
    longer = list(row)
    for rise in rises:
        longer.append(longer[-1] + rise)
    before = [(hump.peak, hump.depth) for hump in humps(row, 1)]
    after = [(hump.peak, hump.depth) for hump in humps(longer, 1)]
    assert after == before


@given(row=rows, rises=st.lists(st.integers(0, 8), max_size=6))
def test_a_line_that_rises_from_the_caliper_takes_no_trap_away(row, rises):
    below = [row[0]]
    for rise in rises:
        below.insert(0, below[0] - rise)
    before = {(hump.peak, hump.depth) for hump in humps(row, 1)}
    after = {(hump.peak - len(rises), hump.depth) for hump in humps([*below[:-1], *row], 1)}
    assert before <= after


@given(row=rows)
def test_a_line_that_rises_all_the_way_or_falls_all_the_way_has_no_trap(row):
    assert humps(sorted(row), 0) == []
    assert humps(sorted(row, reverse=True), 0) == []


@given(data=st.data(), row=st.lists(heights, min_size=2, max_size=9))
def test_bounds_hold_wherever_the_points_are_in_their_ranges(data, row):
    slack = data.draw(st.lists(st.sampled_from([0.0, 0.25, 1.0]), min_size=len(row), max_size=len(row)))
    shares = data.draw(st.lists(st.floats(-1, 1), min_size=len(row), max_size=len(row)))
    actual = [h + share * give for h, share, give in zip(row, shares, slack, strict=True)]
    said = bounded(row, slack, 1)
    deepest = max((hump.depth for hump in humps(actual, 1)), default=0.0)
    assert deepest <= max((each.high for each in said), default=0.0) + 1e-9
    assert max((each.low for each in said), default=0.0) <= max(deepest, 1.0) + 1e-9


coordinates = st.integers(-300, 300).map(lambda tenth: tenth / 10)
points = st.tuples(coordinates, coordinates, coordinates)
ANGLES = st.integers(-20, 20)


@st.composite
def corners(draw):
    """The cylinder, three corners, a wall and the caliper, far enough apart to be bent."""
    places = draw(st.lists(points, min_size=6, max_size=6, unique=True))
    assume(min(math.dist(a, b) for a, b in pairwise(places)) > 4)
    return places


def written(places, nose_up: float) -> str:
    cylinder, *via, wall, caliper = [f"[{x:.12f}, {y:.12f}, {z:.12f}]" for x, y, z in places]
    return f"""\
firmpedal: 1
aircraft: {{name: Anywhere, gear: nosewheel, brakes: toe, landing weight: 400 kg}}
units: {{length: in, angle: deg}}
fluid: MIL-PRF-5606
attitudes: {{parked: {{nose up: {nose_up}}}}}
components:
  cylinder:
    kind: master cylinder
    bore: 5/8
    stroke: 3/4
    pedal: brake
    ports: {{outlet: {{thread: 1/8 NPT female, seat: {cylinder}}}}}
  caliper:
    kind: caliper
    pistons: {{bore: 1-1/2, count per side: 1}}
    ports: {{inlet: {{thread: 1/8 NPT female, seat: {caliper}}}}}
pedals: {{brake: {{brake: {{pad: 5, arm: 2.5}}}}}}
bulkheads: {{wall: {{sides: {{near: {{seat: {wall}}}, far: {{seat: {wall}}}}}}}}}
bench: {{bend radius: 3/4}}
lines:
  hose: {{from: caliper.inlet, to: wall.far, made of: hose -4 PTFE braided}}
  tube: {{from: cylinder.outlet, to: wall.near, made of: tube 5052-O 1/4 x .035, via: [{", ".join(via)}]}}
"""


def evaluated(places, nose_up: float) -> Evaluation:
    evaluation = evaluate_text(written(places, nose_up), "text")
    assume(all(line.tube is None or line.tube.centreline for line in evaluation.laid))
    return evaluation


def depths(evaluation: Evaluation) -> dict[str, float]:
    return {trap.spot.near: trap.deepest.middle / INCH for trap in evaluation.results.heights.traps}


@few
@given(places=corners(), angle=ANGLES)
def test_an_attitude_is_the_same_as_turning_every_point(places, angle):
    """Nose up by an angle: what is forward rises. The turned aircraft stands level."""
    up, aft = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    turned = [(x * up + z * aft, y, z * up - x * aft) for x, y, z in places]
    stands, level = depths(evaluated(places, angle)), depths(evaluated(turned, 0))
    edge = {near for near, depth in {**stands, **level}.items() if abs(depth - 1) < 1e-6}
    assert stands.keys() - edge == level.keys() - edge
    assert all(stands[near] == pytest.approx(level[near], abs=1e-6) for near in stands.keys() - edge)


@few
@given(places=corners(), angle=ANGLES)
def test_fine_sampling_of_the_lines_finds_the_same_depth(places, angle):
    """Points every hundredth of an inch, turned by a matrix; ours takes a bend in steps of 10 degrees."""
    evaluation = evaluated(places, angle)
    hose, tube = evaluation.laid
    fine, _ = sample(tube.tube.centreline, 0.01 * INCH)
    straight = np.linspace(hose.points[0].point, hose.points[-1].point, 200)
    way = np.concatenate([straight, fine[::-1]])
    theta = math.radians(angle)
    turn = np.array(
        [[math.cos(theta), 0, math.sin(theta)], [0, 1, 0], [-math.sin(theta), 0, math.cos(theta)]]
    )
    row = (way @ turn.T)[:, 2]
    thin = [float(height) for height in _turning_points(row)]
    deepest = max((hump.depth for hump in humps(thin, LEAST_DEPTH)), default=0.0)
    ours = max((trap.deepest.middle for trap in evaluation.results.heights.traps), default=0.0)
    rounding = 0.01 * INCH
    if max(deepest, ours) > LEAST_DEPTH + rounding:
        assert ours == pytest.approx(deepest, abs=rounding) or min(deepest, ours) <= LEAST_DEPTH + rounding


def _turning_points(row):
    inner = [b for a, b, c in zip(row, row[1:], row[2:], strict=False) if (b - a) * (c - b) <= 0]
    return [row[0], *inner, row[-1]]
