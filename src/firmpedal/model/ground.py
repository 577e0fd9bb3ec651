"""How the aircraft stands and moves on the ground: what braking needs to know besides the brakes."""

from __future__ import annotations

from firmpedal.model.fields import (
    Declared,
    LevelOrUp,
    OptionalForce,
    OptionalTemperature,
    SomeAcceleration,
    SomeMass,
    SomeNumber,
    SomeSeveral,
    SomeSize,
    SomeSpeed,
    SomeTime,
)


class OnTheGround(Declared):
    """The stance from a weighing and a tape, the speed of the landing, what the tyres hold.

    The centre of gravity is given by its distance from the main wheels, or by the weights on the wheels.
    """

    tyre_radius: SomeSize
    wheelbase: SomeSize
    weight_on_mains: SomeMass
    weight_on_nose_or_tail: SomeMass
    mains_to_cg: SomeSize
    cg_height: SomeSize
    landing_speed: SomeSpeed
    static_thrust: OptionalForce
    thrust_line_height: SomeSize
    thrust_line_nose_up: LevelOrUp
    usual_tyre_friction: SomeNumber
    peak_tyre_friction: SomeNumber
    wanted_deceleration: SomeAcceleration
    stops_in_a_row: SomeSeveral
    time_between_stops: SomeTime
    taxi_time: SomeTime
    taxi_speed: SomeSpeed
    taxi_drag: OptionalForce
    hot_day: OptionalTemperature
