"""Filling from the caliper up: how much, how hard, how long, in which attitude; and what gravity would do."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, sin
from typing import TYPE_CHECKING

from firmpedal.analysis.bleeding.bores import not_without_fluid
from firmpedal.analysis.heights import LEAST_DEPTH, angles_of, difference, row_at, stances_of, with_cap
from firmpedal.formulas.attitude import column_pressure
from firmpedal.formulas.laminar import flow_at_pressure, laminar_pressure_drop, time_to_pass
from firmpedal.quantity import Answer, Mark, Value, all_missing, apply, largest, total
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from firmpedal.analysis.bleeding.bores import Bore
    from firmpedal.analysis.heights import Column, Heights, Stance
    from firmpedal.analysis.heights_ways import Spot, Way
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.stock import Fluid

POT = Value(
    "pressure of a pump bottle or pressure pot",
    Dimension.PRESSURE,
    (from_unit(15, "psi"), from_unit(20, "psi")),
    Mark.READ,
    source="builder-reports",
)


@dataclass(frozen=True, slots=True)
class Gravity:
    """Filling from the reservoir down: the flow it makes in an attitude, or the line that it cannot climb."""

    attitude: str
    blocked: Column | None
    flow: Value
    enough: Answer  # whether it is surely enough to take air down a slope


@dataclass(frozen=True, slots=True)
class Rise:
    """One caliper filled from its own port up to the top, in the attitude in which that is easiest.

    `flow` surely takes air along in every line; `pressure` at the caliper drives it: `friction` and `column`.
    `time` is how long one filling takes at that flow, so the longest that it may take.
    """

    caliper: str
    top: str
    lines: tuple[str, ...]
    attitude: str
    volume: Value
    flow: Value
    friction: Value
    column: Value
    pressure: Value
    time: Value
    gravity: tuple[Gravity, ...]
    passes: tuple[str, ...]  # other calipers on its way: they are filled with it

    @property
    def enough(self) -> Answer:
        """Whether the usual pressure surely drives the flow that takes air along."""
        return self.pressure.at_most(POT)


@dataclass(frozen=True, slots=True)
class Setting:
    """What all ways share."""

    aircraft: Aircraft
    laid: Mapping[str, LaidLine]
    volumes: Mapping[str, Value]
    bores: Mapping[str, Bore]
    viscosity: Value
    heights: Heights

    @property
    def fluid(self) -> Fluid | None:
        return self.aircraft.fluid


def rise_of(setting: Setting, way: Way) -> Rise | None:
    """What filling one way takes; None where no point of it is known, or no attitude is."""
    lines = tuple(dict.fromkeys(spot.line for spot in way.spots if spot.line))
    stance = _easiest(setting, way)
    if not lines or stance is None:
        return None
    place = f"{way.spots[0].place}.filling"
    flow = largest(
        f"flow that surely takes air along from {way.caliper}",
        [setting.bores[line].sweep for line in lines],
        f"{place}.flow",
    )
    drops = [_drop(setting, line, flow) for line in lines]
    friction = total(f"pressure that this flow uses up from {way.caliper}", drops, f"{place}.friction")
    column = _column(setting, way, stance, place)
    pressure = total(f"pressure at {way.caliper} that drives it", (friction, column), f"{place}.pressure")
    volume = total(
        f"fluid in the lines from {way.caliper} to {way.top}",
        [setting.volumes[line] for line in lines],
        f"{place}.volume",
    )
    time = apply(
        time_to_pass,
        f"time of one filling from {way.caliper} at that flow",
        place=f"{place}.time",
        volume=volume,
        flow=flow,
    )
    gravity = tuple(_gravity(setting, way, each, flow, friction, place) for each in _stances(setting))
    return Rise(
        way.caliper,
        way.top,
        lines,
        stance.name,
        volume,
        flow,
        friction,
        column,
        pressure,
        time,
        gravity,
        _passed(setting.aircraft, way),
    )


def _passed(aircraft: Aircraft, way: Way) -> tuple[str, ...]:
    heads = dict.fromkeys(spot.near.rpartition(".")[0] for spot in way.spots)
    calipers = {each.name for each in aircraft.calipers} - {way.caliper}
    return tuple(name for name in heads if name in calipers)


def far_ends_first(rises: Iterable[Rise]) -> tuple[Rise, ...]:
    """The same in the order of the work: what is filled on the way of another comes after it."""
    given, ordered, begun = tuple(rises), [], set[int]()

    def put(number: int) -> None:
        if number in begun:
            return
        begun.add(number)
        for other, rise in enumerate(given):
            if given[number].caliper in rise.passes:
                put(other)
        ordered.append(given[number])

    for number in range(len(given)):
        put(number)
    return tuple(ordered)


def _stances(setting: Setting) -> list[Stance]:
    return [stance for stance in stances_of(setting.aircraft) if stance.nose_up.known]


def _easiest(setting: Setting, way: Way) -> Stance | None:
    """The attitude in which no line stands above the cap, if there is one, and then the least deep traps."""

    def trouble(stance: Stance) -> tuple[float, float]:
        over = max((0.0, *(each.above.high for each in _columns(setting, way, stance) if each.above.known)))
        deep = sum(
            depth.high
            for trap in setting.heights.traps
            if way.caliper in trap.calipers and trap.top == way.top
            for name, depth in trap.depths
            if name == stance.name
        )
        return (over if over > LEAST_DEPTH else 0.0, deep)

    return min(_stances(setting), key=trouble, default=None)


def _columns(setting: Setting, way: Way, stance: Stance) -> list[Column]:
    return [
        each
        for each in setting.heights.columns
        if (each.caliper, each.top, each.attitude) == (way.caliper, way.top, stance.name)
    ]


def _drop(setting: Setting, name: str, flow: Value) -> Value:
    line, fluid = setting.laid[name], setting.fluid
    label, place = f"pressure used up in {name}", f"{line.place}.filling"
    if fluid is None:
        return not_without_fluid(label, Dimension.PRESSURE, place)
    return apply(
        laminar_pressure_drop,
        label,
        place=place,
        viscosity=setting.viscosity,
        density=fluid.density,
        length=line.order_length if line.hose else line.developed_length or line.path_length,
        bore=setting.bores[name].bore,
        flow=flow,
    )


def _column(setting: Setting, way: Way, stance: Stance, place: str) -> Value:
    """The weight of fluid from the caliper up to the highest point of the way."""
    label = f"weight of the fluid above {way.caliper}"
    if way.missing:  # what is not known may stand higher
        return Value(label, Dimension.PRESSURE, None, Mark.MEASURED, f"{place}.column", missing=way.missing)
    top = max(with_cap(way), key=lambda spot: _height_at(spot, stance))
    return _weight(setting, top, way.spots[0], stance, label, f"{place}.column")


def _height_at(spot: Spot, stance: Stance) -> float:
    return spot.up.middle * cos(stance.nose_up.middle) - spot.aft.middle * sin(stance.nose_up.middle)


def _weight(setting: Setting, upper: Spot, lower: Spot, stance: Stance, label: str, place: str) -> Value:
    if setting.fluid is None:
        return not_without_fluid(label, Dimension.PRESSURE, place)
    words = f"height of {upper.near} above {lower.near} when {stance.name}"
    height = difference(words, upper, lower, stance, _apart(upper, lower, stance))
    return apply(column_pressure, label, place=place, height=height, density=setting.fluid.density)


def _apart(upper: Spot, lower: Spot, stance: Stance) -> tuple[float, float]:
    """How far one point stands above another, at least and at most, and not less than nothing."""
    looks = [row_at((upper, lower), angle) for angle in angles_of(stance.nose_up)]
    low = min(row[0] - row[1] - sum(slack) for row, slack in looks)
    high = max(row[0] - row[1] + sum(slack) for row, slack in looks)
    return max(0.0, low), max(0.0, high)


def _driven(flow: Value, friction: Value, pressure: Value, label: str, place: str) -> Value:
    if not friction.known or not pressure.known:
        missing = all_missing((friction, pressure))
        return Value(label, Dimension.FLOW, None, Mark.MEASURED, place, missing=missing)
    return apply(flow_at_pressure, label, place=place, flow=flow, drop=friction, pressure=pressure)


def _gravity(setting: Setting, way: Way, stance: Stance, flow: Value, friction: Value, place: str) -> Gravity:
    over = [each for each in _columns(setting, way, stance) if each.above.known and each.above.low > 0]
    blocked = max(over, key=lambda each: each.above.low, default=None)
    label = f"flow by gravity from {way.top} when {stance.name}"
    if blocked is not None or not way.has_reservoir:
        nothing = Value(label, Dimension.FLOW, (0.0, 0.0), Mark.DERIVED, place)
        return Gravity(stance.name, blocked, nothing, Answer.NO)
    if way.missing:
        unseen = Value(label, Dimension.FLOW, None, Mark.MEASURED, place, missing=way.missing)
        return Gravity(stance.name, None, unseen, Answer.UNKNOWN)
    top = with_cap(way)[-1]
    head = _weight(setting, top, way.spots[0], stance, f"weight of the fluid below {top.near}", place)
    made = _driven(flow, friction, head, label, f"{place}.gravity {stance.name}")
    return Gravity(stance.name, None, made, made.at_least(flow))
