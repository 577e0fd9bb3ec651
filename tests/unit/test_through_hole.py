"""Finished tubes through holes: which end goes first, what is left for later, and what the card says."""

from pathlib import Path

import pytest

from firmpedal.lay.centreline import centreline
from firmpedal.lay.threading import Opening, goes_through
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


def moved(corners, last, hole):
    """The bent tube with other corners and another end."""
    text = BENT.replace(
        "      - [14, 0, 4]\n      - [14, 0, -6]\n", "".join(f"      - {one}\n" for one in corners)
    )
    return evaluated(text.replace("seat: [19, 0, -6]", f"seat: {last}"), hole)


def test_a_bend_that_sits_in_the_hole_is_not_called_through_by_itself():
    """At rest this one needs 0.34 in, worked out apart; its bend in passing needs 0.27."""
    evaluation = moved([[16, 0, -0.02]], [12, 0, -4], "hole: 0.28")
    (hole,) = holes_of(evaluation.aircraft, evaluation.assembly, evaluation.laid[0])
    assert hole.needs.high > 0.34 * 0.0254
    assert all(way.bends_go is not Answer.YES for way in hole.ways)
    assert {way.apart for way in hole.ways} == {Answer.UNKNOWN}


def test_bends_nearer_to_each_other_than_the_panel_is_thick_are_not_told_one_by_one():
    evaluation = moved([[14, 0, 4], [14, 0, -3], [14.5, 0, -4.2]], [19, 0, -6], "hole: 0.5")
    (hole,) = holes_of(evaluation.aircraft, evaluation.assembly, evaluation.laid[0])
    assert {way.end: way.apart for way in hole.ways} == {"from": Answer.YES, "to": Answer.UNKNOWN}


def test_what_is_not_known_of_the_bends_comes_before_the_nut():
    steps = work(evaluated(BENT, "hole: 0.35 to 0.4"))
    assert place_of(steps, "Try a wire bent like it first")
    assert not [step for step in steps if "Push end" in step]


def test_a_panel_that_is_passed_twice_is_asked_about():
    evaluation = moved([[14, 0, 4], [14, 0, -4], [18, 0, -4]], [18, 0, 2], "hole: 3/4")
    assert "tube-does-not-go-through" in {each.rule for each in evaluation.not_shown}


def test_a_lean_that_only_the_widest_reading_of_a_hole_allows_is_not_sure():
    """A sharp V: as its bend goes through, its legs want the hole to lean far."""
    inch = 0.0254
    line = centreline(((0, 0, 0), (0, 0, 4.5 * inch), (0, 4.5 * inch, 0)), 0.75 * inch)
    wide, narrow = Opening(1.5 * inch, 0.03 * inch, 100.0), Opening(0.4 * inch, 0.3 * inch, 100.0)
    station, tube = line.developed_length / 2, 0.25 * inch
    assert goes_through(line, "from", station, (wide, tube), (narrow, tube)) is Answer.UNKNOWN
    assert goes_through(line, "from", station, (narrow, tube), (narrow, tube)) is Answer.NO
    assert goes_through(line, "from", station, (wide, tube), (wide, tube)) is Answer.YES
