"""How the energy of a stop is shared: each brake takes it as it brakes, at equal feet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.pressure import FEET
from firmpedal.quantity import Mark, Step, Value
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.analysis.stopping import Stopping
    from firmpedal.analysis.stopping.brake import WheelBrake
    from firmpedal.model.kinds import Caliper

FOOT = FEET.index("hard")
Span = tuple[float, float]


def energy_sharing(caliper: Caliper, stop: Stopping) -> Value:
    """By how many the energy of a stop is divided for one brake.

    All wheels slow the same aircraft from the same speed, so that each brake takes energy as it takes part in
    the drag. Before the torques are known, wheels share alike.

    Args:
        caliper: That of the brake.
        stop: Stopping of the aircraft.

    Returns:
        Torque of all brakes over that of this one [-].
    """
    alike = stop.stance.braked.sharing(caliper.name)
    own = next(brake for brake in stop.brakes if brake.caliper == caliper.name)
    parts = [_ratio(brake, own) for brake in stop.brakes]
    spans = [span for span in parts if span is not None]
    if len(spans) < len(parts):
        return alike
    span = (sum(low for low, _ in spans), sum(high for _, high in spans))
    if span == alike.span:
        return alike
    torques = tuple((f"M_{n}", brake.feet[FOOT].torque) for n, brake in enumerate(stop.brakes, 1))
    sum_of_all = " + ".join(symbol for symbol, _ in torques)
    step = Step(f"({sum_of_all}) / M", (("M", own.feet[FOOT].torque), *torques), "equal feet")
    mark = max([Mark.DERIVED, *(value.mark for _, value in torques)])
    label, place = f"torque of all brakes over that of {caliper.name}", f"{caliper.place}.heat.sharing"
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
