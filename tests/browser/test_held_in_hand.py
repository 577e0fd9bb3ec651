"""In a real browser: a thread measured and written at its port, a supplier's list held against ours."""

from __future__ import annotations

import re

import pytest
from looks import outside, violations
from playwright.sync_api import expect
from served import SLOW, saved, serving

from firmpedal.project.layouts import chosen, layout_text
from texts import EXAMPLES, example

expect.set_options(timeout=SLOW)
LAYOUT = chosen(gear="tailwheel", leg="leaf", brakes="toe", seats="1", valve="no", length="in")
KIT = EXAMPLES / "brindlewick_kit.csv"


@pytest.fixture(scope="module")
def app(folder):
    (folder / "mine.yaml").write_text(layout_text(LAYOUT, "mine.yaml"), encoding="utf-8")
    (folder / "kit.yaml").write_text(example("brindlewick"), encoding="utf-8")
    with serving(folder) as served:
        yield served


def test_a_thread_is_measured_on_the_bench_and_written_at_its_port(app, page, folder):
    path = folder / "mine.yaml"
    before = path.read_text(encoding="utf-8")

    # with no aircraft: from the first page, the answer comes as it is typed, above why and the sum
    page.goto(app.base)
    page.get_by_role("link", name="Find it out").click()
    expect(page.get_by_text("Begin with two figures")).to_be_visible()
    page.get_by_label("How wide is it?").press_sequentially("13/32")
    answer = page.get_by_label("The answer")
    expect(answer).to_contain_text("By that one figure it is 1/8-27 NPT, taper pipe")
    page.get_by_label("Threads to the inch").fill("1.25")
    expect(page.get_by_text("say 1.25 mm")).to_be_visible()
    page.get_by_label("Threads to the inch").fill("27 tpi")
    expect(answer).to_contain_text("Only one thread in the catalogue fits: 1/8-27 NPT, taper pipe.")
    expect(answer).to_contain_text("calls it 1/8 NPT male")
    tops = [
        page.get_by_role("heading", name=name).bounding_box()["y"] for name in ("What fits", "Where these")
    ]
    assert answer.bounding_box()["y"] < tops[0] < tops[1]

    page.set_viewport_size({"width": 390, "height": 900})
    assert (outside(page), violations(page)) == ([], [])
    page.set_viewport_size({"width": 1280, "height": 900})

    # another unit for bare figures holds at once, and what was typed is there after coming back
    page.get_by_role("button", name="mm", exact=True).click()
    expect(page.locator(".fp-which .fp-unit").first).to_have_text("mm")
    page.get_by_label("How wide is it?").fill("9.9")
    page.get_by_label("Threads to the inch").fill("1 mm")
    expect(answer).to_contain_text("M10 x 1, metric parallel")
    page.get_by_role("link", name="All aircraft").click()
    page.go_back()
    expect(answer).to_contain_text("M10 x 1, metric parallel")
    expect(page.get_by_label("How wide is it?")).to_have_value("9.9")

    # it is asked in the row of each supposed thread, the left side for both
    page.goto(f"{app.base}/aircraft/mine.yaml/sound")
    expect(page.locator(".fp-measure a.fp-field-which")).to_have_count(3)

    # from a thread's own field: which half it is the file says; written with one press, and undone
    page.goto(f"{app.base}/aircraft/mine.yaml/describe?at=components.left_caliper.ports.inlet.thread")
    page.get_by_role("link", name="Which thread is it?").first.click()
    page.wait_for_url("**/thread?at=components.left_caliper.ports.inlet.thread")
    expect(page.get_by_label("Inside, in a port")).to_be_checked()
    page.get_by_label("Threads to the inch").fill("27")
    page.get_by_label("How wide is it?").fill("0.34 in")
    page.get_by_role("button", name="Write 1/8 NPT female at left_caliper inlet").click()
    after = saved(path, "thread: 1/8 NPT female")
    assert len([line for line in after.splitlines() if line not in before.splitlines()]) == 1
    expect(answer).to_contain_text("That is what the file has there.")
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_role("button", name="Write 1/8 NPT female at left_caliper inlet")).to_be_visible()
    assert path.read_text(encoding="utf-8") == before


def test_a_supplier_s_list_is_held_against_ours(app, page, folder):
    text = KIT.read_text(encoding="utf-8")
    page.goto(f"{app.base}/aircraft/kit.yaml/buy?option=rigid")
    page.get_by_role("link", name="Hold a supplier's list").click()
    box = page.locator(".fp-pasting textarea")
    box.fill(text)
    sheet = page.locator(".fp-sheet")
    expect(sheet).to_contain_text("Your list does not cover the design: 1 short, 1 wrong size")
    expect(sheet).to_contain_text("line 12:")

    page.set_viewport_size({"width": 390, "height": 900})
    assert (outside(page), violations(page)) == ([], [])
    page.set_viewport_size({"width": 1280, "height": 900})

    # each slip mended in the box is gone from the answer at once
    box.fill(text.replace("AN819-3D", "AN819-4D"))
    expect(sheet).not_to_contain_text("1 wrong size")

    # it is there on another page and back, and not in the file
    page.get_by_role("link", name="Keep").click()
    page.go_back()
    expect(sheet).to_contain_text("Your list does not cover the design")
    expect(box).to_have_value(re.compile("AN819-4E"))
    assert (folder / "kit.yaml").read_text(encoding="utf-8") == example("brindlewick")

    # cleared, and from its file
    page.get_by_role("button", name="Clear it").click()
    expect(page.get_by_text("Nothing to compare yet")).to_be_visible()
    expect(box).to_have_value("")
    page.get_by_label("Or choose its file").set_input_files(KIT)
    expect(sheet).to_contain_text("1 wrong size")
    expect(box).to_have_value(text)
