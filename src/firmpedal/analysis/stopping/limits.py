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
from firmpedal.quantity import Value, apply

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
    standing: Value  # force along the ground that the standing wheels hold


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
        friction=stance.peak_grip,
        mass=stance.mass,
        distance=stance.distance,
        wheelbase=stance.wheelbase,
    )
    return Limits(usual, peak, over, usable, standing)


def _grip(stance: Stance, friction: Value, label: str, word: str, *, tailwheel: bool) -> Value:
    place = f"{PLACE}.{word} grip"
    known = {"wheelbase": stance.wheelbase, "height": stance.height, "friction": friction}
    if tailwheel:
        return apply(grip_limit_tailwheel, label, place=place, behind=stance.distance, **known)
    return apply(grip_limit_nosewheel, label, place=place, ahead=stance.distance, **known)
