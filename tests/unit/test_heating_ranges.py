"""Figures of a brake's heat where the file gives ranges: which end of each one leads to which, by hand."""

from __future__ import annotations

import numpy as np
import pytest
from test_heating import AIRCRAFT, heat_of

from firmpedal.analysis.heating.measured import as_warm
from firmpedal.analysis.heating.samples import heat_into, lumps_of
from firmpedal.formulas.warming import carried_to
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Mark, exactly
from firmpedal.units import Dimension, from_unit, to_unit

KNOT, POUND = 1852 / 3600, 4.4482216152605


def brake(*edits):
    text = AIRCRAFT
    for old, new in edits:
        assert text.count(old) == 1
        text = text.replace(old, new)
    return heat_of(text).brakes[0]


def rise_of(trial):
    return [bound * 1.8 for bound in brake(("disc:", f"heat trial: {trial}\n    disc:")).trial.rise]


def test_a_label_bounds_the_rise_by_its_step_of_nine_degrees_on_either_side():
    """150 less 70 is 80 degF; from one field to the next are 5 K."""
    assert rise_of("{air: 70, port: 150}") == pytest.approx([80 - 9, 80 + 9])


def test_the_least_rise_is_in_the_warmest_air_and_the_greatest_in_the_coolest():
    """From 70 to 150 are 80 degF, and from 60 to 165 are 105."""
    assert rise_of("{air: 60 to 70, port: 150 to 165}") == pytest.approx([80 - 9, 105 + 9])


def taxi(*edits):
    found = dict(brake(("taxi drag: 5", "static thrust: 300 to 400"), *edits).figures.values())
    return found["taxi_power"]


def test_a_taxi_without_a_drag_takes_a_twentieth_to_a_tenth_of_the_thrust():
    """15 to 40 lbf at 8 to 12 kt over two wheels. Common practice, no source: idle thrust held back."""
    power = taxi()
    assert power.low == pytest.approx(15 * POUND * 8 * KNOT / 2)
    assert power.high == pytest.approx(40 * POUND * 12 * KNOT / 2)


def test_a_declared_taxi_speed_takes_the_place_of_the_usual_one():
    power = taxi(("static thrust", "taxi speed: 10 kt, static thrust"))
    assert power.span == pytest.approx((15 * POUND * 10 * KNOT / 2, 40 * POUND * 10 * KNOT / 2))


POUND_MASS = 0.45359237
TRIAL = "heat trial: {air: 70, port: 150, from speed: 30 kt, stops: 2, time between stops: 90 s}\n    disc:"


def spans_of(found):
    return dict(found.trial.spans)


def test_a_trial_goes_by_its_own_speed_stops_and_pauses():
    """1,320 lb at 30 kt on two wheels; a wanted stop of 10 ft/s^2 from there takes 5.06 s."""
    found = brake(("disc:", TRIAL))
    energy = 1320 * POUND_MASS * (30 * KNOT) ** 2 / 2 / 2
    assert spans_of(found)["energy"] == pytest.approx((energy, energy))
    time = 30 * KNOT / (10 * 0.3048)
    assert spans_of(found)["stop_time"] == pytest.approx((time, time))
    assert spans_of(found)["between"] == (90, 90)
    assert found.trial.stops == 2
    assert found.stops == 3  # the situation's own, without a word on it in the file


def test_a_trial_that_says_nothing_of_them_goes_by_those_of_the_situation():
    found = brake(
        ("disc:", "heat trial: {air: 70, port: 150}\n    disc:"),
        ("taxi drag: 5", "taxi drag: 5, stops in a row: 4, time between stops: 200 to 220 s"),
    )
    energy = 1320 * POUND_MASS * (39 * KNOT) ** 2 / 2 / 2
    assert spans_of(found)["energy"] == pytest.approx((energy, energy))
    assert spans_of(found)["between"] == (200, 220)
    assert (found.trial.stops, found.stops) == (4, 4)


ONE = {
    "energy": 1.0,
    "share": 0.9,
    "disc_mass": 1.2,
    "disc_heat": 480.0,
    "disc_radius": 0.08,
    "caliper_mass": 0.7,
    "caliper_heat": 900.0,
    "caliper_area": 0.02,
    "fluid_heat": 0.4,
    "fluid_depth": 0.01,
    "line_mass": 0.02,
    "disc_to_caliper": 0.5,
    "caliper_to_fluid": 4.0,
    "caliper_to_line": 0.3,
    "fluid_to_line": 0.02,
    "line_to_air": 0.1,
    "moving": 40.0,
    "standing": 10.0,
}


@pytest.mark.parametrize(("film", "transfer"), [("moving", 40), ("standing", 10)])
def test_the_lumps_of_one_set_by_hand(film, transfer):
    """Mass by specific heat; 10 mm of fluid behind 11.4 cm^2, a litre of water taking 4.18 kJ; two faces."""
    found = lumps_of({name: np.array([figure]) for name, figure in ONE.items()}, 11.4e-4, film)
    assert found.capacities[0] == pytest.approx([1.2 * 480, 0.7 * 900, 11.4e-3 * 0.4 * 4180, 0.02 * 900])
    disc = 2 * 3.14159265 * 0.08**2
    assert found.to_air[0] == pytest.approx([transfer * disc, transfer * 0.02, 0, 0.1])
    links = np.zeros((4, 4))
    for one, other, conductance in ((0, 1, 0.5), (1, 2, 4.0), (1, 3, 0.3), (2, 3, 0.02)):
        links[one, other] = links[other, one] = conductance
    assert found.links[0] == pytest.approx(links)


def test_nine_tenths_of_the_heat_go_into_the_disc_and_the_rest_into_the_caliper():
    assert heat_into({"share": np.array([0.9])}, np.array([200.0]))[0] == pytest.approx([180, 20, 0, 0])


def trial_of(**words):
    text = ", ".join(f"{key}: {word}" for key, word in words.items())
    return brake(("disc:", f"heat trial: {{{text}}}\n    disc:"))


def fahrenheit(value):
    return [to_unit(bound, "degF") for bound in value.span]


def test_a_trial_that_agrees_is_told_as_it_was_read():
    """Its bands carry it to a hot day; the port itself was at 150 F, in air of 70."""
    found = trial_of(air=70, port=150)
    assert found.agrees
    assert fahrenheit(found.measured) == pytest.approx([150, 150])


def test_without_a_port_that_was_read_nothing_was_measured():
    assert trial_of(air=70, port="unknown").measured is None


def test_a_trial_without_its_air_counts_as_it_was_read():
    found = trial_of(air="unknown", port=400)
    assert fahrenheit(found.measured) == pytest.approx([400, 400])
    seals = next(each for each in found.limits if each.kind == "seals")
    assert fahrenheit(seals.found)[0] >= 400 - 1e-6


@pytest.mark.parametrize(
    ("air", "carried"), [("70", (930, 930)), ("60 to 70", (930, 940)), ("130", (900, 900))]
)
def test_a_trial_that_agrees_with_nothing_is_carried_to_a_hot_day_of_100_if_that_is_hotter(air, carried):
    """From 900 F the rise is 830, 830 to 840, or 770: on 100 F that is 930, 930 to 940, or less than 900."""
    assert fahrenheit(trial_of(air=air, port=900).measured) == pytest.approx(carried)


@pytest.mark.parametrize(
    ("day", "base"), [(None, (60, 70)), ("100", (100, 100)), ("65", (65, 70)), ("40", (60, 70))]
)
def test_a_part_is_above_the_air_by_its_share_of_what_the_port_was(day, base):
    """Port 150 to 160 F, air 60 to 70: 80 to 100 above it, half to nine tenths of that the part."""
    caliper = evaluate_text(
        AIRCRAFT.replace("disc:", "heat trial: {air: 60 to 70, port: 150 to 160}\n    disc:")
    ).aircraft.calipers[0]
    on = (
        None
        if day is None
        else exactly("day", Dimension.TEMPERATURE, from_unit(float(day), "degF"), Mark.READ)
    )
    port = caliper.heat_trial.port
    found = as_warm(port, (0.5, 0.9), caliper, "fluid", on)
    assert fahrenheit(found) == pytest.approx([base[0] + 0.5 * 80, base[1] + 0.9 * 100])
    assert as_warm(None, (0.5, 0.9), caliper, "fluid", on) is None
    assert as_warm(port, None, caliper, "fluid", on) is None


def test_fluid_stands_behind_all_pistons_of_one_side():
    """Two pistons of 1.5 in: 3.534 square inches."""
    two = brake(("pistons: {bore: 1-1/2, count per side: 1}", "pistons: {bore: 1-1/2, count per side: 2}"))
    assert two.pistons == pytest.approx(3.534 * 0.0254**2, rel=1e-4)


def test_what_was_measured_is_carried_to_a_hot_day_by_its_rise_above_the_air():
    """160 degC at the port in air of 30 degC are 130 K above it: 168 degC at 38 degC."""
    then, now = from_unit(30, "degC"), from_unit(38, "degC")
    found = carried_to(from_unit(160, "degC"), then, now)
    assert found == pytest.approx(from_unit(168, "degC"))
