"""[14cfr23-735] 14 CFR 23.735(a) as it stood before amendment 23-64: KE = 0.0443 W V^2 / N, in ft-lbf.

W is the design landing weight in pounds, V the speed in knots, N the number of main wheels with brakes. The
constant is one half over standard gravity in ft/s^2, times the square of a knot in ft/s: derived by us.
"""

from exact_units import FOOT, KNOT, POUND, POUND_FORCE

from firmpedal.formulas.grip import rule_energy, stop_energy

SOURCE = "14cfr23-735"
FOOT_POUND = POUND_FORCE * FOOT


def test_the_constant_as_printed(case):
    """One pound at one knot on one wheel gives the constant itself."""
    case(SOURCE, "constant of the energy formula", "0.0443", rule_energy(POUND, KNOT, 1) / FOOT_POUND)


def test_the_constant_derived_from_the_units(case):
    exact = stop_energy(POUND, KNOT, 1) / FOOT_POUND
    case(SOURCE, "energy of one pound at one knot", "0.044270", exact, how="derived")
    case(SOURCE, "the same, to the digits of the rule", "0.0443", exact)


def test_energy_for_each_wheel(case):
    ours = rule_energy(1320 * POUND, 39 * KNOT, 2) / FOOT_POUND
    case(SOURCE, "1320 lb from 39 kt, each of 2 wheels", "44 471 ft-lbf", ours, how="derived")
