"""How near lines come to what they stay clear of while both move: by hand, and beside scipy's rotations."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation

from firmpedal.lay import looks
from firmpedal.pipeline import evaluate_text
from firmpedal.units import to_unit
from texts import edited

# One hose between two brackets and a ball beside it, in inches.
TEXT = """\
firmpedal: 1
aircraft: {name: Gaps, gear: nosewheel, brakes: toe, landing weight: 900 lb}
units: {length: in, angle: deg}
fluid: MIL-PRF-5606
states:
  rudder: {from: -1, to: 1, measured at: 0}
  gear: {values: [on wheels, on jacks], measured at: on wheels}
moving:
  thing: {rudder: [0, 0, 0]}
  end: {rudder: [0, 0, 0]}
bulkheads:
  one:
    sides: {a: {seat: [0, 0, 0]}, b: {seat: [0, 0, 1]}}
  other:
    moves with: end
    sides: {a: {seat: [10, 0, 0]}, b: {seat: [10, 0, 1]}}
keep clear of:
  knob: {kind: control, where: {ball: [5, 0, 4], radius: 1}, moves with: thing}
lines:
  hose: {from: one.a, to: other.a, made of: hose -4 PTFE braided}
"""
THING, END = "thing: {rudder: [0, 0, 0]}", "  end: {rudder: [0, 0, 0]}"


def gap(*edits: tuple[str, str]):
    (found,) = evaluate_text(edited(TEXT, *edits), "text").gaps
    return found


def surface(evaluated) -> float:
    """The distance found, with half the hose's greatest outside diameter put back."""
    outside = dict(evaluated.distance.step.inputs)["D"]
    return to_unit(evaluated.distance.low + outside.high / 2, "in")


def test_nothing_moves():
    found = gap()
    assert surface(found) == pytest.approx(3)
    assert found.setting == ()


def test_the_thing_moves_towards_the_line():
    found = gap((THING, "thing: {rudder: [0, 0, -1.5]}"))
    assert surface(found) == pytest.approx(1.5)
    assert found.setting == (("rudder", 1.0),)


def test_the_end_of_the_line_takes_half_its_movement_to_the_middle():
    # at full rudder the hose rises 2 in 10: it passes 3 under the ball's centre, square to it less
    assert surface(gap((END, "  end: {rudder: [0, 0, 2]}"))) == pytest.approx(3 / 1.04**0.5 - 1)


def test_what_carries_all_of_them_brings_nothing_nearer():
    together = [("  one:\n", "  one:\n    moves with: thing\n"), ("moves with: end", "moves with: thing")]
    assert surface(gap((THING, "thing: {rudder: [0, 0, -1.5]}"), *together)) == pytest.approx(3)


def test_a_range_of_the_place_is_a_range_of_the_distance():
    found = gap(("ball: [5, 0, 4]", "ball: [5, 0, 3.5 to 4.5]"))
    outside = dict(found.distance.step.inputs)["D"]
    assert to_unit(found.distance.low + outside.high / 2, "in") == pytest.approx(2.5)
    assert to_unit(found.distance.high + outside.low / 2, "in") == pytest.approx(3.5)


def test_an_unknown_movement_is_asked_for_only_nearby():
    unknown = (THING, "thing: {rudder: unknown}")
    near, far = gap(unknown), gap(unknown, ("ball: [5, 0, 4]", "ball: [5, 0, 40]"))
    assert [item.what for item in near.distance.missing] == ["how far thing moves with rudder"]
    assert to_unit(far.distance.low, "in") > 26
    assert near.as_measured.span == gap().distance.span
    assert far.as_measured is None


def test_an_unknown_place_is_asked_for():
    found = gap(("{ball: [5, 0, 4], radius: 1}", "unknown"))
    assert [item.what for item in found.distance.missing] == ["where knob is"]


@settings(max_examples=60, deadline=None)
@given(
    st.floats(-40, 40).map(lambda angle: round(angle, 2)),
    st.tuples(*[st.floats(-2, 2).map(lambda one: round(one, 2))] * 3),
    st.tuples(*[st.floats(-3, 3).map(lambda one: round(one, 2))] * 3),
)
def test_a_swinging_thing_beside_rotations_of_a_library(angle, about, step):
    """The ball turns about an axis to the right; the hose's end shifts. Both move with the rudder."""
    motions = [
        (THING, f"thing: {{rudder: {{about: {list(about)}, axis: right, swing: +/- {abs(angle)}}}}}"),
        (END, f"  end: {{rudder: {list(step)}}}"),
    ]
    evaluated = gap(*motions)
    half = to_unit(dict(evaluated.distance.step.inputs)["D"].high, "in") / 2  # surfaces meet before axes do
    found = surface(evaluated)
    distances = []
    for rudder in np.linspace(-1, 1, 801):
        turn = Rotation.from_rotvec(np.radians(abs(angle)) * rudder * np.array([0, 1, 0]))
        centre = np.array(about) + turn.apply(np.array([5, 0, 4]) - np.array(about))
        shares = np.linspace(0, 1, 1001)[:, None]
        hose = shares * (np.array([10, 0, 0]) + rudder * np.array(step))
        distances.append(np.linalg.norm(hose - centre, axis=1).min() - 1)
    assert found == pytest.approx(max(min(distances), half), abs=0.02)


@pytest.mark.parametrize(("way", "start"), [(6, 10.75), (8, 11), (3, 10.375)])
def test_what_moves_through_the_line_between_two_looks_is_met(way, start):
    """A thin knob goes from one side of the hose to the other: at some place it is in it."""
    thin = ("{ball: [5, 0, 4], radius: 1}", f"{{ball: [5, 0, {start - 10}], radius: 1/16}}")
    found = gap(thin, (THING, f"thing: {{rudder: [0, 0, {-way}]}}"))
    assert found.distance.low == 0
    assert dict(found.setting)["rudder"] == pytest.approx((start - 10) / way, abs=0.06)


def test_a_mile_along_the_line_is_looked_at_so_often_and_no_oftener(monkeypatch):
    """A slip of the pen: a knob runs along a hose, 3 in off all the way. Nothing unseen is called clear."""
    counted = []
    lines_in = looks.Scene.lines_in
    monkeypatch.setattr(
        looks.Scene,
        "lines_in",
        lambda scene, settings: counted.extend(settings) or lines_in(scene, settings),
    )
    mile = ("seat: [10, 0, 0]", "seat: [63360, 0, 0]")
    found = gap(mile, ("ball: [5, 0, 4]", "ball: [31680, 0, 4]"), (THING, "thing: {rudder: [31000, 0, 0]}"))
    between = 8 * looks.MOST_LOOKS  # a rudder is looked at as measured and in 9 places first
    nearer = len(counted) - between - 1 - 9
    assert 0 <= nearer <= looks.MOST_LOOKS  # what is nearer than all before is looked at once more
    assert surface(found) < 3
