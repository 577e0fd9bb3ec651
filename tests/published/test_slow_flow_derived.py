"""[firmpedal-derivation] Pressure that slow flow uses up in 3 m of line, worked out apart from the program.

Dp = 128 rho nu L Q / (pi d^4), with rho(T) = 860 (1 - 8.3e-4 (T - 15)) and the viscosities of MIL-PRF-5606,
of which the table prints four digits and reckons with all. The library `fluids` is a second opinion.
"""

import pytest
from exact_units import CUBIC_CENTIMETRE, PSI
from fluids import Reynolds, friction_factor, one_phase_dP

from firmpedal.formulas.laminar import laminar_pressure_drop, reynolds_number
from firmpedal.formulas.viscosity import viscosity_between, walther_number

CENTISTOKE = 1e-6
BORES = {  # bore in mm
    "3/16 x .035": 2.9845,
    "nylon 3/16 x .030": 3.2385,
    "nylon 1/4 x .040": 4.318,
    "1/4 x .035": 4.572,
}
TEMPERATURES = (-40, -30, -20, 0, 20, 40)  # C
ICE = 273.15
TABLE = {  # Pa s/m^3 and psi for 1 cm^3/s, in the order of the temperatures
    "3/16 x .035": (
        ("6.802e11", "98.7"),
        ("3.370e11", "48.9"),
        ("1.845e11", "26.8"),
        ("6.968e10", "10.1"),
        ("3.299e10", "4.8"),
        ("1.829e10", "2.7"),
    ),
    "nylon 3/16 x .030": (
        ("4.907e11", "71.2"),
        ("2.431e11", "35.3"),
        ("1.331e11", "19.3"),
        ("5.026e10", "7.3"),
        ("2.380e10", "3.5"),
        ("1.320e10", "1.9"),
    ),
    "nylon 1/4 x .040": (
        ("1.552e11", "22.5"),
        ("7.691e10", "11.2"),
        ("4.210e10", "6.1"),
        ("1.590e10", "2.3"),
        ("7.529e9", "1.1"),
        ("4.175e9", "0.6"),
    ),
    "1/4 x .035": (
        ("1.235e11", "17.9"),
        ("6.119e10", "8.9"),
        ("3.350e10", "4.9"),
        ("1.265e10", "1.8"),
        ("5.990e9", "0.9"),
        ("3.322e9", "0.5"),
    ),
}
REYNOLDS = {"1/4 x .035": "220", "3/16 x .035": "338", "nylon 1/4 x .040": "233"}  # 19.79 cm^3/s at 25 mm^2/s


def _thick(celsius):
    """On the line through 491 mm^2/s at -40 C and 14.1 at 40 C."""
    cold, warm = (walther_number(number * CENTISTOKE) for number in (491, 14.1))
    return viscosity_between(celsius + ICE, -40 + ICE, cold, 40 + ICE, warm)


def _density(celsius):
    return 860 * (1 - 8.3e-4 * (celsius - 15))


@pytest.mark.parametrize("name", TABLE)
def test_resistance_of_three_metres_derived(case, name):
    bore = BORES[name] / 1000
    for celsius, (resistance, drop) in zip(TEMPERATURES, TABLE[name], strict=True):
        one = laminar_pressure_drop(_thick(celsius), _density(celsius), 3.0, bore, 1.0)
        what = f"resistance of 3 m of {name} at {celsius} C"
        case("firmpedal-derivation", what, f"{resistance} Pa s/m^3", one, how="derived")
        what = f"pressure for 1 cm^3/s through 3 m of {name} at {celsius} C"
        case("firmpedal-derivation", what, f"{drop} psi", one * CUBIC_CENTIMETRE / PSI, how="derived")


def test_thick_fluid_in_the_cold_derived(case):
    """MIL-PRF-83282 at -40 C, 2098 mm^2/s and 890 kg/m^3, 3/16 x .035."""
    ours = laminar_pressure_drop(2098 * CENTISTOKE, 890.0, 3.0, BORES["3/16 x .035"] / 1000, 1.0)
    case("firmpedal-derivation", "resistance of 3 m, MIL-PRF-83282 at -40 C", "2.877e12", ours, how="derived")


@pytest.mark.parametrize("name", REYNOLDS)
def test_reynolds_number_of_a_quick_stroke_derived(case, name):
    """20 mm of stroke of a cylinder of 5/8 in within 0.2 s."""
    flow = 19.79 * CUBIC_CENTIMETRE
    ours = reynolds_number(flow, BORES[name] / 1000, 25 * CENTISTOKE)
    case("firmpedal-derivation", f"Reynolds number in {name}", REYNOLDS[name], ours, how="derived")


@pytest.mark.parametrize("bore", [0.0029845, 0.004572])
@pytest.mark.parametrize("thick", [14.1, 25.0, 491.0])
def test_friction_agrees_with_a_library(bore, thick):
    """`fluids` is written by others, apart from this program; the flow is laminar here."""
    viscosity, density, flow = thick * CENTISTOKE, 870.0, 2e-6
    speed = flow / (3.141592653589793 * bore**2 / 4)
    assert reynolds_number(flow, bore, viscosity) == pytest.approx(Reynolds(speed, bore, nu=viscosity))
    assert friction_factor(Re=reynolds_number(flow, bore, viscosity)) == pytest.approx(
        64 / reynolds_number(flow, bore, viscosity)
    )
    theirs = one_phase_dP(m=flow * density, rho=density, mu=viscosity * density, D=bore, L=3.0)
    assert laminar_pressure_drop(viscosity, density, 3.0, bore, flow) == pytest.approx(theirs)
