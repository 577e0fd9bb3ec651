"""Which tubes are made alike."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from evaluated import example

from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Value
from firmpedal.report.tube_work import finish_of
from firmpedal.report.twins import twin_words


def rigid_with(**changed):
    evaluation = example("rigid")
    laid = tuple(changed.get(line.name, line) for line in evaluation.laid)
    return replace(evaluation, laid=laid)


def leg(side: str):
    return next(line for line in example("rigid").laid if line.name == f"{side}_leg")


def test_the_mirrored_leg_is_called_a_mirror_image():
    assert twin_words(example("rigid"), leg("left")).startswith("Mirror image of right_leg")
    assert twin_words(example("rigid"), leg("right")).startswith("Mirror image of left_leg")


def test_the_same_tube_again_is_not_called_a_mirror_image():
    again = replace(leg("left"), name="right_leg")
    assert (
        twin_words(rigid_with(right_leg=again), leg("left"))
        == "The same tube as right_leg: make one more of it."
    )


def test_one_longer_straight_makes_no_twin():
    other = leg("right")
    first = other.tube.straights[0]
    longer = replace(first, span=(first.low + 0.001, first.high + 0.001))
    tube = replace(other.tube, straights=(longer, *other.tube.straights[1:]))
    assert twin_words(rigid_with(right_leg=replace(other, tube=tube)), leg("left")) == ""


def test_an_unknown_tube_has_no_twin():
    other = leg("right")
    gaps = tuple(Value(each.label, each.dimension, None) for each in other.tube.straights)
    tube = replace(other.tube, straights=gaps)
    assert twin_words(rigid_with(right_leg=replace(other, tube=tube)), leg("left")) == ""


def test_a_hose_has_no_twin():
    hose = next(line for line in example("rigid").laid if line.name == "left_tail")
    assert twin_words(example("rigid"), hose) == ""


# left_run and right_run are one tube twice, through a floor: a -4 nut is about 0.65 in across its corners,
# and so it goes through a hole of 3/4 in and not through one of 3/8 in
RUNS = Path(__file__).parents[1] / "rules" / "tube-does-not-go-through" / "failing.yaml"


def two_runs(hole: str):
    """The tube of that file, and the same tube once more beside it through another hole."""
    text = RUNS.read_text(encoding="utf-8")
    head, _, run = text.partition("\nlines:\n")
    again = run.replace("run:", "again:").replace("cylinder.outlet", "second.outlet")
    again = again.replace("caliper.inlet", "other.inlet").replace("[10, 0, -6]", "[10, 9, -6]")
    head = head.replace("passes:\n", f"passes:\n      again: {{grommet: yes, hole: {hole}}}\n")
    parts = head.partition("components:\n")[2].partition("pedals:")[0]
    parts = (
        parts.replace("cylinder:", "second:")
        .replace("caliper:", "other:")
        .replace("[10, 0, 4]", "[10, 9, 4]")
    )
    parts = parts.replace("[16, 0, -6]", "[16, 9, -6]")
    head = head.replace("pedals:", f"{parts}pedals:")
    return evaluate_text(f"{head}\nlines:\n{run}{again}")


def test_a_tube_that_is_flared_in_its_place_is_not_one_more_of_one_that_is_not():
    evaluation = two_runs("3/4")
    run, again = evaluation.laid
    assert (finish_of(evaluation, run).bare, finish_of(evaluation, again).bare) == (True, False)
    assert "make one more" not in twin_words(evaluation, run)
    assert twin_words(evaluation, run).startswith("Cut and bent as again, but not finished like it")
    assert twin_words(evaluation, again).startswith("Cut and bent as run, but not finished like it")


def test_two_tubes_through_holes_alike_are_one_tube_twice():
    evaluation = two_runs("3/8")
    assert twin_words(evaluation, evaluation.laid[0]) == "The same tube as again: make one more of it."
