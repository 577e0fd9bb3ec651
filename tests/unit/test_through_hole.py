"""Finished tubes through holes: which end goes first, what is left for later, and what the card says."""

from pathlib import Path

import pytest

from firmpedal.lay.through_hole import best_end, holes_of
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Answer
from firmpedal.report.tube_work import order_of_work

RULES = Path(__file__).parents[1] / "rules/tube-does-not-go-through"
STRAIGHT = (RULES / "passing.yaml").read_text(encoding="utf-8")
BENT = (RULES / "passing-bends.yaml").read_text(encoding="utf-8")


def evaluated(text, hole):
    return evaluate_text(text.replace("hole: 3/4", hole))


def work(evaluation):
    (line,) = evaluation.laid
    return order_of_work(evaluation, line, line.tube)


def first_end(evaluation):
    return best_end(holes_of(evaluation.aircraft, evaluation.assembly, evaluation.laid[0]))


def place_of(steps, words):
    (number,) = [n for n, step in enumerate(steps) if words in step]
    return number


def test_a_wide_hole_takes_the_finished_tube_and_the_last_flare_is_made_as_usual():
    evaluation = evaluated(STRAIGHT, "hole: 3/4")
    steps = work(evaluation)
    assert first_end(evaluation).nut_goes is Answer.YES
    assert place_of(steps, "it goes through finished, end A first") < place_of(steps, "End B: nut")


def test_a_nut_that_does_not_pass_goes_on_when_the_bare_end_is_through():
    steps = work(evaluated(STRAIGHT, "hole: 3/8"))
    order = ["End B: nut", "Push end A, bare, through floor", "Trim end A", "End A: nut"]
    places = [place_of(steps, words) for words in order]
    assert places == sorted(places)
    assert "in place" in steps[places[-1]]


def test_a_bend_that_does_not_pass_waits_until_the_tube_is_through():
    steps = work(evaluated(BENT, "hole: 0.3"))
    order = ["Bend in order: ①. Leave ②", "Push end B, bare, through floor. Only then make ②", "End B: nut"]
    places = [place_of(steps, words) for words in order]
    assert places == sorted(places)


def test_an_unknown_hole_says_to_try_a_wire():
    assert place_of(work(evaluated(BENT, "hole: unknown")), "Try a wire bent like it first")


@pytest.mark.parametrize(("tried", "answer"), [("yes", Answer.YES), ("no", Answer.NO)])
def test_what_somebody_has_tried_counts_for_more(tried, answer):
    assert first_end(evaluated(BENT, f"hole: 0.3, tried: {tried}")).bends_go is answer


def test_two_holes_at_once_are_not_told_from_each_alone():
    second = "  shelf: {where: {up: -3}, thickness: 0.04, passes: {run: {grommet: yes, hole: 3/4}}}\nlines:\n"
    evaluation = evaluate_text(BENT.replace("lines:\n", second))
    found = [each for each in evaluation.not_shown if each.rule == "tube-does-not-go-through"]
    assert first_end(evaluation).bends_go is Answer.UNKNOWN
    assert {item.place for each in found for item in each.missing} == {
        "panels.floor.passes.run.tried",
        "panels.shelf.passes.run.tried",
    }


def test_a_panel_in_the_way_of_what_is_bent_back_is_seen():
    """A hook under the floor: its last leg points up, so it cannot be pushed through from above first."""
    points = "      - [14, 0, 4]\n      - [14, 0, -6]\n"
    hook = "      - [14, 0, 4]\n      - [14, 0, -3]\n      - [17, 0, -3]\n"
    text = BENT.replace(points, hook).replace("seat: [19, 0, -6]", "seat: [17, 0, -1]")
    evaluation = evaluated(text, "hole: 0.4")
    (hole,) = holes_of(evaluation.aircraft, evaluation.assembly, evaluation.laid[0])
    assert {way.end: way.clear for way in hole.ways} == {"from": Answer.YES, "to": Answer.NO}
