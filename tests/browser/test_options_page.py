"""In a real browser: an option begun and filled without the text, figures asked where they are missed."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import expect
from served import saved

from texts import edited, example

DISC = "    disc: {mass: {value: 2.9 lb, mark: assumed}, radius: {value: 3.2, mark: assumed}}\n"


@pytest.fixture(scope="module")
def folder(folder):
    one = example("brindlewick").partition("\noptions:")[0] + "\n"
    (folder / "mine.yaml").write_text(one, encoding="utf-8")
    (folder / "bow.yaml").write_text(edited(example("fennimoss"), (DISC, "")), encoding="utf-8")
    return folder


def test_an_option_is_begun_filled_and_renamed(app, page, folder):
    path = folder / "mine.yaml"
    page.goto(f"{app.base}/aircraft/mine.yaml/buy")
    page.get_by_role("navigation", name="Options").get_by_role("link", name="Begin an option").click()
    page.get_by_label(re.compile("^its name")).fill("braided")
    page.get_by_role("button", name="Begin an option").click()
    page.wait_for_url(re.compile(r"/describe\?option=braided"))
    saved(path, "  braided: {}")
    expect(page.get_by_text("This is option braided.")).to_be_visible()
    page.goto(f"{app.base}/aircraft/mine.yaml/describe?option=braided&at=lines.left_line")
    page.get_by_role("button", name="Change it for this option alone").click()
    saved(path, "  braided:\n    lines:\n      left_line:\n        from: ")
    expect(page.get_by_role("button", name="Change it for this option alone")).to_have_count(0)
    page.get_by_role("button", name="bulkhead", exact=True).click()
    expect(page.get_by_text("It belongs to option braided alone")).to_be_visible()
    page.get_by_label(re.compile("^its name")).fill("wall")
    page.get_by_role("button", name="Add it").click()
    saved(path, "    bulkheads:\n      wall:\n        at: unknown")
    page.locator(".fp-form-add").get_by_role("link", name="Begin an option").click()
    page.get_by_label("another name for braided").fill("all braided")
    page.get_by_role("button", name="Rename braided").click()
    saved(path, "  all braided:\n    lines:\n      left_line:\n")
    expect(page.locator(".fp-abreast h2")).to_have_text(["as written", "all braided"])


def test_a_figure_is_written_where_the_page_of_heat_asks_for_it(app, page, folder):
    path = folder / "bow.yaml"
    page.goto(f"{app.base}/aircraft/bow.yaml/heat")
    row = page.locator(".fp-measure", has_text="radius of the disc of left_caliper")
    expect(row).to_have_count(1)
    expect(page.locator(".fp-measure", has_text="radius of the disc of right_caliper")).to_have_count(0)
    row.get_by_role("button", name="Yes, write 3.2").click()
    saved(path, "radius: 3.2}")
    expect(row).to_have_count(0)
    mass = page.locator(".fp-measure", has_text="mass of the disc")
    mass.get_by_role("textbox").fill("2.9")
    mass.get_by_role("button", name="Write it down").click()
    saved(path, "mass: 2.9")
    expect(page.get_by_text("cannot be told yet")).to_have_count(0)


def test_who_stands_on_an_option_by_keyboard_stays_there_when_an_answer_comes(app, page, folder):
    path = folder / "stays.yaml"
    path.write_text(example("brindlewick"), encoding="utf-8")
    page.goto(f"{app.base}/aircraft/stays.yaml/buy")
    here = page.get_by_role("navigation", name="Options").get_by_role("link", name="Begin an option")
    here.focus()
    verdict = page.locator(".fp-verdict-bar")
    expect(verdict).to_contain_text("6 warnings")
    # another editor leaves a figure open: a new answer comes, and the options are the same as before
    path.write_text(edited(example("brindlewick"), ("stroke: 0.80", "stroke: unknown")), encoding="utf-8")
    expect(verdict).to_contain_text("4 warnings")
    expect(here).to_be_focused()
