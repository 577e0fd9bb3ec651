"""All sheets of the examples in a real browser, narrow, wide and very wide, light and dark."""

from __future__ import annotations

from functools import cache
from importlib import resources
from pathlib import Path

import pytest
from looks import faint, outside, small_letters, small_targets, violations

from firmpedal.export.html import sheet_html
from firmpedal.pipeline import evaluate_file, usable_options
from firmpedal.report.measuring import form_sheets
from firmpedal.report.packet import packet_sheets

EXAMPLES = Path(__file__).parents[2] / "examples"
LOOK = resources.files("firmpedal") / "web/static/firmpedal.css"
CASES = [("brindlewick", "rigid"), ("oatmere", None), ("fennimoss", None)]


@cache
def text_of(example, option):
    evaluation = evaluate_file(EXAMPLES / f"{example}.yaml", option)
    sheets = packet_sheets(evaluation, usable_options(evaluation.reading)) + form_sheets(evaluation)
    return (
        '<!doctype html><html lang="en"><head><title>Sheets</title>'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<style>{LOOK.read_text(encoding='utf-8')}</style></head>"
        '<body class="fp-page"><div class="fp-frame"><main><h1>Sheets</h1>'
        f"{''.join(map(sheet_html, sheets))}</main></div></body></html>"
    )


@pytest.fixture(scope="module")
def page_of(one_context):
    """The page of each case, read once: it has no script, and nothing is ticked in it."""
    pages = {}

    def opened(case):
        if case not in pages:
            pages[case] = one_context.new_page()
            pages[case].set_content(text_of(*case))
        return pages[case]

    return opened


@pytest.fixture
def shown(page_of):
    def opened(case, width, scheme="light", switch=""):
        page = page_of(case)
        page.set_viewport_size({"width": width, "height": 900})
        page.emulate_media(media="screen", color_scheme=scheme)
        page.evaluate("(switch_) => { document.documentElement.className = switch_; }", switch)
        return page

    return opened


@pytest.mark.parametrize("width", [320, 390, 768, 1280, 1920])
@pytest.mark.parametrize("case", CASES, ids=lambda case: case[0])
def test_no_sheet_is_wider_than_the_screen(shown, case, width):
    page = shown(case, width)
    assert outside(page) == []
    scrolling = (
        "boxes => boxes.filter(box => box.scrollWidth > box.clientWidth + 1).map(box => box.innerText)"
    )
    assert page.eval_on_selector_all(".fp-table-box", scrolling) == []


@pytest.mark.parametrize(("scheme", "wrong"), [("light", violations), ("dark", faint)])
@pytest.mark.parametrize("width", [390, 1280])
@pytest.mark.parametrize("case", CASES, ids=lambda case: case[0])
def test_axe_finds_nothing(shown, case, width, scheme, wrong):
    assert wrong(shown(case, width, scheme)) == []


@pytest.mark.parametrize("case", CASES, ids=lambda case: case[0])
def test_targets_and_letters_on_a_phone(shown, case):
    page = shown(case, 390)
    assert small_targets(page, 44) == []
    assert small_letters(page, 14) == []


@pytest.mark.parametrize("case", CASES, ids=lambda case: case[0])
def test_no_mark_of_a_drawing_is_cut_off(shown, case):
    page = shown(case, 1280)
    outside = """pictures => pictures.flatMap((picture) => {
      const frame = picture.getBoundingClientRect();
      return [...picture.children]
        .map((mark) => [mark.outerHTML, mark.getBoundingClientRect()])
        .filter(([, box]) => box.left < frame.left - 1 || box.right > frame.right + 1)
        .map(([what]) => what);
    })"""
    assert page.locator("svg").count() > 3
    assert page.eval_on_selector_all("svg", outside) == []


def test_rows_are_stacked_on_a_phone_and_side_by_side_on_a_desk(shown):
    cell = ".fp-table td[data-label]"
    assert (
        shown(CASES[0], 390).locator(cell).first.evaluate("e => getComputedStyle(e).display") != "table-cell"
    )
    assert (
        shown(CASES[0], 1280).locator(cell).first.evaluate("e => getComputedStyle(e).display") == "table-cell"
    )


@pytest.mark.parametrize(("scheme", "switch"), [("dark", ""), ("light", "fp-dark"), ("dark", "fp-dark")])
def test_dark_by_the_system_or_by_the_switch(shown, scheme, switch):
    page = shown(CASES[2], 1280, scheme, switch)
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(17, 22, 21)"
    stroke = page.locator("polyline").first.evaluate("e => getComputedStyle(e).stroke")
    assert stroke == page.evaluate("getComputedStyle(document.querySelector('.fp-sheet')).color")


def test_light_by_the_switch_on_a_dark_system(shown):
    page = shown(CASES[2], 1280, "dark", "fp-light")
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(242, 241, 236)"


def test_everything_can_be_reached_by_keys_and_shows_the_focus(new_context):
    page = new_context(viewport={"width": 390, "height": 900}).new_page()
    page.set_content(text_of(*CASES[2]))
    count = page.locator("input, .fp-drawing-box").count()
    assert count > 10
    for _ in range(count):
        page.keyboard.press("Tab")
        outline = page.evaluate("getComputedStyle(document.activeElement).outline")
        assert "solid 3px" in outline, page.evaluate("document.activeElement.outerHTML.slice(0, 100)")
    page.locator("input[type=checkbox]").first.focus()
    page.keyboard.press("Space")
    assert page.locator("input[type=checkbox]").first.is_checked()


def test_a_printed_sheet_is_black_on_white(shown):
    page = shown(CASES[2], 1280, "dark")
    page.emulate_media(media="print")
    assert page.evaluate("getComputedStyle(document.querySelector('.fp-sheet p')).color") == "rgb(0, 0, 0)"
    assert page.evaluate("getComputedStyle(document.querySelector('.fp-sheet')).backgroundColor") in (
        "rgba(0, 0, 0, 0)",
        "rgb(255, 255, 255)",
    )
