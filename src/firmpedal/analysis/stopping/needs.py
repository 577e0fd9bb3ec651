"""The way back: from a wanted stop or hold to the pressure at the brakes and the foot on each pedal."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.stopping.pushes import foot_of_all
from firmpedal.analysis.stopping.stance import PLACE
from firmpedal.formulas.braking import drag_needed, pressure_needed
from firmpedal.quantity import Mark, Missing, Value, apply, exactly
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.analysis.stopping.pushes import Pushing
    from firmpedal.analysis.stopping.stance import Stance

TRIAL = exactly(
    "a pressure to reckon with", Dimension.PRESSURE, 1e6, Mark.DERIVED, source="firmpedal-derivation"
)


@dataclass(frozen=True, slots=True)
class Needed:
    """The foot force on each pedal, and the pressure, for one deceleration or hold."""

    what: str
    drag: Value
    foot: Value
    pressure: Value


@dataclass(frozen=True, slots=True)
class Needs:
    """What it takes to work back from a drag to a foot.

    `pushes` are the cylinders that press on each brake, `trial` the drag of all brakes at `TRIAL`.
    """

    pushes: tuple[tuple[Pushing, ...], ...]
    trial: Value
    ground: Stance

    def stop(self, what: str, wanted: Value) -> Needed:
        """What a deceleration takes."""
        place = f"{PLACE}.{what}"
        drag = apply(
            drag_needed, f"drag for {what}", place=f"{place}.drag", wanted=wanted, mass=self.ground.mass
        )
        return self._back(what, drag)

    def hold(self, what: str, thrust: Value) -> Needed:
        """What it takes to stand against a thrust."""
        return self._back(what, thrust.named(f"drag for {what}"))

    def _back(self, what: str, drag: Value) -> Needed:
        place = f"{PLACE}.{what}"
        pressure = apply(
            pressure_needed,
            f"pressure for {what}",
            place=f"{place}.pressure",
            drag=drag,
            trial_drag=self.trial,
            trial_pressure=TRIAL,
        )
        return Needed(what, drag, self._foot(what, pressure), pressure)

    def begins(self) -> Value:
        """The foot at which the pads begin to press: return spring and seals take it."""
        none = exactly("no pressure", Dimension.PRESSURE, 0.0, Mark.DERIVED)
        return self._foot("the first pressure", none)

    def _foot(self, what: str, pressure: Value) -> Value:
        label, place = f"foot on each pedal for {what}", f"{PLACE}.{what}.foot"
        feet = [[each.foot(pressure, what) for each in brake] for brake in self.pushes]
        if not any(feet):
            missing = pressure.missing or (Missing(place, "which cylinder presses on a caliper"),)
            return Value(label, Dimension.FORCE, None, Mark.MEASURED, place, missing=missing)
        return foot_of_all(label, place, feet)
