"""Is it sound? in a real browser: a finding understood and accepted, a measurement typed, both undone."""

from __future__ import annotations

import re
import time

import pytest
from looks import hidden_focus, outside, small_targets, violations
from playwright.sync_api import expect
from served import SLOW, hear_faults

from firmpedal.project.edit_keys import with_value
from texts import edited, example

TEXT = example("brindlewick")
REASON = "new cylinders are ordered; till then it is pushed about by hand"
OPTION = "    mirror: [left_floor, left_axle, left_pedal, left_leg, left_tail]\n"
INLINE = ("line=", "fp-skip")


@pytest.fixture(scope="module")
def folder(folder):
    for name in ("accept", "lead", "measure"):
        (folder / f"{name}.yaml").write_text(TEXT, encoding="utf-8")
    return folder


@pytest.fixture
def sound(new_context, app):
    """Opens the page of an aircraft; nothing may go wrong in it."""
    opened = []

    def opening(name, option="", **how):
        page = new_context(**{"viewport": {"width": 1280, "height": 1000}, **how}).new_page()
        hear_faults(page)
        page.set_default_timeout(SLOW)
        page.goto(f"{app.base}/aircraft/{name}.yaml/sound?option={option}")
        settled(page)
        opened.append(page)
        return page

    yield opening
    for page in opened:
        assert not page.faults


def settled(page):
    expect(page.locator(".fp-main > .fp-stale-words")).to_be_hidden(timeout=SLOW)
    expect(page.locator(".fp-findings").first).to_be_visible(timeout=SLOW)


def saved(path, wanted):
    for _ in range(100):
        text = path.read_text(encoding="utf-8")
        if text == wanted:
            return
        time.sleep(0.1)
    assert text == wanted


def finding(page, words):
    return page.locator(".fp-finding").filter(has=page.locator(".fp-told", has_text=words))


def unfolded(card):
    """The card, laid open where it is not yet; a NOTE stands among those that are folded."""
    if card.locator("xpath=ancestor::details[not(@open)]").count():
        card.page.locator(".fp-notes > summary").click()
    if not card.locator(".fp-finding-fold").evaluate("each => each.open"):
        card.locator(".fp-finding-fold > summary").click()
    return card


def fold(card, words):
    return card.locator("summary").filter(has_text=re.compile(f"^{words}"))


def test_a_warning_is_understood_accepted_with_a_reason_and_taken_back(sound, folder):
    page, path = sound("accept"), folder / "accept.yaml"
    card = unfolded(finding(page, "has 0.80 in of stroke"))
    reasons = card.locator(".fp-fold-in")
    expect(reasons).to_be_hidden(timeout=SLOW)
    fold(card, "Why, and the sum").focus()
    page.keyboard.press("Enter")  # no mouse is needed
    expect(reasons).to_contain_text("stroke of left_cylinder used at the hard foot, hot =", timeout=SLOW)
    expect(reasons).to_contain_text("Source", timeout=SLOW)
    fold(card, "Accept it").click()
    card.get_by_role("button", name="Accept").click()
    expect(card.get_by_role("alert")).to_contain_text("A reason is needed", timeout=SLOW)
    assert path.read_text(encoding="utf-8") == TEXT
    card.get_by_role("checkbox", name="right_cylinder").uncheck()
    card.get_by_label("Accept it, because").fill(REASON)
    other = unfolded(finding(page, "held by nothing but tie wraps"))
    fold(other, "Accept it").click()
    other.get_by_label("Accept it, because").fill("half a reas")
    card.get_by_label("Accept it, because").press("Enter")
    row = f'  - {{rule: stroke-short, at: components.left_cylinder, reason: "{REASON}"}}\n'
    saved(path, f"{TEXT}accepted:\n{row}")
    accepted = page.locator(".fp-finding").filter(has_text=REASON)
    expect(accepted).to_have_count(1, timeout=SLOW)
    expect(accepted).to_contain_text("WARNING", timeout=SLOW)
    expect(accepted).to_contain_text("A warning stays a warning.", timeout=SLOW)
    expect(page.locator(".fp-verdict-bar")).to_have_attribute("data-verdict", "not sound", timeout=SLOW)
    expect(page.locator(".fp-verdict-bar")).to_contain_text("6 warnings", timeout=SLOW)
    expect(finding(page, "has 0.80 in of stroke")).to_have_count(2, timeout=SLOW)  # the other side waits
    expect(other.get_by_label("Accept it, because")).to_have_value("half a reas", timeout=SLOW)
    assert violations(page) == []
    unfolded(accepted).get_by_role("button", name="Take the acceptance back").click()
    saved(path, f"{TEXT}accepted: []\n")
    expect(accepted).to_have_count(0, timeout=SLOW)
    page.get_by_role("button", name="Undo").click()
    expect(accepted).to_have_count(1, timeout=SLOW)
    page.get_by_role("button", name="Undo").click()
    saved(path, TEXT)


def test_in_an_option_it_is_accepted_there_and_leads_to_its_line_and_place_in_space(sound, folder):
    page = sound("lead", "rigid")
    card = unfolded(finding(page, "passes the edge of left_leg_fairing twice"))
    other = unfolded(finding(page, "the first straight of left_leg"))
    fold(other, "Accept it").click()
    expect(other).to_contain_text("the last straight of left_leg", timeout=SLOW)  # is accepted along with it
    other.get_by_label("Accept it, because").fill("half a reas")
    fold(card, "Accept it").click()
    card.get_by_label("Accept it, because").fill("bound with leather")
    card.get_by_role("button", name="Accept").click()
    row = "      - {{rule: covered-edge-chafes, at: lines.{}, reason: bound with leather}}\n"
    own = f"    accepted:\n{row.format('left_leg')}{row.format('right_leg')}"
    saved(folder / "lead.yaml", edited(TEXT, (OPTION, OPTION + own)))
    expect(card).to_contain_text("by the builder: bound with leather.", timeout=SLOW)
    expect(other.get_by_label("Accept it, because")).to_have_value("half a reas", timeout=SLOW)
    line = 1 + TEXT[: TEXT.index("      left_leg:\n")].count("\n")
    card.get_by_role("link", name=f"left_leg: line {line} of the text").click()
    page.wait_for_url(re.compile(rf"/describe/text\?.*line={line}$"))
    page.wait_for_selector(".cm-content")
    page.go_back()
    settled(page)
    card.get_by_role("link", name="left_leg: in space").click()
    page.wait_for_url("**/describe/space?option=rigid&at=lines.left_leg")
    expect(page.get_by_role("region", name="What is chosen")).to_contain_text("left_leg", timeout=SLOW)


def test_a_missing_measurement_is_typed_and_the_answer_follows(sound, folder):
    page, path = sound("measure", "rigid"), folder / "measure.yaml"
    page.get_by_role("button", name="Open all").click()  # what is to be measured is folded thing by thing
    field = page.get_by_role("textbox", name="the rated pressure of left_caliper")
    asked = page.locator(".fp-measure").filter(has_text="the rated pressure of left_caliper")
    count = page.locator(".fp-measure").count()
    half = page.get_by_role("textbox", name="the rated pressure of left_cylinder")
    half.fill("9")
    field.fill("12 kpsi")
    field.press("Enter")
    expect(asked.get_by_role("alert")).to_contain_text(
        "'kpsi' is not a unit of pressure known here", timeout=SLOW
    )
    expect(field).to_have_attribute("aria-invalid", "true", timeout=SLOW)
    assert path.read_text(encoding="utf-8") == TEXT
    field.fill("300")  # far less than it gets: what was missing becomes a warning
    asked.get_by_role("button", name="Write it down").click()
    expect(asked).to_have_count(0, timeout=SLOW)
    at = TEXT.index("\npedals:")  # the caliper is the last of the components
    saved(path, f"{TEXT[:at]}    rated pressure: 300\n{TEXT[at:]}")
    expect(page.locator(".fp-measure")).to_have_count(count - 1, timeout=SLOW)
    expect(finding(page, "left_caliper is good for 300 psi")).to_have_count(1, timeout=SLOW)
    expect(page.locator(".fp-verdict-bar")).to_have_attribute("data-verdict", "not sound", timeout=SLOW)
    expect(page.locator(".fp-done")).to_contain_text("for every option", timeout=SLOW)
    expect(half).to_have_value("9", timeout=SLOW)
    normal = page.get_by_role("textbox", name="left_axle normal")
    normal.fill("aft")
    normal.press("Enter")
    expect(normal).to_have_count(0, timeout=SLOW)
    assert "        normal: aft\n" in path.read_text(encoding="utf-8")
    for _ in range(2):
        page.get_by_role("button", name="Undo").click()
    saved(path, TEXT)
    expect(page.locator(".fp-done")).to_be_hidden(timeout=SLOW)  # it is so no more
    expect(asked).to_have_count(1, timeout=SLOW)
    expect(page.get_by_role("link", name="Print the list")).to_have_attribute(
        "href", re.compile(r"/paper/measure\.yaml/form\.pdf\?option=rigid")
    )


def test_a_thread_that_is_only_supposed_is_looked_at_and_taken_over(sound, folder):
    path, place = folder / "thread.yaml", "components.left_caliper.ports.inlet.thread"
    supposed = with_value(TEXT, place, "{value: 1/8 NPT female, mark: assumed}", None)
    path.write_text(supposed, encoding="utf-8")
    page = sound("thread", "rigid")
    page.get_by_role("button", name="Open all").click()
    row = page.locator(".fp-measure").filter(has_text="which thread left_caliper.inlet has")
    field = row.get_by_role("textbox")
    field.fill("1/8 NPT")
    field.press("Enter")
    expect(row.get_by_role("alert")).to_contain_text("does not say male or female", timeout=SLOW)
    expect(row.get_by_role("alert")).to_contain_text("1/8 NPT male", timeout=SLOW)
    assert path.read_text(encoding="utf-8") == supposed
    row.get_by_role("button", name="Yes, write 1/8 NPT female").click()
    expect(row).to_have_count(0, timeout=SLOW)
    saved(path, TEXT)


@pytest.mark.parametrize("width", [390, 1280, 1920])
def test_folded_out_it_fits_and_everything_is_reached_by_keyboard(sound, width):
    page = sound("accept", viewport={"width": width, "height": 900}, color_scheme="dark")
    page.get_by_role("button", name="Open all").click()
    for n in range(4):
        page.locator(".fp-finding .fp-fold > summary").nth(n).click()
    assert outside(page) == []
    assert [each for each in small_targets(page, 44) if not any(word in each[0] for word in INLINE)] == []
    assert violations(page) == []
    page.evaluate("() => { document.activeElement.blur(); scrollTo(0, 0); }")
    unreached, unseen = hidden_focus(page)
    assert unreached == []
    assert unseen == []
