"""[bretherton-1961] F. P. Bretherton, The motion of long bubbles in tubes, J. Fluid Mech. 10 (1961), 166.

The abstract: in an upright tube sealed at one end a bubble does not rise at all if rho g r^2 / sigma < 0.842.
[arrested-bubble] prints the same as a radius, 0.918 of the capillary length sqrt(sigma / (rho g)).
"""

import math

from firmpedal.formulas.bubbles import bond_number, bubble_speed_at_most, widest_bore_that_holds_air

WATER = (998.2, 0.0728)  # any fluid will do: both figures are free of units


def test_bond_number_at_the_widest_bore_that_holds_air(case):
    density, tension = WATER
    bore = widest_bore_that_holds_air(density, tension)
    ours = bond_number(density, bore, tension)
    case("bretherton-1961", "critical Bond number with the radius", "0.842", ours, place="abstract")


def test_radius_in_capillary_lengths(case):
    density, tension = WATER
    capillary_length = math.sqrt(tension / (density * 9.80665))
    ours = widest_bore_that_holds_air(density, tension) / 2 / capillary_length
    case("arrested-bubble", "critical radius in capillary lengths", "0.918", ours, place="abstract")


def test_below_it_nothing_rises():
    assert bubble_speed_at_most(0.8419, 100.0) == 0
    assert bubble_speed_at_most(0.8421, 100.0) > 0
