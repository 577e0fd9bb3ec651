"""The way back: from a wanted stop or hold to the pressure at the brakes and the foot on each pedal."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.stopping.pushes import foot_of_all, made_by
from firmpedal.analysis.stopping.stance import PLACE
from firmpedal.formulas.braking import (
    drag_needed,
    drag_of_one_wheel,
    foot_needed,
    pressure_at_foot,
    pressure_needed,
)
from firmpedal.quantity import Mark, Missing, Value, apply, exactly, largest, total, unknown
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Sequence

    from firmpedal.analysis.stopping.brake import WheelBrake
    from firmpedal.analysis.stopping.pushes import Pushing
    from firmpedal.analysis.stopping.stance import Stance

TRIAL = exactly(
    "a pressure to reckon with", Dimension.PRESSURE, 1e6, Mark.DERIVED, source="firmpedal-derivation"
)
TRIAL_FOOT = exactly(
    "a foot to reckon with", Dimension.FORCE, 100.0, Mark.DERIVED, source="firmpedal-derivation"
)


def drag_of_all(drags: Sequence[Value], words: str) -> Value:
    """The drag of all braked wheels together; unknown where there are none."""
    label = "drag of all braked wheels"
    if not drags:
        return unknown(label, Dimension.FORCE, "components", "the calipers: the file has none")
    return total(label, drags, f"{PLACE}.braking.{words}.drag")


@dataclass(frozen=True, slots=True)
class Needed:
    """The foot force on each pedal, and the pressure, for one deceleration or hold.

    `pressures` are those of each brake where one foot does not make the same of all; `pressure` is then
    the greatest of them.
    """

    what: str
    drag: Value
    foot: Value
    pressure: Value
    pressures: tuple[Value, ...] = ()


@dataclass(frozen=True, slots=True)
class Needs:
    """What it takes to work back from a drag to a foot.

    `pushes` are the cylinders that press on each of `brakes`.
    """

    brakes: tuple[WheelBrake, ...]
    pushes: tuple[tuple[Pushing, ...], ...]
    ground: Stance

    def stop(self, what: str, wanted: Value) -> Needed:
        """What a deceleration takes."""
        place = f"{PLACE}.{what}"
        drag = apply(
            drag_needed, f"drag for {what}", place=f"{place}.drag", wanted=wanted, mass=self.ground.mass
        )
        return self._back(what, drag)

    def stop_of_wheel(self, what: str, wanted: Value) -> Needed:
        """What it takes for one wheel, whose brakes these are, to have its even part of a deceleration."""
        drag = apply(
            drag_of_one_wheel,
            f"drag for {what}",
            place=f"{PLACE}.{what}.drag",
            wanted=wanted,
            mass=self.ground.mass,
            wheels=self.ground.wheels,
        )
        return self._back(what, drag)

    def hold(self, what: str, thrust: Value) -> Needed:
        """What it takes to stand against a thrust."""
        return self._back(what, thrust.named(f"drag for {what}"))

    @property
    def unlike(self) -> bool:
        """Whether one foot makes another pressure at one brake than at another."""
        return len({brake.by_foot.pressure.span for brake in self.brakes}) > 1

    def _back(self, what: str, drag: Value) -> Needed:
        plain = all(each.pressing.push.plain for brake in self.pushes for each in brake)
        if self.unlike and plain and all(self.pushes):
            return self._at_equal_feet(what, drag)
        pressure = apply(
            pressure_needed,
            f"pressure for {what}",
            place=f"{PLACE}.{what}.pressure",
            drag=drag,
            trial_drag=drag_of_all([brake.trial.drag for brake in self.brakes], "trial"),
            trial_pressure=TRIAL,
        )
        foot = self._foot(what, pressure)
        if not (self.unlike and all(self.pushes)):
            return Needed(what, drag, foot, pressure)
        pressures = tuple(
            made_by(pushes, foot, pressure, brake.caliper, what)
            for brake, pushes in zip(self.brakes, self.pushes, strict=True)
        )
        return Needed(what, drag, foot, self._greatest(what, pressures), pressures)

    def _at_equal_feet(self, what: str, drag: Value) -> Needed:
        """Without spring and seals all grows with the foot: each side by its own cylinder and lever."""
        place = f"{PLACE}.{what}"
        foot = apply(
            foot_needed,
            f"foot on each pedal for {what}",
            place=f"{place}.foot",
            drag=drag,
            trial_drag=drag_of_all([brake.by_foot.drag for brake in self.brakes], "trial foot"),
            trial_foot=TRIAL_FOOT,
        )
        pressures = tuple(
            apply(
                pressure_at_foot,
                f"pressure at {brake.caliper} for {what}",
                place=f"{place}.pressure.{brake.caliper}",
                foot=foot,
                trial_pressure=brake.by_foot.pressure,
                trial_foot=TRIAL_FOOT,
            )
            for brake in self.brakes
        )
        return Needed(what, drag, foot, self._greatest(what, pressures), pressures)

    def _greatest(self, what: str, pressures: tuple[Value, ...]) -> Value:
        return largest(f"pressure for {what}", pressures, f"{PLACE}.{what}.pressure")

    def begins(self) -> Value:
        """The foot at which the pads begin to press: return spring and seals take it."""
        none = exactly("no pressure", Dimension.PRESSURE, 0.0, Mark.DERIVED)
        return self._foot("the first pressure", none)

    def _foot(self, what: str, pressure: Value) -> Value:
        label, place = f"foot on each pedal for {what}", f"{PLACE}.{what}.foot"
        feet = [(brake, [each.foot(pressure, what) for each in brake]) for brake in self.pushes]
        if not any(self.pushes):
            missing = pressure.missing or (Missing(place, "which cylinder presses on a caliper"),)
            return Value(label, Dimension.FORCE, None, Mark.MEASURED, place, missing=missing)
        return foot_of_all(label, place, feet)
