"""[firmpedal-derivation] A step of 500 psi through 3 m of line, and a stroke that is stopped at once.

Fluid MIL-PRF-5606, 860 (1 - 8.3e-4 (T - 15)) kg/m^3, 1.793 GPa; the caliper takes 0.23 cm^3 at 500 psi. What
the line resists and what it takes come from the program's formulas; the line is cut into 60 cells of
resistance, inertia and spring, half a spring at its end, and stepped exactly with the matrix exponential of
`scipy`. The nylon keeps its 480 MPa in the cold, so that only the fluid changes. For sound and surge the
fluid is of 1.79 GPa and 860 kg/m^3.
"""

import math

import numpy as np
import pytest
from exact_units import CUBIC_CENTIMETRE, GIGAPASCAL, INCH, MEGAPASCAL, MILLIMETRE, PSI
from scipy.linalg import expm
from test_release_derived import BULK, CALIPER, LENGTH, STEP, TUBES, bore, density, growth, line_takes, thick

from firmpedal.formulas.laminar import laminar_pressure_drop
from firmpedal.formulas.levers import cylinder_stroke
from firmpedal.formulas.release import time_through_line, wave_speed

SOURCE = "firmpedal-derivation"
ROUNDED_ON_THE_WAY = "the figure worked by hand was rounded on the way"
COLDEST = 2300e-6  # m^2/s at -54 C
AL3, AL4, NYLON = "aluminium 3/16 x .035", "aluminium 1/4 x .035", "nylon 1/4 x .040 at 23 C"
#    line, C: speed of sound, time constant, times to a tenth, half and nine tenths in s; peak over step
ROWS = {
    (AL3, 20): ("1363", "0.00242", "0.00284", "0.00613", "0.00858", "1.505"),
    (AL3, -30): ("1336", "0.02470", "0.00419", "0.01771", "0.05439", "1.000"),
    (AL3, -54): ("1323", "0.23620", "0.03120", "0.16591", "0.53476", "1.000"),
    (AL4, 20): ("1340", "0.00050", "0.00248", "0.00367", "0.00530", "1.873"),
    (AL4, -30): ("1313", "0.00506", "0.00268", "0.00510", "0.00893", "1.064"),
    (AL4, -54): ("1301", "0.04840", "0.00799", "0.03456", "0.10725", "1.000"),
    (NYLON, 20): ("307", "0.00255", "0.00978", "0.01032", "0.01071", "1.833"),
    (NYLON, -30): ("301", "0.02610", "0.01067", "0.01998", "0.05014", "1.000"),
    (NYLON, -54): ("298", "0.24953", "0.06362", "0.18838", "0.51677", "1.000"),
}
CELLS, STEPS_TO_TENTH, LONG = 60, 140, 14.0


def viscosity(celsius):
    return COLDEST if celsius == -54 else thick(celsius)


def response(name, celsius):
    """Pressure at the caliper as a share of the step, over time, until it has settled."""
    tube = bore(name)
    resistance = laminar_pressure_drop(viscosity(celsius), density(celsius), LENGTH, tube, 1.0)
    inertia = density(celsius) * LENGTH / (math.pi / 4 * tube**2)
    springs = np.full(CELLS, line_takes(name) / STEP / CELLS)
    springs[-1] = springs[-1] / 2 + CALIPER / STEP
    whole = np.zeros((2 * CELLS + 1, 2 * CELLS + 1))  # flows, pressures, and the step itself
    for cell in range(CELLS):
        flow, pressure = cell, CELLS + cell
        above = pressure - 1 if cell else 2 * CELLS
        whole[flow, flow] = -resistance / inertia
        whole[flow, above], whole[flow, pressure] = CELLS / inertia, -CELLS / inertia
        whole[pressure, flow] = 1 / springs[cell]
        if cell < CELLS - 1:
            whole[pressure, flow + 1] = -1 / springs[cell]
    tenth = float(ROWS[name, celsius][2])
    step, reach = tenth / STEPS_TO_TENTH, max(LONG * float(ROWS[name, celsius][1]), 8 * tenth)
    forward, state = expm(whole * step), np.zeros(2 * CELLS + 1)
    state[-1] = 1.0
    shares = [0.0]
    for _ in range(math.ceil(reach / step)):
        state = forward @ state
        shares.append(state[2 * CELLS - 1])
    return step * np.arange(len(shares)), np.array(shares)


@pytest.mark.parametrize(("name", "celsius"), ROWS)
def test_a_step_at_the_master_cylinder_derived(case, name, celsius):
    sound, constant, *times, peak = ROWS[name, celsius]
    where = f"{name} at {celsius} C"
    ours = wave_speed(density(celsius), BULK, growth(name), STEP)
    case(SOURCE, f"step: speed of sound in {where}", f"{sound} m/s", ours, how="derived")
    taken = CALIPER + line_takes(name) / 2
    ours = time_through_line(viscosity(celsius), density(celsius), LENGTH, bore(name), taken, STEP)
    case(SOURCE, f"step: time constant of {where}", f"{constant} s", ours, how="derived")
    at, shares = response(name, celsius)
    for share, printed in zip((0.1, 0.5, 0.9), times, strict=True):
        first = int(np.argmax(shares >= share))
        ours = np.interp(share, shares[first - 1 : first + 1], at[first - 1 : first + 1])
        case(SOURCE, f"step: time to {share:.0%} at the end of {where}", f"{printed} s", ours, how="derived")
    case(SOURCE, f"step: peak over step at the end of {where}", peak, shares.max(), how="derived")


KORTEWEG = {  # thin wall held lengthwise
    AL4: "1365.3",
    AL3: "1390.7",
    "304 3/16 x .028": "1414.8",
    NYLON: "381.3",
    "nylon 1/8 x .025": "447.4",
    "nylon 1/4 x .040 at 80 C": "242.6",
    "nylon 1/4 x .040 at -40 C": "624.1",
}


@pytest.mark.parametrize("name", KORTEWEG)
def test_thin_wall_makes_sound_too_fast_derived(case, name):
    """c = sqrt(B / rho) / sqrt(1 + B d (1 - nu^2) / (E t)); the thick wall of the program is slower."""
    diameter, wall, (modulus, poisson), _ = TUBES[name]
    bulk = 1.79 * GIGAPASCAL
    gives = bulk * (diameter - 2 * wall) * (1 - poisson**2) / (modulus * wall)
    thin = math.sqrt(bulk / 860.0 / (1 + gives))
    known = {"off_by": "-0.05", "why": ROUNDED_ON_THE_WAY} if name == AL4 else {}
    what = f"thin wall: speed of sound in {name}"
    case(SOURCE, what, f"{KORTEWEG[name]} m/s", thin, how="derived", **known)
    assert wave_speed(860.0, bulk, growth(name), STEP) < thin
    if name == NYLON:
        over = thin / wave_speed(860.0, bulk, growth(name), STEP) - 1
        case(SOURCE, "thin wall against ours, speed of sound in nylon", "25 %", 100 * over, how="derived")


SURGE = {  # speed in m/s; surge in MPa and psi; 2 L / c in ms
    AL4: ("1.2056", "1.386", "201.0", "4.49"),
    AL3: ("2.8293", "3.308", "479.7", "4.41"),
    NYLON: ("1.3516", "0.356", "51.6", "19.60"),
}


@pytest.mark.parametrize("name", SURGE)
def test_a_stroke_stopped_at_once_derived(case, name):
    """20 mm of a cylinder of 5/8 in within 0.2 s; Joukowsky: density times speed of sound times speed."""
    speed, megapascal, psi, echo = SURGE[name]
    area = 1 / cylinder_stroke(1.0, 5 / 8 * INCH)
    flow = area * 20 * MILLIMETRE / 0.2
    case(SOURCE, "flow of a quick stroke", "19.79 cm^3/s", flow / CUBIC_CENTIMETRE, how="derived")
    ours = flow / (math.pi / 4 * bore(name) ** 2)
    case(SOURCE, f"surge: speed in {name}", f"{speed} m/s", ours, how="derived")
    sound = wave_speed(860.0, 1.79 * GIGAPASCAL, growth(name), STEP)
    surge = 860.0 * sound * ours
    case(SOURCE, f"surge in {name}", f"{megapascal} MPa", surge / MEGAPASCAL, how="derived")
    case(SOURCE, f"surge in {name}, psi", f"{psi} psi", surge / PSI, how="derived")
    case(SOURCE, f"surge: there and back in {name}", f"{echo} ms", 2000 * LENGTH / sound, how="derived")
