"""States in which pages are seen now and then: begun, broken, in conflict, at work, opened up, on a phone."""

from __future__ import annotations

import re
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from served import Served, free_port

from firmpedal.project.layouts import chosen, layout_text

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from playwright.sync_api import Page

EXAMPLES = Path(__file__).parents[1] / "examples"
SECOND = "127.0.0.2"  # a second address of this machine: what comes from it has to pair like a phone
SLOW = 120_000  # ms
PAUSE = 600  # ms; longer than the app waits for somebody who types


@dataclass(frozen=True)
class Folders:
    """Where the app runs: on a folder with every kind of file, on an empty one, and open to phones."""

    full: Served
    empty: Served
    phones: Served
    files: Path

    @property
    def second(self) -> str:
        """Where a phone finds it."""
        return self.phones.base.replace("127.0.0.1", SECOND)


@dataclass(frozen=True)
class State:
    """One of them: its name, and what leads there."""

    name: str
    reach: Callable[[Page, Folders], object]


@contextmanager
def folders(place: Path) -> Iterator[Folders]:
    """Run the app on folders under a place."""
    full, empty = place / "hangar", place / "my_aircraft"
    full.mkdir()
    empty.mkdir()
    for example in EXAMPLES.glob("*.yaml"):
        (full / example.name).write_bytes(example.read_bytes())
    layout = chosen(gear="tailwheel", leg="leaf", brakes="toe", seats="1", valve="no", length="in")
    first = layout_text(layout, "blue_heron.yaml", "Blue Heron")
    (full / "blue_heron.yaml").write_text(first, encoding="utf-8")
    (full / "broken.yaml").write_text(first.replace("gear: tail", "gear: tial"), encoding="utf-8")
    bare = "firmpedal: 1\naircraft: {name: Bare, gear: nosewheel, brakes: toe}\n"
    (full / "bare.yaml").write_text(bare, encoding="utf-8")
    started = []
    try:
        for folder, more in ((full, ()), (empty, ()), (full, ("--lan",))):
            started.append(Served(folder, "--port", str(free_port()), *more))
        yield Folders(*started, files=full)
    finally:
        for each in started:
            each.stop()


def settled(page: Page, address: str) -> None:
    """Open a page and wait until all of it is worked out."""
    page.goto(address)
    page.wait_for_selector(".fp-main")
    page.wait_for_function("() => !document.body.innerText.includes('Working it out')", timeout=SLOW)


def _at(address: str) -> Callable[[Page, Folders], object]:
    return lambda page, on: settled(page, on.full.base + address)


def _refused(page: Page, on: Folders) -> None:
    settled(page, f"{on.full.base}/new?gear=tailwheel&leg=leaf&refused=Choose+one+of+each+first.")


def _next_field(page: Page, on: Folders) -> None:
    settled(page, f"{on.full.base}/aircraft/blue_heron.yaml/describe")
    page.get_by_role("button", name="Go to the next one").click()
    page.wait_for_selector(".fp-form-body")


def _adding(page: Page, on: Folders) -> None:
    settled(page, f"{on.full.base}/aircraft/bare.yaml/describe")
    page.get_by_role("button", name="master cylinder").click()
    page.wait_for_selector(".fp-form-add .fp-card")


def _held(page: Page, on: Folders) -> None:
    settled(page, f"{on.full.base}/aircraft/brindlewick.yaml/list?option=rigid")
    kit = (EXAMPLES / "brindlewick_kit.csv").read_text(encoding="utf-8")
    page.locator(".fp-pasting textarea").fill(kit)
    page.locator(".fp-sheet").wait_for()
    page.wait_for_timeout(PAUSE)


def _conflict(page: Page, on: Folders) -> None:
    path = on.files / "fennimoss.yaml"
    text = path.read_text(encoding="utf-8")
    settled(page, f"{on.full.base}/aircraft/{path.name}/describe/text")
    page.wait_for_selector(".cm-content")
    page.locator(".cm-line").first.click()
    page.keyboard.type("# mine ")
    path.write_text(f"{text}# theirs\n", encoding="utf-8")
    page.wait_for_selector(".fp-conflict")


def _settle(page: Page, on: Folders) -> None:
    page.get_by_role("button", name="Take the version on the disk").click()
    page.wait_for_timeout(PAUSE)
    (on.files / "fennimoss.yaml").write_bytes((EXAMPLES / "fennimoss.yaml").read_bytes())


def _packet(page: Page, on: Folders) -> None:
    settled(page, f"{on.full.base}/aircraft/oatmere.yaml/keep#packet")
    page.get_by_role("button", name="Make the packet").click()
    page.get_by_role("button", name="Stop").wait_for()


def _stopped(page: Page, _on: Folders) -> None:
    page.get_by_role("button", name="Stop").click()
    page.get_by_text("Stopped").wait_for(timeout=SLOW)


def _made(page: Page, on: Folders) -> None:
    settled(page, f"{on.full.base}/aircraft/blue_heron.yaml/keep")
    if page.get_by_role("button", name="Make the packet").is_visible():
        page.get_by_role("button", name="Make the packet").click()
    page.get_by_role("link", name="Open the packet").wait_for(timeout=SLOW)
    page.wait_for_timeout(PAUSE)


def _opened(page: Page, on: Folders) -> None:
    settled(page, f"{on.full.base}/aircraft/brindlewick.yaml/sound")
    page.evaluate("document.querySelectorAll('.fp-sound details').forEach((each) => { each.open = true; })")


def _code(page: Page, on: Folders) -> None:
    settled(page, f"{on.phones.base}/phone")
    page.wait_for_timeout(PAUSE)


def _asked(page: Page, on: Folders) -> None:
    page.goto(f"{on.second}/")


def _in_the_hangar(page: Page, on: Folders) -> None:
    """Let a phone in with the code that the terminal shows."""
    page.goto(f"{on.second}/")
    while not (codes := re.findall(r"Code for the phone: (\d{6})", on.phones.said)):
        on.phones.said += on.phones.more()
    on.phones.said = ""  # a code lets one phone in: the next one needs the next
    page.get_by_label("Code from the computer").fill(codes[-1])
    page.get_by_role("button", name="Let this phone in").click()
    page.wait_for_selector(".fp-row")
    settled(page, f"{on.second}/aircraft/brindlewick.yaml/prove?option=rigid")


def _taken_along(page: Page, on: Folders) -> None:
    made = page.request.get(f"{on.full.base}/paper/brindlewick.yaml/hangar.html?option=rigid")
    path = on.files.parent / "hangar.html"
    path.write_bytes(made.body())
    page.goto(path.as_uri())


def _a_card(page: Page, on: Folders) -> None:
    _taken_along(page, on)
    page.get_by_role("button", name="Next").click()


INLET = "components.left_caliper.ports.inlet.thread"
HERON = "/aircraft/blue_heron.yaml"
STATES = (
    State("empty_folder", lambda page, on: settled(page, on.empty.base)),
    State("new_refused", _refused),
    *(
        State(f"new_file_{step}", _at(f"{HERON}/{step}"))
        for step in ("describe", "sound", "buy", "make", "fit")
    ),
    State("new_file_next_field", _next_field),
    State("new_file_space", _at(f"{HERON}/describe/space")),
    State("nothing_described", _at("/aircraft/bare.yaml/describe")),
    State("nothing_to_buy", _at("/aircraft/bare.yaml/buy")),
    State("nothing_to_prove", _at("/aircraft/bare.yaml/prove")),
    State("adding", _adding),
    State("broken_text", _at("/aircraft/broken.yaml/describe")),
    State("broken_sound", _at("/aircraft/broken.yaml/sound")),
    State("broken_make", _at("/aircraft/broken.yaml/make")),
    State(
        "a_field", _at("/aircraft/brindlewick.yaml/describe?option=rigid&at=components.left_cylinder.bore")
    ),
    State("a_line_in_space", _at("/aircraft/brindlewick.yaml/describe/space?option=rigid&at=lines.left_leg")),
    State("findings_open", _opened),
    State("thread_found", _at("/thread?threads=27&wide=13/32&turns=1-1/2")),
    State("threads_to_tell_apart", _at("/thread?wide=9.9+mm")),
    State("thread_slips", _at("/thread?wide=10&threads=1.25&seat=74")),
    State("thread_of_a_port", _at(f"{HERON}/thread?at={INLET}&where=female&threads=27&wide=0.34")),
    State("list_held", _held),
    State("conflict", _conflict),
    State("conflict_settled", _settle),
    State("packet_running", _packet),
    State("packet_stopped", _stopped),
    State("packet_made", _made),
    State("not_found", _at("/aircraft/nobody.yaml/sound")),
    State("phone_code", _code),
    State("phone_asked", _asked),
    State("phone_in", _in_the_hangar),
    State("hangar_page", _taken_along),
    State("hangar_card", _a_card),
)
