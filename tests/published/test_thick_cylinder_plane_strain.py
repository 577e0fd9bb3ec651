"""[thick-cylinder-plane-strain] Verification page of a finite element solver, web copy.

"Thick-walled cylinder under internal pressure": inner radius 10 mm, outer radius 20 mm, E 210 GPa,
Poisson's ratio 0.30, 100 MPa inside, no axial strain. The page prints the closed form's stress and
radial displacement at the bore.
"""

from exact_units import GIGAPASCAL, MEGAPASCAL, MILLIMETRE

from firmpedal.formulas.compliance import growth_fixed_ends, shear_modulus
from firmpedal.formulas.tube_stress import hoop_stress_at_bore

SOURCE = "thick-cylinder-plane-strain"
TUBE = (100 * MEGAPASCAL, 40 * MILLIMETRE, 10 * MILLIMETRE)


def test_hoop_stress_at_the_bore(case):
    ours = hoop_stress_at_bore(*TUBE) / MEGAPASCAL
    case(SOURCE, "hoop stress at the bore", "166.7 MPa", ours, place="table of the problem")


def test_radial_displacement_of_the_bore(case):
    """With the length held, the bore's volume grows by twice its radius's share."""
    growth = growth_fixed_ends(*TUBE, shear_modulus(210 * GIGAPASCAL, 0.30), 0.30)
    ours = growth / 2 * 10 * MILLIMETRE / 1e-6
    case(SOURCE, "radial displacement of the bore", "9.08 um", ours, place="table of the problem")
