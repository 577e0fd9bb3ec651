"""Options begun, renamed and filled without the text: each says what it should and nothing else changes."""

from __future__ import annotations

import pytest

from firmpedal.model.aircraft import find
from firmpedal.pipeline import evaluate_text
from firmpedal.project import read_text
from firmpedal.project.edit import EditError
from firmpedal.project.edit_keys import with_value
from firmpedal.project.new_things import with_new
from firmpedal.project.options_edit import option_begun, option_renamed, written_out
from firmpedal.project.sorts import sort_of
from texts import example, small

WITH, WITHOUT = example("brindlewick"), small("quillfen")


def reading(text, option=None):
    return read_text(text, "a.yaml", option)


@pytest.mark.parametrize("text", [WITH, WITHOUT])
def test_an_option_is_begun_and_is_the_aircraft_as_written(text):
    after = option_begun(reading(text), "second thought")
    assert reading(after).options == (*reading(text).options, "second thought")
    assert evaluate_text(after, option="second thought").aircraft == evaluate_text(text).aircraft
    assert all(line in after.splitlines() for line in text[len(WITHOUT) :].splitlines())


def test_a_name_that_is_there_or_is_none_is_refused():
    for name in ("rigid", "", "a.b", "unknown"):
        with pytest.raises(EditError):
            option_begun(reading(WITH), name)
    with pytest.raises(EditError):
        option_renamed(reading(WITH), "rigid", "all hose")
    with pytest.raises(EditError):
        option_renamed(reading(WITH), "nothing", "something")


def test_an_option_is_renamed_and_says_the_same():
    after = option_renamed(reading(WITH), "rigid", "metal lines")
    assert reading(after).options == ("metal lines", *reading(WITH).options[1:])
    assert evaluate_text(after, option="metal lines").aircraft == evaluate_text(WITH, option="rigid").aircraft


def test_a_thing_is_written_out_for_one_option_and_changes_there_alone():
    begun = option_begun(reading(WITHOUT), "braided")
    apart = written_out(reading(begun, "braided"), "lines.run")
    assert evaluate_text(apart, option="braided").aircraft == evaluate_text(WITHOUT).aircraft
    changed = with_value(apart, "lines.run.made of", "hose -4 PTFE braided", "braided")
    kinds = {
        option: find(evaluate_text(changed, option=option).aircraft.lines, "run").made_of.phrase
        for option in (None, "braided")
    }
    assert kinds == {None: "tube 5052-O 1/4 x .035", "braided": "hose -4 PTFE braided"}
    more = written_out(reading(changed, "braided"), "components.cylinder")
    assert evaluate_text(more, option="braided").aircraft == evaluate_text(changed, option="braided").aircraft


def test_more_things_of_a_section_that_the_option_has_already():
    text = written_out(reading(WITH, "rigid"), "components.left_cylinder")
    assert evaluate_text(text, option="rigid").aircraft == evaluate_text(WITH, option="rigid").aircraft


def test_a_mirror_image_or_no_option_is_refused():
    with pytest.raises(EditError):
        written_out(reading(WITH), "lines.left_line")
    with pytest.raises(EditError):
        written_out(reading(WITH, "rigid"), "components.right_cylinder")


RETURNS = {"from": "wall.behind", "to": "wall.ahead", "made of": "hose -4 PTFE braided"}


def test_what_is_added_in_an_option_belongs_to_that_option_alone():
    text = option_begun(reading(WITHOUT), "braided")
    text = written_out(reading(text, "braided"), "lines.run")
    for word, name, answers in (
        ("bulkhead", "wall", {}),
        ("line", "back", RETURNS),
        ("named point", "p", {}),
    ):
        text = with_new(reading(text, "braided"), sort_of(word), name, answers)
    assert text.startswith(WITHOUT)
    assert read_text(text, "a.yaml").aircraft == read_text(WITHOUT, "a.yaml").aircraft
    found = read_text(text, "a.yaml", "braided").aircraft
    assert [line.name for line in found.lines] == ["run", "back"]
    assert [each.name for each in found.bulkheads] == ["wall"]
    assert all(len(line) <= 100 for line in text[len(WITHOUT) :].splitlines())


def test_an_option_in_braces_is_laid_out_in_lines_when_something_is_added():
    text = WITHOUT + "options: {old: {lines: {run: {made of: hose -4 PTFE braided}}}, other: {}}  # two\n"
    after = with_new(reading(text, "old"), sort_of("bulkhead"), "wall", {})
    assert evaluate_text(after, option="other").aircraft == evaluate_text(text, option="other").aircraft
    assert find(read_text(after, "a.yaml", "old").aircraft.lines, "run").made_of.phrase.startswith("hose")
    assert "options:  # two\n  old:\n    lines: {run:" in after
