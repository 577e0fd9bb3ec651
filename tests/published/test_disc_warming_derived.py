"""[firmpedal-derivation] A disc after one stop, worked by hand apart from the program.

44 471 ft-lbf, the energy of 14 CFR 23.735(a) for 1320 lb from 39 kt on two wheels, all of it into 0.80 kg of
steel with a specific heat of 486 J/kg K.
"""

from exact_units import FOOT, POUND_FORCE

from firmpedal.formulas.warming import warmed

SOURCE = "firmpedal-derivation"
ENERGY = 44_471 * POUND_FORCE * FOOT
START = 300.0


def test_energy_in_joules(case):
    case(SOURCE, "44 471 ft-lbf", "60 294 J", ENERGY, how="derived", off_by="0.6", why="cut off, not rounded")


def test_rise_of_the_disc(case):
    rise = warmed(START, ENERGY, 1.0, 0.80, 486.0) - START
    case(
        SOURCE,
        "rise of a steel disc of 0.80 kg by 44 471 ft-lbf",
        "155.1 K",
        rise,
        how="derived",
    )
