"""Which tubes are made alike."""

from __future__ import annotations

from dataclasses import replace

from evaluated import example

from firmpedal.quantity import Value
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
