"""Out as a table and in again: the same centre line to a thousandth of a micrometre."""

from __future__ import annotations

from math import dist

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from strategies import bent_paths

from firmpedal.decide.bend_rows import PLANE, TUBE
from firmpedal.decide.fitted import NotImportedError
from firmpedal.decide.imported import imported
from firmpedal.decide.shape_tables import shapes_of
from firmpedal.export.bend_tables import bends_csv, points_csv
from firmpedal.lay.half_bent import bend_data
from firmpedal.pipeline import evaluate_text

NANOMETRE = 1e-9
SLOW = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])

TEXT = """\
firmpedal: 1
aircraft: {{name: Hazelwick, gear: nosewheel, brakes: toe}}
units: {{length: {unit}}}
pedals: {{lever: {{brake: {{pad: 5, arm: 2}}}}}}
components:
  cylinder:
    kind: master cylinder
    bore: 16 mm
    stroke: 25 mm
    pedal: lever
    ports: {{outlet: {{thread: 1/8 NPT female, faces: aft, seat: {start}}}}}
  caliper:
    kind: caliper
    pistons: {{bore: 38 mm, count per side: 1}}
    ports: {{inlet: {{thread: 1/8 NPT female, faces: unknown, seat: {finish}}}}}
bench: {{bend radius: {radius} mm}}
lines:
  run:   # the one line
    from: cylinder.outlet
    to: caliper.inlet
    made of: tube 5052-O 1/4 in x .035 in
    via: {via}
    clamps: none   # not yet
"""


def aircraft(points, via, unit="mm", radius=20):
    size = 25.4 if unit == "in" else 1.0
    start, *_, finish = [[f"{one / size:.12g}" for one in point] for point in points]
    corners = [[f"{one / size:.12g}" for one in point] for point in via]
    words = [f"[{', '.join(each)}]" for each in corners]
    seats = [f"[{', '.join(each)}]" for each in (start, finish)]
    text = TEXT.format(start=seats[0], finish=seats[1], via=f"[{', '.join(words)}]", unit=unit, radius=radius)
    return evaluate_text(text, "hazelwick")


def bendable(points, unit="mm"):
    evaluation = aircraft(points, points[1:-1], unit)
    assume(evaluation.laid[0].tube.centreline is not None)
    return evaluation


def same_line(made, wanted):
    one, other = (each.laid[0].tube.centreline for each in (made, wanted))
    assert len(one.corners) == len(other.corners)
    for a, b in zip(one.corners, other.corners, strict=True):
        assert dist(a, b) <= NANOMETRE
    for a, b in zip(one.tangent_points, other.tangent_points, strict=True):
        assert dist(a, b) <= 2 * NANOMETRE  # a nanometre of each corner, and the setback that hangs on them


@SLOW
@given(bent_paths(), st.sampled_from(["mm", "in"]), st.integers(0, 2))
def test_points_come_back_into_a_file_with_other_corners(points, unit, kept):
    wanted = bendable(points, unit)
    start = aircraft(points, points[1 : 1 + kept], unit)
    made = imported(start, "run", shapes_of(points_csv(wanted))["run"])
    assert made is not None or points[1 : 1 + kept] == points[1:-1]
    same_line(made.evaluation if made else start, wanted)


@SLOW
@given(bent_paths(), st.sampled_from(["mm", "in"]), st.sampled_from([PLANE, TUBE]))
def test_bends_come_back_into_a_file_whose_end_straights_point_the_same_way(points, unit, sign):
    wanted = bendable(points, unit)
    # only how the ends leave is left in the file, by corners half way along them; and another radius
    half = [[(a + b) / 2 for a, b in zip(*pair, strict=True)] for pair in (points[:2], points[-2:])]
    start = aircraft(points, half, unit, radius=15)
    try:
        made = imported(start, "run", shapes_of(bends_csv(wanted, sign))["run"])
    except NotImportedError as refusal:
        assume("turned about" not in refusal.message and "at one place" not in refusal.message)
        raise
    assert made is not None
    assert made.shape.radius == pytest.approx(0.02)
    same_line(made.evaluation, wanted)
    one, other = (bend_data(each.laid[0].tube.centreline) for each in (made.evaluation, wanted))
    assert one.straights == pytest.approx(other.straights, abs=2 * NANOMETRE)


@SLOW
@given(bent_paths(), st.sampled_from(["mm", "in"]))
def test_what_was_just_written_out_changes_nothing(points, unit):
    wanted = bendable(points, unit)
    for table in (points_csv(wanted), bends_csv(wanted)):
        assert imported(wanted, "run", shapes_of(table)["run"]) is None


@SLOW
@given(bent_paths(), st.integers(0, 2))
def test_no_other_line_of_the_text_is_touched(points, kept):
    wanted = bendable(points)
    start = aircraft(points, points[1 : 1 + kept])
    made = imported(start, "run", shapes_of(points_csv(wanted))["run"])
    if made is None:
        return
    before, after = (each.reading.text for each in (start, made.evaluation))
    head, tail = before.split("via: ")[0], "    clamps: none   # not yet\n"
    assert after.startswith(head)
    assert after.endswith(tail)
    assert max(map(len, after.splitlines())) <= 140
