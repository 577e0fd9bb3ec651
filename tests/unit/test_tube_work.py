"""The card's figures make the tube: a script that knows only them rebuilds the centre line.

The rebuilding here is written out once more, with scipy's rotations and nothing of the program's own.
"""

from __future__ import annotations

import re
from math import degrees, radians, remainder, tau

import numpy as np
import pytest
from evaluated import EXAMPLE, of_kind, words
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation

from firmpedal.lay.band import Rounding, end_band
from firmpedal.lay.bend_order import BendStep
from firmpedal.lay.centreline import centreline, sample
from firmpedal.lay.shape import Centreline
from firmpedal.pipeline import evaluate_text
from firmpedal.report.bend_blocks import rounding_of, turns_of
from firmpedal.report.cards import card
from firmpedal.report.sheet import Table
from firmpedal.units import read, to_unit
from firmpedal.units.table import Dimension

TEXT = EXAMPLE.read_text(encoding="utf-8")


def rebuilt(marks, cut, angles, turns, radius, step=0.01):
    """Bend a straight piece as a bender does: walk along it, turn at each mark until the arc is used up.

    All lengths in one unit, angles in degrees; `turns` has one for each bend, the first counts for nothing.
    """
    place, frame, points = np.zeros(3), Rotation.identity(), [np.zeros(3)]
    at = 0.0
    for mark, angle, turn in zip(marks, angles, turns, strict=True):
        place = place + frame.apply([mark - at, 0, 0])
        points.append(place)
        frame = frame * Rotation.from_euler("x", turn, degrees=True)  # the plane of bend, about the feed
        arc = radians(angle) * radius
        pieces = max(1, int(arc / step))
        for _ in range(pieces):
            part = Rotation.from_euler("z", angle / pieces, degrees=True)
            half = radians(angle / pieces) / 2
            chord = Rotation.from_euler("z", degrees(half), degrees=True)
            place = place + (frame * chord).apply([2 * radius * np.sin(half), 0, 0])
            frame = frame * part
        points.append(place)
        at = mark + arc
    points.append(place + frame.apply([cut - at, 0, 0]))
    return np.array(points)


def differences(points):
    """Every distance between two points, and the volumes that tell a mirror image."""
    gaps = np.linalg.norm(points[:, None] - points[None], axis=2)
    volumes = [np.linalg.det(points[n + 1 : n + 4] - points[n]) for n in range(len(points) - 3)]
    return gaps, np.array(volumes)


def tubes(option="rigid", text=TEXT):
    evaluation = evaluate_text(text, "brindlewick", option)
    return evaluation, [line for line in evaluation.laid if line.work]


def test_exact_figures_rebuild_each_centre_line():
    _, lines = tubes()
    assert len(lines) == 2
    for line in lines:
        marks = [bend.mark.middle for bend in line.work.bends]
        angles = [degrees(bend.angle.middle) for bend in line.tube.bends]
        turns = [degrees(bend.rotation.middle) for bend in line.tube.bends]
        cut = line.tube.developed_length.middle
        found = rebuilt(marks, cut, angles, [0, *turns[1:]], line.tube.radius.middle, 0.0005)
        wanted = np.array(line.tube.centreline.tangent_points)
        for one, other in zip(differences(found), differences(wanted), strict=True):
            assert one == pytest.approx(other, abs=1e-6)


def printed(line, evaluation):
    """What stands on the paper, read as a person reads it."""
    table = next(block for block in of_kind(card(evaluation, line), Table) if "set tool to" in block.columns)
    length = lambda text: read(text.split("\n")[0], Dimension.LENGTH, None).span[0]  # noqa: E731
    marks = [length(row[1]) for row in table.rows]
    turns = [
        float(re.match(r"([+-]?[\d.]+)\u00b0", row[2])[1]) if "\u00b0" in row[2] else 0.0
        for row in table.rows
    ]
    angles = [float(row[3].rstrip("\u00b0")) for row in table.rows]
    return marks, angles, turns


def test_printed_figures_stay_within_the_printed_band():
    evaluation, lines = tubes()
    for line in lines:
        marks, angles, turns = printed(line, evaluation)
        shape = line.tube.centreline
        found = rebuilt(marks, shape.developed_length, angles, turns, line.tube.radius.middle, 0.0005)
        assert off_at_the_end(found, shape) <= end_band(shape, rounding_of(evaluation))


def off_at_the_end(found, shape):
    wanted = np.array(shape.tangent_points)
    start, finish = frame_of(found), frame_of(wanted)
    return np.linalg.norm(start.apply(found[-1] - found[0]) - finish.apply(wanted[-1] - wanted[0]))


def frame_of(points):
    """The rotation that lays the first leg along the first axis and the first bend in its plane."""
    first = points[1] - points[0]
    second = points[2] - points[1]
    x = first / np.linalg.norm(first)
    z = np.cross(x, second)
    z = z / np.linalg.norm(z)
    return Rotation.from_matrix(np.array([x, np.cross(z, x), z]))


COORDINATES = st.integers(-9, 9).map(float)
CORNERS = st.lists(st.tuples(COORDINATES, COORDINATES, COORDINATES), min_size=3, max_size=6, unique=True)


@settings(max_examples=60, deadline=None)
@given(CORNERS, st.randoms(use_true_random=False))
def test_no_rounding_of_the_figures_leads_further_off_than_the_band(corners, random):
    shape = centreline(tuple(corners), 0.75)
    assume(isinstance(shape, Centreline) and shape.bends)
    rounding = Rounding(1 / 64, radians(0.05))
    marks, at = [], 0.0
    for straight, bend in zip(shape.straights, shape.bends, strict=False):
        marks.append(at + straight)
        at += straight + bend.arc
    wrong = lambda size: size * random.choice([-1, -0.5, 0, 0.5, 1])  # noqa: E731
    found = rebuilt(
        [mark + wrong(rounding.mark) for mark in marks],
        shape.developed_length + wrong(rounding.mark),
        [degrees(bend.angle + wrong(rounding.angle)) for bend in shape.bends],
        [0, *(degrees(bend.rotation + wrong(rounding.angle)) for bend in shape.bends[1:])],
        0.75,
    )
    # first order: what the roundings do together is smaller than a hundredth of it
    assert off_at_the_end(found, shape) <= 1.01 * end_band(shape, rounding) + 1e-9


BENDER = """bench:
  bend radius: 3/4
  bender:
    mark: %s
    grip: 1-1/4
    springback: [{asked: 90, got: 87}]
    parts:
      wall: {where: {box: [[-60, %s, -40], [60, 60, 40]]}}
"""


def beside_bender(mark="start of bend", wall=50):
    return TEXT.replace("bench:\n  bend radius: 3/4\n", BENDER % (mark, wall), 1)


def with_bender(mark="start of bend", wall=50):
    return tubes(text=beside_bender(mark, wall))[1][0]


def test_marks_follow_what_the_bender_is_marked_with():
    start, middle, end = (
        [to_unit(bend.mark.middle, "in") for bend in with_bender(mark).work.bends]
        for mark in ("start of bend", "middle of bend", "end of bend")
    )
    arcs = [0.7675, 0.511, 0.433]  # 3/4 in radius, 58.6, 39.1 and 33.1 degrees
    assert start == pytest.approx([1.879, 5.801, 37.184], abs=0.002)
    assert [b - a for a, b in zip(start, middle, strict=True)] == pytest.approx(
        [a / 2 for a in arcs], abs=0.001
    )
    assert [b - a for a, b in zip(start, end, strict=True)] == pytest.approx(arcs, abs=0.001)


def test_angles_to_set_are_more_than_the_angles_wanted():
    line = with_bender()
    for bend, work in zip(line.tube.bends, line.work.bends, strict=True):
        assert work.ask.middle == pytest.approx(bend.angle.middle * 90 / 87)


def test_a_wall_beside_the_bender_turns_the_order_round():
    assert [step.held for step in with_bender().work.steps] == ["from"] * 3
    blocked = with_bender(wall=10).work
    assert blocked.order.hits[0].body == "wall"


@pytest.mark.parametrize(
    ("pairs", "told"),
    [
        ("{asked: 30, got: 29}, {asked: 62, got: 60}", ""),  # the bends are of 58.6, 39.1 and 33.1 degrees
        ("{asked: 36, got: 35}, {asked: 62, got: 60}", "③ does not lie between two of them"),
        ("{asked: 90, got: 87}", "①, ② and ③ do not lie between two of them"),
    ],
)
def test_the_card_says_which_bends_lie_beyond_the_trials(pairs, told):
    text = beside_bender().replace("springback: [{asked: 90, got: 87}]", f"springback: [{pairs}]")
    evaluation, (line, *_) = tubes(text=text)
    said = words(card(evaluation, line))
    assert "Angles to set are from your trial bends" in said
    assert (f"{told}: bend a coupon to that angle first" in said) if told else ("coupon" not in said)


def test_a_straight_tube_goes_past_the_bender_too():
    way = """        via:
          - [7.0, -9.0, -3.2]
          - [9.0, -11.6, -5.2]
          - [5.6, -32.2, -28.6]
"""
    assert way in TEXT
    evaluation, (line, *_) = tubes(text=beside_bender().replace(way, "", 1))
    assert (line.work.bends, line.work.steps, line.tube.bends) == ((), (), ())
    assert "no-bend-in-rigid-line" in {finding.rule for finding in evaluation.findings}
    assert "bends: 0 (no bend)" in words(card(evaluation, line))


def test_turns_are_told_from_the_nearest_bend_that_is_made():
    tube = with_bender().tube
    forth = turns_of(tube, tuple(BendStep(n, "from") for n in range(3)))
    assert [(turn.reference, turn.seen) for turn in forth.values()] == [(0, "A"), (1, "A")]
    back = turns_of(tube, tuple(BendStep(n, "to") for n in (2, 1, 0)))
    assert [(turn.reference, turn.seen) for turn in back.values()] == [(2, "B"), (1, "B")]
    across = turns_of(tube, (BendStep(0, "from"), BendStep(2, "from"), BendStep(1, "from")))
    whole = tube.bends[1].rotation.middle + tube.bends[2].rotation.middle
    assert across[2].rotation.middle == pytest.approx(remainder(whole, tau))  # 287 degrees is -73
    assert across[1].reference == 0


def test_the_finished_part_lies_in_its_box_on_the_table():
    line = with_bender()
    points, _ = sample(line.tube.centreline, 0.001)
    sagitta = 0.001**2 / (8 * line.tube.radius.middle)  # what the samples cut off a bend
    table = frame_of(np.array(line.tube.centreline.tangent_points)).apply(points)
    size = np.ptp(table, axis=0)
    outside = line.stock.outside_diameter.middle
    for value, length in zip(line.work.box, size, strict=True):
        assert length <= value.middle <= length + outside + 2 * sagitta
