"""[firmpedal-derivation] Mass per length of tube filled with fluid of 860 kg/m^3, derived by us."""

import pytest
from exact_units import INCH

from firmpedal.formulas.mass import (
    fluid_volume_per_length,
    mass_of_length,
    mass_of_volume,
    tube_mass_per_length,
)


@pytest.mark.parametrize(
    ("tube", "density", "expected"),
    [
        ((0.25, 0.035), 2680, "0.05499 kg/m"),
        ((0.1875, 0.028), 8000, "0.07995 kg/m"),
        ((0.25, 0.040), 1040, "0.03030 kg/m"),
    ],
)
def test_mass_of_a_filled_metre_derived(case, tube, density, expected):
    diameter, wall = tube[0] * INCH, tube[1] * INCH
    dry = mass_of_length(tube_mass_per_length(diameter, wall, density), 1.0)
    fluid = mass_of_volume(fluid_volume_per_length(diameter, wall) * 1.0, 860)
    name = f"tube {tube[0]} x {tube[1]} in of {density} kg/m^3, filled"
    case("firmpedal-derivation", name, expected, dry + fluid, how="derived")
