"""Standing at full throttle: whether the ground holds it, and whether it comes up on its nose."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.stopping.stance import PLACE
from firmpedal.formulas.grip import grip_standing
from firmpedal.formulas.run_up import (
    forward_pull,
    pull_held_nosewheel,
    pull_held_tailwheel,
    pull_that_lifts_the_tail,
)
from firmpedal.quantity import Answer, Mark, Value, any_of, apply, exactly, worst
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.analysis.stopping.stance import Stance


@dataclass(frozen=True, slots=True)
class RunUp:
    """The pull along the ground at full throttle, the wheels held, and what it does.

    `holds` is the pull at which the main tyres slide, from usual to peak grip, `lifts` that which lifts the
    tail, None for a nosewheel type; `held` and `tips` say whether full throttle is under the one and over
    the other. Tyres that surely slide before the tail is up never let it tip.
    """

    pull: Value
    holds: Value
    held: Answer
    lifts: Value | None = None
    tips: Answer = Answer.NO


def run_up(stance: Stance, *, tailwheel: bool) -> RunUp:
    """Work out a run-up of one stance."""
    pull = apply(
        forward_pull,
        "pull along the ground at full throttle",
        place=f"{PLACE}.pull",
        thrust=stance.thrust,
        nose_up=stance.thrust_nose_up,
    )
    shared = {
        "friction": _standing_grip(stance),
        "mass": stance.mass,
        "wheelbase": stance.wheelbase,
        "height": stance.thrust_height,
        "nose_up": stance.thrust_nose_up,
    }
    label, place = "pull that the standing tyres hold", f"{PLACE}.standing"
    if not tailwheel:
        holds = apply(pull_held_nosewheel, label, place=place, ahead=stance.distance, **shared)
        return RunUp(pull, holds, _held(stance, pull, holds, tailwheel=False))
    holds = apply(pull_held_tailwheel, label, place=place, behind=stance.distance, **shared)
    lifts = apply(
        pull_that_lifts_the_tail,
        "pull that lifts the tail",
        place=f"{PLACE}.pull that lifts the tail",
        mass=stance.mass,
        behind=stance.distance,
        height=stance.thrust_height,
    )
    tips = worst((lifts.at_most(pull), _not_surely_over(lifts, holds)))
    return RunUp(pull, holds, _held(stance, pull, holds, tailwheel=True), lifts, tips)


def _not_surely_over(lifts: Value, holds: Value) -> Answer:
    """No where the tyres slide before the tail is up; what grip is under them nobody knows beforehand."""
    return Answer.NO if lifts.at_most(holds) is Answer.NO else Answer.YES


def _standing_grip(stance: Stance) -> Value:
    """From the least of usual grip, with which a stop is reckoned, to the most of the peak.

    A tyre that stands grips at its best on dry pavement; what is under it at the run-up nobody knows.
    """
    usual, peak = stance.usual_grip, stance.peak_grip
    label, place = "grip of the standing tyres, usual to peak", f"{PLACE}.standing grip"
    return any_of(label, (usual, peak), place, "from x1 to x2")


def _held(stance: Stance, pull: Value, holds: Value, *, tailwheel: bool) -> Answer:
    """Whether the tyres hold it; without the height of the thrust line only what surely slides is told.

    With a nose wheel the pull takes weight off the braked wheels, so that they hold most where it has no
    arm; with a tail wheel it puts weight on them, all that there is at most.
    """
    if holds.known or stance.thrust_height.known:
        return pull.at_most(holds)
    none = exactly("no arm", Dimension.LENGTH, 0.0, Mark.DERIVED)
    most = apply(
        grip_standing,
        "pull that the standing tyres hold at most",
        place=f"{PLACE}.standing at most",
        friction=_standing_grip(stance),
        mass=stance.mass,
        distance=none if tailwheel else stance.distance,
        wheelbase=stance.wheelbase,
    )
    return Answer.NO if pull.at_most(most) is Answer.NO else Answer.UNKNOWN
