"""[firmpedal-derivation] Pedal travel of one wheel at 500 psi, every row of the table, through the curves.

The same table as in test_pedal_travel_derived.py, with its rows with air: 3.0 m of line held lengthwise,
fluid of 1.793 GPa, bore 5/8 in, ratio 3, hose 0.1624 cm^3, caliper 0.05 mm and gap 0.15 mm on one 1.5 in
piston; air by its share of the line's volume at no gauge pressure, pressed slowly.
"""

import math

import numpy as np
import pytest
from exact_units import CUBIC_CENTIMETRE, GIGAPASCAL, INCH, MILLIMETRE, POUND_FORCE, PSI

from feel_rows import terms
from firmpedal.analysis.feel.solve import at_force
from firmpedal.analysis.feel.terms import curves
from firmpedal.formulas.compliance import growth_fixed_ends, piston_volume, shear_modulus, tube_volume

SOURCE = "firmpedal-derivation"
PRESSURE = 500 * PSI
AREA = math.pi / 4 * (5 / 8 * INCH) ** 2
ALUMINIUM, NYLON, HOT, FROST = (70.3 * GIGAPASCAL, 0.33), (480e6, 0.4), (186e6, 0.4), (1471e6, 0.4)
#    tube, material, share of air; volumes of wall, fluid, air and everything in cm^3; pedal in mm
TABLE = {
    "aluminium 1/4 x .035": (0.25, 0.035, ALUMINIUM, 0, "0.0157", "0.0946", "0", "0.5007", "7.59"),
    "aluminium 1/4 x .035, 0.5 % air": (
        0.25, 0.035, ALUMINIUM, 0.005, "0.0157", "0.0941", "0.2392", "0.7395", "11.21",
    ),
    "aluminium 1/4 x .035, 2 % air": (
        0.25, 0.035, ALUMINIUM, 0.02, "0.0157", "0.0927", "0.9569", "1.4557", "22.06",
    ),
    "aluminium 3/16 x .035": (0.1875, 0.035, ALUMINIUM, 0, "0.0051", "0.0403", "0", "0.4358", "6.61"),
    "nylon 1/4 x .040 at 23 C": (0.25, 0.040, NYLON, 0, "1.7953", "0.0844", "0", "2.2701", "34.41"),
    "nylon 1/4 x .040 at 23 C, 2 % air": (
        0.25, 0.040, NYLON, 0.02, "1.7953", "0.0827", "0.8535", "3.1219", "47.32",
    ),
    "nylon 3/16 x .030 at 23 C": (0.1875, 0.030, NYLON, 0, "1.0099", "0.0475", "0", "1.4477", "21.94"),
    "nylon 1/4 x .040 at 80 C": (0.25, 0.040, HOT, 0, "4.6330", "0.0844", "0", "5.1078", "77.42"),
    "nylon 1/4 x .040 at -40 C": (0.25, 0.040, FROST, 0, "0.5858", "0.0844", "0", "1.0606", "16.08"),
}  # fmt: skip


def _case(diameter, wall, material, share, only=""):
    """The terms of a row; `only` leaves one of them and the line's own volume."""
    volume = tube_volume(diameter * INCH, wall * INCH, 3.0)
    growth = growth_fixed_ends(1.0, diameter * INCH, wall * INCH, shear_modulus(*material), material[1])
    slopes = {
        "wall": volume * growth,
        "hose": 0.1624 * CUBIC_CENTIMETRE / PRESSURE,
        "caliper": piston_volume(1.5 * INCH, 1, 0.05 * MILLIMETRE) / PRESSURE,
    }
    whole = {
        "area": AREA,
        "ratio": 3.0,
        "gap": piston_volume(1.5 * INCH, 1, 0.15 * MILLIMETRE),
        "fluid": volume * (1 - share),
        "modulus": 1.793 * GIGAPASCAL,
        "air": volume * share,
        "walls": [(0.0, slope) for name, slope in slopes.items() if not only or name == only],
    }
    left_out = {"gap", "fluid", "air"} - {only} if only else set()
    return {name: 0.0 if name in left_out else figure for name, figure in whole.items()}


def _volume(row, only=""):
    found = curves(terms(_case(*row[:4], only)), np.array([[PRESSURE]]))
    return float(found.stroke[0, 0] * AREA) / CUBIC_CENTIMETRE


ROUNDED = {"off_by": "0.00006", "why": "the table adds up its rounded terms"}
DIFFER = {("nylon 1/4 x .040 at 23 C, 2 % air", ""): ROUNDED}


@pytest.mark.parametrize("line", TABLE)
def test_every_row_of_the_budget_derived(case, line):
    row = TABLE[line]
    for name, printed in zip(("wall", "fluid", "air", ""), row[4:8], strict=True):
        described = f"curve: volume taken by {name or 'all'}, 3 m of {line}"
        known = DIFFER.get((line, name), {})
        if printed == "0":
            assert _volume(row, name) == 0
        else:
            case(SOURCE, described, f"{printed} cm^3", _volume(row, name), how="derived", **known)
    found = curves(terms(_case(*row[:4])), np.array([[PRESSURE]]))
    travel = float(found.travel[0, 0]) / MILLIMETRE
    case(
        SOURCE,
        f"curve: pedal travel, 3 m of {line}",
        f"{row[8]} mm",
        travel,
        how="derived",
    )


def test_all_rows_in_one_call_and_back_from_the_force_derived(case):
    found = terms(*(_case(*row[:4]) for row in TABLE.values()))
    force = np.full((found.cases, 1), PRESSURE * AREA / 3)
    travel = at_force(found, force).travel[:, 0] / MILLIMETRE
    for line, ours in zip(TABLE, travel, strict=True):
        name = f"from the force: pedal travel, 3 m of {line}"
        case(SOURCE, name, f"{TABLE[line][8]} mm", float(ours), how="derived")


@pytest.mark.parametrize(
    ("force", "ratio", "bore", "printed", "where"),
    [
        (100, 4, 7 / 8, "665.2 psi", "100 lbf, ratio 4, bore 7/8 in"),
        (100, 4, 3 / 4, "905.4 psi", "100 lbf, ratio 4, bore 3/4 in"),
        (75, 2, 5 / 8, "488.92 psi", "75 lbf, ratio 2, bore 5/8 in"),
        (60, 3, 5 / 8, "586.7 psi", "60 lbf, ratio 3, bore 5/8 in"),
        (60, 3, 9 / 16, "724.3 psi", "60 lbf, ratio 3, bore 9/16 in"),
        (200, 3, 5 / 8, "1955.7 psi", "200 lbf, ratio 3, bore 5/8 in"),
    ],
)
def test_pressure_under_a_force_derived(case, force, ratio, bore, printed, where):
    one = {"area": math.pi / 4 * (bore * INCH) ** 2, "ratio": ratio, "walls": [(0.0, 1e-14)]}
    ours = at_force(terms(one), np.array([[force * POUND_FORCE]])).pressure[0, 0] / PSI
    case(SOURCE, f"from the force: pressure, {where}", printed, float(ours), how="derived")
