"""[firmpedal-derivation] What is worked out beside the tables of compliance, apart from the program.

Air that Boyle's law presses together against air taken at the pressure, 0.30 m of the hose of low expansion,
the area of a cylinder of 5/8 in, 260 000 psi, and a safety factor of 4 on the burst of nylon tube.
"""

import pytest
from exact_units import FOOT, GIGAPASCAL, INCH, KNOT, MILLIMETRE, PSI

from firmpedal.formulas.air import free_air_taken, modulus_with_air
from firmpedal.formulas.braking import stop_distance
from firmpedal.formulas.levers import cylinder_stroke
from firmpedal.formulas.temperature import nylon_strength_retained
from firmpedal.formulas.tube_strength import mean_diameter_pressure
from firmpedal.formulas.tube_stress import mean_diameter_stress

SOURCE = "firmpedal-derivation"
OUTSIDE = 101_325.0


def test_air_counted_at_no_pressure_or_at_the_pressure_derived(case):
    """Of a share at no gauge pressure 500 psi leave one in 35."""
    left = 0.01 - free_air_taken(0.01, 500 * PSI, OUTSIDE, 1.0)
    case(SOURCE, "air at no pressure over what is left of it at 500 psi", "35", 0.01 / left, how="derived")


@pytest.mark.parametrize(("psi", "kept", "off"), [(500, "0.80", "-0.03"), (2000, "0.98", "")])
def test_two_per_cent_of_air_as_a_correction(case, psi, kept, off):
    """The page tells neither its fluid nor how fast it is pressed; ours is MIL-PRF-5606, pressed slowly."""
    pressure, bulk = psi * PSI, 1.793 * GIGAPASCAL
    air = 0.02 - free_air_taken(0.02, pressure, OUTSIDE, 1.0)
    ours = modulus_with_air(air / (air + 0.98), pressure + OUTSIDE, bulk, 1.0) / bulk
    known = {"off_by": off, "why": "the page tells neither fluid nor speed"} if off else {}
    case("fluid-bulk-modulus", f"share of stiffness left by 2 % of air at {psi} psi", kept, ours, **known)


def test_the_hose_of_the_budget_derived(case):
    """0.165 cm^3 for a foot, half the limit of 0.33 at 1000 psi."""
    ours = 0.33 / 2 / FOOT * 0.30
    case(SOURCE, "0.30 m of hose of low expansion at 500 psi", "0.1624 cm^3", ours, how="derived")


def test_a_cylinder_of_five_eighths_derived(case):
    area = 1 / cylinder_stroke(1.0, 5 / 8 * INCH)
    case(SOURCE, "area of a bore of 5/8 in", "0.306796 in^2", area / INCH**2, how="derived")
    centimetres = area / (10 * MILLIMETRE) ** 2
    case(SOURCE, "area of a bore of 5/8 in, metric", "1.9793 cm^2", centimetres, how="derived")


def test_bulk_modulus_in_both_units_derived(case):
    ours = 260_000 * PSI / GIGAPASCAL
    case(SOURCE, "260 000 psi", "1.793 GPa", ours, how="derived")


def test_a_quarter_of_the_burst_of_nylon_derived(case):
    stress = mean_diameter_stress(1450 * PSI, 6 * MILLIMETRE, 1 * MILLIMETRE)
    strength = stress * nylon_strength_retained(23 + 273.15)
    ours = mean_diameter_pressure(strength, 0.25 * INCH, 0.040 * INCH) / PSI / 4
    case(SOURCE, "burst of nylon 1/4 x .040 in at 23 C over 4", "345 psi", ours, how="derived")


def test_thirty_nine_knots_derived(case):
    """The speed that the worked distance squares."""
    case(SOURCE, "39 kt", "20.063 m/s", 39 * KNOT, how="derived")
    braking = 0.2842 * 9.80665
    case(
        SOURCE, "distance from 39 kt at 0.2842 g", "72.2 m", stop_distance(39 * KNOT, braking), how="derived"
    )
