"""Whole jobs in the app, from an empty folder on, in a real browser; the saved file is looked at as well."""

from __future__ import annotations

import re
from functools import partial

import pytest
from playwright.sync_api import expect
from served import SLOW, hear_faults, saved, serving

from texts import edited, example

STEPS = ("describe", "sound", "buy", "make", "fit", "prove", "keep")
LOADS = "foot: {normal: 75, hard: 150, panic: 200}"
HTTP = "http://"
ALONE = "mine.yaml"  # a file that is only looked at


@pytest.fixture(scope="module")
def folder(folder):
    (folder / ALONE).write_text(example("brindlewick"), encoding="utf-8")
    yield folder
    assert left_in(folder) == []


@pytest.fixture
def empty(tmp_path):
    """A server on a folder in which there is nothing yet."""
    with serving(tmp_path) as served:
        yield served
    assert left_in(tmp_path) == []


def left_in(folder):
    """What is left beside the builder's files."""
    return list(folder.glob(".*"))


@pytest.fixture
def watching(new_context):
    """Opens windows of a server that note what went wrong, and whatever was asked of anybody else."""
    opened = []

    def opening(served):
        page = new_context(viewport={"width": 1280, "height": 900}).new_page()
        hear_faults(page)
        page.elsewhere = []
        page.on("request", lambda it: page.elsewhere.append(it.url) if foreign(it.url, served.base) else None)
        page.set_default_timeout(SLOW)
        opened.append(page)
        return page

    yield opening
    for page in opened:
        assert not page.faults
        assert not page.elsewhere


@pytest.fixture
def window(watching, app):
    return partial(watching, app)


def foreign(address, base):
    """Whether it leads off this machine; the browser's own viewer of PDFs is part of the browser."""
    return address.startswith(("http", "ws")) and not address.startswith(
        (base, base.replace("http", "ws", 1))
    )


def go(page, app, file, step, option=None):
    page.goto(f"{app.base}/aircraft/{file}/{step}" + (f"?option={option}" if option else ""))
    return verdict(page)


def verdict(page):
    """The word on the aircraft, once it is no longer being worked out."""
    bar = page.locator(".fp-frame > .fp-verdict-bar")
    expect(bar.locator("strong")).not_to_have_text("Working it out ...", timeout=SLOW)
    expect(bar).not_to_have_class(re.compile("fp-stale"), timeout=SLOW)
    return bar


def put_text(page, old, new):
    """Change words in the editor as somebody does who marks them and types."""
    page.wait_for_selector(".cm-content")
    page.evaluate(
        """(old) => {
            const whole = document.querySelector(".nicegui-codemirror");
            const editor = getElement(Number(whole.id.slice(1))).editor;
            const from = editor.state.doc.toString().indexOf(old);
            if (from < 0) throw new Error("not in the text: " + old);
            editor.dispatch({selection: {anchor: from, head: from + old.length}, scrollIntoView: true});
            editor.focus();
        }""",
        old,
    )
    page.keyboard.insert_text(new)


def test_a_newcomer_plays_with_an_example(watching, empty, tmp_path):
    page = watching(empty)
    page.goto(empty.first)
    expect(page.locator(".fp-empty")).to_contain_text("no aircraft in this folder yet")
    page.get_by_role("button", name="Open Brindlewick").click()
    expect(verdict(page)).to_have_attribute("data-verdict", "not sound")
    expect(page.locator("article").first).to_contain_text("left_line")
    page.get_by_role("link", name="Describe").click()
    page.get_by_role("link", name="The text").click()
    put_text(page, LOADS, LOADS.replace("200", "260"))
    text = saved(tmp_path / "brindlewick.yaml", "panic: 260")
    assert text == edited(example("brindlewick"), ("panic: 200", "panic: 260"))
    page.get_by_role("link", name="Keep").click()
    verdict(page)
    expect(page.locator("#sheet-1")).to_contain_text("260 lbf")


def test_an_answer_follows_a_change_and_undo_takes_both_back(app, window, mine):
    page, other = window(), window()
    before = go(page, app, mine.name, "describe/text", "rigid").inner_text()
    go(other, app, mine.name, "sound", "rigid")
    assert "NOT SHOWN" in before
    put_text(page, "panic: 200", "panic: 900")
    bar = page.locator(".fp-frame > .fp-verdict-bar")
    expect(bar).to_have_attribute("data-verdict", "not sound", timeout=SLOW)
    expect(other.locator(".fp-findings").first).to_contain_text(
        "tube-yields", timeout=SLOW
    )  # another window too
    expect(page.get_by_role("button", name="Undo")).to_have_attribute("title", "Undo: typed in the text")
    page.get_by_role("button", name="Undo").click()
    expect(bar).to_have_attribute("data-verdict", "not shown", timeout=SLOW)
    expect(page.locator(".cm-content")).to_contain_text("Brindlewick")
    assert mine.read_text(encoding="utf-8") == example("brindlewick")
    page.get_by_role("button", name="Redo").click()
    expect(bar).to_have_attribute("data-verdict", "not sound", timeout=SLOW)
    saved(mine, "panic: 900")


def test_a_broken_file_is_mended_beside_its_errors(app, window, mine):
    mine.write_text(edited(example("brindlewick"), ("gear: tailwheel", "gear: tailwhel")), encoding="utf-8")
    page = window()
    page.goto(app.first)
    row = page.locator(".fp-row", has_text=mine.name)
    expect(row.locator("strong")).to_have_text("CANNOT BE READ", timeout=SLOW)
    row.click()
    expect(page.locator(".fp-main .fp-empty")).to_contain_text("cannot be read")
    page.locator(".fp-main .fp-empty").get_by_role("link", name="Go to the text").click()
    problem = page.locator(".fp-problem")
    expect(problem).to_contain_text("tailwheel")
    number = mine.read_text(encoding="utf-8").splitlines().index("  gear: tailwhel") + 1
    problem.get_by_role("button", name=f"Line {number}").click()
    expect(page.locator(".cm-activeLine")).to_have_text("  gear: tailwhel")
    expect(page.locator(".fp-bad-line")).to_have_text("  gear: tailwhel")
    put_text(page, "tailwhel\n", "tailwheel\n")
    expect(problem).to_have_count(0, timeout=SLOW)
    expect(page.locator(".fp-bad-line")).to_have_count(0)
    assert mine.read_text(encoding="utf-8") == example("brindlewick")


def test_nothing_of_another_editor_is_overwritten(app, window, mine):
    page = window()
    go(page, app, mine.name, "describe/text")
    theirs = edited(example("brindlewick"), ("hard: 150", "hard: 155"))
    put_text(page, "normal: 75", "normal: 77")
    mine.write_text(theirs, encoding="utf-8")  # within the pause, before what was typed is taken
    card = page.locator(".fp-conflict")
    expect(card).to_be_visible()
    assert mine.read_text(encoding="utf-8") == theirs
    assert ["normal: 77" in each for each in card.locator("mark").all_inner_texts()] == [True, False]
    card.get_by_role("button", name="Take the version on the disk").click()
    expect(card).to_have_count(0)
    expect(page.locator(".cm-content")).to_contain_text("hard: 155")
    page.get_by_role("button", name="Undo").click()
    saved(mine, "normal: 77")


def test_a_page_goes_with_a_file_that_breaks_goes_away_and_comes_back(app, window, mine):
    page = window()
    go(page, app, mine.name, "sound", "rigid")
    card, verdict = page.locator(".fp-conflict"), page.locator(".fp-verdict-bar strong")
    before = verdict.inner_text()
    mine.write_bytes(b"\xff\xfea\x00")
    expect(card).to_contain_text("UTF-16")
    expect(verdict).to_have_text("CANNOT BE READ")
    expect(card.get_by_role("button")).to_have_count(0)
    mine.unlink()
    expect(card).to_contain_text(f"{mine.name} is not in its folder any more")
    expect(verdict).to_have_text("THE FILE IS GONE")
    mine.write_text(example("brindlewick"), encoding="utf-8")
    expect(card).to_have_count(0)
    expect(verdict).to_have_text(before, timeout=SLOW)
    mine.unlink()
    card.get_by_role("button", name="Write the file again").click()
    expect(card).to_have_count(0)
    assert mine.read_text(encoding="utf-8") == example("brindlewick")


def test_each_place_where_two_versions_differ_is_chosen_by_itself(app, window, mine):
    page = window()
    go(page, app, mine.name, "describe/text")
    theirs = edited(
        example("brindlewick"), ("name: Brindlewick", "name: Finchcote"), ("hard: 150", "hard: 155")
    )
    put_text(page, "normal: 75", "normal: 77")
    mine.write_text(theirs, encoding="utf-8")
    places = page.locator(".fp-hunk")
    expect(places).to_have_count(2)
    expect(page.get_by_role("heading", name="Two versions of this file")).to_be_in_viewport()
    assert len(page.locator(".fp-conflict").inner_text().splitlines()) < 40  # not the whole file
    places.nth(0).get_by_label("On the disk").check()
    page.get_by_role("button", name="Write what is chosen").click()
    expect(page.locator(".fp-conflict .fp-fault")).to_contain_text("place 2")
    assert mine.read_text(encoding="utf-8") == theirs
    places.nth(1).get_by_label("From here").check()
    page.get_by_role("button", name="Write what is chosen").click()
    expect(page.locator(".fp-conflict")).to_have_count(0)
    saved(mine, "normal: 77")
    assert "name: Finchcote" in mine.read_text(encoding="utf-8")
    assert "hard: 150" in mine.read_text(encoding="utf-8")


def test_what_another_program_wrote_shows_by_itself(app, window, mine):
    page = window()
    go(page, app, mine.name, "sound", "rigid")
    mine.write_text(
        edited(example("brindlewick"), ("name: Brindlewick", "name: Finchcote")), encoding="utf-8"
    )
    expect(page.locator("h1")).to_have_text("Finchcote", timeout=SLOW)


def test_a_new_aircraft_from_pictures(watching, empty, tmp_path):
    page = watching(empty)
    page.goto(empty.first)
    page.get_by_role("link", name="Begin your own").click()
    for word in (
        "tailwheel",
        "leaf",
        "toe",
        "one seat has brakes, in the middle",
        "none; chocks",
        "millimetres",
    ):
        page.locator(".fp-choice", has_text=word).click()
    printed = page.get_by_role("button", name="Only print the measuring form")
    with page.context.expect_event("response", lambda answer: answer.url.endswith("form.pdf")) as paper:
        printed.click()
    assert (paper.value.status, paper.value.headers["content-type"]) == (200, "application/pdf")
    assert not list(tmp_path.iterdir())
    page.goto(f"{empty.base}/new?gear=tailwheel&leg=leaf&brakes=toe&seats=1&valve=no&length=mm")
    page.get_by_label("What do you call it?").fill("finchcote")
    page.get_by_role("button", name="Begin this aircraft").click()
    expect(verdict(page)).to_have_attribute("data-verdict", "not shown")
    assert "unknown" in (tmp_path / "finchcote.yaml").read_text(encoding="utf-8")
    page.goto(f"{empty.base}/new?name=finchcote&gear=nosewheel&leg=leaf&brakes=toe&seats=1&valve=no")
    page.get_by_role("button", name="Begin this aircraft").click()
    expect(page.get_by_role("alert")).to_contain_text("is there already")
    expect(page.locator("input[value=nosewheel]")).to_be_checked()


def test_figures_in_the_other_units_and_the_look_are_remembered(app, window, folder):
    page = window()
    go(page, app, ALONE, "make", "rigid")
    figure = page.locator(".fp-figure").first
    expect(figure).to_contain_text(" in")
    page.get_by_role("button", name="mm", exact=True).click()
    expect(figure).to_contain_text(" mm", timeout=SLOW)
    page.get_by_role("button", name="Light or dark").click()
    expect(page.locator("html")).to_have_class(re.compile("fp-dark"))
    page.get_by_role("link", name="Prove").click()
    verdict(page)
    expect(page.locator("html")).to_have_class(re.compile("fp-dark"))
    expect(page.get_by_role("button", name="mm", exact=True)).to_have_attribute("aria-pressed", "true")
    assert (folder / ALONE).read_text(encoding="utf-8") == example("brindlewick")


def test_ticks_stay_in_the_browser(app, window):
    page = window()
    go(page, app, ALONE, "prove", "rigid")
    box = page.locator("article input[type=checkbox]").first
    box.check()
    page.reload()
    expect(box).to_be_checked(timeout=SLOW)
    go(page, app, ALONE, "prove", "all hose")
    expect(page.locator("article input[type=checkbox]").first).not_to_be_checked()


def test_a_finding_leads_to_its_line(app, window):
    page = window()
    go(page, app, ALONE, "sound")
    place = page.locator(".fp-finding").get_by_role("link", name="of the text").first
    number = int(re.fullmatch(r"line (\d+) of the text", place.inner_text())[1])
    place.click()
    expect(page.locator(".cm-lineNumbers .cm-activeLineGutter")).to_have_text(str(number))


@pytest.mark.parametrize("name", ["form.pdf", "packet.pdf", "fullsize-A4.pdf", "fullsize-letter.pdf"])
def test_every_paper_is_a_pdf(app, window, name):
    page = window()
    answer = page.request.get(f"{app.base}/paper/mine.yaml/{name}?option=rigid", timeout=SLOW)
    assert answer.headers["content-type"] == "application/pdf"
    assert answer.body().startswith(b"%PDF-")


@pytest.mark.parametrize(
    "path",
    [
        "/aircraft/other.yaml/sound",
        "/aircraft/mine.yaml/nothing",
        "/aircraft/..%2Fmine.yaml/sound",
        "/paper/other.yaml/form.pdf",
    ],
)
def test_what_is_not_there_is_said(app, window, path):
    page = window()
    assert page.request.get(app.base + path).status == 404


def test_a_foreign_name_gets_nothing(app, window):
    page = window()
    for headers in ({"Host": "example.org"}, {"Origin": HTTP + "example.org"}):
        assert page.request.get(app.base, headers=headers).status == 403
