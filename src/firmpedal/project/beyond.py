"""Figures that no aircraft on the ground has, whatever else the file says: common practice, no source."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from firmpedal.project.references import References
    from firmpedal.quantity import Value

MOST_LINING = 1.0  # brake linings hold 0.25 to 0.5 of what presses them: twice the most is a slip
MOST_TYRE = 1.5  # tyres hold up to 0.8 on dry pavement
STEEPEST = math.radians(45)  # tailwheel types stand at 10 to 15 degrees


def check_beyond(work: References) -> None:
    """Note frictions that nothing has, and attitudes in which nothing stands."""
    for caliper in work.aircraft.calipers:
        _friction(work, caliper.lining_friction, MOST_LINING, "what presses a lining", "0.35")
    ground = work.aircraft.on_the_ground
    for tyre in (ground.usual_tyre_friction, ground.peak_tyre_friction):
        _friction(work, tyre, MOST_TYRE, "the weight on a tyre", "0.4, or 0.7 as the wheel locks")
    for attitude in work.aircraft.attitudes:
        angle = attitude.nose_up
        if angle.known and max(abs(angle.low), abs(angle.high)) > STEEPEST:
            message = f"no aircraft stands on the ground with its nose so far up or down as {attitude.name}"
            advice = "write the angle from level in degrees, such as 12; nose down is minus"
            work.notes.note(work.node(angle.place), message, advice)


def _friction(work: References, friction: Value, most: float, of_what: str, sample: str) -> None:
    if friction.known and friction.high > most:
        message = f"{friction.label}: nothing holds with so great a share of {of_what}"
        work.notes.note(work.node(friction.place), message, f"write it as a plain number, such as {sample}")
