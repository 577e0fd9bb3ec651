"""[firmpedal-derivation] Bends: factors, strain and setbacks derived by us."""

from math import radians

import pytest
from exact_units import INCH, PERCENT

from firmpedal.formulas.bends import bending_strain, extrados_hoop_factor, intrados_hoop_factor, setback

SOURCE = "firmpedal-derivation"
WALL, DIAMETER, RADIUS = 0.035 * INCH, 0.25 * INCH, 9 / 16 * INCH
TUBE = "1/4 x .035 in tube, R 9/16 in"


def test_hoop_factors_of_a_bend_derived(case):
    mean_radius = (DIAMETER - WALL) / 2
    inside, outside = intrados_hoop_factor(RADIUS, mean_radius), extrados_hoop_factor(RADIUS, mean_radius)
    case(SOURCE, f"hoop factor at the intrados, {TUBE}", "1.1181", inside, how="derived")
    case(SOURCE, f"hoop factor at the extrados, {TUBE}", "0.9198", outside, how="derived")


def test_bending_strain_derived(case):
    strain = bending_strain(DIAMETER, RADIUS) / PERCENT
    case(SOURCE, f"bending strain, {TUBE}", "22.2 %", strain, how="derived")


@pytest.mark.parametrize(
    ("radius", "angle", "expected"),
    [
        (14.3, 54.59698, "7.38030 mm"),
        (19.05, 37.14660, "6.40115 mm"),
        (14.3, 84.83380, "13.06543 mm"),
    ],
)
def test_setback_derived_from_vector_algebra(case, radius, angle, expected):
    """Apex to tangent point of three bends of one tube, found from its points without this formula."""
    ours = setback(radius, radians(angle))
    case(SOURCE, f"setback of {angle} deg, R {radius} mm", expected, ours, how="derived")
