"""Whether it stops and holds: from a foot on the pedal to drag at the ground, and back from a wanted stop."""

from __future__ import annotations

from firmpedal.analysis.stopping.apart import Apart, WheelLock
from firmpedal.analysis.stopping.brake import WheelBrake
from firmpedal.analysis.stopping.contradictions import Contradiction
from firmpedal.analysis.stopping.limits import Limits
from firmpedal.analysis.stopping.needs import Needed
from firmpedal.analysis.stopping.pushes import Pushing
from firmpedal.analysis.stopping.run_up import RunUp
from firmpedal.analysis.stopping.stance import Stance
from firmpedal.analysis.stopping.whole import AtFoot, Stopping, stopping

__all__ = [
    "Apart",
    "AtFoot",
    "Contradiction",
    "Limits",
    "Needed",
    "Pushing",
    "RunUp",
    "Stance",
    "Stopping",
    "WheelBrake",
    "WheelLock",
    "stopping",
]
