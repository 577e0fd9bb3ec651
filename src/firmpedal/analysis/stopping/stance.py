"""What braking needs to know of the aircraft: weight, stance, speed and tyres, as declared or as usual."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.analysis.stopping.wheels import BrakedWheels, braked_wheels
from firmpedal.formulas.grip import distance_by_weights
from firmpedal.quantity import Mark, Value, apply, exactly, unknown
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from firmpedal.model.aircraft import Aircraft

PLACE = "on the ground"
USUAL_GRIP, PEAK_GRIP = (0.3, 0.5), (0.7, 0.8)  # of a tyre on dry pavement: common practice, no source
# How far the thrust line looks up, standing: common practice, no source.
NOSE_UP_NOSE, NOSE_UP_TAIL = (0.0, 3.0), (8.0, 15.0)
WANTED = 10.0  # ft/s^2, mean deceleration of the design landing stop: a rule for large aeroplanes


@dataclass(frozen=True, slots=True)
class Stance:
    """The figures of the aircraft on its wheels; `distance` is from the main wheels to the centre of gravity.

    `by_weights` is the same distance from the weighing, None where no weight on a wheel is given.
    """

    mass: Value
    braked: BrakedWheels
    speed: Value
    thrust: Value
    thrust_height: Value
    thrust_nose_up: Value
    tyre_radius: Value
    wheelbase: Value
    distance: Value
    by_weights: Value | None
    height: Value
    usual_grip: Value
    peak_grip: Value
    wanted: Value

    @property
    def wheels(self) -> Value:
        """How many wheels are braked."""
        return self.braked.count


def stance(aircraft: Aircraft) -> Stance:
    """Gather the stance; what is neither declared nor usual is unknown, with what to measure."""
    ground = aircraft.on_the_ground
    third = third_wheel(aircraft)
    wheelbase = asked(
        ground.wheelbase, "wheelbase", f"wheelbase: from the main wheels to the {third}, along the ground"
    )
    weights = _by_weights(aircraft, wheelbase)
    return Stance(
        asked(aircraft.aircraft.landing_weight, "landing weight", "landing weight, from the weighing report"),
        braked_wheels(aircraft),
        asked(ground.landing_speed, "speed at which braking begins", "the speed at which braking begins"),
        asked(
            ground.static_thrust,
            "static thrust",
            "static thrust: a spring scale at the tail, at full throttle",
        ),
        asked(ground.thrust_line_height, "height of the thrust line", _THRUST_LINE),
        _nose_up(aircraft),
        asked(ground.tyre_radius, "tyre radius", "tyre radius: from the axle to the ground, as it stands"),
        wheelbase,
        _distance(aircraft, weights),
        weights,
        asked(ground.cg_height, "height of the centre of gravity", _HEIGHT),
        _friction(ground.usual_tyre_friction, "usual_tyre_friction", aircraft, USUAL_GRIP),
        _friction(ground.peak_tyre_friction, "peak_tyre_friction", aircraft, PEAK_GRIP),
        _wanted(aircraft),
    )


_HEIGHT = (
    "the height of the centre of gravity above the ground: its designer knows; it is near that of engine and "
    "seats"
)


_THRUST_LINE = (
    "the height of the propeller's thrust line above the ground, over the main wheels: where a line along "
    "its axis passes them"
)


def third_wheel(aircraft: Aircraft) -> str:
    """The wheel that is not braked, in words."""
    return "tail wheel" if aircraft.aircraft.gear == "tailwheel" else "nose wheel"


def asked(value: Value, label: str, what: str) -> Value:
    """A declared value under another label; where it is unknown, with words on what to measure."""
    return value.named(label) if value.known else unknown(label, value.dimension, value.place, what)


def usual(label: str, dimension: Dimension, span: tuple[float, float], place: str) -> Value:
    """A range that people in the trade reckon with."""
    return Value(label, dimension, span, Mark.MEMORY, place, "common-practice")


def _by_weights(aircraft: Aircraft, wheelbase: Value) -> Value | None:
    ground = aircraft.on_the_ground
    third, mains = ground.weight_on_nose_or_tail, ground.weight_on_mains
    if not (third.known or mains.known):
        return None
    return apply(
        distance_by_weights,
        "main wheels to centre of gravity, by the weights",
        place=f"{PLACE}.cg by weights",
        wheelbase=wheelbase,
        third_weight=asked(third, "weight on the third wheel", f"the weight on the {third_wheel(aircraft)}"),
        main_weight=asked(mains, "weight on the main wheels", "the weight on both main wheels"),
    )


def _distance(aircraft: Aircraft, weights: Value | None) -> Value:
    """As declared; else by the weights; else unknown."""
    declared, label = aircraft.on_the_ground.mains_to_cg, "main wheels to centre of gravity"
    if not declared.known and weights is not None:
        return weights.named(label)
    what = "how far the centre of gravity is from the main wheels, or the weights on all wheels"
    return asked(declared, label, what)


def _friction(value: Value, field: str, aircraft: Aircraft, span: tuple[float, float]) -> Value:
    label = field.replace("_", " ")
    if value.known or field in aircraft.on_the_ground.written:
        return asked(value, label, f"the {label} on the pavement")
    return usual(label, Dimension.NUMBER, span, f"{PLACE}.{label}")


def _nose_up(aircraft: Aircraft) -> Value:
    """How far the thrust line looks up; left out, as aircraft of that kind stand."""
    label, declared = "thrust line nose up", aircraft.on_the_ground.thrust_line_nose_up
    if declared.known or "thrust_line_nose_up" in aircraft.on_the_ground.written:
        return asked(declared, label, "how far the propeller's thrust line looks up as it stands")
    low, high = NOSE_UP_TAIL if aircraft.aircraft.gear == "tailwheel" else NOSE_UP_NOSE
    span = (from_unit(low, "deg"), from_unit(high, "deg"))
    return usual(label, Dimension.ANGLE, span, f"{PLACE}.{label}")


def _wanted(aircraft: Aircraft) -> Value:
    label, declared = "wanted deceleration", aircraft.on_the_ground.wanted_deceleration
    if declared.known or "wanted_deceleration" in aircraft.on_the_ground.written:
        return asked(declared, label, "how hard it should stop")
    number = from_unit(WANTED, "ft/s^2")
    yardstick = exactly(label, Dimension.ACCELERATION, number, Mark.READ, source="14cfr25-735")
    return replace(yardstick, place=f"{PLACE}.{label}")
