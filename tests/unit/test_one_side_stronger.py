"""Brakes of which one side holds more, or that lock before the usual foot: against figures by hand."""

import re

import pytest
from evaluated import words
from test_stopping import AIRCRAFT, in_unit
from test_stopping_sides import WRITTEN_OUT

from firmpedal.finding import Level
from firmpedal.pipeline import evaluate_text
from firmpedal.report.network import network_sheet
from firmpedal.report.stopping import stopping_sheet
from firmpedal.report.stopping_answer import DOUBT
from firmpedal.units import to_unit

PULLS, LOCKS, LOW = "brakes-pull-to-one-side", "wheels-lock-early", "pressure-below-usual"
STANCE = "landing speed: 39 kt, wheelbase: 60, mains to cg: 12, cg height: 30"


def of_rule(text, rule):
    evaluation = evaluate_text(text)
    found = [each for each in evaluation.findings if each.rule == rule]
    return found, [each for each in evaluation.not_shown if each.rule == rule]


def changed(text, *edits):
    for old, new in edits:
        assert old in text, old
        text = text.replace(old, new, 1)
    return text


def right_bore(bore):
    return changed(WRITTEN_OUT, ("bore: 3/4", f"bore: {bore}"))


@pytest.mark.parametrize(
    ("bore", "more"),
    [
        ("0.7", "25"),  # 0.7 squared over 5/8 squared: 1.2544, and 0.797 of the stronger side
        ("3/4", "44"),  # 1.44, and 0.694
        ("0.5", "56"),  # the right is the stronger one: 1.5625, and 0.64
    ],
)
def test_a_side_that_holds_much_less_is_a_caution_with_the_way_it_swings(bore, more):
    (found,), _ = of_rule(right_bore(bore), PULLS)
    stronger, weaker = ("right", "left") if bore == "0.5" else ("left", "right")
    assert found.level is Level.CAUTION
    assert f"the {stronger} brakes hold {more} % more than the {weaker}" in found.message
    assert found.message.endswith(f"it swings to the {stronger}")


def test_a_little_less_is_no_finding_and_a_range_across_the_limit_is_no_verdict():
    """0.69 in are 0.820 of the other side, 0.70 in 0.797: between them nobody can say."""
    assert of_rule(right_bore("0.69"), PULLS) == ([], [])
    found, (unclear,) = of_rule(right_bore("0.69 to 0.70"), PULLS)
    assert not found
    assert any("right_cylinder bore" in missing.what for missing in unclear.missing)


def test_sides_whose_ranges_overlap_may_be_alike():
    """5/8 to 3/4 against 5/8: from 0.694 to 1, whichever it is."""
    apart = evaluate_text(right_bore("5/8 to 3/4")).results.stopping.apart
    assert apart.share.span == pytest.approx(((5 / 6) ** 2, 1.0))
    assert apart.stronger is None


def test_what_stands_alike_on_both_sides_does_not_tell_them_apart():
    """No lining is given: 0.3 to 0.4 on both sides is one lining, and the bores alone decide."""
    text = right_bore("3/4").replace("    lining friction: 0.3\n", "")
    assert evaluate_text(text).results.stopping.apart.share.span == pytest.approx(((5 / 6) ** 2,) * 2)
    assert evaluate_text(AIRCRAFT).results.stopping.apart is None


def test_linings_that_differ_count_too():
    """0.3 against 0.45 and the same bore: two thirds."""
    text = re.sub(r"(right_caliper:(?:.*\n)*?.*lining friction: )0.3", r"\g<1>0.45", right_bore("5/8"))
    apart = evaluate_text(text).results.stopping.apart
    assert apart.share.middle == pytest.approx(2 / 3)
    assert apart.stronger == "right"


def test_each_wheel_locks_at_its_own_foot():
    """Nosewheel: 0.7 and 0.8 of grip slow by 0.41481 and 0.45714 g: 273.8 to 301.7 lbf of drag at one wheel.

    153.398 lbf make 187.59 lbf on the left: 223.8 to 246.7 lbf lock it; the right takes 1.44 times as much.
    """
    text = changed(right_bore("3/4"), ("landing speed: 39 kt", STANCE))
    stop = evaluate_text(text).results.stopping
    feet = {each.side: [to_unit(end, "lbf") for end in each.needed.foot.span] for each in stop.locks}
    by_hand = [660 * slows / 187.59 * 153.398 for slows in (0.7 * 48 / 81, 0.8 * 48 / 84)]
    assert feet["left"] == pytest.approx(by_hand, rel=1e-4)
    assert feet["right"] == pytest.approx([1.44 * foot for foot in by_hand], rel=1e-4)
    assert stop.lock.foot.span == stop.locks[0].needed.foot.span
    assert stop.first_wheel == "the left wheel"
    said = str(stopping_sheet(evaluate_text(text)))
    assert "locking the left wheel" in said
    assert "locking the right wheel" in said


def test_wheels_that_are_alike_lock_together():
    stop = evaluate_text(changed(AIRCRAFT, ("landing speed: 39 kt", STANCE))).results.stopping
    assert stop.locks == ()
    assert stop.first_wheel == "the wheels"


def lead(text):
    return stopping_sheet(evaluate_text(text)).blocks[0].text


def feet(normal, hard, weight="1320 lb"):
    forces = ("normal: 153.398 lbf, hard: 200, panic: 250", f"normal: {normal}, hard: {hard}, panic: 900")
    ground = ("landing speed: 39 kt", STANCE)
    return changed(AIRCRAFT, forces, ground, ("landing weight: 1320 lb", f"landing weight: {weight}"))


@pytest.mark.parametrize(
    ("normal", "hard", "says"),
    [
        ("250", "300", "your normal foot, 250 lbf, is already above that."),
        ("230", "300", "your normal foot, 230 lbf, may already be above that."),
        ("150", "300", "your hard foot, 300 lbf, is above that."),
        ("150", "240", "your hard foot, 240 lbf, may be above that."),
    ],
)
def test_what_locks_before_the_foot_is_there_is_said_first(normal, hard, says):
    """The wheels lock from 224 to 247 lbf, as above; how far a pedal goes is not known without a pad gap."""
    said = lead(feet(normal, hard))
    assert said.startswith("From 224 to 247 lbf on each pedal the wheels lock, if the pedal goes so far; ")
    assert said.endswith(says)


def test_a_foot_that_locks_nothing_is_said_as_what_it_does():
    assert lead(feet("100", "200")).startswith("The hard foot, 200 lbf on each pedal, slows it by")


def test_brakes_that_lock_are_not_told_to_be_stronger():
    """At 65 lbf the pressure is 212 psi, under the usual 400, and the wanted stop is made all the same.

    A quarter of the weight takes a quarter of the drag: the wheels lock from 56 to 62 lbf.
    """
    sharp = feet("65", "80", "330 lb")
    (found,), _ = of_rule(sharp, LOCKS)
    assert found.level is Level.CAUTION
    assert of_rule(sharp, LOW) == ([], [])
    tries = " ".join(words for each in evaluate_text(sharp).findings for words in each.tries)
    assert "smaller bore" not in tries
    heavy = feet("65", "80", "3000 lb")  # its hard foot makes no wanted stop
    lows, _ = of_rule(heavy, LOW)
    assert {each.level for each in lows} == {Level.CAUTION}


def test_without_a_word_on_braking_the_pressure_decides():
    bare = AIRCRAFT.replace("on the ground: {tyre radius: 6.5, landing speed: 39 kt}\n", "")
    bare = re.sub(r"    (effective radius|lining friction): .*\n", "", bare).replace("153.398 lbf", "65")
    assert of_rule(bare, LOW)[0]


def test_left_against_right_says_what_it_means_for_the_pilot():
    """347.2 psi against 500: 44 % more on the left, as in the finding."""
    said = words(network_sheet(evaluate_text(right_bore("3/4"))))
    assert "44 %" in said
    assert "At equal feet the left brakes hold 44 % more than the right: it swings to the left." in said


@pytest.mark.parametrize(
    ("edit", "says"),
    [
        (("effective radius: 2.3", "effective radius: 2.3\n    disc: {radius: 2}"), "its rim is nearer"),
        (("effective radius: 2.3", "effective radius: 7"), "outside the tyre"),
        (("effective radius: 2.3", "effective radius: 2.3\n    disc: {radius: 9}"), "out of the tyre"),
        (("lining friction: 0.3", "lining friction: 0.7"), "not that of a brake lining"),
        (("landing speed: 39 kt", "weight on nose or tail: 1500 lb"), "more than the landing weight"),
        (
            ("landing speed: 39 kt", "weight on nose or tail: 900 lb, weight on mains: 400 lb"),
            "more weight on the nose or tail wheel",
        ),
    ],
)
def test_figures_that_cannot_be_are_said_before_any_answer(edit, says):
    text = changed(AIRCRAFT, edit)
    found, _ = of_rule(text, "brake-figures-contradict")
    assert any(says in each.message for each in found)
    assert lead(text) == DOUBT


def test_sound_figures_raise_no_doubt():
    fine = changed(AIRCRAFT, ("effective radius: 2.3", "effective radius: 2.3\n    disc: {radius: 2.9}"))
    assert not evaluate_text(fine).results.stopping.contradictions
    assert in_unit(evaluate_text(fine).results.stopping.feet[0].drag, "lbf") == pytest.approx(375.2, abs=0.05)


def test_a_pressure_that_no_brake_has_sends_to_the_units_first():
    """A bore of 1/16 in instead of 5/8 makes a hundred times the pressure: 50,000 psi."""
    found, _ = of_rule(changed(AIRCRAFT, ("bore: 5/8", "bore: 1/16")), "tube-yields")
    assert found
    assert found[0].tries[0] == "look at the bore, the pedal's arms and their units"
    assert lead(changed(AIRCRAFT, ("bore: 5/8", "bore: 1/16"))) == DOUBT


def test_the_stronger_side_takes_more_of_the_energy():
    """Cylinders of 5/8 and 3/4 in: the left brake takes 1.44 / 2.44 of all, the right one the rest."""
    evaluation = evaluate_text(WRITTEN_OUT)
    stop = evaluation.results.stopping
    each = in_unit(stop.energy, "ft-lbf")
    left, right = (in_unit(energy, "ft-lbf") for energy in stop.energies)
    assert (left, right) == pytest.approx((2 * each * 1.44 / 2.44, 2 * each / 2.44))
    assert left + right == pytest.approx(2 * each)  # none is lost between them
    assert "as left_caliper gets it" in words(stopping_sheet(evaluation))
