"""How the form beside the picture uses the room: short fields two abreast, the picture in sight."""

from __future__ import annotations

import pytest
from looks import outside, violations
from playwright.sync_api import expect
from served import SLOW

from texts import example

CYLINDER = "/aircraft/mine.yaml/describe?option=rigid&at=components.left_cylinder"
TALLEST = 3500  # px at 1280; one below the other the fields of a cylinder take 3,800
TOP = "(each) => Math.round(each.getBoundingClientRect().top + scrollY)"
# Every field and what the eye reads before it: a field starts above none that the keyboard comes to earlier.
ORDER = """
() => [...document.querySelectorAll(".fp-form-body .fp-field")]
  .filter((each) => each.checkVisibility())
  .map((each) => Math.round(each.getBoundingClientRect().top + scrollY))
"""
IN_SIGHT = """
() => {
  const { top, bottom } = document.querySelector('.fp-area[aria-pressed="true"]').getBoundingClientRect();
  return top >= 0 && bottom <= innerHeight;
}
"""


@pytest.fixture(scope="module")
def folder(folder):
    (folder / "mine.yaml").write_text(example("brindlewick"), encoding="utf-8")
    return folder


@pytest.fixture
def opened(app, page):
    def opening(width):
        page.set_viewport_size({"width": width, "height": 900})
        page.goto(app.base + CYLINDER)
        expect(page.locator('.fp-area[aria-pressed="true"]').first).to_be_visible(timeout=SLOW)
        return page

    return opening


def field(page, name):
    return page.locator(".fp-form-body").get_by_role("group", name=name, exact=True).first


@pytest.mark.parametrize("width", [800, 1280, 1920])
def test_short_fields_stand_two_abreast_in_the_order_of_the_keyboard(opened, width):
    page = opened(width)
    assert field(page, "kind").evaluate(TOP) == field(page, "side").evaluate(TOP)
    tops = page.evaluate(ORDER)
    assert len(tops) > 8
    assert tops == sorted(tops)
    seat = field(page, "seat").bounding_box()["width"]
    assert seat > 1.8 * field(page, "thread").bounding_box()["width"]  # three figures take the whole row
    assert outside(page) == []
    assert violations(page) == []


@pytest.mark.parametrize("width", [1280, 1920])
def test_the_chosen_part_stays_in_sight_down_to_the_last_of_its_fields(opened, width):
    page = opened(width)
    assert page.evaluate("document.documentElement.scrollHeight") < TALLEST
    last = page.locator(".fp-form-body summary:visible").last
    last.evaluate("(each) => each.scrollIntoView({ block: 'end' })")
    assert page.evaluate(IN_SIGHT)
    add = page.locator(".fp-form-add").bounding_box()
    picture = page.locator(".fp-form-seen").bounding_box()
    assert add["x"] == pytest.approx(picture["x"], abs=1)  # below both, as broad as both together
    assert add["width"] > 1.5 * picture["width"]
    page.evaluate("scrollTo(0, document.documentElement.scrollHeight)")
    picture = page.locator(".fp-form-seen").bounding_box()
    assert picture["y"] + picture["height"] <= page.locator(".fp-form-add").bounding_box()["y"]


def test_a_part_that_is_folded_in_half_a_row_takes_a_whole_one_when_it_is_opened(opened):
    page = opened(1280)
    spring = page.locator(".fp-form-group", has=page.get_by_role("heading", name="return spring"))
    row = page.locator(".fp-form-body").bounding_box()["width"]
    assert spring.bounding_box()["width"] < row / 2
    spring.locator("summary").click()
    assert spring.bounding_box()["width"] == pytest.approx(row, abs=1)


def test_on_a_phone_there_is_one_column(opened):
    page = opened(390)
    assert field(page, "side").evaluate(TOP) > field(page, "kind").evaluate(TOP)
    assert field(page, "side").bounding_box()["width"] > 300
