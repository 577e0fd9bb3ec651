"""Is it sound? and its figures on a phone: the answer first, what is to be measured folded thing by thing."""

from __future__ import annotations

import re

import pytest
from looks import outside, violations
from playwright.sync_api import expect
from served import SLOW, hear_faults, saved

from firmpedal.project.layouts import Layout, layout_text
from firmpedal.web import addresses
from texts import example

PHONE = {"viewport": {"width": 390, "height": 844}, "has_touch": True, "is_mobile": True}
LONGEST = 5 * 844 - 20  # px; not five screens of that phone
LAYOUTS = {
    "begun": Layout("tailwheel", "leaf", "toe", "1", "no"),
    "second": Layout("nosewheel", "link", "toe", "tandem", "yes"),
    "third": Layout("tailwheel", "bow", "heel", "tandem", "yes"),
    "hand": Layout("nosewheel", "rod", "hand", "1", "no"),
}
FILES = [f"{name}.yaml" for name in LAYOUTS]


@pytest.fixture(scope="module")
def folder(folder):
    for name, layout in LAYOUTS.items():
        (folder / f"{name}.yaml").write_text(layout_text(layout, f"{name}.yaml"), encoding="utf-8")
    for name in ("brindlewick", "oatmere"):
        (folder / f"{name}.yaml").write_text(example(name), encoding="utf-8")
    return folder


@pytest.fixture
def phone(new_context, app):
    """Opens pages one after the other, each all worked out; nothing may go wrong in them."""
    page = new_context(**PHONE).new_page()
    hear_faults(page)
    page.set_default_timeout(SLOW)

    def opening(address):
        page.goto(app.base + address)
        page.wait_for_selector(".fp-main")
        page.wait_for_function("() => !document.body.innerText.includes('Working it out')", timeout=SLOW)
        return page

    yield opening
    assert not page.faults


def tall(page):
    return page.evaluate("document.documentElement.scrollHeight")


@pytest.mark.parametrize("file", [*FILES, "oatmere.yaml", "brindlewick.yaml"])
def test_no_page_of_the_findings_is_longer_than_a_few_screens(phone, file):
    steps = ("sound", "pedal", "buy") if file in FILES else ("sound", "pedal")  # what is bought is a list
    heights = {step: tall(phone(addresses.step(file, step))) for step in steps}
    assert {step: height for step, height in heights.items() if height > LONGEST} == {}


def test_what_is_folded_opens_at_one_press_and_is_all_there_on_paper(phone):
    page = phone(addresses.step("second.yaml", "sound"))
    rows = page.locator(".fp-measure")
    count = rows.count()
    assert count > 50
    assert rows.locator("visible=true").count() == 0
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    assert rows.locator("visible=true").count() == count
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    assert rows.locator("visible=true").count() == 0
    assert violations(page) == []
    page.get_by_role("button", name="Open all").click()
    expect(rows.locator("visible=true")).to_have_count(count)
    assert outside(page) == []


def test_a_thing_says_what_is_missing_of_it_and_is_gone_with_the_last_of_it(phone, folder):
    page = phone(addresses.step("begun.yaml", "sound"))
    pad = page.get_by_role("textbox", name="left_brake brake pad")
    thing = page.locator(".fp-measure-thing", has=page.locator("summary", has_text="left_brake2 to measure"))
    thing.locator("summary").first.tap()
    for name, key in (("left_brake brake pad", "pad: 6"), ("left_brake brake arm", "arm: 3")):
        field = page.get_by_role("textbox", name=name)
        field.fill(key[-1])
        field.press("Enter")
        saved(folder / "begun.yaml", key)
    expect(pad).to_have_count(0, timeout=SLOW)
    expect(page.locator(".fp-measure-thing summary", has_text="left_brake")).to_have_count(1, timeout=SLOW)
    expect(page.locator(".fp-measure-thing summary", has_text="left_brake_heat")).to_be_visible()


def test_a_figure_out_of_the_usual_is_told_with_the_word_that_it_is_written(phone):
    page = phone(addresses.step("hand.yaml", "sound"))
    page.get_by_role("button", name="Open all").tap()
    bore = page.get_by_role("textbox", name=re.compile("^left_caliper pistons bore"))
    bore.fill("62")
    bore.press("Enter")
    expect(page.locator(".fp-done")).to_contain_text("pistons bore: 62 is in the file", timeout=SLOW)
    expect(page.locator(".fp-done")).to_contain_text("is usual")


def test_notes_are_folded_and_no_warning_is(phone):
    page = phone(addresses.step("brindlewick.yaml", "sound"))
    warnings = page.locator(".fp-finding .fp-warning")
    assert warnings.count() > 2
    assert all(each.is_visible() for each in warnings.all())
    page = phone(addresses.step("oatmere.yaml", "sound"))
    notes = page.locator(".fp-notes")
    expect(notes.locator("summary").first).to_contain_text("(good to know)")
    expect(notes.locator(".fp-finding").first).to_be_hidden()
    notes.locator("summary").first.tap()
    expect(notes.locator(".fp-finding").first).to_be_visible()
