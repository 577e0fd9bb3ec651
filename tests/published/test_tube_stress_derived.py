"""[firmpedal-derivation] Stress of common tubes, derived by us by hand from the closed forms.

Barlow on the outside diameter, mean diameter, Lamé's hoop stress and Tresca's stress at the bore.
"""

import pytest
from exact_units import INCH, PSI

from firmpedal.formulas.tube_stress import (
    barlow_stress,
    hoop_stress_at_bore,
    mean_diameter_stress,
    tresca_at_bore,
)

FORMULAS = {
    "Barlow": barlow_stress,
    "mean diameter": mean_diameter_stress,
    "Lame": hoop_stress_at_bore,
    "Tresca": tresca_at_bore,
}
#    tube                  D       t     psi      Barlow    mean      Lamé      Tresca
TABLE = {
    ("aluminium 1/4 x .035", 0.25, 0.035, 500): ("1785.7", "1535.7", "1576.4", "2076.4"),
    ("aluminium 1/4 x .035", 0.25, 0.035, 1500): ("5357.1", "4607.1", "4729.2", "6229.2"),
    ("304 3/16 x .028", 0.1875, 0.028, 500): ("1674.1", "1424.1", "1468.0", "1968.0"),
    ("nylon 1/4 x .040", 0.25, 0.040, 500): ("1562.5", "1312.5", "1360.1", "1860.1"),
}
CELLS = [
    (row, theory, expected)
    for row, cells in TABLE.items()
    for theory, expected in zip(FORMULAS, cells, strict=True)
]


@pytest.mark.parametrize(("row", "theory", "expected"), CELLS)
def test_stress_derived(case, row, theory, expected):
    tube, diameter, wall, pressure = row
    ours = FORMULAS[theory](pressure * PSI, diameter * INCH, wall * INCH) / PSI
    case(
        "firmpedal-derivation", f"{theory}, {tube} at {pressure} psi", f"{expected} psi", ours, how="derived"
    )
