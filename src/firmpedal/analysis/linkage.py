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
    from firmpedal.lay.spread import Numbers
    from firmpedal.model.space import Position
    from firmpedal.model.surroundings import Pedal


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
