"""[firmpedal-derivation] Fluid with free air: its volume and stiffness, derived by us.

Fluid of 1.793 GPa, outside 101 325 Pa absolute, the share of air taken at no gauge pressure. The tangent
modulus is for a small step from the pressure given; the secant one is the whole pressure over the whole
loss of volume. The last case is the page's own form, with the share at pressure [fluid-power-engineering].
"""

import math

import pytest
from exact_units import GIGAPASCAL, MEGAPASCAL, PSI

from firmpedal.formulas.air import free_air_taken, modulus_with_air, volume_with_air

SOURCE = "firmpedal-derivation"
BULK, OUTSIDE = 1.793 * GIGAPASCAL, 101_325.0
#        share, psi, exponent; volume left, tangent and secant modulus in GPa
TABLE = [
    (0.001, 500, 1, "0.997110", "1.7675", "1.1927"),
    (0.005, 50, 1, "0.995944", "0.3212", "0.0850"),
    (0.005, 500, 1, "0.993232", "1.6718", "0.5093"),
    (0.01, 50, 1, "0.992081", "0.1758", "0.0435"),
    (0.01, 50, 1.4, "0.993279", "0.1626", "0.0513"),
    (0.01, 250, 1, "0.989604", "1.1563", "0.1658"),
    (0.01, 500, 1, "0.988384", "1.5650", "0.2968"),
    (0.01, 500, 1.4, "0.988887", "1.3931", "0.3102"),
    (0.02, 500, 1, "0.978689", "1.3854", "0.1618"),
    (0.05, 500, 1, "0.949603", "1.0199", "0.0684"),
]


@pytest.mark.parametrize(("share", "psi", "exponent", "left", "tangent", "secant"), TABLE)
def test_fluid_with_air_derived(case, share, psi, exponent, left, tangent, secant):
    pressure = psi * PSI
    whole = volume_with_air(share, pressure, BULK, OUTSIDE, exponent)
    air = share - free_air_taken(share, pressure, OUTSIDE, exponent)
    liquid = (1 - share) * math.exp(-pressure / BULK)
    stiff = modulus_with_air(air / (air + liquid), pressure + OUTSIDE, BULK, exponent)
    name = f"{share:.1%} of air at {psi} psi, exponent {exponent}"
    case(SOURCE, f"volume left, {name}", left, whole, how="derived")
    case(SOURCE, f"tangent modulus, {name}", f"{tangent} GPa", stiff / GIGAPASCAL, how="derived")
    case(
        SOURCE, f"secant modulus, {name}", f"{secant} GPa", pressure / (1 - whole) / GIGAPASCAL, how="derived"
    )


def test_textbook_form_derived(case):
    ours = modulus_with_air(0.01, 1 * MEGAPASCAL, 1.4 * GIGAPASCAL, 1.4) / MEGAPASCAL
    case("fluid-power-engineering", "1 % of air at 1 MPa", "127.389 MPa", ours, how="derived")
