"""How the pages lie on screens: a phone's first screen, drawings whole at first, folds, one left edge."""

from __future__ import annotations

from functools import partial

import pytest
from looks import letters_drawn, outside, violations
from playwright.sync_api import expect
from served import SLOW, hear_faults

from firmpedal.web import addresses
from firmpedal.web.site import STEPS, every_page
from texts import example

FILE, OPTION = "mine.yaml", "rigid"
PHONE = {"viewport": {"width": 390, "height": 844}, "has_touch": True, "is_mobile": True}
DRAWN = ("describe", "make", "fit", "pedal", "stopping", "heat")
HEAD = 330  # px; a phone's screen has more than twice as much, and the steps lie below
LONGEST = 844 * 7  # px; seven screens of that phone
# Pages of few sheets, of which each part can be folded.
PARTED = (
    addresses.options,
    addresses.retrofit,
    *(partial(addresses.step, name=name) for name in ("buy", "pedal", "stopping", "heat")),
)
LEGIBLE = 11  # px; the smallest letters of a drawing at its full size
# What sticks out of the screen, or of the box that a drawing lies in, of drawings that are seen.
TOO_WIDE = """
() => [...document.querySelectorAll(".fp-drawing-box")]
  .filter((box) => box.checkVisibility())
  .map((box) => [box.getBoundingClientRect(), box.querySelector("svg").getBoundingClientRect(), box])
  .filter(([box, drawn, each]) => drawn.left < box.left || drawn.right > box.right
    || box.right > innerWidth || each.scrollWidth > each.clientWidth)
  .map(([box, drawn]) => [box.right, drawn.right])
"""
IN_SIGHT = """
(each) => {
  const { top } = each.getBoundingClientRect();
  return top >= 0 && top < innerHeight / 2;
}
"""
SIDES = "(each) => { const { left, right } = each.getBoundingClientRect(); return [left, right]; }"


@pytest.fixture(scope="module")
def folder(folder):
    (folder / FILE).write_text(example("brindlewick"), encoding="utf-8")
    return folder


@pytest.fixture
def shown(new_context, app):
    """Opens a page and waits for all of it; nothing may go wrong in it."""
    pages = []

    def opening(address, **how):
        page = new_context(**{"viewport": {"width": 1280, "height": 900}, **how}).new_page()
        hear_faults(page)
        page.set_default_timeout(SLOW)
        going(page, address)
        pages.append(page)
        return page

    def going(page, address):
        page.goto(app.base + address)
        page.wait_for_selector(".fp-main")
        page.wait_for_function("() => !document.body.innerText.includes('Working it out')", timeout=SLOW)

    opening.going = going
    yield opening
    for page in pages:
        assert not page.faults


def opened(page):
    button = page.get_by_role("button", name="Open all")
    if button.count():
        button.click()


@pytest.mark.parametrize("step", DRAWN)
def test_at_first_no_drawing_is_wider_than_a_phone_and_its_full_size_is_one_press_away(shown, step):
    page = shown(addresses.step(FILE, step, OPTION), **PHONE)
    opened(page)
    page.wait_for_selector(".fp-drawing-box svg")
    assert page.evaluate(TOO_WIDE) == []
    full = page.get_by_role("button", name="Full size").locator("visible=true")
    expect(full.first).to_have_attribute("aria-pressed", "false")
    for button in full.all():
        button.click()
    assert letters_drawn(page, LEGIBLE) == []
    assert outside(page) == []
    assert violations(page) == []
    for button in full.all():
        button.click()
    assert page.evaluate(TOO_WIDE) == []


@pytest.mark.parametrize("width", [1024, 1100, 1250, 1280])
def test_the_circuit_beside_its_fields_lies_within_its_column_and_can_be_read(shown, width):
    page = shown(addresses.step(FILE, "describe", OPTION), viewport={"width": width, "height": 900})
    page.wait_for_selector(".fp-drawing-box svg")
    assert page.evaluate(TOO_WIDE) == []
    assert letters_drawn(page, LEGIBLE) == []


def test_on_a_phone_every_page_begins_on_the_upper_part_of_the_screen(shown):
    page, begins = None, {}
    for address in every_page(FILE, OPTION):
        if not address.startswith("/aircraft/"):
            continue
        page = page or shown(address, **PHONE)
        shown.going(page, address)
        page.wait_for_selector(".fp-next:visible")
        begins[address] = page.locator(".fp-main > .fp-step-head + *").evaluate(
            "(each) => each.getBoundingClientRect().top + scrollY"
        )
    assert begins
    assert {address: top for address, top in begins.items() if top > HEAD} == {}


def test_on_a_phone_the_tools_and_the_reason_of_the_verdict_are_folded_and_come_when_asked(shown):
    page = shown(addresses.step(FILE, "make", OPTION), **PHONE)
    undo, why = page.get_by_role("button", name="Undo"), page.locator("#why")
    expect(undo).to_be_hidden()
    expect(why).to_be_hidden()
    expect(page.locator(".fp-verdict-bar strong")).to_be_visible()
    expect(page.get_by_text("Step 4 of 7")).to_be_visible()
    page.get_by_role("button", name="Tools").click()
    page.get_by_role("button", name="Why").click()
    expect(undo).to_be_visible()
    expect(page.get_by_text("every change is saved")).to_be_visible()
    expect(why).to_contain_text("nothing was found that could hurt somebody")
    assert outside(page) == []
    assert violations(page) == []
    page.get_by_role("button", name="Tools").click()
    expect(undo).to_be_hidden()
    page.set_viewport_size({"width": 1280, "height": 900})
    expect(page.get_by_role("button", name="Tools")).to_be_hidden()
    expect(undo).to_be_visible()


def test_on_a_broad_screen_every_step_has_the_same_left_edge_and_a_head_as_broad_as_its_column(shown):
    page = shown(addresses.step(FILE, "describe", OPTION), viewport={"width": 1920, "height": 1080})
    edges, ends = {}, {}
    ways = (addresses.text, addresses.space, addresses.options, addresses.retrofit)
    pages = [addresses.step(FILE, name, OPTION) for name, _ in STEPS] + [way(FILE, OPTION) for way in ways]
    for address in pages:
        shown.going(page, address)
        page.wait_for_selector(".fp-next:visible")
        names = (".fp-top", ".fp-verdict-bar", ".fp-step-head", ".fp-next")
        sides = {name: page.locator(name).first.evaluate(SIDES) for name in names}
        edges[address] = tuple(left for left, _ in sides.values())
        right = {name: sides[name][1] for name in (".fp-top", ".fp-verdict-bar", ".fp-next")}
        if max(right.values()) - min(right.values()) > 1:
            ends[address] = right
    assert len(set(edges.values())) == 1, edges
    assert ends == {}


def test_make_is_folded_and_a_link_opens_the_card_that_it_names(shown):
    make = addresses.step(FILE, "make", OPTION)
    page = shown(make)
    cards = page.locator(".fp-sheet-fold")
    assert [each.evaluate("(it) => it.open") for each in cards.all()] == [
        True,
        *[False] * (cards.count() - 1),
    ]
    leg = page.locator("details", has=page.get_by_role("heading", name="Tube left_leg"))
    expect(leg.locator("summary")).to_contain_text("cut to")
    expect(leg.locator("summary")).to_contain_text("to measure")
    page.get_by_role("navigation", name="On this page").get_by_role("link", name="Tube left_leg").click()
    expect(leg).to_have_attribute("open", "")
    assert leg.evaluate(IN_SIGHT)
    page.keyboard.press("Escape")
    leg.locator("summary").focus()
    page.keyboard.press("Enter")  # no mouse is needed
    expect(leg).not_to_have_attribute("open", "")
    page.get_by_role("navigation", name="On this page").get_by_role("link", name="Tube left_leg").click()
    expect(leg).to_have_attribute("open", "")  # the same way once more
    page.reload()
    expect(leg).to_have_attribute("open", "")  # as it was left
    other = shown(f"{make}#{leg.get_attribute('id')}", **PHONE)
    named = other.locator("details", has=other.get_by_role("heading", name="Tube left_leg"))
    expect(named).to_have_attribute("open", "")
    other.wait_for_function(f"() => ({IN_SIGHT})(document.querySelector('#{leg.get_attribute('id')}'))")


def test_all_is_opened_at_once_folded_again_and_printed_whole(shown):
    page = shown(addresses.step(FILE, "make", OPTION))
    cards = page.locator(".fp-sheet-fold")
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    assert all(each.evaluate("(it) => it.open") for each in cards.all())
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    assert sum(each.evaluate("(it) => it.open") for each in cards.all()) == 1
    page.get_by_role("button", name="Open all").click()
    assert all(each.evaluate("(it) => it.open") for each in cards.all())
    page.locator(".fp-sheet-fold input[type=checkbox]").first.check()
    expect(page.locator(".fp-sheet-ticked", has_text="1 of")).to_have_count(1)
    page.get_by_role("button", name="Fold all").click()
    assert not any(each.evaluate("(it) => it.open") for each in cards.all())
    expect(page.locator(".fp-sheet-ticked", has_text="1 of")).to_be_visible()


def test_on_a_phone_no_page_is_longer_than_a_few_screens_and_all_of_it_comes_at_one_press(shown):
    page, heights, missing = None, {}, {}
    for address in every_page(FILE, OPTION):
        page = page or shown(address, **PHONE)
        shown.going(page, address)
        heights[address] = page.evaluate("document.documentElement.scrollHeight")
        opened(page)
        if page.locator(".fp-part").count():
            folded = page.locator(".fp-part-in:not(:visible)").count()
            missing |= {address: folded} if folded else {}
            assert outside(page) == []
    assert {address: height for address, height in heights.items() if height > LONGEST} == {}
    assert missing == {}


@pytest.mark.parametrize("way", PARTED)
def test_parts_are_folded_on_a_phone_and_lie_open_where_there_is_room(shown, way):
    address = way(FILE, option=OPTION)
    page = shown(address)
    parts = page.locator(".fp-part")
    count = parts.count()
    assert count > 2
    assert all(each.evaluate("(it) => it.open") for each in parts.all())
    expect(page.get_by_role("button", name="Open all")).to_be_hidden()
    page.set_viewport_size({"width": 390, "height": 844})
    shown.going(page, address)  # what only lay open was nobody's choice, and is not kept
    first = page.locator(".fp-part[data-first]").count()
    assert sum(each.evaluate("(it) => it.open") for each in parts.all()) == first
    assert violations(page) == []
    last = page.locator(".fp-part:not([data-first])").last
    last.locator("summary").focus()
    page.keyboard.press("Enter")  # no mouse is needed
    expect(last).to_have_attribute("open", "")
    page.reload()
    expect(last).to_have_attribute("open", "")  # as it was left
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    assert all(each.evaluate("(it) => it.open") for each in parts.all())
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    assert sum(each.evaluate("(it) => it.open") for each in parts.all()) == first + 1


def test_a_folded_part_of_the_work_says_what_is_to_tick_and_what_is_ticked(shown):
    page = shown(addresses.retrofit(FILE, OPTION), **PHONE)
    drain = page.locator(".fp-part", has=page.get_by_role("heading", name="3. Drain"))
    expect(drain.locator("summary")).to_contain_text("2 to tick")
    drain.locator("summary").tap()
    drain.get_by_role("checkbox").first.check()
    drain.locator("summary").tap()
    expect(drain.locator("summary")).to_contain_text("1 of 2 ticked")
    page.reload()
    expect(drain.locator("summary")).to_contain_text("1 of 2 ticked")


def test_who_wants_to_begin_an_option_finds_the_form_open(shown):
    page = shown(addresses.step(FILE, "describe"), **PHONE)
    page.locator(".fp-form-add").get_by_role("link", name="Begin an option").click()
    expect(page.get_by_label("its name, such as braided hose")).to_be_visible()
    assert page.locator("#begin").evaluate(IN_SIGHT)


def test_side_by_side_is_the_one_place_that_is_marked(shown):
    page = shown(addresses.options(FILE, OPTION))
    options = page.get_by_role("navigation", name="Options of this aircraft")
    expect(options.locator("[aria-current]")).to_have_text(["side by side"])
    expect(
        page.get_by_role("navigation", name="The way through the job").locator("[aria-current]")
    ).to_have_text(["Is it sound?"])
    expect(page.locator(".fp-frame > .fp-verdict-bar strong")).to_contain_text("(rigid)")
    options.get_by_role("link", name="all hose").click()
    expect(options.locator("[aria-current]")).to_have_text(["all hose"])
    expect(page.locator(".fp-step-title h2")).to_have_text("Is it sound?")
