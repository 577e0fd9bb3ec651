"""[firmpedal-derivation] Pedal travel of one wheel at 500 psi, derived by us term by term.

3.0 m of line held lengthwise, fluid of 1.793 GPa without air, cylinder bore 5/8 in, pedal ratio 3; hose
0.1624 cm^3, caliper 0.05 mm and pad gap 0.15 mm on one 1.5 in piston. The hose, the caliper and the gap
are assumptions of the table.
"""

import pytest
from exact_units import CUBIC_CENTIMETRE, GIGAPASCAL, INCH, MEGAPASCAL, MILLIMETRE, PSI

from firmpedal.formulas.compliance import (
    fluid_compression,
    growth_fixed_ends,
    piston_volume,
    shear_modulus,
    tube_volume,
    wall_growth_volume,
)
from firmpedal.formulas.levers import cylinder_stroke, pedal_travel

SOURCE = "firmpedal-derivation"
PRESSURE = 500 * PSI
HOSE = 0.1624 * CUBIC_CENTIMETRE
ALUMINIUM = (70.3 * GIGAPASCAL, 0.33)
#    line: D, t, material; volumes of wall, fluid and everything in cm^3; pedal in mm
TABLE = {
    "aluminium 1/4 x .035": (0.25, 0.035, ALUMINIUM, "0.0157", "0.0946", "0.5007", "7.59"),
    "aluminium 3/16 x .035": (0.1875, 0.035, ALUMINIUM, "0.0051", "0.0403", "0.4358", "6.61"),
    "nylon 1/4 x .040 at 23 C": (0.25, 0.040, (480e6, 0.4), "1.7953", "0.0844", "2.2701", "34.41"),
    "nylon 3/16 x .030 at 23 C": (0.1875, 0.030, (480e6, 0.4), "1.0099", "0.0475", "1.4477", "21.94"),
    "nylon 1/4 x .040 at 80 C": (0.25, 0.040, (186e6, 0.4), "4.6330", "0.0844", "5.1078", "77.42"),
    "nylon 1/4 x .040 at -40 C": (0.25, 0.040, (1471e6, 0.4), "0.5858", "0.0844", "1.0606", "16.08"),
}


def _terms(diameter, wall, modulus, poisson_ratio):
    tube = (diameter * INCH, wall * INCH)
    volume = tube_volume(*tube, 3.0)
    growth = growth_fixed_ends(PRESSURE, *tube, shear_modulus(modulus, poisson_ratio), poisson_ratio)
    caliper = piston_volume(1.5 * INCH, 1, 0.05 * MILLIMETRE)
    gap = piston_volume(1.5 * INCH, 1, 0.15 * MILLIMETRE)
    fluid = fluid_compression(volume, PRESSURE, 1793 * MEGAPASCAL)
    return wall_growth_volume(volume, growth), fluid, caliper, gap


@pytest.mark.parametrize("line", TABLE)
def test_pedal_travel_derived(case, line):
    diameter, wall, material, walls, fluids, everything, pedal = TABLE[line]
    terms = _terms(diameter, wall, *material)
    total = sum(terms) + HOSE
    for name, expected, ours in (
        ("wall", walls, terms[0]),
        ("fluid", fluids, terms[1]),
        ("all", everything, total),
    ):
        described = f"volume taken by {name}, 3 m of {line}"
        case(SOURCE, described, f"{expected} cm^3", ours / CUBIC_CENTIMETRE, how="derived")
    travel = pedal_travel(3, cylinder_stroke(total, 5 / 8 * INCH), 0.0) / MILLIMETRE
    case(SOURCE, f"pedal travel, 3 m of {line}", f"{pedal} mm", travel, how="derived")


def test_caliper_and_gap_derived(case):
    caliper, gap = _terms(0.25, 0.035, *ALUMINIUM)[2:]
    case(SOURCE, "0.05 mm of a 1.5 in piston", "0.0570 cm^3", caliper / CUBIC_CENTIMETRE, how="derived")
    case(SOURCE, "0.15 mm of a 1.5 in piston", "0.1710 cm^3", gap / CUBIC_CENTIMETRE, how="derived")
