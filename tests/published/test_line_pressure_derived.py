"""[firmpedal-derivation] Line pressures derived by us by hand, F i / A with A = pi d^2 / 4.

200 lbf is the greatest rudder pedal force of 14 CFR 23.397(b) for aeroplanes up to 5000 lb.
"""

import pytest
from exact_units import INCH, MEGAPASCAL, POUND_FORCE, PSI

from firmpedal.formulas.levers import line_pressure

SOURCE = "firmpedal-derivation"


@pytest.mark.parametrize(
    ("foot", "bore", "unit", "expected"),
    [
        (60, 5 / 8, PSI, "586.7 psi"),
        (60, 5 / 8, MEGAPASCAL, "4.0452 MPa"),
        (60, 9 / 16, PSI, "724.3 psi"),
        (200, 5 / 8, PSI, "1955.7 psi"),
    ],
)
def test_line_pressure_derived(case, foot, bore, unit, expected):
    ours = line_pressure(foot * POUND_FORCE, 3, bore * INCH) / unit
    case(SOURCE, f"{foot} lbf foot, ratio 3, bore {bore} in", expected, ours, how="derived")
