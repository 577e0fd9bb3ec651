"""[common-practice] Figures told in the trade, without a source that we have seen."""

from exact_units import INCH

from firmpedal.formulas.threads import diameter_growth_per_turn


def test_spreading_of_a_port_from_memory(case):
    """Told in the trade as 0.0023 in for each further turn of a 1/8-27 thread."""
    ours = diameter_growth_per_turn(INCH / 27) / INCH
    name = "spreading of a 1/8 in pipe port by one more turn"
    case("common-practice", name, "0.0023 in", ours, how="memory")
