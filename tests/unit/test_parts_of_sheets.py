"""Sheets whose parts can be folded: what is a part, what stays outside, and that nothing is lost."""

from __future__ import annotations

import re

import pytest
from html_trees import of_class, read, words

from firmpedal.export.html import sheet_html
from firmpedal.pipeline import evaluate, evaluate_options
from firmpedal.project import read_text
from firmpedal.report.buying import parts_sheet
from firmpedal.report.compare import compare_sheet
from firmpedal.report.cutplan import cutplan_sheet
from firmpedal.report.feel import feel_sheet
from firmpedal.report.heat import heat_sheet
from firmpedal.report.joint_checks import joint_checks_sheet
from firmpedal.report.retrofit import retrofit_sheet
from firmpedal.report.sheet import Bullets, Group, Heading, Paragraph, Sheet, Tone
from firmpedal.report.stopping import stopping_sheet
from texts import example

TEXT = example("brindlewick")


def evaluated(option=None):
    return evaluate(read_text(TEXT, "a.yaml", option))


SHEETS = {
    "buy": lambda: parts_sheet(evaluated("rigid")),
    "cut": lambda: cutplan_sheet(evaluated("rigid")),
    "compare": lambda: compare_sheet(evaluate_options(read_text(TEXT, "a.yaml"))),
    "retrofit": lambda: retrofit_sheet(evaluated(), evaluated("rigid")),
    "feel": lambda: feel_sheet(evaluated("rigid")),
    "heat": lambda: heat_sheet(evaluated("rigid")),
    "stopping": lambda: stopping_sheet(evaluated("rigid")),
    "prove": lambda: joint_checks_sheet(evaluated("rigid")),
}
# Which parts of a sheet lie open where there is little room.
OPEN = {
    "buy": [],
    "cut": ["At the bench"],
    "compare": ["What to do"],
    "retrofit": ["1. Make ready: at the bench, days before"],
    "feel": ["left_pedal_brake and right_pedal_brake", "What holds for every pedal"],
    "heat": ["How warm left_caliper and right_caliper get"],
    "stopping": ["What each foot gives"],
    "prove": ["Under pressure"],
}


@pytest.fixture(scope="module", params=SHEETS)
def case(request):
    return request.param, SHEETS[request.param]()


def parts(made):
    return [each for each in read(made).iter("details") if each.get("class") == "fp-part"]


def test_nothing_is_lost_and_every_tick_keeps_its_name(case):
    _, sheet = case
    whole, parted = sheet_html(sheet), sheet_html(sheet, parted=True)
    pens = re.compile(r' name="(fp-\w+)"')
    assert pens.findall(parted) == pens.findall(whole)
    told = of_class(read(parted), "fp-sheet-short")
    extra = "".join(words(each) for each in told)
    assert sorted(words(read(parted))) == sorted(words(read(whole)) + extra)


def test_what_is_wanted_first_is_marked_and_all_lies_open_as_it_is_made(case):
    name, sheet = case
    found = parts(sheet_html(sheet, parted=True))
    assert found
    assert all(each.get("open") is not None for each in found)
    assert [words(each.find("summary/h3")) for each in found if each.get("data-first") is not None] == OPEN[
        name
    ]
    folds = [each.get("data-fold") for each in found]
    assert len(set(folds)) == len(folds)


@pytest.mark.parametrize("name", ["heat", "stopping", "buy", "retrofit", "prove"])
def test_no_warning_and_no_caution_is_folded_away(name):
    made = sheet_html(SHEETS[name](), parted=True)
    folded = [each for each in parts(made) if each.get("data-first") is None]
    assert [
        words(told)
        for each in folded
        for told in of_class(each, "fp-told")
        if "fp-note" not in told.get("class")
    ] == []


def test_what_comes_before_a_heading_or_after_a_group_stands_outside():
    sheet = Sheet(
        "A sheet",
        (
            Paragraph("before"),
            Group((Heading("Grouped"), Paragraph("inside"))),
            Paragraph("after", Tone.CAUTION),
            Heading("Plain"),
            Bullets(("one", "two"), boxes=True),
            Paragraph("hot", Tone.WARNING),
            Paragraph("hotter", Tone.WARNING),
        ),
    )
    article = read(sheet_html(sheet, parted=True)).find("article")
    assert [words(each) for each in article if each.tag == "p"] == ["before", "CAUTION after"]
    grouped, plain = parts(sheet_html(sheet, parted=True))
    assert words(of_class(grouped, "fp-part-in")[0]) == "inside"
    assert words(plain.find("summary")) == "Plain2 WARNINGS"
