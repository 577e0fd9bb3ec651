"""Whole jobs: take the list to a forum and the packet to the printer, choose an option and plan the work.

What comes out is read by other programs than ours: the browser's clipboard, csv, pypdf, zipfile.
"""

from __future__ import annotations

import csv
import io
import re
import zipfile

import pytest
from looks import outside, small_targets, violations
from playwright.sync_api import expect
from pypdf import PdfReader

from texts import edited, example

SLOW = 60_000  # ms
TEXT = example("brindlewick")


@pytest.fixture(scope="module")
def folder(folder):
    (folder / "mine.yaml").write_text(TEXT, encoding="utf-8")
    return folder


@pytest.fixture
def window(new_context, app):
    opened = []

    def opening(path, **how):
        page = new_context(**{"viewport": {"width": 1280, "height": 900}, **how}).new_page()
        page.faults = []
        page.on("pageerror", lambda fault: page.faults.append(str(fault)))
        page.on("console", lambda said: page.faults.append(said.text) if said.type == "error" else None)
        page.set_default_timeout(SLOW)
        page.goto(app.base + path)
        opened.append(page)
        return page

    yield opening
    for page in opened:
        assert not page.faults


def test_the_parts_list_goes_to_a_spreadsheet_and_to_a_forum(window):
    page = window("/aircraft/mine.yaml/buy?option=rigid", permissions=["clipboard-read", "clipboard-write"])
    with page.expect_download() as saved:
        page.get_by_role("link", name="Save as a table").click()
    assert saved.value.suggested_filename == "mine_rigid_parts.csv"
    rows = list(csv.DictReader(io.StringIO(saved.value.path().read_text(encoding="utf-8"))))
    page.get_by_role("button", name="Copy as text").click()
    expect(page.locator(".fp-copy-told")).to_have_text("Copied.")
    copied = page.evaluate("navigator.clipboard.readText()")
    assert copied.startswith("Brindlewick, option rigid")
    assert [row["designation"] for row in rows if row["designation"] not in copied] == []
    page.get_by_text("The list as text").click()
    text = page.get_by_role("textbox", name="The list as text")
    expect(text).to_have_value(copied)
    page.get_by_role("button", name="mm", exact=True).click()
    expect(text).not_to_have_value(copied, timeout=SLOW)
    assert " mm" in text.input_value()


def test_without_a_clipboard_the_text_is_marked(window):
    page = window("/aircraft/mine.yaml/buy")
    expect(page.get_by_role("button", name="Copy as text")).to_be_enabled(timeout=SLOW)
    page.evaluate("() => { navigator.clipboard.writeText = () => Promise.reject(new Error('no')); }")
    page.evaluate("() => { document.execCommand = () => false; }")
    page.get_by_role("button", name="Copy as text").click()
    expect(page.locator(".fp-copy-told")).to_contain_text("copy it by hand")
    chosen = page.evaluate("document.getSelection().toString() || document.activeElement.value")
    assert chosen.startswith("Brindlewick")


def test_the_packet_is_begun_once_stopped_made_and_looked_at(window, folder):
    page, other = (window("/aircraft/mine.yaml/keep?option=rigid") for _ in range(2))
    make, stop = page.get_by_role("button", name="Make the packet"), page.get_by_role("button", name="Stop")
    make.dblclick()
    expect(make).to_have_attribute("aria-disabled", "true")
    expect(other.get_by_role("button", name="Stop")).to_be_visible(timeout=SLOW)  # another window knows of it
    stop.click()
    told = page.locator(".fp-work-told p")
    expect(told).to_have_text("Stopped. Nothing was made.")
    expect(make).to_be_focused()
    page.keyboard.press("Enter")
    expect(told).to_have_text(re.compile(r"Ready: \d+ pages\."), timeout=SLOW)
    expect(page.get_by_role("link", name="Open the packet")).to_be_focused()
    count = int(re.search(r"\d+", told.inner_text())[0])
    pictures = page.locator(".fp-pages img")
    expect(pictures).to_have_count(count)
    expect(other.locator(".fp-pages img")).to_have_count(count)
    page.wait_for_function("() => document.querySelector('.fp-pages img').naturalWidth > 0")
    address = page.get_by_role("link", name="Open the packet").get_attribute("href")
    paper = page.request.get(page.url.partition("/aircraft")[0] + address)
    assert len(PdfReader(io.BytesIO(paper.body())).pages) == count
    assert violations(page) == []
    page.set_viewport_size({"width": 390, "height": 800})
    expect(page.locator(".fp-pages")).to_be_hidden()
    assert outside(page) == []
    assert [each for each in small_targets(page, 44) if "fp-skip" not in each[0]] == []
    changed = edited(TEXT, ("name: Brindlewick", "name: Finchcote"))
    (folder / "mine.yaml").write_text(changed, encoding="utf-8")
    expect(told).to_have_text(re.compile("Make it again"), timeout=SLOW)
    expect(page.get_by_role("link", name="Open the packet")).to_be_hidden()
    (folder / "mine.yaml").write_text(TEXT, encoding="utf-8")
    expect(told).to_have_text(re.compile("Ready"), timeout=SLOW)


def test_an_option_is_chosen_the_work_planned_and_the_drawings_saved(window):
    page = window("/aircraft/mine.yaml/sound")
    page.get_by_role("link", name="side by side").click()
    card = page.locator(".fp-abreast .fp-card", has_text="all hose")
    expect(page.locator("article h2")).to_have_text("Options side by side", timeout=SLOW)
    across = page.locator(".fp-abreast .fp-card").evaluate_all("all => all.map(each => each.offsetTop)")
    assert len(set(across)) == 1
    page.set_viewport_size({"width": 390, "height": 800})
    down = page.locator(".fp-abreast .fp-card").evaluate_all("all => all.map(each => each.offsetTop)")
    assert len(set(down)) == 3
    card.get_by_role("link", name="Plan the work").click()
    expect(page.locator("article h2")).to_have_text("From old to new", timeout=SLOW)
    expect(page.locator("article")).to_contain_text("from as written to all hose")
    page.get_by_role("navigation", name="From").get_by_role("link", name="rigid").click()
    expect(page.locator("article")).to_contain_text("from rigid to all hose", timeout=SLOW)
    page.locator("article input[type=checkbox]").first.check()
    page.reload()
    expect(page.locator("article input[type=checkbox]").first).to_be_checked(timeout=SLOW)
    page.get_by_role("navigation", name="To").get_by_role("link", name="rigid").click()
    expect(page.locator(".fp-main .fp-empty")).to_contain_text("Choose two that differ", timeout=SLOW)
    page.get_by_role("link", name="Make", exact=True).click()
    with page.expect_download() as saved:
        page.get_by_role("link", name="Flat drawings of the tubes").click()
    with zipfile.ZipFile(saved.value.path()) as packed:
        assert set(packed.namelist()) == {"left_leg.dxf", "right_leg.dxf"}


def test_the_app_ends_though_work_is_running(window):
    """The end of this file stops it with that work left running, and looks at how it ended."""
    page = window("/aircraft/mine.yaml/keep?option=all+hose")
    page.get_by_role("button", name="Make the packet").click()
    expect(page.get_by_role("button", name="Stop")).to_be_visible(timeout=SLOW)
