"""What the ground allows: where the tyres slide, and where the tail comes up."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.stopping.stance import PLACE
from firmpedal.formulas.grip import (
    grip_limit_nosewheel,
    grip_limit_tailwheel,
    grip_standing,
    lesser,
    nose_over_limit,
)
from firmpedal.quantity import Answer, Value, any_of, apply

if TYPE_CHECKING:
    from firmpedal.analysis.stopping.stance import Stance


@dataclass(frozen=True, slots=True)
class Limits:
    """Decelerations that no brake gets beyond; `nose_over` is None for a nosewheel type.

    `usable` is what a pilot gets of dry pavement, the lesser of the usual grip and the nose-over limit.
    """

    usual: Value
    peak: Value
    nose_over: Value | None
    usable: Value
    standing: Value  # force along the ground that the standing wheels hold, from usual to peak grip


def limits(stance: Stance, *, tailwheel: bool) -> Limits:
    """The limits of one stance."""
    usual, peak = (
        _grip(
            stance, friction, f"deceleration at which the tyres slide, {word} grip", word, tailwheel=tailwheel
        )
        for word, friction in (("usual", stance.usual_grip), ("peak", stance.peak_grip))
    )
    over, usable = None, usual.named("deceleration that the ground allows", f"{PLACE}.usable")
    if tailwheel:
        over = apply(
            nose_over_limit,
            "deceleration that lifts the tail",
            place=f"{PLACE}.nose over",
            behind=stance.distance,
            height=stance.height,
        )
        usable = apply(
            lesser, "deceleration that the ground allows", place=f"{PLACE}.usable", one=usual, other=over
        )
    standing = apply(
        grip_standing,
        "force that the standing tyres hold",
        place=f"{PLACE}.standing",
        friction=_standing_grip(stance),
        mass=stance.mass,
        distance=stance.distance,
        wheelbase=stance.wheelbase,
    )
    return Limits(usual, peak, over, usable, standing)


def _standing_grip(stance: Stance) -> Value:
    """From the least of usual grip, with which a stop is reckoned, to the most of the peak.

    A tyre that stands grips at its best on dry pavement; what is under it at the run-up nobody knows.
    """
    usual, peak = stance.usual_grip, stance.peak_grip
    label, place = "grip of the standing tyres, usual to peak", f"{PLACE}.standing grip"
    return any_of(label, (usual, peak), place, "from x1 to x2")


def _grip(stance: Stance, friction: Value, label: str, word: str, *, tailwheel: bool) -> Value:
    place = f"{PLACE}.{word} grip"
    known = {"wheelbase": stance.wheelbase, "height": stance.height, "friction": friction}
    if tailwheel:
        return apply(grip_limit_tailwheel, label, place=place, behind=stance.distance, **known)
    return apply(grip_limit_nosewheel, label, place=place, ahead=stance.distance, **known)


def held(stance: Stance, allowed: Limits, *, tailwheel: bool) -> Answer:
    """Whether the standing tyres hold full throttle.

    With a nose wheel the pull takes weight off the braked wheels. How much goes by the height of the
    propeller, which nobody gave: it is taken to be no higher than the centre of gravity. With a tail wheel
    the pull puts weight on them, which is left out.
    """
    thrust, answer = stance.thrust, stance.thrust.at_most(allowed.standing)
    if answer is not Answer.YES or tailwheel:
        return answer
    if not (stance.height.known and stance.wheelbase.known and stance.peak_grip.known):
        return Answer.UNKNOWN
    lost = stance.peak_grip.high * thrust.high * stance.height.high / stance.wheelbase.low
    return answer if thrust.high + lost <= allowed.standing.low else Answer.UNKNOWN
