"""[bend-wall-article] Wall thickness of bent boiler tube, web copy: t 2 R / (2 R + D) and t 2 R / (2 R - D).

The article's formulas were read; the numbers for 1/4 x .035 in tube on a 9/16 in radius are derived
by us from them.
"""

from exact_units import INCH

from firmpedal.formulas.bends import extrados_wall, intrados_wall

SOURCE = "bend-wall-article"
WALL, DIAMETER, RADIUS = 0.035 * INCH, 0.25 * INCH, 9 / 16 * INCH
TUBE = "1/4 x .035 in tube, R 9/16 in"


def test_walls_of_a_bend_derived(case):
    outside, inside = extrados_wall(WALL, DIAMETER, RADIUS), intrados_wall(WALL, DIAMETER, RADIUS)
    case(SOURCE, f"wall at the extrados, {TUBE}", "0.02864 in", outside / INCH, how="derived")
    case(SOURCE, f"wall at the intrados, {TUBE}", "0.04500 in", inside / INCH, how="derived")
