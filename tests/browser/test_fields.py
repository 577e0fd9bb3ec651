"""The fields of an aircraft in a real browser: chosen in a picture, filled in, refused, added."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import expect
from served import SLOW, saved

from texts import edited, example


@pytest.fixture(scope="module")
def folder(folder):
    (folder / "mine.yaml").write_text(example("brindlewick"), encoding="utf-8")
    return folder


def field(page, name, within=None):
    return (within or page.locator(".fp-form-body")).get_by_role("group", name=name, exact=True).first


def area(page, name):
    return page.locator(f'.fp-area[data-at="{name}"]')


def changed(before, after):
    """The lines that are new, and those that are gone."""
    old, new = before.splitlines(), after.splitlines()
    return [line for line in new if line not in old], [line for line in old if line not in new]


def test_a_figure_out_of_the_usual_is_saved_and_told_at_its_field_at_once(app, page, folder):
    path = folder / "odd.yaml"
    path.write_text(example("brindlewick"), encoding="utf-8")
    page.goto(f"{app.base}/aircraft/odd.yaml/describe?at=components.left_cylinder.bore")
    bore = field(page, "bore")
    expect(bore.get_by_role("status")).to_have_count(0)
    bore.get_by_role("textbox").fill("500")
    page.keyboard.press("Enter")
    words = "left_cylinder bore is 500.00 in; from 0.25 in to 4.00 in is usual"
    expect(bore.get_by_role("status")).to_have_text(re.compile(f"NOTE\\s*{re.escape(words)}"))
    expect(bore.get_by_role("alert")).to_have_count(0)
    saved(path, "bore: 500")
    page.goto(f"{app.base}/aircraft/odd.yaml/sound")
    expect(page.locator(".fp-finding").filter(has_text=words)).to_have_count(1, timeout=SLOW)
    page.goto(f"{app.base}/aircraft/odd.yaml/describe?at=components.left_cylinder.bore")
    bore.get_by_role("textbox").fill("5/8")
    page.keyboard.press("Enter")
    expect(bore.get_by_role("status")).to_have_count(0)


def test_a_newcomer_fills_in_what_the_layout_left_unknown(app, page, folder):
    path = folder / "finchcote.yaml"
    page.goto(f"{app.base}/new?gear=tailwheel&leg=rod&brakes=toe&seats=1&valve=no&length=in")
    page.get_by_label("What do you call it?").fill("finchcote")
    page.get_by_role("button", name="Begin this aircraft").click()
    before = saved(path, "left_cylinder")

    # a part by keys alone: by Tab to it, by Enter into its form
    expect(area(page, "components.left_cylinder")).to_be_visible(timeout=SLOW)
    for _ in range(60):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.dataset?.at") == "components.left_cylinder":
            break
    page.keyboard.press("Enter")
    expect(page.get_by_role("heading", name="left_cylinder", exact=True)).to_be_visible()
    expect(area(page, "components.left_cylinder")).to_have_attribute("aria-pressed", "true")

    expect(field(page, "bore")).to_contain_text("to measure")
    field(page, "bore").get_by_role("textbox").fill("38 mm")
    page.keyboard.press("Enter")
    saved(path, "bore: 38 mm")
    expect(field(page, "bore")).not_to_contain_text("to measure")
    expect(page.locator(":focus")).to_have_value("38 mm")  # nobody loses their place by a save
    field(page, "stroke").get_by_role("textbox").fill("1 1/2")
    page.keyboard.press("Tab")
    seat = field(page, "seat")
    seat.get_by_label("seat aft").fill("13 1/8")
    page.keyboard.press("Tab")
    page.keyboard.type("-7.5")
    page.keyboard.press("Tab")
    text = saved(path, "seat: [13 1/8, -7.5, unknown]")
    new, gone = changed(before, text)
    assert [line.split("#")[0].strip() for line in new] == [
        "bore: 38 mm", "stroke: 1 1/2", "seat: [13 1/8, -7.5, unknown]",
    ]  # fmt: skip
    assert [line.partition("#")[2] for line in new] == [line.partition("#")[2] for line in gone]

    # a clamp on a line that is chosen in the list
    page.get_by_label(re.compile("^Choose something")).select_option("lines.left_leg")
    page.get_by_role("button", name="Add a clamp").click()
    text = saved(path, "clamps: [unknown]")
    field(page, "clamps").get_by_role("textbox").fill("4 1/2")
    page.keyboard.press("Tab")
    saved(path, "clamps: [4 1/2]")
    page.get_by_role("button", name="Undo").click()
    assert saved(path, "clamps: [unknown]") == text
    expect(field(page, "clamps").get_by_role("textbox")).to_have_value("unknown")


def test_what_cannot_be_read_is_said_at_its_field_and_nothing_is_lost(app, page, folder):
    path = folder / "mine.yaml"
    page.goto(f"{app.base}/aircraft/mine.yaml/describe?at=components.left_cylinder.bore&option=rigid")
    bore = field(page, "bore")
    expect(bore.get_by_role("textbox")).to_be_focused()
    bore.get_by_role("textbox").fill("5/8 elbows")
    page.keyboard.press("Tab")
    expect(bore.get_by_role("alert")).to_contain_text("elbows")
    expect(bore.get_by_role("textbox")).to_have_value("5/8 elbows")
    expect(bore.get_by_role("textbox")).to_have_attribute("aria-invalid", "true")
    assert path.read_text(encoding="utf-8") == example("brindlewick")
    bore.get_by_role("textbox").fill("5/8")
    page.keyboard.press("Tab")
    expect(bore.get_by_role("alert")).to_have_count(0)
    assert saved(path, "bore: 5/8") == edited(example("brindlewick"), ("bore: 0.625", "bore: 5/8"))
    bore.get_by_label("how sure").select_option("assumed")
    saved(path, "bore: {value: 5/8, mark: assumed}")

    # what is still needed is not taken out; what is not needed is, once it has been asked
    area(page, "components.left_caliper").click(position={"x": 20, "y": 20})
    page.get_by_role("button", name="Take left_caliper out").click()
    expect(page.get_by_role("alert").filter(has_text="cannot be taken out yet")).to_contain_text(
        "left_caliper"
    )
    expect(page.get_by_role("button", name="Yes, take it out")).to_have_count(0)
    page.get_by_role("button", name="Leave it").click()
    page.get_by_label(re.compile("^Choose something")).select_option("zones.left_wheel_fairing")
    page.get_by_role("button", name="Take left_wheel_fairing out").click()
    expect(page.get_by_role("region", name="Take out")).to_contain_text("right_wheel_fairing")
    before = path.read_text(encoding="utf-8")
    page.get_by_role("button", name="Yes, take it out").click()
    expect(page.get_by_role("heading", name="left_wheel_fairing")).to_have_count(0)
    assert "left_wheel_fairing" not in path.read_text(encoding="utf-8")
    page.get_by_role("button", name="Undo").click()
    assert saved(path, "left_wheel_fairing") == before

    # something new
    page.get_by_role("button", name="bulkhead", exact=True).click()
    page.get_by_label(re.compile("^its name")).fill("left_tank_wall")
    page.get_by_role("button", name="Add it").click()
    expect(page.get_by_role("heading", name="left_tank_wall")).to_be_visible()
    text = saved(path, "left_tank_wall:")
    assert text.count("unknown") == before.count("unknown") + 6  # place, way, thickness, metal, two seats
    page.get_by_role("link", name=re.compile(r"^line \d+")).first.click()
    expect(page.locator(".cm-activeLine")).to_contain_text("unknown")


def test_what_another_editor_wrote_in_the_same_field_is_asked_about(app, page, folder):
    path = folder / "both.yaml"
    path.write_text(example("brindlewick"), encoding="utf-8")
    page.goto(f"{app.base}/aircraft/both.yaml/describe?at=components.left_cylinder.bore&option=rigid")
    bore = field(page, "bore")
    pen = bore.get_by_role("textbox")
    expect(pen).to_be_focused()
    pen.fill("3/4")
    theirs = edited(example("brindlewick"), ("bore: 0.625", "bore: 0.7"))
    path.write_text(theirs, encoding="utf-8")
    expect(page.get_by_role("button", name="Undo")).to_have_attribute(
        "title", "Undo: changed by another program"
    )
    page.keyboard.press("Tab")
    expect(bore.get_by_role("alert")).to_contain_text("wrote 0.7 here. You typed 3/4.")
    assert path.read_text(encoding="utf-8") == theirs
    expect(pen).to_have_value("3/4")

    # it is not lost by going elsewhere, and either answer holds
    page.get_by_label(re.compile("^Choose something")).select_option("components.left_caliper")
    expect(bore.get_by_role("alert")).to_be_visible()
    pen.focus()  # as whoever is led back to it stands in it: what is kept shows all the same
    bore.get_by_role("button", name="Keep 0.7").dispatch_event("click")
    expect(bore.get_by_role("alert")).to_have_count(0)
    expect(pen).to_have_value("0.7")
    pen.fill("3/4")
    path.write_text(edited(theirs, ("bore: 0.7", "bore: 0.75")), encoding="utf-8")
    expect(bore.get_by_role("textbox")).to_have_js_property("defaultValue", "0.75")
    page.keyboard.press("Tab")
    bore.get_by_role("button", name="Write 3/4").click()
    saved(path, "bore: 3/4")
    expect(bore.get_by_role("alert")).to_have_count(0)

    # whoever goes on writing alone is asked nothing
    for words in ("5/8", "7/8", "3/4"):
        pen.fill(words)
        page.keyboard.press("Enter")
    saved(path, "bore: 3/4")
    expect(bore.get_by_role("alert")).to_have_count(0)


def test_what_was_folded_open_stays_open_and_enter_gives_a_name(app, page, folder):
    path = folder / "trial.yaml"
    path.write_text(example("brindlewick"), encoding="utf-8")
    page.goto(f"{app.base}/aircraft/trial.yaml/describe?at=components.left_cylinder")
    body = page.locator(".fp-form-body")
    expect(body).to_be_visible(timeout=SLOW)
    folded = 'details > [data-place="components.left_cylinder.{}"]'
    body.locator('details:has(> [data-place="components.left_cylinder.air space"]) > summary').click()
    for key, words in (("rated pressure", "1200 psi"), ("free stroke", "1/16 in")):
        cell = body.locator(folded.format(key)).get_by_role("textbox")
        expect(cell).to_be_visible()
        cell.fill(words)
        page.keyboard.press("Tab")
        saved(path, f"{key}: {words}")
        expect(body.locator(folded.format(key))).to_have_count(0)
    expect(body.locator(folded.format("air space")).get_by_role("textbox")).to_be_visible()
    page.get_by_role("button", name="Rename left_cylinder", exact=True).click()
    page.get_by_label("its new name").fill("pilot_left")
    page.keyboard.press("Enter")
    expect(page.get_by_role("heading", name="pilot_left", exact=True)).to_be_visible()
    saved(path, "\n  pilot_left:")
