"""[brake-design-theory] "Brake system design and theory", section 1, web copy.

150 lbf on a piston of 5/8 in give "about 500 psi"; with a pedal ratio of 2 that is a foot of 75 lbf.
The exact figures are derived by us.
"""

from exact_units import INCH, MEGAPASCAL, POUND_FORCE, PSI

from firmpedal.formulas.levers import lever_ratio, line_pressure

SOURCE = "brake-design-theory"
BORE = 5 / 8 * INCH


def test_line_pressure_as_printed(case):
    ours = line_pressure(150 * POUND_FORCE, 1, BORE) / PSI
    why = "the page rounds to about 500 psi"
    case(SOURCE, "150 lbf on a 5/8 in piston", "500 psi", ours, place="section 1", off_by="-11.1", why=why)


def test_line_pressure_derived_exactly(case):
    ours = line_pressure(150 * POUND_FORCE, 1, BORE)
    case(SOURCE, "150 lbf on a 5/8 in piston, exact", "488.92 psi", ours / PSI, how="derived")
    case(SOURCE, "150 lbf on a 5/8 in piston, exact", "3.3710 MPa", ours / MEGAPASCAL, how="derived")


def test_half_the_foot_force_does_it_with_a_ratio_of_two(case):
    ratio = lever_ratio(8 * INCH, 4 * INCH)
    ours = line_pressure(75 * POUND_FORCE, ratio, BORE) / PSI
    case(SOURCE, "75 lbf foot, ratio 2, 5/8 in piston", "488.92 psi", ours, how="derived")
