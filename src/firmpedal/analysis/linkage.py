"""A brake lever as it swings: how far its pad goes for a stroke of the cylinder, and its ratio there."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.formulas.levers import lever_ratio, pedal_travel
from firmpedal.formulas.pedal import lever_opening
from firmpedal.lay.spread import spread
from firmpedal.quantity import Mark, Missing, Step, Value, apply, exactly
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.lay.spread import Numbers
    from firmpedal.model.kinds import MasterCylinder
    from firmpedal.model.space import Point, Position
    from firmpedal.model.surroundings import Pedal


def pedal_ratio(pedal: Pedal) -> Value:
    """Pedal travel over cylinder stroke, from the two arms or else from the pivot points."""
    brake = pedal.brake
    label, place = "pedal ratio", f"{pedal.place}.ratio"
    points = (brake.pivot, brake.pad_at, brake.rod_end, brake.cylinder_base)
    if brake.pad.known or all(point is None for point in points):
        return apply(lever_ratio, label, place=place, pad_arm=brake.pad, cylinder_arm=brake.arm)
    known = [point for point in points if point is not None and point.known]
    if len(known) < len(points):
        what = Missing(pedal.place, "the points pivot, pad at, rod end and cylinder base")
        return Value(label, Dimension.NUMBER, None, Mark.MEASURED, place, missing=(what,))
    pivot, pad, rod, base = known
    pad_arm = _arm("pad arm", pedal, (pivot, pad), lambda points: math.dist(*points))
    cylinder_arm = _arm("cylinder arm", pedal, (pivot, rod, base), lambda points: _off_line(*points))
    return apply(lever_ratio, label, place=place, pad_arm=pad_arm, cylinder_arm=cylinder_arm)


def _arm(
    label: str, pedal: Pedal, points: tuple[Position, ...], length: Callable[[list[Point]], float]
) -> Value:
    """Work out an arm from the pivot, the first point, to a line of force."""
    coordinates = [value for point in points for value in point.coordinates]
    bounds = spread(
        lambda flat: (length([(flat[n], flat[n + 1], flat[n + 2]) for n in range(0, len(flat), 3)]),),
        coordinates,
    )
    inputs = tuple((value.label, value) for value in coordinates)
    step = Step("distance from the pivot to the line of force", inputs)
    mark = max(Mark.DERIVED, *(value.mark for value in coordinates))
    span = bounds[0].span if bounds else None
    return Value(label, Dimension.LENGTH, span, mark, f"{pedal.place}.{label}", step=step)


def _off_line(pivot: Point, rod: Point, base: Point) -> float:
    """Distance of the pivot from the line of the cylinder's rod; nothing where rod and base coincide."""
    along = [b - a for a, b in zip(rod, base, strict=True)]
    away = [b - a for a, b in zip(rod, pivot, strict=True)]
    cross = (
        along[1] * away[2] - along[2] * away[1],
        along[2] * away[0] - along[0] * away[2],
        along[0] * away[1] - along[1] * away[0],
    )
    length = math.hypot(*along)
    return math.hypot(*cross) / length if length else 0.0


def pins_of(pedal: Pedal | None) -> tuple[Position, Position, Position, Position] | None:
    """Pivot, pad, rod end and cylinder base, where the lever is given by them and all are known."""
    if pedal is None or pedal.brake.pad.known:
        return None
    brake = pedal.brake
    pivot, pad, rod, base = brake.pivot, brake.pad_at, brake.rod_end, brake.cylinder_base
    if pivot is None or pad is None or rod is None or base is None:
        return None
    known = all(each.known for each in (pivot, pad, rod, base))
    return (pivot, pad, rod, base) if known else None


def swung(pins: Numbers) -> Numbers | None:
    """Travel of the pad and ratio there, from the coordinates of the four pins and a stroke.

    The pins are taken to lie in one plane, square to the axis of the pivot. None where the lever would
    have come to its dead point before.
    """
    pivot, pad, rod, base = (pins[n : n + 3] for n in (0, 3, 6, 9))
    stroke = pins[12]
    one, other, length = math.dist(pivot, rod), math.dist(pivot, base), math.dist(rod, base)
    difference, total = abs(one - other), one + other
    if not difference < length - stroke <= length < total:
        return None
    before = lever_opening(length, difference, total)
    after = lever_opening(length - stroke, difference, total)
    pad_arm = math.dist(pivot, pad)
    arm = one * other * math.sin(after) / (length - stroke)
    return pad_arm * (before - after), lever_ratio(pad_arm, arm)


def pad_travel(pedal: Pedal | None, ratio: Value, stroke: Value, label: str, place: str) -> Value:
    """How far the pad goes for a stroke, all of it: by its ratio at rest, or from its pins as they swing."""
    if pedal is None:
        return Value(label, Dimension.LENGTH, None, Mark.MEASURED, place, missing=stroke.missing)
    pins = pins_of(pedal)
    if pins is None:
        nothing = exactly("free stroke, in the stroke", Dimension.LENGTH, 0.0, Mark.DERIVED)
        return apply(pedal_travel, label, place=place, lever_ratio=ratio, stroke=stroke, free_stroke=nothing)
    return _swung(pins, stroke, 0, Value(label, Dimension.LENGTH, None, Mark.DERIVED, place))


def ratio_at(pedal: Pedal | None, stroke: Value, at_rest: Value) -> Value:
    """The pedal ratio where a stroke has come to; by its arms it stays as at rest."""
    pins = pins_of(pedal)
    if pins is None:
        return at_rest
    words = f"{at_rest.label} where the stroke has come to"
    return _swung(pins, stroke, 1, Value(words, Dimension.NUMBER, None, Mark.DERIVED, at_rest.place))


def greatest_ratio(pedal: Pedal | None, cylinder: MasterCylinder, at_rest: Value) -> Value:
    """The greatest pedal ratio on the way to the end of the stroke or to the pad's stop.

    By its arms it stays as at rest. Of the lever given by its pins the cylinder's arm grows to one greatest
    length and shrinks again, so that it is shortest where the way begins or where it ends.
    """
    pins = pins_of(pedal)
    if pins is None or pedal is None:
        return at_rest
    stop = pedal.brake.travel_to_stop
    ends = [("stroke", cylinder.stroke), *([("travel to the stop", stop)] if stop.known else [])]
    inputs = [value for point in pins for value in point.coordinates] + [value for _, value in ends]
    step = Step("the greater of the ratio at rest and that where the way ends", (("i", at_rest), *ends))
    mark = max(Mark.DERIVED, *(value.mark for value in inputs))
    label, place = "greatest pedal ratio on the way", f"{pedal.place}.greatest ratio"
    wanted = Value(label, Dimension.NUMBER, None, mark, place, "firmpedal-derivation", step)
    if not cylinder.stroke.known:
        return replace(wanted, missing=cylinder.stroke.missing)
    bounds = spread(_greatest_on_the_way, inputs)
    if bounds is None:
        what = "the points of the lever, or where the pad stops: as given it comes to its dead point before"
        return replace(wanted, missing=(Missing(pedal.place, what),))
    return replace(wanted, span=bounds[0].span)


def _greatest_on_the_way(numbers: Numbers) -> Numbers | None:
    """The greater ratio of both ends, from the pins, the stroke and, if there is one, the pad's stop."""
    pins, stroke = numbers[:12], numbers[12]
    for stop in numbers[13:]:
        stroke = min(stroke, _stroke_to(pins, stop))
    rest, end = swung((*pins, 0.0)), swung((*pins, stroke))
    return (max(rest[1], end[1]),) if rest is not None and end is not None else None


def _stroke_to(pins: Numbers, travel: float) -> float:
    """The stroke at which the pad has gone so far; beyond the dead point there is none."""
    pivot, pad, rod, base = (pins[n : n + 3] for n in (0, 3, 6, 9))
    one, other, length = math.dist(pivot, rod), math.dist(pivot, base), math.dist(rod, base)
    pad_arm, difference, total = math.dist(pivot, pad), abs(one - other), one + other
    if not (difference < length < total and pad_arm):
        return math.inf
    angle = lever_opening(length, difference, total) - travel / pad_arm
    if angle <= 0:
        return math.inf
    return length - math.sqrt(one**2 + other**2 - 2 * one * other * math.cos(angle))


EQUATIONS = (
    "the pad's arm times the angle that it swings through",
    "the pad's arm over the cylinder's there",
)


def _swung(pins: tuple[Position, ...], stroke: Value, which: int, wanted: Value) -> Value:
    """One result of `swung` as the value that is wanted."""
    inputs = [value for point in pins for value in point.coordinates] + [stroke]
    step = Step(EQUATIONS[which], (("stroke", stroke),))
    mark = max(Mark.DERIVED, *(value.mark for value in inputs))
    wanted = replace(wanted, mark=mark, step=step)
    if not stroke.known:
        return replace(wanted, missing=stroke.missing)
    bounds = spread(swung, inputs)
    if bounds is None:
        what = "the points of the lever: as given it comes to its dead point before this stroke"
        return replace(wanted, missing=(Missing(wanted.place, what),))
    return replace(wanted, span=bounds[which].span, source="firmpedal-derivation")
