"""The pages of one aircraft: which there are, in the order of the job, with their titles and addresses."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.web import addresses
from firmpedal.web.figures import FIGURES
from firmpedal.web.pages import (
    buy,
    describe,
    fit,
    held,
    keep,
    make,
    options,
    phone,
    prove,
    report,
    retrofit,
    sound,
    space,
    text,
    thread,
)

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from nicegui import Client

    from firmpedal.web.frame import Frame

__all__ = ["READ", "READ_ALONG", "STEPS", "Page", "every_page", "page_of", "phone", "thread"]

# The steps that show sheets, in the order in which people do them.
REPORTS: dict[str, tuple[str, report.Report]] = {
    "buy": ("Buy", buy.PAGE),
    "make": ("Make", make.PAGE),
    "fit": ("Fit and fill", fit.PAGE),
    "prove": ("Prove", prove.PAGE),
    "keep": ("Keep", keep.PAGE),
}
READ_ALONG = ("options", "retrofit", "thread", *FIGURES)  # pages of a step that only show
# The way through the job; what comes after the text may be read from a phone too.
READ = (("sound", sound.TITLE), *((name, title) for name, (title, _) in REPORTS.items()))
STEPS = (("describe", "Describe"), *READ)


@dataclass(frozen=True)
class Page:
    """A page of one aircraft: its title, its step, its address for an option, how it is shown."""

    title: str
    step: str
    address: Callable[[str, str | None], str] | None  # none where it is the step's own
    show: Callable[[Frame], object]


def every_page(file: str, option: str | None = None) -> tuple[str, ...]:
    """The address of every page, for one aircraft: what looks at all of them takes them from here."""
    steps = (addresses.step(file, name, option) for name in (*dict(STEPS), *FIGURES))
    ways = (addresses.text, addresses.space, addresses.options, addresses.retrofit, addresses.thread)
    more = (way(file, option) for way in (*ways, addresses.held))
    return (addresses.START, addresses.NEW, addresses.ON_PHONE, addresses.THREAD, *steps, *more)


def page_of(name: str, at: str = "") -> Page | None:
    """One step of the way, or None where there is none of that name; `at` is the place it opens on."""
    if name == "describe":
        return Page(dict(STEPS)[name], name, None, lambda frame: describe.FormPage(frame, at))
    if name == "sound":
        return Page(sound.TITLE, name, None, sound.show)
    if name in FIGURES:
        return _figures(name)
    if name not in REPORTS:
        return None
    title, page = REPORTS[name]
    return Page(title, name, None, lambda frame: report.show(page, frame))


def options_page() -> Page:
    """All options of an aircraft side by side."""
    return Page(options.TITLE, "sound", addresses.options, options.show)


def retrofit_page(before: str | None) -> Page:
    """The work from one option to another."""
    way = retrofit.Way(before)
    return Page(retrofit.TITLE, "fit", way.address, way.show)


def thread_page(given: Mapping[str, str]) -> Page:
    """Which thread is it? `given` is what stands in the address: the place, and what was measured."""

    def address(file: str, option: str | None) -> str:
        return addresses.thread(file, option, given.get("at"))

    return Page(thread.TITLE, "describe", address, lambda frame: thread.ThreadPage(frame, given))


def held_page() -> Page:
    """A list held against what the design needs."""
    return Page(held.TITLE, "buy", addresses.held, held.show)


def space_page(at: str) -> Page:
    """The lines in space; `at` is the place that is chosen first."""
    return Page(space.TITLE, "describe", addresses.space, lambda frame: space.SpacePage(frame, at))


def text_page(client: Client, line: int | None) -> Page:
    """The text; `line` is the one that it opens on."""
    return Page(text.TITLE, "describe", addresses.text, lambda frame: text.TextPage(frame, client, line))


def _figures(name: str) -> Page:
    """A page of figures: a sheet of its own, which belongs to a step."""
    figures = FIGURES[name]
    return Page(
        figures.title,
        figures.step,
        lambda file, option: addresses.step(file, name, option),
        lambda frame: report.show(figures.page, frame),
    )
