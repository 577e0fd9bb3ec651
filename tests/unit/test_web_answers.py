"""What pages show: either system of units, ways to the lines, and nothing a builder wrote as HTML."""

from __future__ import annotations

import re
import time
from concurrent.futures import ThreadPoolExecutor
from urllib.parse import unquote_plus

import pytest

from firmpedal.project.layouts import CHOICES
from firmpedal.report.findings import findings_sheet
from firmpedal.web import answers
from firmpedal.web.answers import System, answer
from firmpedal.web.pages import buy, fit, keep, make, prove
from firmpedal.web.pictures import PICTURES
from firmpedal.web.sheets import _to_lines, sheets_html
from texts import edited, example

TEXT = example("brindlewick")
PAGES = {each.__name__.rpartition(".")[2]: each.PAGE for each in (buy, fit, keep, make, prove)}


def test_the_units_are_the_files_own_unless_others_are_asked_for():
    own, same = answer(TEXT, "a.yaml", "rigid", None), answer(TEXT, "a.yaml", "rigid", System.INCH)
    other = answer(TEXT, "a.yaml", "rigid", System.METRIC)
    assert own.evaluation.display == same.evaluation.display != other.evaluation.display
    assert own.evaluation.verdict is other.evaluation.verdict
    assert [each.rule for each in own.evaluation.findings] == [
        each.rule for each in other.evaluation.findings
    ]
    length = own.evaluation.laid[1].tube.developed_length
    inches, millimetres = (
        float(each.evaluation.display.decimals.value(length).split()[0].replace(",", ""))
        for each in (own, other)
    )
    assert millimetres == pytest.approx(25.4 * inches, abs=25.4 * 0.005 + 0.05)  # an inch is 25.4 mm


def test_figures_in_messages_follow_too():
    words = [each.message for each in answer(TEXT, "a.yaml", "rigid", System.METRIC).evaluation.findings]
    assert any(" mm" in each for each in words)
    assert not any(re.search(r"\d in\b", each) for each in words)


@pytest.mark.parametrize("name", PAGES)
@pytest.mark.parametrize("option", [None, "rigid", "all hose"])
def test_every_step_has_something_to_say(name, option):
    assert "<h2>" in sheets_html(PAGES[name].sheets, TEXT, "a.yaml", option, None)


@pytest.mark.parametrize("name", PAGES)
def test_a_text_that_cannot_be_read_gives_no_sheet(name):
    assert sheets_html(PAGES[name].sheets, "firmpedal: [", "a.yaml", None, None) == ""


@pytest.mark.parametrize("file", ["a.yaml", "my-plane.yaml", "a_very_long-name_of_a_file.yaml", "a&b.yaml"])
def test_each_place_is_a_way_to_its_line(file):
    made = sheets_html(lambda each: (findings_sheet(each),), TEXT, file, "rigid", None)
    evaluation = answer(TEXT, file, "rigid", None).evaluation
    lines = {evaluation.span_of(each.place).line for each in evaluation.findings}
    linked = {
        int(each) for each in re.findall(r'describe/text\?option=rigid&amp;line=(\d+)">line \1</a>', made)
    }
    assert lines
    assert lines <= linked


def test_each_finding_leads_to_its_field():
    made = sheets_html(lambda each: (findings_sheet(each),), TEXT, "a.yaml", "rigid", None)
    places = {each.place for each in answer(TEXT, "a.yaml", "rigid", None).evaluation.findings}
    linked = {unquote_plus(each) for each in re.findall(r'describe\?option=rigid&amp;at=([^"]+)">', made)}
    assert any("." in each for each in places)
    assert {each for each in places if each} <= linked
    assert 'at=keep+clear+of.a_disc">a_disc</a>)' in _to_lines("a.yaml", None)(
        "(a.yaml line 3, keep clear of.<wbr/>a_disc)"
    )


def test_a_place_inside_a_tag_stays_as_it_is():
    made = _to_lines("a.yaml", None)('<p title="a.yaml line 31">a.yaml line 42</p><p title="a.yaml line 5">')
    assert made == (
        '<p title="a.yaml line 31">a.yaml <a href="/aircraft/a.yaml/describe/text?line=42">line 42</a></p>'
        '<p title="a.yaml line 5">'
    )


def test_what_a_builder_wrote_is_never_taken_for_html():
    evil = "<script>alert(1)</script>"
    text = edited(TEXT, ("name: Brindlewick", f"name: 'Brindlewick {evil}'"))
    for page in PAGES.values():
        made = sheets_html(page.sheets, text, f"{evil}.yaml", None, None)
        assert "<script" not in made
    assert "&lt;script&gt;" in sheets_html(keep.PAGE.sheets, text, "a.yaml", None, None)


@pytest.mark.parametrize("name", PAGES)
def test_a_page_with_something_to_write_on_says_where_that_stays(name):
    written_on = "<input" in sheets_html(PAGES[name].sheets, TEXT, "a.yaml", "rigid", None)
    assert PAGES[name].pens is written_on


def test_every_choice_of_a_layout_has_its_picture():
    wanted = {(key, word) for key, choices in CHOICES.items() for word in choices}
    assert set(PICTURES) == wanted
    assert len(set(PICTURES.values())) == len(wanted)


def test_what_several_windows_ask_at_once_is_worked_out_once(monkeypatch):
    count, real = [], answers.evaluate

    def slow(*given):
        count.append(given)
        time.sleep(0.2)
        return real(*given)

    monkeypatch.setattr(answers, "evaluate", slow)
    text = f"# asked by four\n{example('brindlewick')}"
    with ThreadPoolExecutor(4) as windows:
        found = list(windows.map(lambda _: answers.answer(text, "a.yaml", None, None), range(4)))
    assert len(count) == 1
    assert all(each is found[0] for each in found)
