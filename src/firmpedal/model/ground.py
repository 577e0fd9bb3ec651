"""How the aircraft stands and moves on the ground: what braking needs to know besides the brakes."""

from __future__ import annotations

from firmpedal.model.fields import (
    Declared,
    OptionalAcceleration,
    OptionalCount,
    OptionalForce,
    OptionalLength,
    OptionalMass,
    OptionalNumber,
    OptionalSpeed,
    OptionalTemperature,
    OptionalTime,
)


class OnTheGround(Declared):
    """The stance from a weighing and a tape, the speed of the landing, what the tyres hold.

    The centre of gravity is given by its distance from the main wheels, or by the weights on the wheels.
    """

    tyre_radius: OptionalLength
    wheelbase: OptionalLength
    weight_on_mains: OptionalMass
    weight_on_nose_or_tail: OptionalMass
    mains_to_cg: OptionalLength
    cg_height: OptionalLength
    landing_speed: OptionalSpeed
    static_thrust: OptionalForce
    usual_tyre_friction: OptionalNumber
    peak_tyre_friction: OptionalNumber
    wanted_deceleration: OptionalAcceleration
    stops_in_a_row: OptionalCount
    time_between_stops: OptionalTime
    taxi_time: OptionalTime
    taxi_speed: OptionalSpeed
    taxi_drag: OptionalForce
    hot_day: OptionalTemperature
