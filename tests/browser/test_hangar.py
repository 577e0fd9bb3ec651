"""The page for the hangar in a real browser, as a phone opens it: from a file, and with nobody to ask."""

from __future__ import annotations

from pathlib import Path

import pytest
from looks import faint, outside, small_letters, small_targets, violations

from firmpedal.export.hangar import write
from firmpedal.pipeline import evaluate_file, usable_options

EXAMPLES = Path(__file__).parents[2] / "examples"
PHONE = {"viewport": {"width": 390, "height": 844}, "has_touch": True, "is_mobile": True}
JOINTS = "Joints, one by one"
ELSEWHERE = "https://www.w3.org/"  # an address to be refused


@pytest.fixture(scope="session")
def made(tmp_path_factory):
    """Pages by option, each written once."""
    pages = {}

    def page_of(example, option=None):
        if (example, option) not in pages:
            path = tmp_path_factory.mktemp("hangar") / "page.html"
            evaluation = evaluate_file(EXAMPLES / f"{example}.yaml", option)
            write(evaluation, usable_options(evaluation.reading), path)
            pages[example, option] = path.as_uri()
        return pages[example, option]

    return page_of


@pytest.fixture
def rigid(made):
    return made("brindlewick", "rigid")


@pytest.fixture
def phone(new_context):
    """A phone's browser that remembers what a page asks for, and what of that its policy lets out."""

    def opened(address, **more):
        context = new_context(**{**PHONE, **more})
        page = context.new_page()
        page.asked, page.left, page.faults = [], [], []
        page.on("request", lambda request: page.asked.append(request.url))
        page.on("pageerror", lambda fault: page.faults.append(fault))  # noqa: PLW0108  it marks what it gets
        context.route("http*://**", lambda route: (page.left.append(route.request.url), route.abort()))
        page.goto(address)
        return page

    return opened


def card_ids(page):
    return page.eval_on_selector_all(".fp-hangar-card", "cards => cards.map(card => card.id)")


def open_card(page, title):
    page.get_by_role("button", name="All cards").click()
    page.get_by_role("link", name=title).click()
    page.get_by_role("heading", name=title).wait_for()


def each_card(page):
    for name in card_ids(page):
        page.evaluate("name => { location.hash = name; }", name)
        page.wait_for_function(
            "name => document.querySelector('.fp-open').id === name && innerHeight", arg=name
        )
        yield name


@pytest.mark.parametrize("width", [320, 390, 1280, 1920])
@pytest.mark.parametrize("example", ["brindlewick", "oatmere", "fennimoss"])
def test_no_card_is_wider_than_the_screen(phone, made, example, width):
    page = phone(made(example), viewport={"width": width, "height": 844})
    assert {name: outside(page) for name in each_card(page) if outside(page)} == {}


def test_every_target_is_large_enough_for_a_thumb(phone, rigid):
    page = phone(rigid)
    assert {name: small_targets(page, 44) for name in each_card(page) if small_targets(page, 44)} == {}


def test_every_letter_is_large_enough_to_read(phone, rigid):
    page = phone(rigid)
    assert {name: small_letters(page, 16) for name in each_card(page) if small_letters(page, 16)} == {}


@pytest.mark.parametrize(("scheme", "wrong"), [("light", violations), ("dark", faint)])
def test_axe_finds_nothing_on_any_card(phone, rigid, scheme, wrong):
    page = phone(rigid, color_scheme=scheme)
    assert {name: found for name in each_card(page) if (found := wrong(page))} == {}


def test_nothing_is_asked_of_anybody(phone, rigid):
    page = phone(rigid)
    list(each_card(page))
    assert page.asked == [rigid]
    assert page.faults == []


def test_the_page_itself_forbids_every_request_style_and_script(phone, rigid):
    page = phone(rigid)
    page.evaluate(
        """(address) => {
          window.refused = [];
          addEventListener("securitypolicyviolation", (event) => refused.push(event.effectiveDirective));
          fetch(address).catch(() => {});
          new Image().src = address;
          const script = document.createElement("script");
          script.textContent = "window.ran = true";
          const style = document.createElement("style");
          style.textContent = "body { display: none }";
          document.head.append(script, style);
        }""",
        ELSEWHERE,
    )
    page.wait_for_function("refused.length >= 4")
    assert set(page.evaluate("refused")) == {"connect-src", "img-src", "script-src-elem", "style-src-elem"}
    assert page.evaluate("window.ran") is None
    assert page.left == []


def test_what_is_not_forbidden_would_be_seen(phone, tmp_path):
    bare = tmp_path / "bare.html"
    bare.write_text("<p>No policy</p>", encoding="utf-8")
    page = phone(bare.as_uri())
    page.evaluate("(address) => fetch(address).catch(() => {})", ELSEWHERE)
    assert page.left == [ELSEWHERE]


def test_the_cautions_come_first_and_it_says_of_what_it_is_a_copy(phone, rigid):
    page = phone(rigid)
    shown = page.inner_text("body")
    assert shown.index("Copy of revision A") < shown.index("Before you begin")
    assert "It does not follow changes of the file" in shown
    assert shown.index("NOT SHOWN: 10 things to measure") < shown.index("Before you begin")
    assert shown.index("local authority's rules come first") < shown.rindex("NOT SHOWN")


def test_a_tick_and_a_word_survive_a_reload(phone, rigid):
    page = phone(rigid)
    open_card(page, JOINTS)
    page.get_by_role("checkbox", name="3, left_axle").first.check()
    page.get_by_label("pressure held, and for how long").fill("600 psi, a night")
    page.reload()
    assert page.get_by_role("checkbox", name="3, left_axle").first.is_checked()
    assert page.get_by_label("pressure held, and for how long").input_value() == "600 psi, a night"
    assert page.locator("input:checked").count() == 1
    page.get_by_role("button", name="All cards").click()
    assert "2 of 19" in page.get_by_role("link", name=JOINTS).inner_text()


def test_another_option_begins_afresh(phone, made, rigid):
    page = phone(rigid)
    open_card(page, JOINTS)
    page.get_by_role("checkbox", name="1, left_cylinder.outlet").first.check()
    page.goto(made("brindlewick", "all hose"))
    assert page.locator("input:checked").count() == 0
    assert page.evaluate("Object.keys(localStorage).length") == 2


def test_what_was_ticked_can_be_copied_as_text(phone, rigid):
    page = phone(rigid, permissions=["clipboard-read", "clipboard-write"])
    open_card(page, JOINTS)
    page.get_by_role("checkbox", name="3, left_axle, 50 to 65 lbf in: dry").check()
    page.get_by_label("checked by, date").locator("visible=true").fill("me")
    page.get_by_role("button", name="All cards").click()
    page.get_by_role("button", name="Copy what I ticked").click()
    page.get_by_text("Copied.").wait_for()
    assert page.evaluate("navigator.clipboard.readText()").splitlines() == [
        "Brindlewick, option rigid, copy of revision A, 2026-11-25. NOT SHOWN: 10 things to measure",
        "What was ticked and written:",
        "",
        JOINTS,
        "[x] 3, left_axle, 50 to 65 lbf in: dry",
        "checked by, date: me",
    ]


def test_beginning_again_takes_all_ticks_off(phone, rigid):
    page = phone(rigid)
    open_card(page, JOINTS)
    page.get_by_role("checkbox").locator("visible=true").first.check()
    page.get_by_role("button", name="All cards").click()
    page.once("dialog", lambda dialog: dialog.dismiss())
    page.get_by_role("button", name="Begin again").click()
    assert page.locator("input:checked").count() == 1
    page.once("dialog", lambda dialog: dialog.accept())
    page.get_by_role("button", name="Begin again").click()
    assert page.locator("input:checked").count() == 0
    page.reload()
    assert page.locator("input:checked").count() == 0


@pytest.mark.parametrize(
    "refusing", ["{ throw 'not here'; }", "{ return {getItem() {}, setItem() { throw 'full'; }}; }"]
)
def test_a_phone_that_keeps_nothing_says_so_and_the_page_works(new_context, rigid, refusing):
    context = new_context(**PHONE)
    context.add_init_script(f"Object.defineProperty(window, 'localStorage', {{get() {refusing}}});")
    page = context.new_page()
    page.goto(rigid)
    assert page.get_by_text("keeps nothing of what you tick").is_visible()
    page.get_by_role("button", name="Next").click()
    page.get_by_role("heading", name="All cards").wait_for()


def test_a_phone_that_keeps_says_nothing(phone, rigid):
    assert not phone(rigid).get_by_text("keeps nothing of what you tick").is_visible()


def test_the_bar_leads_from_card_to_card_and_stays_at_the_thumb(phone, rigid):
    page = phone(rigid)
    back, following = (page.get_by_role("button", name=name) for name in ("Back", "Next"))
    assert back.is_disabled()
    names = card_ids(page)
    for name in names[1:]:
        following.tap()
        page.wait_for_function("name => document.querySelector('.fp-open').id === name", arg=name)
        assert page.evaluate("document.activeElement.closest('.fp-hangar-card').id") == name
        box = following.bounding_box()
        assert box["y"] > 844 * 3 / 4
        assert box["y"] + box["height"] <= 844
    assert following.is_disabled()
    back.tap()
    page.wait_for_function("name => document.querySelector('.fp-open').id === name", arg=names[-2])


def test_a_drawing_is_shown_whole_when_asked(phone, rigid):
    page = phone(rigid)
    open_card(page, "Tube left_leg")
    box = page.locator(".fp-open .fp-drawing-box").first
    assert box.evaluate("box => box.scrollWidth > box.clientWidth")
    page.get_by_role("button", name="Whole drawing").locator("visible=true").first.click()
    assert box.evaluate("box => box.scrollWidth <= box.clientWidth")


def test_without_scripts_every_card_is_there(phone, rigid):
    page = phone(rigid, java_script_enabled=False)
    for title in ("Before you begin", "Tube left_leg", "Torque and flare", JOINTS):
        assert page.get_by_role("heading", name=title, exact=True).is_visible()
    assert not page.get_by_role("button", name="Next").is_visible()
    assert "runs no script here" in page.inner_text("body")
