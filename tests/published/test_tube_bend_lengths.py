"""[tube-bend-lengths] Setback and length of tube bends, web copy.

Length = R deg 0.01745. The constant is pi/180 rounded to four figures; the exact length is derived.
"""

from math import radians

from firmpedal.formulas.bends import arc_length

SOURCE = "tube-bend-lengths"


def test_length_of_a_bend_with_the_rounded_constant(case):
    ours = arc_length(2.0, radians(90))
    why = "the page's constant 0.01745 is pi/180 rounded"
    case(SOURCE, "length of a bend of 90 deg, R 2", "3.1410", ours, off_by="0.0006", why=why)


def test_length_of_a_bend_derived_exactly(case):
    case(
        SOURCE,
        "length of a bend of 90 deg, R 2, exact",
        "3.14159",
        arc_length(2.0, radians(90)),
        how="derived",
    )
