"""A small sound text for the reader's tests, and the way they spoil it."""

from __future__ import annotations

from firmpedal.project import Reading, read_text
from texts import edited

SOUND = """\
firmpedal: 1
aircraft: {name: Test Bed, gear: tailwheel, brakes: toe}
units: {length: in, pressure: psi, force: lbf, angle: deg}
fluid: MIL-PRF-5606
states:
  rudder: {from: -1, to: 1, measured at: 0}
moving:
  left_pedal_swing:
    rudder: {about: [15, -7.5, 1], axis: left, swing: +/- 17}
components:
  left_cylinder:
    kind: master cylinder
    side: left
    bore: 0.625
    stroke: 0.8
    pedal: left_brake
    moves with: left_pedal_swing
    ports:
      outlet: {thread: 1/8 NPT female, faces: forward, seat: [13.1, -7.5, 3]}
  left_caliper:
    kind: caliper
    side: left
    pistons: {bore: 1.5, count per side: 1}
    ports:
      inlet: {thread: 1/8 NPT female, faces: right, seat: [9.4, -32.6, -31.4]}
pedals:
  left_brake: {side: left, brake: {pad: 5, arm: 2.5}}
lines:
  left_line:
    from: left_cylinder.outlet
    to: left_caliper.inlet
    made of: hose -4 PTFE braided
"""


def spoiled(*edits: tuple[str, str]) -> Reading:
    """Read the sound text with some words put in the place of others."""
    return read_text(edited(SOUND, *edits))


def place_of(text: str, words: str) -> tuple[int, int]:
    """Line and column of the first place where some words stand."""
    before = text[: text.index(words)]
    return before.count("\n") + 1, len(before) - (before.rfind("\n") + 1) + 1
