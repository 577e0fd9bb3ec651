"""[firmpedal-derivation] Braking: clamp, torque, drag, energy and distance, worked by hand.

One wheel: 500 psi, pistons of 1.5 in on one side of the disc, lining friction 0.3, effective radius 2.3 in,
tyre radius 6.5 in. An aircraft of 1320 lb with two braked wheels, from 39 kt.
"""

import pytest
from exact_units import FOOT, INCH, KNOT, POUND, POUND_FORCE, PSI

from firmpedal.formulas.braking import (
    brake_torque,
    clamp_force,
    deceleration,
    drag_at_ground,
    stop_distance,
)
from firmpedal.formulas.grip import stop_energy

SOURCE = "firmpedal-derivation"
WEIGHT = 1320 * POUND
SPEED = 39 * KNOT
GRAVITY = 9.80665
ROUNDED_ON_THE_WAY = "the figure worked by hand was rounded on the way"


def _clamp(pistons):
    return clamp_force(500 * PSI, 1.5 * INCH, pistons)


def _torque(pistons):
    return brake_torque(_clamp(pistons), 0.3, 2.3 * INCH)


def _drag(pistons):
    return drag_at_ground(_torque(pistons), 6.5 * INCH)


def test_clamping_force_of_one_piston(case):
    name = "clamping force, 500 psi on one piston of 1.5 in"
    case(SOURCE, name, "883.6 lbf", _clamp(1) / POUND_FORCE, how="derived")


@pytest.mark.parametrize(("pistons", "expected"), [(1, "1219.3 lbf in"), (2, "2438.7 lbf in")])
def test_brake_torque(case, pistons, expected):
    name = f"brake torque, {pistons} x 1.5 in on one side, friction 0.3 at 2.3 in"
    case(SOURCE, name, expected, _torque(pistons) / (POUND_FORCE * INCH), how="derived")


@pytest.mark.parametrize(
    ("pistons", "wheels", "expected"), [(1, 1, "187.6 lbf"), (1, 2, "375.2 lbf"), (2, 2, "750.4 lbf")]
)
def test_drag_at_the_ground(case, pistons, wheels, expected):
    name = f"drag of {wheels} wheel{'s' if wheels > 1 else ''}, {pistons} x 1.5 in on one side, tyre 6.5 in"
    case(SOURCE, name, expected, wheels * _drag(pistons) / POUND_FORCE, how="derived")


def test_energy_of_motion_for_each_wheel(case):
    ours = stop_energy(WEIGHT, SPEED, 2) / (POUND_FORCE * FOOT)
    name = "energy of a stop, 1320 lb from 39 kt, each of 2 wheels"
    case(SOURCE, name, "44 442 ft-lbf", ours, how="derived", off_by="-0.9", why=ROUNDED_ON_THE_WAY)
    exact = 1320 * 0.45359237 * (39 * 1852 / 3600) ** 2 / 4 / (0.45359237 * 9.80665 * 0.3048)
    case(SOURCE, f"{name}, without rounding", "44441.07 ft-lbf", exact, how="derived")
    assert ours == pytest.approx(exact, rel=1e-14)


def test_deceleration_and_distance(case):
    braking = deceleration(375.2 * POUND_FORCE, WEIGHT)
    name = "drag 375.2 lbf on 1320 lb"
    case(SOURCE, f"deceleration as a share of g, {name}", "0.2842", braking / GRAVITY, how="derived")
    case(
        SOURCE,
        f"distance of a stop from 39 kt, {name}",
        "72.2 m",
        stop_distance(SPEED, braking),
        how="derived",
    )
