"""Findings accepted in a builder's file: entries come and go, and the rest of the text stays as it is."""

from __future__ import annotations

import pytest

from firmpedal.finding import Level, Verdict
from firmpedal.pipeline import evaluate_text
from firmpedal.project.acceptances import Entry, accepting, holds_everywhere, not_accepting
from firmpedal.project.edit import EditError
from texts import edited, example

TEXT = example("brindlewick")
EDGES, STROKE = "covered-edge-chafes", "stroke-short"
LEFT, RIGHT = "components.left_cylinder", "components.right_cylinder"
ODD = 'it\'s {bound}: "leather", [twice] # and é looked at, 100 % \\ yearly'
OPTION = "    mirror: [left_floor, left_axle, left_pedal, left_leg, left_tail]\n"
BY_HAND = """
accepted:   # talked over with an inspector
  - rule: covered-edge-chafes
    at: left_line          # both fairings
    reason: bound with leather
  # not yet: only-tie-wraps
  - {rule: stroke-short, at: left_cylinder, reason: new cylinders are on the way}   # in May
"""


def accepted(text, option=None):
    findings = evaluate_text(text, option=option).findings
    return {(each.rule, each.place): each.accepted for each in findings if each.accepted is not None}


def test_an_entry_with_the_whole_place_is_put_at_the_end_of_the_file():
    text = accepting(TEXT, STROKE, (LEFT,), "new cylinders are on the way")
    row = f"  - {{rule: {STROKE}, at: {LEFT}, reason: new cylinders are on the way}}\n"
    assert text == f"{TEXT}accepted:\n{row}"
    assert accepted(text) == {(STROKE, LEFT): "new cylinders are on the way"}


def test_a_warning_stays_a_warning_and_the_verdict_stays():
    evaluation = evaluate_text(accepting(TEXT, STROKE, (LEFT, RIGHT), "it is known"))
    both = [each for each in evaluation.findings if each.rule == STROKE]
    assert [(each.level, each.accepted) for each in both] == [(Level.WARNING, "it is known")] * 2
    assert evaluation.verdict is Verdict.NOT_SOUND


@pytest.mark.parametrize("reason", [ODD, "yes", "1 1/2", "- so", "unknown", "null", "two\nlines", " é "])
def test_whatever_is_written_as_reason_is_read_back_the_same(reason):
    text = accepting(TEXT, STROKE, (LEFT,), reason)
    assert accepted(text) == {(STROKE, LEFT): " ".join(reason.split())}


@pytest.mark.parametrize("reason", ["", " \n", "removed"])
def test_without_a_reason_nothing_is_accepted(reason):
    with pytest.raises(EditError, match="reason"):
        accepting(TEXT, STROKE, (LEFT,), reason)


def test_an_entry_joins_those_that_are_there_and_leaves_their_remarks():
    text = accepting(TEXT + BY_HAND, STROKE, (RIGHT,), "so are these")
    assert text == f"{TEXT}{BY_HAND}  - {{rule: {STROKE}, at: {RIGHT}, reason: so are these}}\n"
    assert accepted(text)[STROKE, RIGHT] == "so are these"


def test_an_option_gets_a_list_of_its_own_and_takes_along_what_is_accepted_already():
    text = accepting(TEXT + BY_HAND, EDGES, ("lines.left_leg",), "padded", "all hose")
    before, own = evaluate_text(TEXT + BY_HAND, option="all hose"), evaluate_text(text, option="all hose")
    assert {(each.rule, each.at) for each in own.aircraft.accepted} == {
        *((each.rule, each.at) for each in before.aircraft.accepted),
        (EDGES, "lines.left_leg"),
    }
    for option in (None, "rigid"):
        assert accepted(text, option) == accepted(TEXT + BY_HAND, option)


def test_an_option_with_a_list_of_its_own_is_added_to_there():
    once = accepting(TEXT, EDGES, ("lines.left_leg",), "padded", "rigid")
    twice = accepting(once, EDGES, ("lines.right_leg",), "so too", "rigid")
    row = "      - {{rule: covered-edge-chafes, at: lines.{}, reason: {}}}\n"
    rows = row.format("left_leg", "padded") + row.format("right_leg", "so too")
    assert twice == edited(TEXT, (OPTION, f"{OPTION}    accepted:\n{rows}"))
    assert accepted(twice) == accepted(twice, "all hose") == {}


def test_taking_back_leaves_the_others_with_their_remarks():
    entry = Entry(STROKE, "left_cylinder", "new cylinders are on the way")
    text = not_accepting(TEXT + BY_HAND, (entry,))
    rest = BY_HAND.partition("  # not yet")[0]
    assert text.startswith(TEXT + rest)
    assert STROKE not in text.removeprefix(TEXT)
    assert set(accepted(text)) == {(EDGES, "lines.left_line")}


def test_what_is_taken_back_in_an_option_goes_from_the_list_that_holds_there():
    entry = Entry(EDGES, "left_line", "bound with leather")
    text = TEXT + BY_HAND
    assert holds_everywhere(text, "rigid")
    everywhere = evaluate_text(not_accepting(text, (entry,), "rigid"))
    assert EDGES not in {each.rule for each in everywhere.aircraft.accepted}
    own = accepting(text, EDGES, ("lines.left_leg",), "padded", "rigid")
    assert not holds_everywhere(own, "rigid")
    after = not_accepting(own, (entry,), "rigid")
    assert accepted(after) == accepted(text)
    assert accepted(after, "rigid") == {(EDGES, "lines.left_leg"): "padded"}


def test_the_last_entry_leaves_an_empty_list_that_can_be_filled_again():
    text = accepting(TEXT, STROKE, (LEFT,), "known")
    none = not_accepting(text, (Entry(STROKE, LEFT, "known"),))
    assert none == f"{TEXT}accepted: []\n"
    assert accepted(accepting(none, STROKE, (RIGHT,), "too")) == {(STROKE, RIGHT): "too"}


def test_what_is_not_on_the_list_cannot_be_taken_back():
    with pytest.raises(EditError, match="not on the list"):
        not_accepting(TEXT, (Entry(STROKE, LEFT, "known"),))


def test_a_list_by_an_anchor_is_left_alone():
    text = f"{TEXT}accepted: &all [{{rule: {STROKE}, at: {LEFT}, reason: known}}]\n"
    with pytest.raises(EditError, match="shared"):
        accepting(text, STROKE, (RIGHT,), "too")
