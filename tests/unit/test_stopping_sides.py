"""Stopping where left and right are not alike: each wheel by its own cylinder and its own leaflet."""

from __future__ import annotations

import re

import pytest
from test_stopping import AIRCRAFT, in_unit, stopping

from firmpedal.units import to_unit

# The right side written out: its cylinder has a bore of 3/4 in against the left one's 5/8.
RIGHT = """
  right_cylinder:
    kind: master cylinder
    side: right
    bore: 3/4
    stroke: 3/4
    pedal: right_pedal
    ports:
      outlet: {thread: 1/8 NPT female, faces: down, seat: [10, 4, 4]}
  right_caliper:
    kind: caliper
    side: right
    pistons: {bore: 1-1/2, count per side: 1}
    effective radius: 2.3
    lining friction: 0.3
    ports:
      inlet: {thread: 1/8 NPT female, faces: forward, seat: [16, 4, -6]}
pedals:
  right_pedal: {side: right, brake: {pad: 5, arm: 5}}"""
RUN = "  right_run: {from: right_cylinder.outlet, to: right_caliper.inlet, made of: tube 5052-O 1/4 x .035}\n"


WRITTEN_OUT = re.sub(r"\nmirror: .*\n", "\n" + RUN, AIRCRAFT.replace("\npedals:", RIGHT, 1))


def two_sided(*edits):
    text = WRITTEN_OUT
    for old, new in edits:
        assert text.count(old) == 1, (text.count(old), old)
        text = text.replace(old, new)
    return stopping(text)


def test_each_wheel_has_the_pressure_of_its_own_cylinder():
    """500 psi on the left; on the right as much less as 5/8 squared against 3/4 squared: 347.2 psi."""
    found = two_sided()
    left, right = found.brakes
    assert in_unit(left.feet[0].pressure, "psi") == pytest.approx(500.0, abs=0.01)
    assert in_unit(right.feet[0].pressure, "psi") == pytest.approx(500 * (5 / 6) ** 2, abs=0.01)
    assert in_unit(found.feet[0].drag, "lbf") == pytest.approx(187.6 * (1 + (5 / 6) ** 2), abs=0.05)


def test_the_pressure_for_a_stop_is_that_of_both_sides_alike_and_the_foot_lies_in_its_band():
    """What the normal foot makes is wanted: 423.6 psi on both would do, and 153.4 lbf do it as it is."""
    made = in_unit(two_sided().feet[0].by_brakes, "m/s^2")
    found = two_sided(("landing speed: 39 kt", f"wanted deceleration: {made} m/s^2"))
    assert in_unit(found.wanted.pressure, "psi") == pytest.approx(250 * (1 + (5 / 6) ** 2), abs=0.01)
    assert to_unit(found.wanted.foot.low, "lbf") < 153.398 < to_unit(found.wanted.foot.high, "lbf")


def leaflet(side, torque):
    """The leaflet of one side alone, beside the friction that is declared."""
    words = f"    kind: caliper\n    side: {side}\n"
    return words, f"{words}    leaflet: {{torque: {torque} lbf in, at pressure: 500}}\n"


@pytest.mark.parametrize("side", ["left", "right"])
def test_a_leaflet_is_held_against_its_own_caliper(side):
    """2,438.7 lbf in are friction 0.6: on that side 0.6 is declared, on the other 0.3."""
    other = {"left": "right", "right": "left"}[side]
    parts = WRITTEN_OUT.partition("  right_cylinder:")
    own = parts[0 if side == "left" else 2]
    stronger = own.replace(*leaflet(side, 2438.7)).replace("lining friction: 0.3", "lining friction: 0.6")
    assert two_sided((own, stronger)).contradictions == ()
    (found,) = two_sided(leaflet(other, 2438.7)).contradictions
    assert found.place == f"components.{other}_caliper.leaflet.torque"


@pytest.mark.parametrize(
    ("torque", "twice"), [("1800 to 2400", True), ("1500 to 2000", False), ("2900 to 3600", False)]
)
def test_both_sides_are_suspected_where_the_middle_is_about_twice(torque, twice):
    """1,219.3 lbf in are what the pistons make; the middles are 1.7, 1.4 and 2.7 times that."""
    (found,) = two_sided(leaflet("right", torque)).contradictions
    assert ("both sides" in found.reason) is twice
