"""[fluid-bulk-modulus] and [firmpedal-derivation] Fluid shut in and warmed.

The page's example: MIL-PRF-83282 in a rigid volume, 50 degF warmer, 3.0e5 x 0.00046 x 50 = 6900 psi.
The others are worked out apart from the program, from 10 to 40 C with MIL-PRF-5606, 8.28e-4 per K, 1.793 GPa:
aluminium 1/4 x .035 (70.3 GPa, 0.33, 23.8e-6 per K), nylon 1/4 x .040 (480 MPa, 0.40, 91e-6 per K).
"""

import pytest
from exact_units import CUBIC_CENTIMETRE, GIGAPASCAL, INCH, MEGAPASCAL, PSI

from firmpedal.formulas.compliance import (
    fluid_compression,
    growth_closed_ends,
    growth_fixed_ends,
    shear_modulus,
    tube_volume,
)
from firmpedal.formulas.trapped import freed_by_warmth, pressure_that_makes_room, trapped_pressure_rise

REFERENCE = 1e4  # Pa: so little that the fluid's own law is a straight line
FLUID = (8.28e-4, 1.793 * GIGAPASCAL)
COOL, WARM = 283.15, 313.15
ALUMINIUM = (0.25 * INCH, 0.035 * INCH, 70.3 * GIGAPASCAL, 0.33, 23.8e-6)
NYLON = (0.25 * INCH, 0.040 * INCH, 480 * MEGAPASCAL, 0.40, 91e-6)


def closed(diameter, wall, modulus, poisson_ratio):
    return growth_closed_ends(REFERENCE, diameter, wall, modulus, poisson_ratio)


def fixed(diameter, wall, modulus, poisson_ratio):
    shear = shear_modulus(modulus, poisson_ratio)
    return growth_fixed_ends(REFERENCE, diameter, wall, shear, poisson_ratio)


def rise(*tube, extra=0.0, ends=closed):
    diameter, wall, modulus, poisson_ratio, widens = tube
    expansion, bulk = FLUID
    volume = tube_volume(diameter, wall, 3.0)
    given = volume * ends(diameter, wall, modulus, poisson_ratio)
    given += fluid_compression(volume, REFERENCE, bulk) + extra * REFERENCE
    freed = freed_by_warmth(volume, expansion, widens, COOL, WARM)
    return pressure_that_makes_room(freed, given, REFERENCE)


def test_example_of_the_page(case):
    ours = trapped_pressure_rise(0.00046 * 1.8, 3.0e5 * PSI, 283.15, 283.15 + 50 / 1.8) / PSI
    case("fluid-bulk-modulus", "rigid volume 50 degF warmer", "6900 psi", ours, place="example")


@pytest.mark.parametrize(
    ("name", "tube", "figures"),
    [("aluminium", ALUMINIUM, ("34.8 MPa", "5050 psi")), ("nylon", NYLON, ("1.33 MPa", "193 psi"))],
)
def test_tube_alone_derived(case, name, tube, figures):
    ours = rise(*tube)
    case("firmpedal-derivation", f"{name} tube 30 K warmer", figures[0], ours / MEGAPASCAL, how="derived")
    ours_psi = ours / PSI
    if figures[1] == "5050 psi":  # rounded to tens
        assert ours_psi == pytest.approx(5050, abs=5)
    else:
        case("firmpedal-derivation", f"{name} tube 30 K warmer, psi", figures[1], ours_psi, how="derived")


def test_three_metres_with_a_hose_and_a_caliper_that_give_derived(case):
    """They take 0.219 cm^3 at 500 psi; the tube is clamped and keeps its length."""
    extra = 0.219 * CUBIC_CENTIMETRE / (500 * PSI)
    volume = tube_volume(*ALUMINIUM[:2], 3.0) / CUBIC_CENTIMETRE
    case("firmpedal-derivation", "volume of 3 m of aluminium", "49.25 cm^3", volume, how="derived")
    ours = rise(*ALUMINIUM, extra=extra, ends=fixed)
    case("firmpedal-derivation", "3 m with hose and caliper", "11.70 MPa", ours / MEGAPASCAL, how="derived")
    case("firmpedal-derivation", "3 m with hose and caliper, psi", "1697 psi", ours / PSI, how="derived")
