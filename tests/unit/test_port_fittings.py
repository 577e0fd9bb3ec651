"""Where the leg of a fitting in a port lies, from the few figures that a builder has."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from firmpedal.lay.port_fittings import port_fittings
from firmpedal.model.aircraft import find
from firmpedal.pipeline import evaluate_text
from firmpedal.units import from_unit

TEXT = (Path(__file__).parents[1] / "rules" / "elbows-cannot-turn" / "passing-straight.yaml").read_text(
    encoding="utf-8"
)
PORT = "in: {thread: 1/8 NPT female, faces: up, at: [40, 0, -5]}"
INCH = from_unit(1, "in")


def fittings(port: str = PORT, *edits: tuple[str, str]):
    text = TEXT.replace(PORT, port)
    for old, new in edits:
        assert old in text
        text = text.replace(old, new)
    evaluation = evaluate_text(text)
    valve = find(evaluation.aircraft.components, "valve")
    return {one.port.name: one for one in port_fittings(valve, evaluation.assembly, evaluation.laid)}


def tips(fitting, length: int):
    """Where the outlet is in each reading, with the least (0) or greatest (1) length of the leg."""
    for leg in fitting.legs:
        way = np.cos(leg.turn) * np.array(leg.axis) + np.sin(leg.turn) * np.array(leg.arm or (0, 0, 0))
        yield (np.array(leg.crossing) + leg.length[length] * way) / INCH


def test_an_elbow_is_turned_in_and_a_straight_nipple_is_not():
    found = fittings()
    assert (found["in"].turned_in, found["out"].turned_in) == (True, False)
    assert found["in"].same_way(found["out"])


def test_from_the_face_the_leg_begins_on_the_axis_above_it_by_the_stem_less_the_thread():
    # AN822-4: 0.67 +/- 0.10 in from centre to pipe end. A 1/8 thread goes in 0.1615 in by hand
    # (ASME B1.20.1) and up to 3 turns of 1/27 in more by the wrench
    heights = [np.array(leg.crossing) / INCH - (40, 0, -5) for leg in fittings()["in"].legs]
    assert all((x, y) == pytest.approx((0, 0), abs=1e-9) for x, y, _ in heights)
    assert min(z for *_, z in heights) == pytest.approx(0.57 - 0.1615 - 3 / 27, abs=0.02)
    assert max(z for *_, z in heights) <= 0.77 - 0.1615


@pytest.mark.parametrize(("arm", "way"), [("aft", (1, 0, 0)), ("left", (0, -1, 0))])
def test_from_the_seat_every_reading_of_the_leg_ends_there(arm, way):
    port = f"in: {{thread: 1/8 NPT female, faces: up, seat: [40, 0, -4], arm: {arm}}}"
    fitting = fittings(port)["in"]
    assert fitting.arm == pytest.approx(way)
    assert len(fitting.legs) > 1
    for near, far in zip(tips(fitting, 0), tips(fitting, 1), strict=True):
        for axis in range(3):
            low, high = sorted((near[axis], far[axis]))
            assert low - 1e-6 <= (40, 0, -4)[axis] <= high + 1e-6


def test_where_nobody_says_the_arm_the_line_that_leaves_does():
    seat = "in: {thread: 1/8 NPT female, faces: up, seat: [40, 0, -4]}"
    assert fittings(seat)["in"].arm is None
    bent = ("to: valve.in, to fitting", "to: valve.in, via: [[30, 0, -4]], to fitting")
    assert fittings(seat, bent)["in"].arm == pytest.approx((-1, 0, 0))
    up = ("to: valve.in, to fitting", "to: valve.in, via: [[40, 0, 4]], to fitting")
    assert fittings(seat, up)["in"].arm is None  # no elbow of 90 degrees points along its port


def test_a_leg_whose_arm_nobody_knows_may_stand_all_round_its_seat():
    (leg,) = fittings("in: {thread: 1/8 NPT female, faces: up, seat: [40, 0, -4]}")["in"].legs[:1]
    assert leg.arm is None
    assert leg.slack >= leg.length[0]


def test_a_place_that_is_unknown_gives_no_leg():
    port = "in: {thread: 1/8 NPT female, faces: up, at: unknown}"
    assert fittings(port)["in"].legs == ()
