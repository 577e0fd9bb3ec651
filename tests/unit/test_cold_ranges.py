"""Brakes in the cold over several lines: times as a ladder of resistances and volumes, solved on its own."""

from __future__ import annotations

from math import log, pi, sqrt

import numpy as np
import pytest
from scipy.sparse import diags
from scipy.sparse.linalg import spsolve
from test_cold import ICE, INCH, PSI, cold

from firmpedal.analysis.stroke import swell
from firmpedal.pipeline import evaluate_text
from texts import example

DENSITY, VISCOSITY = (859, 875), 491e-6  # MIL-PRF-5606 at -40 degC [kg/m^3, m^2/s]
UNPRESSED = """
firmpedal: 1
aircraft: {name: Quillfen, gear: tailwheel, brakes: toe, landing weight: 900 lb, type certificate: no}
units: {length: in}
fluid: MIL-PRF-5606
components:
  pot:
    kind: reservoir
    ports: {out: {thread: 1/8 NPT female, faces: down, seat: [0, 0, 24]}}
  caliper:
    kind: caliper
    pistons: {bore: 1-1/2, count per side: 1}
    pad gap: 0.020
    ports: {inlet: {thread: 1/8 NPT female, faces: up, seat: [16, 0, -6]}}
pedals: {}
lines:
  run: {from: pot.out, to: caliper.inlet, made of: hose -4 PTFE braided}
"""
CELLS = 400  # of each line


@pytest.fixture(scope="module")
def fennimoss():
    return evaluate_text(example("fennimoss"), "fennimoss.yaml", "rigid")


@pytest.fixture(scope="module")
def left(fennimoss):
    return cold(fennimoss)[0]


@pytest.fixture(scope="module")
def chill(left):
    (row,) = (each for each in left.rows if each.temperature.middle == pytest.approx(ICE - 40))
    return row


@pytest.fixture(scope="module")
def ladder(fennimoss, left):
    """From the wheel up each line's length, bore, and what it takes up at the hard foot, least and most.

    In frost, where the fluid may be twice as stiff; walls of metal and hoses from nothing are as they were.
    """
    lines = {line.name: line for line in fennimoss.laid}
    rows = []
    for name in left.lines:
        line = lines[name]
        length = line.hose.order_length if line.hose else line.developed_length
        bore = (0.125 if line.hose else 0.1875 - 2 * 0.035) * INCH
        own = swell(line, left.pressure, "by hand", None, fennimoss.aircraft.fluid)
        least, most = own.wall.low + own.fluid.low / 2, own.wall.high + own.fluid.high
        rows.append((length.middle, bore, (least, most)))
    return rows


def resistance(length, bore, density):
    """Poiseuille: pressure for each cubic metre a second."""
    return 128 * density * VISCOSITY * length / (pi * bore**4)


def mean_time(ladder, pressure, end):
    """Of the wheel's pressure running off at the cylinder: the ladder's currents solved for its charges."""
    steps = np.concatenate(
        [np.full(CELLS, resistance(length, bore, DENSITY[end]) / CELLS) for length, bore, _ in ladder]
    )
    charges = np.concatenate([np.full(CELLS, taken[end] / pressure / CELLS) for *_, taken in ladder])
    between = 1 / ((steps[:-1] + steps[1:]) / 2)
    out = 2 / steps[-1]
    middle = np.append(between, 0) + np.insert(between, 0, 0)
    middle[-1] += out
    flows = diags([-between, middle, -between], [-1, 0, 1], format="csc")
    return spsolve(flows, charges)[0]


def test_the_time_constant_is_the_mean_time_of_the_ladder(left, chill, ladder):
    for end, found in enumerate(chill.time_constant.span):
        assert found == pytest.approx(mean_time(ladder, left.pressure.middle, end), rel=1e-4)


def test_it_has_let_go_at_ten_psi(left, chill):
    """p falls by e in each time constant, so that it takes the logarithm of p over 10 psi."""
    times = log(left.pressure.middle / (10 * PSI))
    assert chill.let_go.span == pytest.approx(
        tuple(times * each for each in chill.time_constant.span), rel=1e-6
    )


def test_the_damping_told_is_that_of_the_line_that_rings_most(left, chill, ladder):
    """Half the resistance times the root of capacity over inertance, 4 rho L / (pi d^2), line by line."""
    found = []
    for number, (length, bore, taken) in enumerate(ladder):
        behind = sum(own[0] for *_, own in ladder[:number]) + taken[0] / 2
        inertance = 4 * DENSITY[0] * length / (pi * bore**2)
        half = resistance(length, bore, DENSITY[0]) / 2
        found.append(half * sqrt(behind / left.pressure.middle / inertance))
    assert min(found) < max(found) / 2
    assert chill.ringing.low == pytest.approx(min(found), rel=1e-6)


def test_sound_goes_there_and_back_at_the_speed_of_fluid_in_walls_that_give(fennimoss, left, ladder):
    """By c = 1 / sqrt(rho (1 / K + dV / (V p))), hose giving from nothing to its limit."""
    lines = {line.name: line for line in fennimoss.laid}
    pressure, fluid = left.pressure, fennimoss.aircraft.fluid
    walls = [swell(lines[name], pressure, "by hand", None, fluid).wall.span for name in left.lines]
    stiff, soft = fluid.bulk_modulus.high, fluid.bulk_modulus.low
    times = []
    for end, (density, modulus) in enumerate(zip(DENSITY, (stiff, soft), strict=True)):
        growth = [
            wall[end] / (pi / 4 * bore**2 * length)
            for wall, (length, bore, _) in zip(walls, ladder, strict=True)
        ]
        slow = [sqrt(density * (1 / modulus + each / pressure.middle)) for each in growth]
        times.append(sum(2 * length * each for each, (length, *_) in zip(slow, ladder, strict=True)))
    assert left.echo.span == pytest.approx(tuple(times), rel=1e-6)


def test_a_wheel_that_no_pedal_presses_has_no_row():
    """A pot on the caliper itself: fluid can come, and nothing presses it."""
    bare = evaluate_text(UNPRESSED, "bare")
    assert bare.results.heights.ways
    assert cold(bare) == ()


def test_the_temperatures_told_are_those_of_specifications_and_winters(left):
    """-54 and -40 degC are where MIL-PRF-5606 states its thickness in the cold."""
    told = [round(each.temperature.middle - ICE, 6) for each in left.rows]
    assert told == [-54, -40, -30, -20, 0, 20]
