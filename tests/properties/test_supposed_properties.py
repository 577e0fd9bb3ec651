"""A thread that is only supposed is taken for what it is supposed to be: only what is said changes."""

from __future__ import annotations

from dataclasses import fields

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from firmpedal.finding import Verdict
from firmpedal.pipeline import evaluate_text
from firmpedal.project import read_text
from firmpedal.project.edit_keys import with_value
from firmpedal.project.locate import walked
from firmpedal.project.measured import measured
from firmpedal.project.tree import word_of
from firmpedal.report.order import order_list
from firmpedal.report.to_measure import to_measure
from texts import example, small

TEXTS = {
    **{name: small(name) for name in ("quillfen", "sedgeholm", "tarnholt", "withyford")},
    "brindlewick": example("brindlewick"),
}
GUESSED = ("memory", "estimate", "assumed")


def threads(text):
    """The place and the words of each thread that is written by itself."""
    reading = read_text(text)
    nodes = {place: walked(reading.tree, place) for place in reading.spans if place.endswith(".thread")}
    return {place: word_of(node) for place, node in nodes.items() if node.via is None}


def chosen(evaluation):
    """What is fitted, laid, worked out and found, by name, whatever is said about it."""
    results = {each.name: getattr(evaluation.results, each.name) for each in fields(evaluation.results)}
    del results["presses"]  # has the cylinders as they are declared, with their ports
    rows = [
        (row.item.key, row.item.quantity, row.item.where, row.spares, row.order)
        for row in order_list(evaluation)
    ]
    whole = ("assembly", "violations", "laid", "crossings", "gaps", "findings")
    return {**results, **{name: getattr(evaluation, name) for name in whole}, "order": rows}


@pytest.mark.parametrize("name", TEXTS)
@settings(max_examples=8, deadline=None)
@given(st.data())
def test_supposed_threads_change_what_is_said_and_nothing_that_is_chosen(name, data):
    text, known = TEXTS[name], threads(TEXTS[name])
    places = data.draw(st.sets(st.sampled_from(sorted(known)), min_size=1))
    after = text
    for place in sorted(places):
        mark = data.draw(st.sampled_from(GUESSED))
        after = with_value(after, place, f"{{value: {known[place]}, mark: {mark}}}", None)
    before, supposed = evaluate_text(text), evaluate_text(after)
    kept, taken = chosen(before), chosen(supposed)
    assert [name for name in kept if kept[name] != taken[name]] == []
    new = [each for each in supposed.not_shown if each not in before.not_shown]
    assert {each.rule for each in new} <= {"joint-does-not-close"}
    assert [each for each in supposed.not_shown if each not in new] == list(before.not_shown)
    rows = {one.at for one in to_measure(supposed)} - {one.at for one in to_measure(before)}
    assert rows == places
    if before.verdict is Verdict.SOUND:
        assert supposed.verdict is (Verdict.NOT_SHOWN if new else Verdict.SOUND)
    else:
        assert supposed.verdict is before.verdict
    for place in sorted(places):
        after, _ = measured(after, place, known[place])
    assert after == text
