"""[fluid-bulk-modulus] "Bulk modulus", page of a resource centre, web copy.

3000 psi on MIL-PRF-83282 fluid, bulk modulus 300 000 psi, reduces its volume by 1.0 %. The page divides
3000 by 300 000; we integrate and get 0.995 %, the same to the printed digit.
"""

from exact_units import PERCENT, PSI

from firmpedal.formulas.compliance import fluid_compression


def test_volume_lost_at_3000_psi(case):
    ours = fluid_compression(1.0, 3000 * PSI, 300_000 * PSI) / PERCENT
    case("fluid-bulk-modulus", "volume lost at 3000 psi", "1.0 %", ours, place="example")
