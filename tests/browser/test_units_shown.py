"""In a real browser: the unit beside every field of a figure, on a phone's width, and what is to measure."""

from __future__ import annotations

import pytest
from playwright.sync_api import expect
from served import SLOW

from texts import edited, example

POINTS = "points:\n  axle: [1, 2, 3]\n  nowhere: unknown\n  by_tape: {from: axle, aft: unknown}\n\nzones:\n"
WIDER = "document.documentElement.scrollWidth - document.documentElement.clientWidth"


@pytest.fixture(scope="module")
def folder(folder):
    text = edited(example("brindlewick"), ("zones:\n", POINTS))
    (folder / "mine.yaml").write_text(text, encoding="utf-8")
    return folder


@pytest.fixture
def page(new_context):
    page = new_context(viewport={"width": 390, "height": 844}).new_page()
    page.set_default_timeout(SLOW)
    return page


@pytest.mark.parametrize(
    ("place", "named"),
    [
        ("components.left_cylinder", "bore, in"),
        ("lines.left_leg", "via 2 aft, in"),
        ("points.by_tape", "place forward, in"),
        ("moving.left_pedal_swing", "rudder swing, deg"),
    ],
)
def test_it_is_in_the_name_of_the_field_and_widens_nothing(app, page, place, named):
    page.goto(f"{app.base}/aircraft/mine.yaml/describe?option=rigid&at={place}")
    field = page.get_by_role("textbox", name=named, exact=True).first
    expect(field).to_be_visible()
    assert page.evaluate(WIDER) <= 0
    across = field.evaluate("each => each.closest('.fp-field-cell').getBoundingClientRect().right")
    assert across <= 390


def test_a_point_to_measure_is_typed_in_its_three_cells_which_keep_what_is_typed(app, page):
    page.goto(f"{app.base}/aircraft/mine.yaml/sound")
    page.get_by_role("button", name="Open all").click()
    row = page.locator(".fp-measure", has=page.locator('[data-place="points.nowhere"]'))
    cells = row.get_by_role("textbox")
    expect(cells).to_have_count(3)
    cells.nth(0).click()
    for words in ("13 1/2", "a lot", "-4"):  # at one go; the answers come in while one types
        page.keyboard.type(words)
        page.keyboard.press("Tab")
    expect(cells.nth(1)).to_have_value("a lot")
    expect(row.get_by_role("alert")).to_contain_text("cannot be read as a length")
    expect(cells.nth(2)).to_have_value("-4")
    assert page.evaluate(WIDER) <= 0
    page.goto(f"{app.base}/aircraft/mine.yaml/buy")
    expect(page.locator(".fp-alerts .fp-card")).to_contain_text("nowhere: you typed a lot. Not saved:")
    page.goto(f"{app.base}/aircraft/mine.yaml/sound")
    expect(cells.nth(1)).to_have_value("a lot")
    expect(page.locator(".fp-alerts .fp-card")).to_have_count(0)
    cells.nth(1).fill("2")
    cells.nth(1).press("Tab")
    expect(row).to_have_count(0)
    page.get_by_role("button", name="Tools").click()
    for _ in range(3):
        page.get_by_role("button", name="Undo").click()
    expect(cells.nth(0)).to_have_value("unknown")


def test_what_is_refused_in_a_box_is_there_again_with_its_reason(app, page):
    page.goto(f"{app.base}/aircraft/mine.yaml/sound")
    page.get_by_role("button", name="Open all").click()
    row = page.locator(".fp-measure").filter(has_text="rated pressure of left_cylinder")
    pen = row.get_by_role("textbox")
    pen.fill("a lot")
    pen.press("Enter")
    expect(row.get_by_role("alert")).to_contain_text("cannot be read")
    page.goto(f"{app.base}/aircraft/mine.yaml/buy")
    page.goto(f"{app.base}/aircraft/mine.yaml/sound")
    expect(pen).to_have_value("a lot")
    expect(row.get_by_role("alert")).to_contain_text("cannot be read")
    pen.fill("90")
    page.get_by_role("button", name="Tools").click()
    page.get_by_role("group", name="Figures in").get_by_role("button", name="mm").click()
    expect(pen).to_have_value("90")  # what is typed stays when the page is told something else
    pen.press("Enter")
    expect(row).to_have_count(0)
    page.get_by_role("button", name="Undo").click()
    expect(pen).to_have_value("")
