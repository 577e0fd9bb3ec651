"""What the tyres hold: load that braking moves to other wheels, nose-over, and energy of a stop."""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require, require_not_negative, require_positive

_GRAVITY = 9.80665
_POUND, _KNOT, _FOOT_POUND = 0.45359237, 1852 / 3600, 0.45359237 * 9.80665 * 0.3048


def grip_limit_nosewheel(friction: float, ahead: float, wheelbase: float, height: float) -> float:
    """Greatest deceleration of a nosewheel type: braking takes load off the mains.

    a = mu g (l - b) / (l + mu h), g = 9.80665

    Args:
        friction: mu, of the tyres on the ground [-].
        ahead: b, of the centre of gravity ahead of the main wheels [m].
        wheelbase: l, from the main wheels to the nose wheel [m].
        height: h, of the centre of gravity above the ground [m].

    Returns:
        Deceleration at which the main tyres begin to slide, a [m/s^2].

    Valid: mu >= 0, 0 <= b < l, h > 0; main wheels alone braked, no lift, level ground.
    Source: [firmpedal-derivation], moments about the point where the nose wheel stands.
    """
    _require_stance(ahead, wheelbase, height)
    require_not_negative(friction, "the friction of the tyres")
    return friction * _GRAVITY * (wheelbase - ahead) / (wheelbase + friction * height)


def grip_limit_tailwheel(friction: float, behind: float, wheelbase: float, height: float) -> float:
    """Greatest deceleration of a tailwheel type by its tyres: braking puts load on the mains.

    a = mu g min(1, (l - b) / (l - mu h)), g = 9.80665

    Args:
        friction: mu, of the tyres on the ground [-].
        behind: b, of the centre of gravity behind the main wheels [m].
        wheelbase: l, from the main wheels to the tail wheel [m].
        height: h, of the centre of gravity above the ground [m].

    Returns:
        Deceleration at which the main tyres begin to slide, a [m/s^2].

    Valid: mu >= 0, 0 <= b < l, h > 0, mu h < l; beyond mu h = b the tail is up and the mains carry all. No
        lift, level ground.
    Source: [firmpedal-derivation], moments about the point where the tail wheel stands.
    """
    _require_stance(behind, wheelbase, height)
    require_not_negative(friction, "the friction of the tyres")
    require(friction * height < wheelbase, "the centre of gravity is too high for that wheelbase")
    return friction * _GRAVITY * min(1.0, (wheelbase - behind) / (wheelbase - friction * height))


def _require_stance(distance: float, wheelbase: float, height: float) -> None:
    require_not_negative(distance, "the distance of the centre of gravity from the main wheels")
    require(distance < wheelbase < math.inf, "the centre of gravity has to be between the wheels")
    require_positive(height, "the height of the centre of gravity")


def nose_over_limit(behind: float, height: float) -> float:
    """Deceleration that lifts the tail of a tailwheel type.

    a = g b / h, g = 9.80665

    Args:
        behind: b, of the centre of gravity behind the main wheels [m].
        height: h, of the centre of gravity above the ground [m].

    Returns:
        Deceleration at which the tail wheel carries nothing any more, a [m/s^2].

    Valid: b >= 0, h > 0; no help by the elevator, no lift, level ground.
    Source: [firmpedal-derivation], moments about the point where the main wheels stand.
    """
    require_not_negative(behind, "the distance of the centre of gravity from the main wheels")
    require_positive(height, "the height of the centre of gravity")
    return _GRAVITY * behind / height


def grip_tail_up(friction: float) -> float:
    """Deceleration by the tyres of a tailwheel type whose tail is up: the mains carry all the weight.

    a = mu g, g = 9.80665

    Args:
        friction: mu, of the tyres on the ground [-].

    Returns:
        Deceleration at which the main tyres slide, a [m/s^2].

    Valid: mu >= 0; no lift, level ground.
    Source: [firmpedal-derivation], friction on all of the weight.
    """
    require_not_negative(friction, "the friction of the tyres")
    return friction * _GRAVITY


def lesser(one: float, other: float) -> float:
    """The lesser of two decelerations: the first limit that is reached counts.

    a = min(a_1, a_2)

    Args:
        one: a_1, deceleration by the one limit [m/s^2].
        other: a_2, deceleration by the other [m/s^2].

    Returns:
        Deceleration a [m/s^2].

    Valid: both above or at zero.
    Source: [firmpedal-derivation], the weaker link.
    """
    require_not_negative(one, "the one deceleration")
    require_not_negative(other, "the other deceleration")
    return min(one, other)


def distance_by_weights(wheelbase: float, third_weight: float, main_weight: float) -> float:
    """How far the centre of gravity is from the main wheels, from a weighing.

    b = l W_3 / (W_3 + W_m)

    Args:
        wheelbase: l, from the main wheels to the nose or tail wheel [m].
        third_weight: W_3, on the nose or tail wheel [kg].
        main_weight: W_m, on both main wheels together [kg].

    Returns:
        Distance of the centre of gravity from the main wheels, towards the third wheel, b [m].

    Valid: l > 0, W_3 >= 0, W_m > 0; standing as it was weighed.
    Source: [firmpedal-derivation], moments about the main wheels.
    """
    require_positive(wheelbase, "the wheelbase")
    require_not_negative(third_weight, "the weight on the nose or tail wheel")
    require_positive(main_weight, "the weight on the main wheels")
    return wheelbase * third_weight / (third_weight + main_weight)


def grip_standing(friction: float, mass: float, distance: float, wheelbase: float) -> float:
    """Force that the main tyres hold, standing.

    D = mu m g (l - b) / l, g = 9.80665

    Args:
        friction: mu, of the tyres on the ground [-].
        mass: m, of the aircraft [kg].
        distance: b, of the centre of gravity from the main wheels [m].
        wheelbase: l, from the main wheels to the nose or tail wheel [m].

    Returns:
        Force along the ground at which the main tyres begin to slide, D [N].

    Valid: mu >= 0, m > 0, 0 <= b < l; the pitching moment of the thrust is left out.
    Source: [firmpedal-derivation], friction on the share of the weight that the main wheels carry.
    """
    require_not_negative(friction, "the friction of the tyres")
    require_positive(mass, "the weight")
    require_not_negative(distance, "the distance of the centre of gravity from the main wheels")
    require(distance < wheelbase < math.inf, "the centre of gravity has to be between the wheels")
    return friction * mass * _GRAVITY * (wheelbase - distance) / wheelbase


def stop_energy(mass: float, speed: float, wheels: float) -> float:
    """Energy of motion that each braked wheel takes in one stop.

    E = m V^2 / (2 N)

    Args:
        mass: m, of the aircraft [kg].
        speed: V, at which braking begins [m/s].
        wheels: N, braked wheels; where they brake differently, all their torque over that of one [-].

    Returns:
        Energy for each wheel E [J].

    Valid: m > 0, V >= 0, N > 0; air drag and rolling drag left out, so never too low.
    Source: [firmpedal-derivation], energy of motion shared out as the wheels brake.
    """
    require_positive(mass, "the weight")
    require_not_negative(speed, "the speed")
    require_positive(wheels, "the number of braked wheels")
    return mass * speed**2 / (2 * wheels)


def rule_energy(mass: float, speed: float, wheels: float) -> float:
    """Energy that each brake has to take by the formula of the regulation for small aeroplanes.

    KE = 0.0443 (W / (lb)) (V / (kt))^2 / N (ft_lbf)

    Args:
        mass: W, design landing weight [kg].
        speed: V, speed at the beginning, not less than the stalling speed in landing configuration [m/s].
        wheels: N, main wheels with brakes [-].

    Returns:
        Energy for each wheel, KE [J].

    Valid: W > 0, V >= 0, N > 0; the regulation's figure is in ft-lbf, with W in pounds and V in knots.
    Source: [14cfr23-735], paragraph (a) as it stood before amendment 23-64.
    """
    require_positive(mass, "the weight")
    require_not_negative(speed, "the speed")
    require_positive(wheels, "the number of braked wheels")
    return 0.0443 * (mass / _POUND) * (speed / _KNOT) ** 2 / wheels * _FOOT_POUND
