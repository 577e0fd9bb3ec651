"""[thick-cylinder-incompressible] Case V3.04.130 of a solver's verification manual, web copy.

Inner radius 0.1, outer radius 0.2, Poisson's ratio 0.5, no axial strain. The pressure of 60 MPa is
read from the printed radial stress at the bore, -60 MPa. With an incompressible wall the axial stress of a
held tube is that of closed ends. The manual prints the radial displacement of 6e-5 with the unit mm
where its own strain of 6e-4 at a radius of 0.1 m asks for m, so the displacement is left out.
"""

from exact_units import MEGAPASCAL

from firmpedal.formulas.tube_stress import axial_stress_closed_ends, hoop_stress_at_bore

SOURCE = "thick-cylinder-incompressible"
PLACE = "table of the reference solution"
TUBE = (60 * MEGAPASCAL, 0.4, 0.1)


def test_stresses_at_the_bore(case):
    hoop, axial = hoop_stress_at_bore(*TUBE) / MEGAPASCAL, axial_stress_closed_ends(*TUBE) / MEGAPASCAL
    case(SOURCE, "hoop stress at the bore", "100 MPa", hoop, place=PLACE)
    case(SOURCE, "axial stress", "20 MPa", axial, place=PLACE)
