"""The elbow in a port is the one that turns as far as the builder's two directions are apart."""

from __future__ import annotations

import math
from types import SimpleNamespace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation

from firmpedal.finding import Level
from firmpedal.model.circuit import Port
from firmpedal.model.space import Direction
from firmpedal.pipeline import evaluate_text
from texts import edited, small

TURNS = {0.0: "AN816-4D", 45.0: "AN823-4D", 90.0: "AN822-4D"}  # straight, and the two elbows of the trade
WAYS = Rotation.random(40, rng=7)
FREE = st.integers(0, len(WAYS) - 1)


def port(faces, arm):
    ways = SimpleNamespace(faces=Direction(tuple(faces)), arm=Direction(tuple(arm)))
    return Port.arm_angle.fget(ways), Port.arm_aside.fget(ways).vector


def written(vector):
    return f"[{', '.join(f'{part:.9f}' for part in vector)}]"


def evaluated(faces, arm, fitting=""):
    inlet = "inlet: {thread: 1/8 NPT female, faces: forward, seat: [16, 0, -6]"
    ways = f"inlet: {{thread: 1/8 NPT female, faces: {faces}, seat: [16, 0, -6], arm: {arm}"
    declared = ("to: caliper.inlet\n", f"to: caliper.inlet\n    to fitting: {fitting}\n")
    edits = [(inlet, ways), *([declared] if fitting else [])]
    return evaluate_text(edited(small("quillfen"), *edits), "text")


def chosen(evaluation):
    joint = evaluation.assembly.joint_of("run", "to")
    found = [one.designation for one in joint.parts if one.designation in TURNS.values()]
    warned = [one for one in evaluation.findings if one.rule == "elbow-points-elsewhere"]
    return found, warned


@pytest.mark.parametrize(
    ("arm", "angle", "aside"),
    [
        ("up", 90, (0, 0, 1)),
        ([-1, 0, 0], 0, None),
        ([-1, 0, 1], 45, (0, 0, 1)),
        ([1, 0, 0], 180, None),
        ([1, 1, 0], 135, (0, 1, 0)),
    ],
)
def test_angles_by_hand(arm, angle, aside):
    vector = (0, 0, 1) if arm == "up" else tuple(part / math.hypot(*arm) for part in arm)
    found, way = port((-1, 0, 0), vector)
    assert math.degrees(found) == pytest.approx(angle)
    assert way == (pytest.approx(aside, abs=1e-9) if aside else None)


@given(FREE, st.floats(1, 179))
def test_however_the_pair_is_turned_in_space_the_angle_stays(number, angle):
    turned = Rotation.from_euler("y", angle, degrees=True).apply((1, 0, 0))
    found, aside = port(WAYS[number].apply((1, 0, 0)), WAYS[number].apply(turned))
    assert math.degrees(found) == pytest.approx(angle)
    assert aside == pytest.approx(WAYS[number].apply((0, 0, -1)), abs=1e-6)


@pytest.mark.parametrize("angle", [0, 38, 45, 52, 83, 90, 97])
@pytest.mark.parametrize("number", [0, 1, 2])
def test_where_no_form_is_declared_the_elbow_is_the_one_that_can(number, angle):
    axis = WAYS[number].apply((1, 0, 0))
    arm = WAYS[number].apply(Rotation.from_euler("y", angle, degrees=True).apply((1, 0, 0)))
    nearest = min(TURNS, key=lambda turn: abs(turn - angle))
    assert chosen(evaluated(written(axis), written(arm))) == ([TURNS[nearest]], [])


@pytest.mark.parametrize("fitting", TURNS.values())
@pytest.mark.parametrize(("arm", "angle"), [("up", 90), ("forward and up", 45), ("forward", 0)])
def test_a_declared_fitting_is_kept_and_held_to_the_way_that_is_said(fitting, arm, angle):
    found, warned = chosen(evaluated("forward", arm, fitting))
    assert found == [fitting]
    assert bool(warned) is (TURNS[float(angle)] != fitting)
    for finding in warned:
        assert finding.level is Level.WARNING
        turn = next(turn for turn, name in TURNS.items() if name == fitting)
        assert not turn or f"turns by {turn:g} degrees" in finding.message
        assert not angle or f"{angle} degrees off" in finding.message


@pytest.mark.parametrize("arm", ["aft", "aft and up", "[-0.88, 0, 0.47]"])
def test_where_nothing_can_point_there_it_is_said(arm):
    """Back along the port, 135 degrees off it, and 28 degrees: further than 10 from 0, 45 and 90."""
    _, warned = chosen(evaluated("forward", arm))
    assert [one.level for one in warned] == [Level.WARNING]
