"""[brake-basics] "Brake system basics", page of a parts catalogue, web copy.

Two worked examples: 100 lbf on a pedal of ratio 4, cylinder bores 7/8 and 3/4 in. The page works
with the cylinder areas rounded to two figures, 0.60 and 0.44 in^2; in one line it divides by 0.06
where the result uses 0.60. The exact figures are derived by us.
"""

import pytest
from exact_units import CUBIC_INCH, INCH, POUND_FORCE, PSI

from firmpedal.formulas.levers import cylinder_stroke, line_pressure

SOURCE = "brake-basics"
AREA_ROUNDED = "the page rounds the cylinder's area to {} in^2"


def _pressure(bore):
    return line_pressure(100 * POUND_FORCE, 4, bore * INCH) / PSI


def _stroke(bore):
    return cylinder_stroke(0.6 * CUBIC_INCH, bore * INCH) / INCH


@pytest.mark.parametrize(
    ("bore", "printed", "off_by", "area"),
    [(7 / 8, "667 psi", "-1.8", "0.60"), (3 / 4, "909 psi", "-3.6", "0.44")],
)
def test_line_pressure_as_printed(case, bore, printed, off_by, area):
    name = f"line pressure, 100 lbf, ratio 4, bore {bore} in"
    case(SOURCE, name, printed, _pressure(bore), off_by=off_by, why=AREA_ROUNDED.format(area))


@pytest.mark.parametrize(("bore", "exact"), [(7 / 8, "665.2 psi"), (3 / 4, "905.4 psi")])
def test_line_pressure_derived_with_the_exact_area(case, bore, exact):
    name = f"line pressure, 100 lbf, ratio 4, bore {bore} in, exact area"
    case(SOURCE, name, exact, _pressure(bore), how="derived")


@pytest.mark.parametrize(("bore", "printed"), [(7 / 8, "1.0 in"), (3 / 4, "1.4 in")])
def test_stroke_as_printed(case, bore, printed):
    case(SOURCE, f"stroke for 0.6 in^3, bore {bore} in", printed, _stroke(bore))


@pytest.mark.parametrize(("bore", "exact"), [(7 / 8, "0.998 in"), (3 / 4, "1.358 in")])
def test_stroke_derived_with_the_exact_area(case, bore, exact):
    case(SOURCE, f"stroke for 0.6 in^3, bore {bore} in, exact area", exact, _stroke(bore), how="derived")


@pytest.mark.parametrize(("bore", "exact"), [(7 / 8, "0.60132 in^2"), (3 / 4, "0.44179 in^2")])
def test_cylinder_area_derived(case, bore, exact):
    area = 1 / cylinder_stroke(1.0, bore * INCH)
    case(SOURCE, f"area of a bore of {bore} in", exact, area / INCH**2, how="derived")
