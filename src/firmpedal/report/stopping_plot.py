"""Deceleration against the foot, with what the tyres and the nose allow."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.plot import Axis, Band, Curve, Limit, plot
from firmpedal.units import Dimension, to_unit

if TYPE_CHECKING:
    from firmpedal.analysis.stopping import AtFoot, Stopping
    from firmpedal.model.display import Display
    from firmpedal.quantity import Value
    from firmpedal.report.sheet import Drawing

ROOM = 1.15  # above the highest thing that has to be seen
CAPTION = (
    "How hard it stops against the force on each pedal. Where the brakes pass a limit, the limit counts."
)


def stopping_plot(stop: Stopping, display: Display) -> Drawing | None:
    """The brakes' deceleration over the foot with its limits; None before there is anything to draw."""
    feet = [at for at in stop.feet if at.force.known and at.by_brakes.known]
    if not feet:
        return None
    force, slowing = display.unit(Dimension.FORCE) or "N", display.unit(Dimension.ACCELERATION) or "m/s^2"
    strongest = max(feet, key=lambda at: at.force.high)
    most = to_unit(strongest.force.high, force) * ROOM
    bands = _bands(stop, slowing, most)
    seen = [
        stop.stance.wanted,
        stop.limits.peak,
        *((stop.limits.nose_over,) if stop.limits.nose_over else ()),
    ]
    highs = [to_unit(value.high, slowing) for value in seen if value.known]
    reach = max(to_unit(at.by_brakes.low, slowing) for at in feet)
    top = ROOM * max(*highs, min(reach, 2 * max(highs))) if highs else ROOM * reach
    uprights = [
        Limit(f"{at.foot} foot", to_unit(at.force.middle, force), upright=True)
        for at in feet
        if at.force.known
    ]
    limits = (
        [Limit("wanted", to_unit(stop.stance.wanted.middle, slowing))] if stop.stance.wanted.known else []
    )
    return plot(
        Axis(f"force on each pedal, {force}", 0.0, most),
        Axis(f"deceleration, {slowing}", 0.0, top),
        [_brakes(stop, feet, (force, slowing), most), *bands],
        [*limits, *uprights],
        CAPTION,
    )


def _brakes(stop: Stopping, feet: list[AtFoot], units: tuple[str, str], most: float) -> Band | Curve:
    """What the brakes make, from the foot on with which the pads press."""
    rising = sorted(feet, key=lambda at: at.force.middle)
    low, high = (_rising(stop.begins, rising, end, units, most) for end in (0, 1))
    return Curve("the brakes", high, bold=True) if low == high else Band("the brakes", low, high)


def _rising(
    begins: Value, feet: list[AtFoot], end: int, units: tuple[str, str], most: float
) -> tuple[tuple[float, float], ...]:
    """One edge: least braking for the greatest foot, or the other way round; beyond the last, straight on."""
    force, slowing = units
    first = to_unit(begins.span[1 - end], force) if begins.span else 0.0
    known = [(at.force.span, at.by_brakes.span) for at in feet]
    points = [
        (to_unit(foot[1 - end], force), to_unit(braking[end], slowing))
        for foot, braking in known
        if foot and braking
    ]
    (x0, y0), (x1, y1) = ((first, 0.0), *points)[-2:]
    beyond = (most, y1 + (y1 - y0) / (x1 - x0) * (most - x1)) if x1 > x0 else (most, y1)
    return ((0.0, 0.0), *((first, 0.0),) * (first > 0), *points, beyond)


def _bands(stop: Stopping, unit: str, most: float) -> list[Band | Curve]:
    """The limits of the ground, each as wide as it is known."""
    found = (
        ("usual grip", stop.limits.usual),
        ("wheels lock", stop.limits.peak),
        ("nose over", stop.limits.nose_over),
    )
    return [_level(words, value, unit, most) for words, value in found if value is not None and value.known]


def _level(words: str, value: Value, unit: str, most: float) -> Band | Curve:
    low, high = (
        ((0.0, to_unit(bound, unit)), (most, to_unit(bound, unit))) for bound in (value.low, value.high)
    )
    return Curve(words, low, dashed=True) if value.exact else Band(words, low, high)
