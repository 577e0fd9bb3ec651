"""The heat network against independent ways: scipy's ODE solver, one lump by hand, and heat that is kept."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from firmpedal.analysis.heating.bands import Trial, bands
from firmpedal.analysis.heating.network import Lumps, Phase, after, march, own_directions
from firmpedal.analysis.heating.samples import (
    CALIPER,
    DISC,
    FLUID,
    LINE,
    drawn,
    every_share,
    heat_into,
    lumps_of,
)
from firmpedal.analysis.heating.situations import IN_A_ROW, SITUATIONS, course, films, peaks

SPANS = {
    "energy": (5e4, 1.2e5),
    "stop_time": (7.0, 9.0),
    "share": (0.85, 0.97),
    "disc_mass": (1.1, 1.3),
    "disc_heat": (460.0, 500.0),
    "disc_radius": (0.07, 0.08),
    "caliper_mass": (0.6, 0.8),
    "caliper_heat": (880.0, 960.0),
    "caliper_area": (0.015, 0.035),
    "fluid_heat": (0.35, 0.5),
    "fluid_depth": (0.004, 0.015),
    "line_mass": (0.008, 0.03),
    "disc_to_caliper": (0.2, 1.2),
    "caliper_to_fluid": (1.0, 8.0),
    "caliper_to_line": (0.1, 0.5),
    "fluid_to_line": (0.005, 0.05),
    "line_to_air": (0.03, 0.15),
    "moving": (15.0, 60.0),
    "standing": (8.0, 25.0),
    "taxi_power": (200.0, 600.0),
    "between": (240.0, 360.0),
    "taxi_time": (600.0, 600.0),
}
PISTONS = 1.14e-3
positive = st.floats(0.01, 10.0)


def _phase(lumps, duration, heat):
    sets = len(lumps.capacities)
    return Phase(own_directions(lumps), np.full(sets, float(duration)), np.asarray(heat, dtype=float))


def _by_solver(phases):
    """One set of figures by an adaptive method, phase after phase."""
    state, ends = np.zeros(4), []
    for capacities, links, to_air, duration, heat in phases:

        def slope(_t, theta, c=capacities, g=links, a=to_air, q=heat):
            flows = (g * (theta[None, :] - theta[:, None])).sum(axis=1)
            return (q + flows - a * theta) / c

        found = solve_ivp(slope, (0, duration), state, method="LSODA", rtol=1e-10, atol=1e-10)
        state = found.y[:, -1]
        ends.append(state)
    return ends


@pytest.mark.parametrize("number", [0, 100, 300, 511, 700, 1000])
def test_stops_in_a_row_agree_with_an_ode_solver(number):
    figures = drawn(SPANS, every_share(tuple(SPANS)))
    moving, standing = (lumps_of(figures, PISTONS, film) for film in ("moving", "standing"))
    braking = heat_into(figures, figures["energy"] / figures["stop_time"])[number]
    one = {name: column[number] for name, column in figures.items()}
    roll = (moving.capacities[number], moving.links[number], moving.to_air[number])
    stand = (standing.capacities[number], standing.links[number], standing.to_air[number])
    phases = [(*roll, one["stop_time"], braking), (*roll, one["between"], np.zeros(4))] * 2
    phases += [(*roll, one["stop_time"], braking), (*stand, 1800.0, np.zeros(4))]
    expected = _by_solver(phases)
    looks = 5
    _, found = course("stops in a row", figures, films(figures, PISTONS), 3, looks)
    ours = found[number, looks - 1 :: looks]
    assert ours == pytest.approx(np.array(expected), rel=1e-6, abs=1e-6)


def test_one_lump_cools_by_an_exponential():
    """From 200 K above the air, 500 J/K, 2 W/K: after 250 s it is 200 / e above."""
    lumps = Lumps(np.array([[500.0]]), np.zeros((1, 1, 1)), np.array([[2.0]]))
    found = after(own_directions(lumps), np.array([[200.0]]), np.zeros((1, 1)), np.array([[250.0]]))
    assert found[0, 0, 0] == pytest.approx(200 / math.e, rel=1e-12)


def test_one_lump_heated_for_long_ends_at_power_over_conductance():
    lumps = Lumps(np.array([[500.0]]), np.zeros((1, 1, 1)), np.array([[2.0]]))
    _, found = march((_phase(lumps, 1e6, [[300.0]]),), 3)
    assert found[0, -1, 0] == pytest.approx(150.0)


@settings(max_examples=60)
@given(
    capacities=st.lists(st.floats(5.0, 2000.0), min_size=4, max_size=4),
    links=st.lists(positive, min_size=6, max_size=6),
    heat=st.lists(st.floats(0.0, 5e3), min_size=4, max_size=4),
    duration=st.floats(1.0, 500.0),
)
def test_without_air_all_heat_is_kept(capacities, links, heat, duration):
    """What is in the lumps in the end is what was put in: power times time."""
    matrix = np.zeros((1, 4, 4))
    matrix[0][np.triu_indices(4, 1)] = links
    matrix[0] += matrix[0].T
    lumps = Lumps(np.array([capacities]), matrix, np.zeros((1, 4)))
    _, found = march((_phase(lumps, duration, [heat]),), 4)
    stored = float((found[0, -1] * capacities).sum())
    assert stored == pytest.approx(sum(heat) * duration, rel=1e-6, abs=1e-6)


@settings(max_examples=40)
@given(
    capacities=st.lists(st.floats(5.0, 2000.0), min_size=4, max_size=4),
    links=st.lists(positive, min_size=6, max_size=6),
    to_air=st.lists(st.floats(0.01, 5.0), min_size=4, max_size=4),
    more=st.floats(1.0, 3.0),
)
def test_more_loss_to_the_air_makes_nothing_warmer(capacities, links, to_air, more):
    matrix = np.zeros((1, 4, 4))
    matrix[0][np.triu_indices(4, 1)] = links
    matrix[0] += matrix[0].T
    courses = []
    for factor in (1.0, more):
        lumps = Lumps(np.array([capacities]), matrix, factor * np.array([to_air]))
        _, found = march((_phase(lumps, 100, [[500.0, 20.0, 0, 0]]), _phase(lumps, 400, np.zeros((1, 4)))), 6)
        courses.append(found)
    assert (courses[1] <= courses[0] + 1e-9 * courses[0].max()).all()


@settings(max_examples=60)
@given(shares=st.lists(st.floats(0.0, 1.0), min_size=len(SPANS), max_size=len(SPANS)))
def test_no_set_inside_the_ranges_is_outside_the_bands(shares):
    """The band holds sets that nobody has drawn, to a kelvin: every corner that can matter was tried."""
    both = drawn(SPANS, every_share(tuple(SPANS)))
    one = {
        name: np.array([low + share * (high - low)])
        for (name, (low, high)), share in zip(SPANS.items(), shares, strict=True)
    }
    for name in SITUATIONS:
        band = _band(name)
        found = peaks(name, one, films(one, PISTONS), 3)[0]
        assert (found >= band[0] - 1.0).all()
        assert (found <= band[1] + 1.0).all()
    assert len(both["energy"]) > 1000


_BANDS = {}


def _band(name):
    if name not in _BANDS:
        figures = drawn(SPANS, every_share(tuple(SPANS)))
        found = peaks(name, figures, films(figures, PISTONS), 3)
        _BANDS[name] = found.min(axis=0), found.max(axis=0)
    return _BANDS[name]


def test_looking_more_often_finds_no_higher_peak_worth_a_kelvin():
    figures = drawn(SPANS, every_share(tuple(SPANS)))
    both = films(figures, PISTONS)
    for name in SITUATIONS:
        usual, fine = (peaks(name, figures, both, 3, looks) for looks in (12, 200))
        assert (fine - usual).max() < 3.0
        assert (fine[:, DISC] - usual[:, DISC]).max() < 1e-6 * fine.max()


def test_disc_is_hottest_and_the_line_coolest():
    figures = drawn(SPANS, every_share(tuple(SPANS)))
    found = peaks("stops in a row", figures, films(figures, PISTONS), 3)
    assert (found[:, DISC] > found[:, CALIPER]).all()
    assert (found[:, CALIPER] >= found[:, FLUID] - 1.0).all()
    assert (found[:, CALIPER] > found[:, LINE]).all()


@pytest.mark.parametrize("rise", [(40.0, 50.0), (90.0, 100.0), (150.0, 156.0)])
def test_no_set_that_agrees_with_a_trial_is_outside_the_narrowed_bands(rise):
    """Far more sets than the program draws, by numpy's own uniform numbers: half of them near corners."""
    spans = tuple(SPANS.items())
    narrowed, agrees = bands(spans, PISTONS, 3, Trial(spans, 3, rise))
    assert agrees is True
    draw = np.random.default_rng(7)
    shares = draw.random((40_000, len(SPANS)))
    shares[20_000:] = np.clip(np.round(shares[20_000:]) + draw.normal(0, 0.05, (20_000, len(SPANS))), 0, 1)
    figures = drawn(SPANS, shares)
    both = films(figures, PISTONS)
    shown = peaks(IN_A_ROW, figures, both, 3)[:, CALIPER]
    agreeing = (shown >= rise[0]) & (shown <= rise[1])
    assert agreeing.sum() > 100
    for name, band in zip(SITUATIONS, narrowed, strict=True):
        found = peaks(name, figures, both, 3)[agreeing]
        for lump, (low, high) in enumerate(band):
            spread = 0.02 * (high - low) + 1.0  # K; the ends themselves are found by search
            assert found[:, lump].min() >= low - spread
            assert found[:, lump].max() <= high + spread
