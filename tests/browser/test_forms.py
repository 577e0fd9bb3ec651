"""In a real browser: a state, what it moves, a port, a corner by tape, a new name; and the saved file."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import expect
from served import saved

from texts import example


@pytest.fixture(scope="module")
def folder(folder):
    (folder / "mine.yaml").write_text(example("brindlewick"), encoding="utf-8")
    return folder


def test_a_state_what_it_moves_and_a_port(app, page, folder):
    path = folder / "mine.yaml"
    page.goto(f"{app.base}/aircraft/mine.yaml/describe?option=rigid")

    # a state by its positions: its card has the keyboard at once, and Enter on a button is enough
    page.get_by_role("button", name="state", exact=True).focus()
    page.keyboard.press("Enter")
    expect(page.get_by_label(re.compile("^its name"))).to_be_focused()
    page.keyboard.type("flaps")
    page.keyboard.press("Tab")
    page.keyboard.type("up, down")
    page.get_by_role("button", name="Add it").click()
    saved(path, "flaps: {values: [up, down], measured at: up}")
    expect(page.get_by_role("heading", name="flaps")).to_be_visible()

    # what it moves, and how: a swing about an axis, with all of it to be measured
    page.get_by_role("button", name="moving thing", exact=True).click()
    page.get_by_label(re.compile("^its name")).fill("left_flap")
    page.get_by_label(re.compile("^moved by")).select_option("flaps")
    page.get_by_role("button", name="Add it").click()
    saved(path, "left_flap: {flaps: {down: unknown}}")
    page.get_by_label("flaps when down how").select_option("a swing")
    saved(path, "left_flap: {flaps: {down: {about: unknown, axis: unknown, swing: unknown}}}")
    page.get_by_label("flaps swing").fill("30")
    page.keyboard.press("Tab")
    saved(path, "swing: 30}")

    # a port within a component
    page.get_by_label(re.compile("^Choose something")).select_option("components.left_caliper")
    page.get_by_role("button", name="Add a port").click()
    page.get_by_label(re.compile("^its name")).fill("bleeder")
    page.get_by_label(re.compile("^thread")).last.fill("1/8 NPT female")
    page.get_by_role("button", name="Add it").click()
    saved(path, "bleeder: {thread: 1/8 NPT female, faces: unknown, at: unknown}")
    expect(page.get_by_role("heading", name="ports: bleeder")).to_be_visible()


def test_a_corner_by_tape_and_another_name(app, page, folder):
    path = folder / "mine.yaml"
    page.goto(f"{app.base}/aircraft/mine.yaml/describe?option=rigid")

    # a corner by tape, where it is; one step of undo each
    page.get_by_label(re.compile("^Choose something")).select_option("lines.left_leg")
    before = path.read_text(encoding="utf-8")
    page.get_by_label("via 2 given").select_option("from left_floor.below")
    text = saved(path, "- {from: left_floor.below, aft: 2, left: 2.6, down: 4.3}")
    assert [line for line in text.splitlines() if line not in before.splitlines()] == [
        "          - {from: left_floor.below, aft: 2, left: 2.6, down: 4.3}",
    ]
    expect(page.locator(".fp-form-body")).to_contain_text(
        "Comes to aft 9.00 in, right -11.60 in, up -5.20 in"
    )
    page.get_by_label("via 2 down").fill("4 1/2")
    page.keyboard.press("Tab")
    saved(path, "down: 4 1/2}")
    page.get_by_role("button", name="Undo").click()
    assert saved(path, "down: 4.3}") == text

    # another name, in every option that has it; and who names it, before it is taken out
    page.get_by_role("button", name="Rename left_leg").click()
    page.get_by_label("its new name").fill("left_spring")
    page.get_by_role("button", name="Rename it", exact=True).last.click()
    text = saved(path, "mirror: [left_floor, left_axle, left_pedal, left_spring, left_tail]")
    assert "left_leg:" not in text
    expect(page.get_by_role("heading", name="left_spring")).to_be_visible()
    page.get_by_label(re.compile("^Choose something")).select_option("states.gear")
    page.get_by_role("button", name="Take gear out").click()
    card = page.get_by_role("region", name="Take out")
    expect(card.get_by_role("alert")).to_contain_text("cannot be taken out yet")
    card.get_by_role("button", name="left_wheel: gear").click()
    expect(page.get_by_role("heading", name="left_wheel")).to_be_visible()
    assert path.read_text(encoding="utf-8") == text
