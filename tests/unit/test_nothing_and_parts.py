"""Zeros and parts of a whole where there are none: each a mistake with its line, as less than nothing is."""

from __future__ import annotations

import pytest
from project_texts import SOUND, place_of, spoiled

from firmpedal.model.aircraft import Aircraft
from firmpedal.project import read_text
from firmpedal.project.schema import keys_at

GROUND = SOUND + "on the ground: {%s}\n"
BRAKE = "pistons: {bore: 1.5, count per side: 1}"
HEADER = "gear: tailwheel, brakes: toe}"
NOTHING = "cannot be nothing"


def only(text):
    (problem,) = read_text(text).problems
    return problem


@pytest.mark.parametrize(
    "words",
    [
        "tyre radius: 0",
        "wheelbase: 0",
        "weight on mains: 0 lb",
        "weight on nose or tail: 0 lb",
        "mains to cg: 0",
        "cg height: 0",
        "landing speed: 0 kt",
        "wanted deceleration: 0 ft/s^2",
        "usual tyre friction: 0",
        "peak tyre friction: 0",
        "stops in a row: 0",
        "time between stops: 0 min",
        "taxi time: 0 min",
        "taxi speed: 0 kt",
        "tyre radius: 0 to 6",
        "tyre radius: {value: 0, mark: assumed}",
    ],
)
def test_nothing_on_the_ground_is_a_mistake_at_its_figure(words):
    text = GROUND % words
    problem = only(text)
    assert NOTHING in problem.message
    line, column = place_of(text, words)
    figure = words.index("{value: ") + 8 if "{" in words else words.index(": ") + 2
    assert (problem.span.line, problem.span.column) == (line, column + figure)
    assert problem.suggestion


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("bore: 0.625", "bore: 0"),
        ("stroke: 0.8", "stroke: 0"),
        ("pad: 5", "pad: 0"),
        ("arm: 2.5", "arm: 0"),
        (BRAKE, BRAKE.replace("1.5", "0")),
        (BRAKE, BRAKE.replace("side: 1", "side: 0")),
        (BRAKE, f"{BRAKE}\n    mass: 0 lb"),
        (BRAKE, f"{BRAKE}\n    disc: {{mass: 0 lb}}"),
        (BRAKE, f"{BRAKE}\n    disc: {{radius: 0}}"),
        (BRAKE, f"{BRAKE}\n    effective radius: 0"),
        (BRAKE, f"{BRAKE}\n    lining friction: 0"),
        (BRAKE, f"{BRAKE}\n    rated pressure: 0"),
        (BRAKE, f"{BRAKE}\n    leaflet: {{torque: 0 lbf in}}"),
        (BRAKE, f"{BRAKE}\n    heat trial: {{stops: 0}}"),
        (BRAKE, f"{BRAKE}\n    gives: {{travel: 0.01, under: 0}}"),
        (HEADER, f"{HEADER[:-1]}, landing weight: 0 lb}}"),
        ("states:\n", "foot: {normal: 0}\nstates:\n"),
    ],
)
def test_nothing_in_a_part_is_a_mistake(old, new):
    (problem,) = spoiled((old, new)).problems
    assert NOTHING in problem.message


@pytest.mark.parametrize("words", ["stops in a row: 2.5", "stops in a row: 2 to 3.5"])
def test_what_is_counted_has_no_half(words):
    assert "is counted: 1, 2, ..." in only(GROUND % words).message


@pytest.mark.parametrize("words", ["stops in a row: 3", "stops in a row: 2 to 3", "static thrust: 0 lbf"])
def test_whole_numbers_and_a_thrust_of_nothing_can_be(words):
    assert read_text(GROUND % words).problems == ()


def test_what_is_no_figure_is_unknown_afterwards():
    """Nothing is worked out with it, so that no crash and no absurd answer comes of it."""
    reading = read_text(GROUND % "tyre radius: 0, cg height: 30")
    ground = reading.aircraft.on_the_ground if reading.aircraft else None
    assert ground is None or not ground.tyre_radius.known


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("usual tyre friction: 4", "so great a share of the weight on a tyre"),
        ("peak tyre friction: 7", "so great a share of the weight on a tyre"),
    ],
)
def test_no_tyre_holds_several_times_its_weight(words, says):
    assert says in only(GROUND % words).message


def test_a_lining_friction_in_hundredths_is_no_friction():
    (problem,) = spoiled((BRAKE, f"{BRAKE}\n    lining friction: 35")).problems
    assert "so great a share of what presses a lining" in problem.message
    assert "0.35" in problem.suggestion


@pytest.mark.parametrize(("angle", "mistake"), [("300", True), ("-60", True), ("12", False), ("-8", False)])
def test_no_aircraft_stands_on_its_tail_or_head(angle, mistake):
    found = read_text(f"{SOUND}attitudes:\n  parked: {{nose up: {angle}}}\n").problems
    assert bool(found) is mistake


def test_every_size_in_the_ground_section_is_more_than_nothing_but_forces_that_can_be():
    """So a key that is added later has to say which it is."""
    keys = keys_at(Aircraft)["on the ground"].inner
    can_be_nothing = {key for key, each in keys_at(keys).items() if not each.reads.positive}
    assert can_be_nothing == {"static thrust", "thrust line nose up", "taxi drag", "hot day"}
