"""Pages of an aircraft whose brakes are worked by a hand lever: no foot and no pedal in what the app says."""

from __future__ import annotations

import re
from contextlib import asynccontextmanager

import pytest
from nicegui import ui
from simulated import simulated

from firmpedal.export.html import html
from firmpedal.pipeline import evaluate
from firmpedal.project import read_text
from firmpedal.report.found import found
from firmpedal.report.retrofit import retrofit_sheet
from firmpedal.web.form.element import Made
from firmpedal.web.shelf import Shelf
from firmpedal.web.sound.finding_card import reasons_html
from texts import edited, example

pytestmark = pytest.mark.asyncio

BY_FOOT = example("fennimoss")
BY_HAND = edited(BY_FOOT, ("brakes: heel", "brakes: hand"))
# Names of the builder's own are joined by underscores; a key of the file stands before a colon or in a tag.
FEET = re.compile(r"(?<![\w.\-=\"])(?:[Ff]oot|[Ff]eet|[Pp]edals?)(?![\w\"])")


@asynccontextmanager
async def opened(folder, text):
    (folder / "mine.yaml").write_text(text, encoding="utf-8")
    faults = []
    async with simulated(Shelf(folder)) as user:
        try:
            yield user
        except AssertionError as fault:  # the simulation would not end while one is on its way
            faults.append(fault)
    if faults:
        raise faults[0]


def lead(user):
    (made,) = [each.content for each in user.find(kind=ui.html).elements if "fp-step-lead" in each.classes]
    return made


@pytest.mark.parametrize(
    ("page", "title", "begins"),
    [
        ("pedal", "Lever feel", "How far each grip goes"),
        ("stopping", "Stopping and holding", "From a pull on the lever"),
    ],
)
async def test_the_title_and_the_lead_are_of_a_lever(tmp_path, page, title, begins):
    async with opened(tmp_path, BY_HAND) as user:
        await user.open(f"/aircraft/mine.yaml/{page}")
        await user.should_see(title)
        assert lead(user).startswith(begins)
        assert FEET.findall(lead(user)) == []


async def test_of_feet_it_speaks_of_pedals_as_before(tmp_path):
    async with opened(tmp_path, BY_FOOT) as user:
        await user.open("/aircraft/mine.yaml/pedal")
        await user.should_see("Pedal feel")
        assert lead(user).startswith("How far each pad goes under a foot")


async def test_the_way_to_the_figures_has_the_name_of_their_page(tmp_path):
    async with opened(tmp_path, BY_HAND) as user:
        await user.open("/aircraft/mine.yaml/sound")
        await user.should_see("Lever feel")
        await user.should_not_see("Pedal feel")


async def test_the_help_in_the_form_and_what_can_be_added(tmp_path):
    async with opened(tmp_path, BY_HAND) as user:
        await user.open("/aircraft/mine.yaml/describe?at=components.left_cylinder")
        (form,) = [each.props["made"] for each in user.find(kind=Made).elements if "fp-form" in each.classes]
        helps = re.findall(r'fp-field-help"[^>]*>([^<]*)<', form)
        assert "The lever that presses it." in helps
        assert [each for each in helps if FEET.search(each)] == []
        assert 'data-do="add" data-of="pedal">lever</button>' in form
        assert '<optgroup label="levers">' in form


async def test_findings_their_reasons_and_their_sums():
    evaluation = evaluate(read_text(BY_HAND, "a.yaml"))
    told = found(evaluation)
    assert any(each.sums for each in told)
    said = "".join(html(each.answer) + reasons_html(each) for each in told)
    assert "at the normal pull" in said
    assert FEET.findall(re.sub(r"<[^>]+>", " ", said)) == []
    places = {each.place for each in evaluation.findings}
    assert {place for each in told for place in each.places} == places  # what is no text of ours stays


async def test_the_work_from_old_to_new():
    before, after = (evaluate(read_text(BY_HAND, "a.yaml", option)) for option in (None, "rigid"))
    said = re.sub(r"<[^>]+>", " ", html(retrofit_sheet(before, after).blocks))
    assert "nobody touches a lever until the end" in said
    assert FEET.findall(said) == []
