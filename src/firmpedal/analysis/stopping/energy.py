"""The energy of a stop: of each wheel, and of each brake, which takes of it as it brakes at equal feet."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.analysis.pressure import FEET
from firmpedal.analysis.stopping.stance import PLACE
from firmpedal.formulas.grip import rule_energy, stop_energy
from firmpedal.quantity import Mark, Missing, Step, Value, apply, largest
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.analysis.stopping.brake import WheelBrake
    from firmpedal.analysis.stopping.stance import Stance
    from firmpedal.analysis.stopping.wheels import BrakedWheels
    from firmpedal.model.kinds import Caliper

FOOT = FEET.index("hard")
Span = tuple[float, float]


def energies(ground: Stance, wheels: Value) -> tuple[Value, Value]:
    """Energy by the rule and by motion, divided by a number of wheels [J]."""
    known = {"mass": ground.mass, "speed": ground.speed, "wheels": wheels}
    rule = apply(
        rule_energy, "energy for each wheel by the rule", place=f"{PLACE}.energy by the rule", **known
    )
    motion = apply(stop_energy, "energy for each wheel by motion", place=f"{PLACE}.energy by motion", **known)
    return rule, motion


def energy_of(caliper: Caliper, ground: Stance, sharings: dict[str, Value], of_wheel: Value) -> Value:
    """The energy of a stop for one brake; the disc that several grip together gets what all put in.

    Args:
        caliper: That of the brake.
        ground: The aircraft on its wheels.
        sharings: By how many the energy is divided for each brake, by its caliper.
        of_wheel: The energy of each wheel where all wheels take the same.
    """
    braked, shared = ground.braked, sharings[caliper.name]
    at_disc = braked.at_disc(caliper)
    if at_disc is None and shared.span == braked.count.span:
        return of_wheel
    if at_disc is not None:
        what = f"the energy that {caliper.name} and the other caliper on its disc take together"
        asked = (Missing(f"{caliper.place}.leaflet.energy", what),)
        together = [sharings[name].low for name in braked.with_it(caliper.name)]
        span = (1 / sum(1 / low for low in together), shared.high)
        shared = replace(shared, span=span, mark=Mark.DERIVED, missing=at_disc.missing or asked, step=None)
    label = f"energy of a stop for {caliper.name}" + (" or for its disc" if at_disc is not None else "")
    return largest(label, energies(ground, shared), f"{caliper.place}.energy of a stop")


def energy_sharing(caliper: Caliper, brakes: tuple[WheelBrake, ...], braked: BrakedWheels) -> Value:
    """By how many the energy of a stop is divided for one brake.

    All wheels slow the same aircraft from the same speed, so that each brake takes energy as it takes part in
    the drag. Before the torques are known, wheels share alike.

    Args:
        caliper: That of the brake.
        brakes: Those of the aircraft.
        braked: Which of them brake one wheel.

    Returns:
        Torque of all brakes over that of this one [-].
    """
    alike = braked.sharing(caliper.name)
    own = next(brake for brake in brakes if brake.caliper == caliper.name)
    parts = [_ratio(brake, own) for brake in brakes]
    spans = [span for span in parts if span is not None]
    if len(spans) < len(parts):
        return alike
    span = (sum(low for low, _ in spans), sum(high for _, high in spans))
    if span == alike.span:
        return alike
    torques = tuple((f"M_{n}", brake.feet[FOOT].torque) for n, brake in enumerate(brakes, 1))
    sum_of_all = " + ".join(symbol for symbol, _ in torques)
    step = Step(f"({sum_of_all}) / M", (("M", own.feet[FOOT].torque), *torques), "equal feet")
    mark = max([Mark.DERIVED, *(value.mark for _, value in torques)])
    label, place = f"torque of all brakes over that of {caliper.name}", f"{caliper.place}.sharing"
    return Value(label, Dimension.NUMBER, span, mark, place, "firmpedal-derivation", step)


def _ratio(other: WheelBrake, own: WheelBrake) -> Span | None:
    """Torque of another brake over that of this one; what both have alike drops out."""
    low, high = 1.0, 1.0
    pairs = (
        (other.feet[FOOT].clamp, own.feet[FOOT].clamp),
        (other.friction, own.friction),
        (other.effective_radius, own.effective_radius),
    )
    for above, below in pairs:
        if above.span is None or below.span is None or below.low <= 0:
            return None
        if above.span != below.span:
            low, high = low * above.low / below.high, high * above.high / below.low
    return low, high
