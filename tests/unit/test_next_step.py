"""Where the builder stands at each step: never against the verdict, and always with a way to do it."""

from __future__ import annotations

from dataclasses import replace
from itertools import product

import pytest
from evaluated import example

from firmpedal.decide.lacking import lacking
from firmpedal.finding import Finding, Level, NotShown, Verdict
from firmpedal.pipeline import evaluate_text
from firmpedal.project.layouts import chosen, layout_text
from firmpedal.quantity import Missing, When
from firmpedal.report.cover import verdict_line
from firmpedal.report.measuring import form_sheets
from firmpedal.report.next_step import NOTHING, STEPS, To, first_step, next_step, to_mend
from firmpedal.report.standing import standing
from firmpedal.report.to_measure import to_measure

BEFORE = ("buy", "make", "fit", "prove")
WARNING = Finding("a-rule", Level.WARNING, "lines.left_leg", "it leaks", ("mend it",))
CAUTION = replace(WARNING, level=Level.CAUTION)
ACCEPTED = replace(WARNING, accepted="seen by the inspector")
NOW = NotShown("a-rule", "lines.left_leg", "unclear", (Missing("lines.left_leg", "its length"),))
FITTED = NotShown("a-rule", "lines.left_leg", "unclear",
                  (Missing("lines.left_leg", "its bend as it hangs", when=When.FITTED),))  # fmt: skip
IN_HAND = NotShown("a-rule", "lines.left_leg", "unclear",
                   (Missing("lines.left_leg", "the leg of its elbow", when=When.IN_HAND),))  # fmt: skip
TRIED = NotShown("a-rule", "lines.left_leg", "unclear",
                 (Missing("lines.left_leg", "how warm it gets", when=When.TRIED),))  # fmt: skip
EMPTY = "firmpedal: 1\naircraft: {name: Nothing yet, gear: nosewheel, brakes: toe}\n"


def having(*findings, unclear=(), leaves_open=False):
    """The example with these findings alone; what its file itself leaves unknown only where wanted."""
    reading = example("rigid").reading
    reading = reading if leaves_open else replace(reading, tree=None)
    return replace(example("rigid"), reading=reading, findings=findings, not_shown=unclear)


def first(evaluation, step):
    """The first way on from a step."""
    return next_step(evaluation, step).ways[0][1]


def test_counts_are_those_of_the_verdict():
    for evaluation in (
        example(),
        example("rigid"),
        having(WARNING, ACCEPTED, CAUTION, unclear=(NOW, FITTED)),
    ):
        found = standing(evaluation)
        assert found.things == len(to_measure(evaluation)) == len(lacking(evaluation))
        shown = replace(evaluation, findings=())
        if shown.verdict is Verdict.NOT_SHOWN:
            assert verdict_line(shown).startswith(f"NOT SHOWN: {found.things} thing")
        if evaluation.reading.tree is not None:
            assert form_sheets(evaluation)[0].blocks[0].text.startswith(f"{found.things} thing")
        assert found.warnings + found.accepted == sum(
            each.level is Level.WARNING for each in evaluation.findings
        )
        assert found.lines == len(evaluation.aircraft.lines)
    # counted by hand in the file: the bends of two hoses and of their mirror images wait until they hang
    assert standing(example("rigid")).fitted == 2
    # label and air of a heat trial, written once for both calipers
    assert standing(example("rigid")).tried == 2


ALL = [
    (dict(enumerate(findings)), unclear)
    for findings in ((), (WARNING,), (ACCEPTED,), (CAUTION,), (WARNING, ACCEPTED))
    for unclear in ((), (NOW,), (IN_HAND,), (FITTED,), (TRIED,), (NOW, IN_HAND, FITTED, TRIED))
]


@pytest.mark.parametrize(("step", "case"), list(product(STEPS, range(len(ALL)))))
def test_it_never_speaks_against_the_verdict_and_always_has_a_way_on(step, case):
    findings, unclear = ALL[case]
    evaluation = having(*findings.values(), unclear=unclear)
    found = next_step(evaluation, step)
    assert found.ways
    assert found.words.endswith(".")
    if evaluation.verdict is not Verdict.SOUND:
        assert "Sound" not in found.words
    said = [word for word in ("NOT SOUND", "NOT SHOWN") if word in found.words]
    assert said in ([], [evaluation.verdict.value.upper()])
    if evaluation.verdict is Verdict.NOT_SOUND and "Not sound" not in found.words and step == "sound":
        assert "to settle" in found.words or "accepted" in found.words


@pytest.mark.parametrize("step", BEFORE)
def test_nothing_is_begun_while_something_can_be_settled_or_measured_first(step):
    assert first(having(WARNING, unclear=(NOW,)), step) is To.FOUND
    assert first(having(unclear=(NOW, FITTED)), step) is To.MEASURE
    assert next_step(having(WARNING, WARNING), step).words.endswith(": 2 WARNINGS to settle first.")
    assert next_step(having(unclear=(NOW,)), step).words.endswith(": 1 thing to measure comes first.")
    assert next_step(having(unclear=(NOW, FITTED)), step).words.endswith(
        "1 of the 2 things to measure comes first."
    )


def test_what_can_be_measured_only_later_holds_nobody_up_before():
    found = next_step(having(unclear=(FITTED, IN_HAND)), "sound")
    assert found.ways[0][1] is To.BUY
    assert found.words.endswith("to measure later: 1 with the parts in hand, 1 when the lines are fitted.")
    assert next_step(having(unclear=(IN_HAND,)), "buy").words.startswith("Order these.")
    for step in ("make", "fit", "prove"):
        assert first(having(unclear=(IN_HAND, FITTED)), step) is To.MEASURE
    assert first(having(unclear=(FITTED,)), "make") is To.FIT
    assert "1 thing to measure as they hang" in next_step(having(unclear=(FITTED,)), "fit").words


def test_what_two_rules_wait_for_is_one_thing_and_waits_for_the_later():
    sooner = NotShown("another-rule", "lines.left_leg", "unclear",
                      (Missing("lines.left_leg", "the leg of its elbow"),))  # fmt: skip
    for both in ((IN_HAND, sooner), (sooner, IN_HAND)):
        found = standing(having(unclear=both))
        assert (found.now, found.in_hand, found.things) == (0, 1, 1)


def test_who_comes_back_goes_on_where_something_is_missing_or_wrong():
    assert first_step(example()) == "sound"
    assert first_step(example("rigid")) == "describe"  # two figures are unknown in the file
    assert first_step(evaluate_text(EMPTY)) == "describe"


def test_a_sound_aircraft_leads_from_step_to_step():
    way = [first(having(), step) for step in ("sound", *BEFORE, "keep")]
    assert way == [To.BUY, To.MAKE, To.FIT, To.PROVE, To.KEEP, To.PACKET]
    assert next_step(having(), "sound").words == "Sound: order the parts."


def test_what_no_rule_waits_for_is_said_and_holds_nobody_up():
    found = having(leaves_open=True)
    things = standing(found).things
    assert standing(found).asked == 0 < things
    said = next_step(found, "sound")
    assert said.words == f"Sound: order the parts. {things} things to measure, for which no rule waits."
    assert said.ways[0][1] is To.BUY
    assert (
        "later: 1 in the first trials."
        in next_step(having(unclear=(TRIED,), leaves_open=True), "sound").words
    )


def test_cautions_are_looked_at_before_the_order():
    found = next_step(having(CAUTION, CAUTION), "sound")
    assert "2 CAUTIONS to settle" in found.words
    assert [to for _, to in found.ways] == [To.FOUND, To.BUY]
    for more in ((), (IN_HAND,)):
        order = next_step(having(CAUTION, unclear=more), "buy")
        assert order.words == "1 CAUTION to settle, or to accept with a reason, before you order."
        assert order.ways[0][1] is To.FOUND


def test_an_accepted_warning_is_shown_to_whoever_inspects():
    assert "1 WARNING that you accepted" in next_step(having(ACCEPTED), "sound").words
    assert "your reasons" in next_step(having(ACCEPTED), "keep").words
    assert next_step(having(ACCEPTED, unclear=(NOW,)), "sound").words.startswith("You accepted")


def test_a_new_file_begins_with_the_form():
    text = layout_text(
        chosen(gear="tailwheel", leg="leaf", brakes="toe", seats="1", valve="no", length="in"), "a.yaml"
    )
    evaluation = evaluate_text(text, "a.yaml")
    found = next_step(evaluation, "describe")
    assert found.ways[0][1] is To.FORM
    assert found.words.startswith(f"{standing(evaluation).things} things to measure. Print the form")
    assert first(evaluation, "buy") is To.MEASURE


def test_a_file_in_which_nothing_is_unknown_leads_on():
    text = example("rigid").reading.text.replace("unknown", "3")
    for evaluation, to in (
        (having(WARNING), To.FOUND),
        (having(unclear=(NOW,)), To.MEASURE),
        (having(), To.BUY),
    ):
        known = replace(evaluation, reading=replace(evaluation.reading, tree=None, text=text))
        found = next_step(known, "describe")
        assert found.ways[0][1] is to


@pytest.mark.parametrize("step", list(STEPS))
def test_where_no_line_is_described_every_step_says_so(step):
    assert next_step(evaluate_text(EMPTY), step) is NOTHING


def test_a_file_that_cannot_be_read_leads_to_its_text():
    assert to_mend(1).words.startswith("1 thing to put right")
    assert to_mend(3).words.startswith("3 things to put right")
    assert to_mend(3).ways[0][1] is To.TEXT


def test_what_can_be_measured_only_later_stands_last_and_says_when():
    rows = to_measure(example("rigid"))
    later = [row for row in rows if row.later]
    assert rows[-len(later) :] == tuple(later)
    # The bends of its two hoses and their images wait until they hang; label and air of a trial, written
    # once for both calipers, until it has braked.
    assert [row.rules for row in later] == [("hose-bend-radius",)] * 2 + [("fluid-too-hot",)] * 2
    assert all("when the line is fitted" in row.later for row in later[:2])
    assert all("in the first trials" in row.later for row in later[2:])
