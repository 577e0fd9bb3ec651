"""[barlow-web-article] Engineering reference page on Barlow's formula, web copy, example of equation 1.

Pipe of 8.625 in outside diameter, 0.5 in wall, yield strength 30 000 psi: 3478 psi.
"""

from exact_units import INCH, PSI

from firmpedal.formulas.tube_strength import barlow_pressure

SOURCE = "barlow-web-article"


def test_pressure_at_yield(case):
    ours = barlow_pressure(30_000 * PSI, 8.625 * INCH, 0.5 * INCH) / PSI
    case(SOURCE, "pressure at yield of 8.625 x 0.5 in pipe", "3478 psi", ours, place="example 1")
