"""Figures out of the usual get a word where they stand, and what light aircraft have gets none."""

from __future__ import annotations

import pytest

from firmpedal.checks.plausible import BRAKE_DISC, OF_A_THING, RULE, USUAL
from firmpedal.pipeline import evaluate_text
from firmpedal.units import from_unit
from firmpedal.web.answers import odd_in
from texts import edited, example, small


def odd(text, option=None):
    return {f.place for f in evaluate_text(text, option=option).findings if f.rule == RULE}


@pytest.mark.parametrize("name", ["brindlewick", "fennimoss", "oatmere"])
def test_aircraft_as_they_are_get_no_word(name):
    assert odd(example(name)) == set()


@pytest.mark.parametrize(
    ("old", "new", "place"),
    [
        ("    bore: 5/8\n", "    bore: 58\n", "components.cylinder.bore"),
        ("    pad wear: 0.10\n", "    pad wear: 10\n", "components.caliper.pad wear"),
        ("brake: {pad: 5,", "brake: {pad: 50,", "pedals.brake.brake.pad"),
        ("    bend radius: 3/4\n", "    bend radius: 34\n", "lines.run.bend radius"),
        ("landing weight: 900 lb", "landing weight: 90 lb", "aircraft.landing weight"),
        ("      - [10, 0, -6]", "      - [1000, 0, -6]", "lines.run.via.1.1"),
    ],
)
def test_a_slip_of_the_pen_gets_one_word_at_its_place(old, new, place):
    assert odd(edited(small("quillfen"), (old, new))) == {place}


def test_it_is_told_in_the_same_words_before_anything_is_worked_out():
    text = edited(small("quillfen"), ("    bore: 5/8\n", "    bore: 500\n"))
    found = {f.place: f.message for f in evaluate_text(text).findings if f.rule == RULE}
    place = "components.cylinder.bore"
    assert odd_in(text, "mine.yaml", None, None, place) == found
    assert odd_in(text, "mine.yaml", None, None, "") == found
    assert odd_in(text, "mine.yaml", None, None, "components.caliper") == {}
    accepted = f"{text}accepted:\n  - {{rule: {RULE}, at: cylinder, reason: it is a ship}}\n"
    assert odd_in(accepted, "mine.yaml", None, None, "") == {}  # it was looked at
    assert odd_in("no aircraft at all", "mine.yaml", None, None, "") == {}


def test_what_may_still_be_usual_gets_no_word():
    assert odd(edited(small("quillfen"), ("    bore: 5/8\n", "    bore: 1 to 58\n"))) == set()


def test_each_range_is_one_and_its_unit_is_known():
    for least, most, unit in (*USUAL.values(), *OF_A_THING.values(), *BRAKE_DISC.values()):
        assert from_unit(least, unit) < from_unit(most, unit)
