"""[firmpedal-derivation] Sound, build-up and release at the end of 3 m of line, worked out by us.

Fluid MIL-PRF-5606: 1.79 GPa and 860 kg/m^3 for sound; for times 860 (1 - 8.3e-4 (T - 15)), and viscosities on
the line through 491 mm^2/s at -40 C and 14.1 at 40 C. The caliper takes 0.23 cm^3 at 500 psi, in proportion
to the pressure. `scipy` integrates the same line cut into many cells, as a second opinion.
"""

import math

import numpy as np
import pytest
from exact_units import CUBIC_CENTIMETRE, GIGAPASCAL, INCH, MEGAPASCAL, PSI
from scipy.integrate import solve_ivp

from firmpedal.formulas.compliance import growth_fixed_ends, shear_modulus, tube_volume
from firmpedal.formulas.release import damping_ratio, release_time, time_through_line, wave_speed
from firmpedal.formulas.viscosity import viscosity_between, walther_number

SOURCE = "firmpedal-derivation"
ICE, STEP, LENGTH = 273.15, 500 * PSI, 3.0
BULK = 1.793 * GIGAPASCAL
CALIPER = 0.23 * CUBIC_CENTIMETRE  # at the step
ALUMINIUM, STEEL = (70.3 * GIGAPASCAL, 0.33), (193 * GIGAPASCAL, 0.29)
NYLON, HOT, COLD = ((modulus * MEGAPASCAL, 0.40) for modulus in (480, 186, 1471))
TUBES = {  # outside diameter and wall in inches, material; speed of sound with fixed ends
    "aluminium 1/4 x .035": (0.25, 0.035, ALUMINIUM, "1336.4"),
    "aluminium 3/16 x .035": (0.1875, 0.035, ALUMINIUM, "1359.3"),
    "304 3/16 x .028": (0.1875, 0.028, STEEL, "1403.4"),
    "nylon 1/4 x .040 at 23 C": (0.25, 0.040, NYLON, "306.1"),
    "nylon 1/8 x .025": (0.125, 0.025, NYLON, "335.5"),
    "nylon 1/4 x .040 at 80 C": (0.25, 0.040, HOT, "193.2"),
    "nylon 1/4 x .040 at -40 C": (0.25, 0.040, COLD, "512.5"),
}
CONSTANTS = {  # R (C_caliper + C_line / 2) in s
    ("aluminium 3/16 x .035", 20): "0.00242",
    ("aluminium 3/16 x .035", -30): "0.02470",
    ("aluminium 1/4 x .035", 20): "0.00050",
    ("aluminium 1/4 x .035", -30): "0.00506",
    ("nylon 1/4 x .040 at 23 C", 20): "0.00255",
    ("nylon 1/4 x .040 at 23 C", -30): "0.02610",
}


def growth(name):
    diameter, wall, (modulus, poisson), _ = TUBES[name]
    return growth_fixed_ends(STEP, diameter * INCH, wall * INCH, shear_modulus(modulus, poisson), poisson)


def bore(name):
    diameter, wall, _, _ = TUBES[name]
    return (diameter - 2 * wall) * INCH


def thick(celsius):
    cold, warm = (walther_number(number * 1e-6) for number in (491, 14.1))
    return viscosity_between(celsius + ICE, -40 + ICE, cold, 40 + ICE, warm)


def density(celsius):
    return 860 * (1 - 8.3e-4 * (celsius - 15))


def line_takes(name):
    """What wall and fluid of the line take up at the step."""
    diameter, wall, _, _ = TUBES[name]
    volume = tube_volume(diameter * INCH, wall * INCH, LENGTH)
    return volume * (STEP / BULK + growth(name))


def constant(name, celsius, taken):
    return time_through_line(thick(celsius), density(celsius), LENGTH, bore(name), taken, STEP)


@pytest.mark.parametrize("name", TUBES)
def test_speed_of_sound_derived(case, name):
    ours = wave_speed(860.0, 1.79 * GIGAPASCAL, growth(name), STEP)
    case(SOURCE, f"speed of sound in {name}", f"{TUBES[name][3]} m/s", ours, how="derived")


def test_speed_of_sound_between_walls_that_do_not_give_derived(case):
    ours = wave_speed(860.0, 1.79 * GIGAPASCAL, 0.0, STEP)
    case(SOURCE, "speed of sound, rigid", "1442.7 m/s", ours, how="derived")


@pytest.mark.parametrize(("name", "celsius"), CONSTANTS)
def test_time_constant_with_half_the_line_derived(case, name, celsius):
    ours = constant(name, celsius, CALIPER + line_takes(name) / 2)
    figure = f"{CONSTANTS[name, celsius]} s"
    case(SOURCE, f"time constant of {name} at {celsius} C", figure, ours, how="derived")


def test_caliper_alone_derived(case):
    ours = constant("aluminium 3/16 x .035", -30, CALIPER)
    case(SOURCE, "time constant of the caliper alone at -30 C", "0.02248 s", ours, how="derived")
    case(SOURCE, "nine tenths of a step at -30 C", "0.05177 s", ours * math.log(10), how="derived")
    release = release_time(ours, 500 * PSI, 10 * PSI)
    case(SOURCE, "release from 500 to 10 psi at -30 C", "0.0880 s", release, how="derived")


def test_the_pad_gap_filled_and_emptied_derived(case):
    """0.171 cm^3 under 500 psi at 2300 mm^2/s; 0.228 cm^3 back under 5 psi at -30 C."""
    tube = bore("aluminium 3/16 x .035")
    filled = time_through_line(2300e-6, density(-54), LENGTH, tube, 0.171 * CUBIC_CENTIMETRE, STEP)
    case(SOURCE, "pad gap filled at -54 C", "0.160 s", filled, how="derived")
    back = time_through_line(thick(-30), density(-30), LENGTH, tube, 0.228 * CUBIC_CENTIMETRE, 5 * PSI)
    case(SOURCE, "pads back at -30 C", "2.2 s", back, how="derived")
    synthetic = time_through_line(2098e-6, 890.0, LENGTH, tube, 0.228 * CUBIC_CENTIMETRE, 5 * PSI)
    case(SOURCE, "pads back with MIL-PRF-83282 at -40 C", "19 s", synthetic, how="derived")


def falling(name, celsius, cells=60):
    """Time from 500 to 10 psi at the caliper, of a line cut into cells of resistance and spring, by scipy."""
    whole = constant(name, celsius, STEP)  # resistance in Pa s/m^3: the time for a volume of one step
    resistance = whole / cells
    line = line_takes(name) / STEP / cells
    springs = np.full(cells, line)
    springs[-1] += CALIPER / STEP

    def slope(_time, pressure):
        above = np.concatenate(([0.0], pressure[:-1]))
        below = np.concatenate((pressure[1:], pressure[-1:]))
        return ((above - pressure) + (below - pressure)) / resistance / springs

    def let_go(_time, pressure):
        return pressure[-1] - 10 * PSI

    let_go.terminal = True
    start = np.full(cells, 500 * PSI)
    reach = 20 * constant(name, celsius, CALIPER + line_takes(name))
    found = solve_ivp(slope, (0, reach), start, method="BDF", events=let_go, rtol=1e-8, atol=1.0)
    return found.t_events[0][0]


def test_one_time_constant_is_enough_where_the_caliper_takes_up_most():
    """By series the slowest part has R (C_caliper + C_line / 3) and starts a little higher: in between."""
    name = "aluminium 3/16 x .035"
    third, half = (
        release_time(constant(name, -30, CALIPER + line_takes(name) * share), 500 * PSI, 10 * PSI)
        for share in (1 / 3, 1 / 2)
    )
    assert third < falling(name, -30) < half < 1.04 * third


def test_where_the_line_takes_up_most_it_is_late_by_up_to_a_quarter():
    """The slowest part of a line alone has 4/pi^2 of R C, one time constant has half: 23 % more."""
    name = "nylon 1/4 x .040 at 23 C"
    lumped = release_time(constant(name, -30, CALIPER + line_takes(name) / 2), 500 * PSI, 10 * PSI)
    exact = falling(name, -30)
    assert exact < lumped < exact * (math.pi**2 / 8) * 1.01


def test_damping_against_the_criterion():
    """R = 2 sqrt(I L / C) is where it neither rings nor creeps."""
    tube, spring = bore("aluminium 3/16 x .035"), CALIPER / STEP
    area = math.pi / 4 * tube**2
    inertia = density(-30) * LENGTH / area
    critical = 2 * math.sqrt(inertia / spring)
    resistance = constant("aluminium 3/16 x .035", -30, STEP)
    ours = damping_ratio(thick(-30), density(-30), LENGTH, tube, CALIPER, STEP)
    assert ours == pytest.approx(resistance / critical)
    assert ours > 1  # and the step of the cut line has no overshoot there; at 20 C it has one, of 1.505
    assert damping_ratio(thick(20), density(20), LENGTH, tube, CALIPER, STEP) < 1
