"""The lines in space in a real browser: corners dragged and stepped, things moved, everything without it."""

from __future__ import annotations

import re

import pytest
from looks import outside, small_targets, violations
from playwright.sync_api import expect
from served import SLOW, hear_faults, saved

from texts import edited, example

INCH = 0.0254  # m, exact by definition
NO_WEBGL = """
const get = HTMLCanvasElement.prototype.getContext;
HTMLCanvasElement.prototype.getContext = function (kind, ...rest) {
  return /webgl/.test(kind) ? null : get.call(this, kind, ...rest);
};
"""
# The picture lets itself be asked by its element: where something is seen, and what is drawn.
PICTURE = "getElement(Number(document.querySelector('.fp-space-box').id.slice(1))).picture"
SEEN = f"""(at) => {{
  const picture = {PICTURE}, box = picture.canvas.getBoundingClientRect();
  const Vector = picture.corners[0].at.constructor;
  const {{x, y}} = picture.project(new Vector(...at));
  return [box.left + x, box.top + y];
}}"""


@pytest.fixture(scope="module")
def folder(folder):
    """Two aircraft that are only looked at."""
    for name in ("brindlewick", "oatmere"):
        (folder / f"{name}.yaml").write_text(example(name), encoding="utf-8")
    return folder


@pytest.fixture
def space(new_context, app):
    """Opens the page on a place; nothing may go wrong in it, or be asked of anybody else."""
    opened = []

    def opening(name, option="", at="", script="", **how):
        usual = {"viewport": {"width": 1280, "height": 1000}, "reduced_motion": "reduce"}
        page = new_context(**{**usual, **how}).new_page()
        hear_faults(page)
        page.on("request", lambda it: page.faults.append(it.url) if foreign(it.url, app.base) else None)
        page.set_default_timeout(SLOW)
        if script:
            page.add_init_script(script)
        page.goto(f"{app.base}/aircraft/{name}.yaml/describe/space?option={option}&at={at}")
        answered(page)
        opened.append(page)
        return page

    yield opening
    for page in opened:
        assert not page.faults


def foreign(address, base):
    return address.startswith(("http", "ws")) and not address.startswith(
        (base, base.replace("http", "ws", 1))
    )


def answered(page):
    expect(page.locator(".fp-main > .fp-stale-words")).to_be_hidden(timeout=SLOW)
    expect(page.locator(".fp-space")).to_be_visible(timeout=SLOW)


def drawn(page):
    """Wait for the picture, and until it stands still."""
    page.wait_for_function(f"() => {PICTURE}?.looked", timeout=SLOW)
    page.wait_for_timeout(400)


def card(page):
    return page.get_by_role("region", name="What is chosen")


def end_of(page, line, number):
    return page.evaluate(f"() => {PICTURE}.lines.get('{line}').points.at({number})")


def pick_up(page, corner):
    """Put the pointer on a corner and press."""
    x, y = page.evaluate(SEEN, [each * INCH for each in corner])
    page.mouse.move(x, y)
    page.mouse.down()
    return x, y


def test_a_corner_is_dragged_and_everything_follows(space, mine):
    page = space(mine.stem, "rigid", "lines.left_leg")
    drawn(page)
    page.get_by_role("button", name="From the left").click()
    drawn(page)
    zoom = page.evaluate(f"() => {PICTURE}.looking.camera.zoom")
    before = card(page).locator("dd", has_text="39.63 in")
    expect(before).to_have_count(1)
    x, y = pick_up(page, (9, -11.6, -5.2))
    page.mouse.move(x + 1.3 * INCH * zoom, y - 0.5 * INCH * zoom, steps=8)
    # Seen from the left, aft is to the right. The line follows while it is dragged, and says its length.
    assert page.evaluate(f"() => {PICTURE}.canvas.dataset.length").endswith(" in in straight legs")
    handle = page.evaluate(f"() => {PICTURE}.corners[1].handle.position.toArray()")
    page.mouse.up()
    text = saved(mine, "[10.3125, -11.6, -4.6875]")
    old, more = "          - [9.0, -11.6, -5.2]\n", "          - [5.6"
    new = "          - [10.3125, -11.6, -4.6875]\n"
    assert text == edited(example("brindlewick"), (old + more, new + more))
    assert handle == pytest.approx([each * INCH for each in (10.3125, -11.6, -4.6875)], abs=1e-6)
    answered(page)
    expect(card(page).get_by_role("heading", level=2)).to_have_text("corner 2 of left_leg")
    page.get_by_role("button", name="left_leg, tube").click()
    expect(before).to_have_count(0)
    page.get_by_role("button", name="Undo").click()
    assert saved(mine, old + more) == example("brindlewick")
    expect(before).to_have_count(1, timeout=SLOW)


def test_shift_keeps_a_drag_to_one_way(space, mine):
    page = space(mine.stem, "rigid", "lines.left_leg")
    drawn(page)
    page.get_by_role("button", name="From the left").click()
    drawn(page)
    zoom = page.evaluate(f"() => {PICTURE}.looking.camera.zoom")
    x, y = pick_up(page, (9, -11.6, -5.2))
    page.keyboard.down("Shift")
    page.mouse.move(x + 2 * INCH * zoom, y - 1 * INCH * zoom, steps=8)
    page.mouse.up()
    page.keyboard.up("Shift")
    saved(mine, "[11, -11.6, -5.2]")


def test_a_corner_is_stepped_by_buttons_and_by_keys(space, mine):
    page = space(mine.stem, "rigid", "lines.left_leg.via.2")
    drawn(page)
    up = card(page).get_by_role("button", name="up", exact=True)
    up.focus()
    page.keyboard.press("Enter")
    saved(mine, "[9.0, -11.6, -5.125]")  # from -5.2, which is between two marks
    page.keyboard.press("Enter")  # again at once: nobody waits for the answer
    saved(mine, "[9.0, -11.6, -5.0625]")
    answered(page)
    expect(up).to_be_focused()
    page.locator(".fp-space-canvas").focus()
    for key in ("ArrowRight", "ArrowRight", "PageDown"):
        page.keyboard.press(key)
    saved(mine, "[9.125, -11.6875, -5.0625]")
    card(page).get_by_role("button", name="1 in").click()
    card(page).get_by_role("button", name="forward").click()
    saved(mine, "[8.125, -11.6875, -5.0625]")


def test_a_corner_is_put_in_and_taken_out(space, mine):
    page = space(mine.stem, "rigid", "lines.left_leg")
    card(page).get_by_role("button", name="leg 3").click()
    saved(mine, "          - [7.3125, -21.875, -16.875]\n          - [5.6, -32.2")
    answered(page)
    expect(card(page).get_by_role("heading", level=2)).to_have_text("corner 3 of left_leg", timeout=SLOW)
    card(page).get_by_role("button", name="Take the corner out").click()
    answered(page)
    expect(card(page).get_by_role("heading", level=2)).to_have_text("left_leg", timeout=SLOW)
    assert mine.read_text(encoding="utf-8") == example("brindlewick")


def test_a_mirrored_corner_leads_to_its_original(space, folder):
    page = space("brindlewick", "rigid", "lines.right_leg.via.2")
    expect(card(page)).to_contain_text("the mirror image of corner 2 of left_leg")
    expect(card(page).get_by_role("button", name="aft")).to_be_hidden()
    card(page).get_by_role("button", name="Choose that one").click()
    expect(card(page).get_by_role("heading", level=2)).to_have_text("corner 2 of left_leg")
    assert (folder / "brindlewick.yaml").read_text(encoding="utf-8") == example("brindlewick")


def test_what_hangs_on_another_place_is_made_a_point_only_when_asked(space, mine):
    old = "          - [7.0, -9.0, -3.2]\n          - [9.0, -11.6, -5.2]\n          - [5.6"
    named = edited(
        example("brindlewick"), (old, old.replace("[7.0, -9.0, -3.2]", "left_floor.below  # here"))
    )
    mine.write_text(named, encoding="utf-8")
    page = space(mine.stem, "rigid", "lines.left_leg.via.1")
    expect(card(page)).to_contain_text("It is written as \u201cleft_floor.below\u201d")
    assert mine.read_text(encoding="utf-8") == named
    card(page).get_by_role("button", name="Make it a point").click()
    saved(mine, "          - [7, -9, -0.875]")


def test_a_state_moves_the_end_at_the_pedal(space, folder):
    page = space("brindlewick", "rigid", "lines.left_pedal")
    drawn(page)
    first, last = end_of(page, "lines.left_pedal", 0), end_of(page, "lines.left_pedal", -1)
    assert first == pytest.approx([each * INCH for each in (13.1, -7.5, 3.0)], abs=1e-6)
    page.get_by_role("slider", name="rudder").focus()
    page.keyboard.press("End")
    expect(page.locator(".fp-space-state .fp-figure")).to_have_text("100 % of full travel")
    page.wait_for_function(f"() => {PICTURE}.lines.get('lines.left_pedal').points[0][0] !== {first[0]}")
    moved = end_of(page, "lines.left_pedal", 0)
    # 17 degrees about the pivot, 2.76 in away: a chord of 2 r sin(17 / 2).
    off = sum((one - other) ** 2 for one, other in zip(moved, first, strict=True)) ** 0.5
    assert off / INCH == pytest.approx(2 * (1.9**2 + 2**2) ** 0.5 * 0.147809, abs=0.002)
    assert moved[0] < first[0]  # +1 is left pedal forward
    assert end_of(page, "lines.left_pedal", -1) == last
    page.get_by_role("button", name="left_leg, tube").click()
    expect(card(page)).not_to_contain_text("Put a corner in")  # nothing is changed in a picture that is moved
    page.get_by_role("button", name="As measured").last.click()
    page.wait_for_function(f"() => {PICTURE}.lines.get('lines.left_pedal').points[0][0] === {first[0]}")
    expect(card(page)).to_contain_text("Put a corner in")
    page.get_by_role("button", name="on jacks", exact=True).click()
    expect(page.get_by_role("region", name="What moves")).to_contain_text(
        "how far left_wheel moves with gear"
    )
    assert (folder / "brindlewick.yaml").read_text(encoding="utf-8") == example("brindlewick")


def test_an_attitude_marks_where_air_stays(space):
    page = space("oatmere")
    drawn(page)
    page.get_by_role("button", name="taxi").click()
    expect(page.get_by_role("region", name="What moves")).to_contain_text(
        "pilot_left.inlet: air stays, 6.20 in"
    )
    expect(page.locator(".fp-space-high")).to_have_count(2)


def test_a_thing_is_chosen_in_the_picture_and_leads_to_its_field(space):
    page = space("oatmere", at="keep clear of.left_disc")
    drawn(page)
    expect(card(page).get_by_role("heading", level=2)).to_have_text("left_disc")
    field = card(page).get_by_role("link", name="Its field")
    assert field.get_attribute("href") == "/aircraft/oatmere.yaml/describe?at=keep+clear+of.left_disc"
    page.get_by_role("button", name="left_run, tube").click()
    page.get_by_role("button", name="From the front").click()
    page.locator(".fp-space-canvas").scroll_into_view_if_needed()
    drawn(page)
    one, other = (end_of(page, "lines.right_gear", number) for number in (1, 2))
    x, y = page.evaluate(SEEN, [0.6 * a + 0.4 * b for a, b in zip(one, other, strict=True)])
    page.mouse.click(x, y)
    expect(card(page).get_by_role("heading", level=2)).to_have_text(re.compile("right_gear|right_leaf"))
    page.get_by_role("button", name="right_gear, hose").click()
    card(page).get_by_role("button", name="Look at it").click()
    drawn(page)
    page.mouse.click(*page.evaluate(SEEN, one))
    expect(card(page).get_by_role("heading", level=2)).to_have_text("corner 1 of right_gear")


def test_without_webgl_there_are_flat_drawings_and_everything_else(space, mine):
    page = space(mine.stem, "rigid", "lines.left_leg.via.2", NO_WEBGL)
    page.faults = [each for each in page.faults if "WebGL" not in each]
    expect(page.locator(".fp-space-canvas")).to_be_hidden()
    expect(page.get_by_text("This browser cannot show the picture in space")).to_be_visible()
    expect(page.locator(".fp-space svg")).to_have_count(6)
    card(page).get_by_role("button", name="aft").click()
    saved(mine, "[9.0625, -11.6, -5.2]")


def test_the_description_leads_here_and_options_lead_on(space, app):
    page = space("brindlewick", "rigid")
    page.get_by_role("link", name="all hose").click()
    assert page.url == f"{app.base}/aircraft/brindlewick.yaml/describe/space?option=all+hose"
    answered(page)
    page.get_by_role("link", name="Picture and fields").click()
    page.get_by_role("link", name="The lines in space").click()
    assert page.url == f"{app.base}/aircraft/brindlewick.yaml/describe/space?option=all+hose"
    answered(page)


def test_a_file_that_is_not_there_and_one_that_cannot_be_read(space, app, folder):
    (folder / "broken.yaml").write_text("firmpedal: [", encoding="utf-8")
    page = space("brindlewick")
    assert page.request.get(f"{app.base}/aircraft/none.yaml/describe/space").status == 404
    page.goto(f"{app.base}/aircraft/broken.yaml/describe/space")
    expect(page.get_by_text("There is no picture yet")).to_be_visible(timeout=SLOW)


@pytest.mark.parametrize("look", ["light", "dark"])
@pytest.mark.parametrize("width", [390, 1280, 1920])
def test_it_fits_and_reads(space, width, look):
    page = space(
        "oatmere", at="lines.left_gear.via.1", viewport={"width": width, "height": 900}, color_scheme=look
    )
    drawn(page)
    page.get_by_role("button", name="taxi").click()
    page.wait_for_timeout(300)
    assert outside(page) == []
    assert [each for each in small_targets(page, 44) if "fp-skip" not in each[0]] == []
    assert violations(page) == []
    boxes = [page.locator(each).first.bounding_box() for each in (".fp-space-box", ".fp-space-list")]
    under = boxes[0]["y"] + boxes[0]["height"] < boxes[1]["y"]
    beside = boxes[0]["x"] + boxes[0]["width"] < boxes[1]["x"]
    assert (under, beside) == ((True, False) if width == 390 else (under, True))
    assert page.locator(".fp-space-canvas").evaluate("e => e.width / devicePixelRatio") <= width


def test_reduced_motion_is_respected(space):
    page = space("brindlewick", "rigid", reduced_motion="reduce")
    drawn(page)
    zoom = f"() => {PICTURE}.looking.camera.zoom"
    before = page.evaluate(zoom)
    after = page.evaluate(f"() => {{ {PICTURE}.looking.nearer(2); return {PICTURE}.looking.camera.zoom; }}")
    assert after == pytest.approx(2 * before)  # there at once
