"""One brake: from the pressure at its caliper to the drag of its wheel."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.stopping.pushes import from_either_seat
from firmpedal.analysis.stopping.stance import asked, usual
from firmpedal.formulas.braking import (
    brake_torque,
    clamp_force,
    drag_at_ground,
    lining_friction,
    mean_radius,
    new_pad_radius,
)
from firmpedal.quantity import Step, Value, all_missing, apply, unknown
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Sequence

    from firmpedal.analysis.stopping.pushes import Pushing
    from firmpedal.model.kinds import Caliper

USUAL_LINING = (0.3, 0.4)  # friction of a lining on a clean disc: common practice, no source
CREDIBLE_LINING = (0.25, 0.5)  # beyond that a stated torque and the pistons do not go together: as well


@dataclass(frozen=True, slots=True)
class Force:
    """What one pressure makes of one brake."""

    pressure: Value
    clamp: Value
    torque: Value
    drag: Value


@dataclass(frozen=True, slots=True)
class WheelBrake:
    """One brake with what it makes of each foot, in the order of the feet.

    `trial` is what it makes of a pressure to reckon with, `by_foot` of a foot, springs and seals left out.
    """

    caliper: str
    effective_radius: Value
    friction: Value
    stated_friction: Value | None  # that its leaflet's torque asks for
    feet: tuple[Force, ...]
    trial: Force
    by_foot: Force


def effective_radius(caliper: Caliper) -> Value:
    """As declared, else between that of worn-in pads and that of new ones, else unknown."""
    label, place = f"effective radius of {caliper.name}", f"{caliper.place}.effective radius"
    inner, outer = caliper.pads.inner_radius, caliper.pads.outer_radius
    if caliper.effective_radius.known or not (inner.known or outer.known):
        words = f"{label}: from the middle of the axle to the middle of the pistons"
        return asked(caliper.effective_radius, label, words)
    edges = {
        "inner_radius": asked(inner, "inner edge of the pads", f"inner edge of the pads of {caliper.name}"),
        "outer_radius": asked(outer, "outer edge of the pads", f"outer edge of the pads of {caliper.name}"),
    }
    worn, new = (
        apply(formula, f"{label}, {words}", place=place, **edges)
        for formula, words in ((mean_radius, "worn in"), (new_pad_radius, "pads new"))
    )
    step = Step("from r_w to r_n", (("r_w", worn), ("r_n", new)))
    if worn.span is None or new.span is None:
        return Value(
            label, Dimension.LENGTH, None, worn.mark, place, step=step, missing=all_missing((worn, new))
        )
    return Value(label, Dimension.LENGTH, (worn.low, new.high), max(worn.mark, new.mark), place, step=step)


def stated_friction(caliper: Caliper, radius: Value) -> Value | None:
    """The friction that the leaflet's torque asks for; None where it states no torque."""
    leaflet = caliper.leaflet
    if not leaflet.torque.known:
        return None
    pressure = asked(
        leaflet.at_pressure,
        "pressure of the leaflet",
        f"at which pressure the torque of {caliper.name} holds",
    )
    place = f"{caliper.place}.leaflet"
    return apply(
        lining_friction,
        f"lining friction that the leaflet of {caliper.name} asks for",
        place=f"{place}.friction",
        torque=leaflet.torque.named("torque of the leaflet"),
        clamp=clamp(caliper, pressure, f"{place}.clamp"),
        effective_radius=radius,
    )


def friction(caliper: Caliper, stated: Value | None) -> Value:
    """As declared, else what a credible torque of the leaflet asks for, else the usual range."""
    label, place = f"lining friction of {caliper.name}", f"{caliper.place}.lining friction"
    if caliper.lining_friction.known or "lining_friction" in caliper.written:
        return asked(
            caliper.lining_friction, label, f"{label}: its maker, or a drag test at a known pressure"
        )
    if stated is not None and stated.known and credible(stated):
        return stated.named(label)
    return usual(label, Dimension.NUMBER, USUAL_LINING, place)


def credible(stated: Value) -> bool:
    """Whether a friction can be that of a brake lining on a clean disc."""
    return CREDIBLE_LINING[0] <= stated.high and stated.low <= CREDIBLE_LINING[1]


def clamp(caliper: Caliper, pressure: Value, place: str) -> Value:
    """Force of the pistons of one side."""
    return apply(
        clamp_force,
        f"clamping force of {caliper.name}",
        place=place,
        pressure=pressure,
        bore=caliper.pistons.bore,
        count=caliper.pistons.count_per_side,
    )


def force(
    caliper: Caliper,
    pushes: Sequence[Pushing],
    pressures: Sequence[Value],
    radius: Value,
    lining: Value,
    tyre: Value,
    foot: str,
    *,
    alone: bool,
) -> Force:
    """What one of some pressures makes of a brake, from whichever seat; `alone` at its wheel or not."""
    place = f"{caliper.place}.braking.{foot}"
    label = f"pressure at {caliper.name}"
    if not pressures:
        what = f"which cylinder presses on {caliper.name}"
        pressure = unknown(label, Dimension.PRESSURE, caliper.place, what)
    else:
        pressure = from_either_seat(label, pushes, pressures, f"{place}.pressure")
    pressing = clamp(caliper, pressure, f"{place}.clamp")
    torque = apply(
        brake_torque,
        f"torque of {caliper.name}",
        place=f"{place}.torque",
        clamp=pressing,
        friction=lining,
        effective_radius=radius,
    )
    drag = apply(
        drag_at_ground,
        f"drag of the wheel of {caliper.name}" if alone else f"drag that {caliper.name} makes of its wheel's",
        place=f"{place}.drag",
        torque=torque,
        rolling_radius=tyre,
    )
    return Force(pressure, pressing, torque, drag)
