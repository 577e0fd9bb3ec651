"""Standing at full throttle: what the pull above the ground does to the wheels that are held."""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require, require_not_negative, require_positive
from firmpedal.formulas.attitude import STANDARD_GRAVITY as _GRAVITY

_STEEPEST = math.radians(30)  # no aircraft stands with its propeller looking up more than that


def forward_pull(thrust: float, nose_up: float) -> float:
    """Part of the thrust that pulls along the ground.

    F = T cos(theta)

    Args:
        thrust: T, along the propeller's thrust line [N].
        nose_up: theta, of the thrust line above the ground as it stands [rad].

    Returns:
        Pull along the ground F [N].

    Valid: T >= 0, theta from 0 to 30 degrees.
    Source: [firmpedal-derivation], a force along and across the ground.
    """
    require_not_negative(thrust, "the thrust")
    _require_angle(nose_up)
    return thrust * math.cos(nose_up)


def pull_held_nosewheel(
    friction: float, mass: float, ahead: float, wheelbase: float, height: float, nose_up: float
) -> float:
    """Pull at which the braked main wheels of a nosewheel type slide, standing.

    F = mu m g (l - b) / (l (1 + mu tan(theta)) + mu z), g = 9.80665

    Args:
        friction: mu, of the tyres on the ground [-].
        mass: m, of the aircraft [kg].
        ahead: b, of the centre of gravity ahead of the main wheels [m].
        wheelbase: l, from the main wheels to the nose wheel [m].
        height: z, of the thrust line above the ground, over the main wheels [m].
        nose_up: theta, of the thrust line above the ground as it stands [rad].

    Returns:
        Pull along the ground F [N].

    Valid: mu >= 0, m > 0, 0 <= b < l, z > 0, theta from 0 to 30 degrees; main wheels alone braked, no air
        over the tail.
    Source: [firmpedal-derivation], moments about the point where the nose wheel stands.
    """
    _require_standing(friction, mass, ahead, wheelbase, height)
    _require_angle(nose_up)
    lifted = wheelbase * (1 + friction * math.tan(nose_up))
    return friction * mass * _GRAVITY * (wheelbase - ahead) / (lifted + friction * height)


def pull_held_tailwheel(
    friction: float, mass: float, behind: float, wheelbase: float, height: float, nose_up: float
) -> float:
    """Pull at which the braked main wheels of a tailwheel type slide, standing, its tail down or up.

    F = mu m g min(1 / (1 + mu tan(theta)), (l - b) / (l (1 + mu tan(theta)) - mu z)), g = 9.80665

    Args:
        friction: mu, of the tyres on the ground [-].
        mass: m, of the aircraft [kg].
        behind: b, of the centre of gravity behind the main wheels [m].
        wheelbase: l, from the main wheels to the tail wheel [m].
        height: z, of the thrust line above the ground, over the main wheels [m].
        nose_up: theta, of the thrust line above the ground as it stands [rad].

    Returns:
        Pull along the ground F [N].

    Valid: mu >= 0, m > 0, 0 <= b < l, z > 0, theta from 0 to 30 degrees; from
        mu z = b (1 + mu tan(theta)) on the tail is up and the mains carry all, which is the first of the
        two, whatever the second comes to; no air over the tail.
    Source: [firmpedal-derivation], moments about the point where the tail wheel stands.
    """
    _require_standing(friction, mass, behind, wheelbase, height)
    _require_angle(nose_up)
    lifted = 1 + friction * math.tan(nose_up)
    if friction * height >= behind * lifted:  # the tail is up
        return friction * mass * _GRAVITY / lifted
    return friction * mass * _GRAVITY * (wheelbase - behind) / (wheelbase * lifted - friction * height)


def pull_that_lifts_the_tail(mass: float, behind: float, height: float) -> float:
    """Pull that lifts the tail of a tailwheel type whose main wheels are held, standing.

    F = m g b / z, g = 9.80665

    Args:
        mass: m, of the aircraft [kg].
        behind: b, of the centre of gravity behind the main wheels [m].
        height: z, of the thrust line above the ground, over the main wheels [m].

    Returns:
        Pull along the ground with which the tail wheel carries nothing any more, F [N].

    Valid: m > 0, b >= 0, z > 0; the part of the thrust that looks up acts over the main wheels and has no
        arm; no help by the elevator.
    Source: [firmpedal-derivation], moments about the point where the main wheels stand.
    """
    require_positive(mass, "the weight")
    require_not_negative(behind, "the distance of the centre of gravity from the main wheels")
    require_positive(height, "the height of the thrust line")
    return mass * _GRAVITY * behind / height


def _require_angle(nose_up: float) -> None:
    require(0 <= nose_up <= _STEEPEST, "the thrust line has to be level or look up, by 30 degrees at most")


def _require_standing(friction: float, mass: float, distance: float, wheelbase: float, height: float) -> None:
    require_not_negative(friction, "the friction of the tyres")
    require_positive(mass, "the weight")
    require_not_negative(distance, "the distance of the centre of gravity from the main wheels")
    require(distance < wheelbase < math.inf, "the centre of gravity has to be between the wheels")
    require_positive(height, "the height of the thrust line")
