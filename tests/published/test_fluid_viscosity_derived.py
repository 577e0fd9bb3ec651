"""[astm-d341] Viscosities between known temperatures, worked out apart from the program.

Each piece is log10 log10(nu + 0.7) = A - B log10(T) through two points, which are typical figures of data
sheets, from memory; those of DOT 4 were read.
"""

import math

import pytest

from firmpedal.analysis.viscosity import viscosity_at
from firmpedal.catalog import fluid
from firmpedal.formulas.viscosity import viscosity_between, walther_number
from firmpedal.quantity import Mark, Value, exactly
from firmpedal.units import Dimension

CENTISTOKE = 1e-6
ICE = 273.15
DERIVED = {
    ("MIL-PRF-5606", -30): "245.2",
    ("MIL-PRF-5606", -20): "135.3",
    ("MIL-PRF-5606", 0): "51.94",
    ("MIL-PRF-5606", 20): "25.00",
    ("MIL-PRF-5606", 60): "9.61",
    ("MIL-PRF-83282", -30): "732.9",
    ("MIL-PRF-83282", 0): "79.2",
    ("DOT 4", -30): "416.6",
    ("DOT 4", 0): "46.7",
    ("DOT 4", 40): "9.09",
}
LINES = {  # through which points, and the constants A and B
    "MIL-PRF-5606 cold": (-40, 491, 40, 14.1, "7.11514", "2.82354"),
    "MIL-PRF-5606 hot": (40, 14.1, 100, 5.3, "5.87793", "2.32782"),
    "MIL-PRF-83282 cold": (-40, 2098, 40, 14.3, "8.85511", "3.51985"),
    "DOT 4": (-40, 1200, 100, 2.5, "9.58875", "3.84361"),
}


def _at(celsius):
    return exactly("temperature", Dimension.TEMPERATURE, celsius + ICE, Mark.READ)


@pytest.mark.parametrize(("name", "celsius"), DERIVED)
def test_viscosity_of_a_fluid_derived(case, name, celsius):
    found = viscosity_at(fluid(name), _at(celsius))
    figure = f"{DERIVED[name, celsius]} mm^2/s"
    case("astm-d341", f"viscosity of {name} at {celsius} C", figure, found.middle / CENTISTOKE, how="derived")


@pytest.mark.parametrize("name", LINES)
def test_constants_of_a_piece_derived(case, name):
    cold, thick, warm, thin, height, slope = LINES[name]
    one, other = walther_number(thick * CENTISTOKE), walther_number(thin * CENTISTOKE)
    steep = (one - other) / math.log10((warm + ICE) / (cold + ICE))
    case("astm-d341", f"slope B of {name}", slope, steep, how="derived")
    ours = one + steep * math.log10(cold + ICE)
    case("astm-d341", f"height A of {name}", height, ours, how="derived")


def test_the_warm_piece_drawn_on_into_the_cold_would_be_far_off_derived():
    """Through 40 and 100 C it gives 211 mm^2/s at -40 C against 491, so a piece ends at its points."""
    warm = [walther_number(number * CENTISTOKE) for number in (14.1, 5.3)]
    with pytest.raises(ValueError, match="not beyond"):
        viscosity_between(-40 + ICE, 40 + ICE, warm[0], 100 + ICE, warm[1])
    assert not viscosity_at(fluid("MIL-PRF-5606"), _at(-60)).known
    assert not viscosity_at(fluid("MIL-PRF-5606"), _at(101)).known


def test_a_range_across_a_joint_of_two_pieces_takes_the_outer_ends():
    both = Value("t", Dimension.TEMPERATURE, (20 + ICE, 60 + ICE), Mark.ESTIMATE)
    found = viscosity_at(fluid("MIL-PRF-5606"), both)
    assert found.low / CENTISTOKE == pytest.approx(9.61, abs=0.005)
    assert found.high / CENTISTOKE == pytest.approx(25.00, abs=0.005)


def test_where_only_limits_are_known_a_viscosity_is_unknown():
    found = viscosity_at(fluid("DOT 3"), _at(20))
    assert not found.known
    assert [missing.what for missing in found.missing] == ["viscosity of DOT 3 at two temperatures"]
