"""In a real browser: the unit beside every field of a figure, on a phone's width, and what is to measure."""

from __future__ import annotations

import pytest
from playwright.sync_api import expect
from served import SLOW, serving

from texts import edited, example

POINTS = "points:\n  axle: [1, 2, 3]\n  nowhere: unknown\n  by_tape: {from: axle, aft: unknown}\n\nzones:\n"
WIDER = "document.documentElement.scrollWidth - document.documentElement.clientWidth"


@pytest.fixture(scope="module")
def app(tmp_path_factory):
    folder = tmp_path_factory.mktemp("hangar")
    text = edited(example("brindlewick"), ("zones:\n", POINTS))
    (folder / "mine.yaml").write_text(text, encoding="utf-8")
    with serving(folder) as served:
        yield served


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


def test_a_point_to_measure_has_the_way_to_its_fields_and_no_box(app, page):
    page.goto(f"{app.base}/aircraft/mine.yaml/sound")
    page.get_by_role("button", name="Open all").click()
    row = page.locator(".fp-measure").filter(has_text="nowhere")
    expect(row.get_by_role("link", name="its fields")).to_be_visible()
    expect(row.get_by_role("textbox")).to_have_count(0)
    assert page.evaluate(WIDER) <= 0
