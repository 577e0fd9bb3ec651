"""[mil-t-8504b] MIL-T-8504B, annealed 304 tube, paragraph 3.6 and table II, web copy.

The scan has lost the division bar of P = S (D^2 - d^2) / (D^2 + d^2). That the bar belongs there is
shown by the closed form of the thick-walled cylinder: at that pressure the hoop stress at the bore is
S, the least yield strength of table II, 30 ksi.
"""

import pytest
from exact_units import INCH, KSI

from firmpedal.formulas.tube_strength import specification_proof_pressure
from firmpedal.formulas.tube_stress import hoop_stress_at_bore


@pytest.mark.parametrize(("diameter", "wall"), [(0.1875, 0.028), (0.25, 0.035), (0.375, 0.049)])
def test_proof_pressure_brings_the_bore_to_the_least_yield_strength(case, diameter, wall):
    proof = specification_proof_pressure(30 * KSI, diameter * INCH, (diameter - 2 * wall) * INCH)
    hoop = hoop_stress_at_bore(proof, diameter * INCH, wall * INCH) / KSI
    name = f"hoop stress at the bore at proof pressure, {diameter} x {wall} in"
    case("mil-t-8504b", name, "30 ksi", hoop, how="derived", place="table II")
    assert hoop == pytest.approx(30, rel=1e-12)
