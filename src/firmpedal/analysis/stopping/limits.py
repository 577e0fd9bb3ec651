"""What the ground allows: where the tyres slide, and where the tail comes up."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.stopping.stance import PLACE
from firmpedal.formulas.grip import (
    grip_limit_nosewheel,
    grip_limit_tailwheel,
    grip_tail_up,
    lesser,
    nose_over_limit,
)
from firmpedal.quantity import Answer, Value, apply

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
    tail_up: Value  # at which the tyres slide at their best, all the weight on the main wheels

    @property
    def can_tip(self) -> bool:
        """Whether braking may lift the tail: not where the tyres surely slide before."""
        return self.nose_over is not None and self.nose_over.at_most(self.tail_up) is not Answer.NO


def limits(stance: Stance, *, tailwheel: bool) -> Limits:
    """The limits of one stance."""
    usual, peak = (
        _grip(
            stance, friction, f"deceleration at which the tyres slide, {word} grip", word, tailwheel=tailwheel
        )
        for word, friction in (("usual", stance.usual_grip), ("peak", stance.peak_grip))
    )
    tail_up = apply(
        grip_tail_up,
        "deceleration at which the tyres slide, all the weight on them",
        place=f"{PLACE}.tail up",
        friction=stance.peak_grip,
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
    return Limits(usual, peak, over, usable, tail_up)


def _grip(stance: Stance, friction: Value, label: str, word: str, *, tailwheel: bool) -> Value:
    place = f"{PLACE}.{word} grip"
    known = {"wheelbase": stance.wheelbase, "height": stance.height, "friction": friction}
    if tailwheel:
        return apply(grip_limit_tailwheel, label, place=place, behind=stance.distance, **known)
    return apply(grip_limit_nosewheel, label, place=place, ahead=stance.distance, **known)
