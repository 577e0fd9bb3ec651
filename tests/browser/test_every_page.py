"""Every page of the app's own list, on its real server: widths, keyboard, axe, nothing asked elsewhere."""

from __future__ import annotations

import pytest
from looks import faint, hidden_focus, outside, small_targets, violations
from served import SLOW

from firmpedal.web.site import every_page
from texts import example

WIDTHS = (390, 768, 1280, 1920)
DESK = {"width": 1280, "height": 900}
DRAWN = "() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))"
# A file with errors says the same on every page but the two on which it is mended, and each thing has a form.
BROKEN = ("/aircraft/broken.yaml/describe/text", "/aircraft/broken.yaml/describe?at=aircraft.gear")
FORMS = ("components.left_cylinder", "lines.left_leg", "lines.right_leg")
PAGES = [
    *every_page("mine.yaml", "rigid"), "/aircraft/broken.yaml/sound", *BROKEN,
    *(f"/aircraft/mine.yaml/describe?option=rigid&at={place}" for place in FORMS),
]  # fmt: skip
BIG = 18  # px; what is read at arm's length, with a lamp in the other hand: our own choice
# A link within a sentence or a list of lines is exempt from the size of targets (WCAG 2.2, 2.5.8, inline).
INLINE = ("line=", "?at=", "&amp;at=", "fp-skip", 'type="radio"')


@pytest.fixture(scope="module")
def folder(folder):
    text = example("brindlewick")
    (folder / "mine.yaml").write_text(text, encoding="utf-8")
    (folder / "broken.yaml").write_text(text.replace("gear: tailwheel", "gear: tailwhel"), encoding="utf-8")
    return folder


@pytest.fixture(scope="module")
def watched(app):
    """Opens a page of a window and waits for all of it; notes each request to anybody else."""
    asked = []

    def opening(page, address):
        page.on("request", lambda it: asked.append(it.url))
        page.on("websocket", lambda it: asked.append(it.url))
        before = len(asked)
        page.goto(app.base + address)
        page.wait_for_selector(".fp-main")
        page.wait_for_function("() => !document.body.innerText.includes('Working it out')", timeout=SLOW)
        assert len(asked) > before
        return page

    yield opening
    ours = (app.base, app.base.replace("http", "ws", 1), "data:", "blob:")
    assert [each for each in asked if not each.startswith(ours)] == []


@pytest.fixture(scope="module", params=PAGES)
def desk(request, one_context, watched):
    """A page as it comes on a desk, loaded once: what is looked at there leaves it as it was."""
    page = one_context.new_page()
    page.set_viewport_size(DESK)
    yield watched(page, request.param)
    page.close()


def test_no_page_scrolls_sideways_and_axe_finds_nothing(desk):
    page, faults = desk, {}
    page.emulate_media(color_scheme="light")
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 900})
        page.evaluate(DRAWN)
        small = [each for each in small_targets(page, 44) if not any(word in each[0] for word in INLINE)]
        found = [*outside(page), *small, *(violations(page) if width in (390, 1280) else ())]
        if found:
            faults[width] = found
    assert faults == {}
    page.emulate_media(color_scheme="dark")
    assert faint(page) == []


def test_the_keyboard_reaches_everything_and_shows_where_it_is(desk):
    desk.set_viewport_size(DESK)
    desk.evaluate("() => { document.activeElement.blur(); scrollTo(0, 0); }")
    assert hidden_focus(desk) == ([], [])


@pytest.mark.parametrize("address", PAGES)
def test_so_it_does_on_a_page_that_comes_on_a_phone(one_context, watched, address):
    page = one_context.new_page()
    page.set_viewport_size({"width": 390, "height": 900})
    reached = hidden_focus(watched(page, address))
    page.close()
    assert reached == ([], [])


@pytest.mark.parametrize("step", ["make", "prove", "buy"])
def test_on_a_phone_what_is_ticked_and_read_is_big_and_the_steps_lie_under_the_thumb(
    new_context, watched, step
):
    phone = new_context(viewport={"width": 390, "height": 844}, has_touch=True, is_mobile=True)
    page = watched(phone.new_page(), f"/aircraft/mine.yaml/{step}?option=rigid")
    ticks = page.eval_on_selector_all(
        ".fp-sheet .fp-tick", "all => all.map(each => [each.getBoundingClientRect().height, each.outerHTML])"
    )
    assert [each for each in ticks if each[0] < 56] == []
    letters = page.eval_on_selector_all(
        ".fp-sheet .fp-table td:not(:empty), .fp-sheet .fp-tick",
        "all => all.filter(each => each.checkVisibility())"
        ".map(each => parseFloat(getComputedStyle(each).fontSize))",
    )
    assert letters
    assert min(letters) >= BIG
    page.mouse.wheel(0, 1500)
    page.wait_for_timeout(100)
    bars = page.eval_on_selector_all(
        ".fp-steps a",
        "all => all.map(each => each.getBoundingClientRect()).map(box => [box.top, box.bottom])",
    )
    assert len(bars) == 7
    assert min(top for top, _ in bars) > 844 * 2 / 3
    assert max(bottom for _, bottom in bars) <= 844
    page.get_by_role("link", name="Keep").click()
    page.wait_for_url("**/keep?option=rigid")
