"""The app: its pages on their addresses, and how it is started."""

from __future__ import annotations

import logging
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from nicegui import app, ui
from starlette.responses import RedirectResponse

from firmpedal.web import addresses
from firmpedal.web.answers import System, reading_of
from firmpedal.web.desk import ReadOnly
from firmpedal.web.door import PHONE, Door
from firmpedal.web.elements import box, link, said
from firmpedal.web.figures import FIGURES
from firmpedal.web.frame import Frame
from firmpedal.web.guard import Guard
from firmpedal.web.lan import EVERYWHERE
from firmpedal.web.pages import (
    buy,
    describe,
    fit,
    keep,
    make,
    new,
    options,
    phone,
    prove,
    report,
    retrofit,
    sound,
    space,
    start,
    text,
)
from firmpedal.web.routes import Routes
from firmpedal.web.watch import Watch
from firmpedal.web.works import WORKS

if TYPE_CHECKING:
    from collections.abc import Callable

    from starlette.requests import Request
    from starlette.responses import Response

    from firmpedal.web.desk import Document
    from firmpedal.web.lan import Lan
    from firmpedal.web.shelf import Shelf

STATIC = Path(__file__).parent / "static"
STYLES, SCRIPTS = ("firmpedal", "app", "takeaway", "fields", "sound"), ("takeaway", "look", "pens")
HOST = "127.0.0.1"
LOOK_EVERY = 1.0  # s; how soon what another program did is seen
PATIENCE = 30.0  # s; a window that is busy or asleep for less than this goes on where it was

# The steps that show sheets, in the order in which people do them.
REPORTS: dict[str, tuple[str, report.Report]] = {
    "buy": ("Buy", buy.PAGE),
    "make": ("Make", make.PAGE),
    "fit": ("Fit and fill", fit.PAGE),
    "prove": ("Prove", prove.PAGE),
    "keep": ("Keep", keep.PAGE),
}
READ_ALONG = ("options", "retrofit", *FIGURES)  # pages of a step that only show
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
    ways = (addresses.text, addresses.space, addresses.options, addresses.retrofit)
    more = (way(file, option) for way in ways)
    return (addresses.START, addresses.NEW, addresses.ON_PHONE, *steps, *more)


def build(shelf: Shelf, port: int, lan: Lan | None = None) -> None:
    """Put every page and route of the app in place.

    Args:
        shelf: The folder it is opened on.
        port: Where it listens; requests under another address are refused.
        lan: What lets phones in; without it this machine alone is answered.
    """
    door = Door(lan.pairing, frozenset((*dict(READ), *READ_ALONG))) if lan is not None else None
    app.add_middleware(Guard, port=port, door=door)
    app.add_static_files("/static", STATIC)
    styles = (f'<link rel="stylesheet" href="/static/{name}.css">' for name in STYLES)
    scripts = (f'<script src="/static/{name}.js"></script>' for name in SCRIPTS)
    ui.add_head_html("".join((*styles, *scripts)), shared=True)
    app.router.routes.extend(Routes(shelf).all())
    app.timer(LOOK_EVERY, shelf.look)
    app.on_shutdown(WORKS.stop_all)
    _pages(shelf, lan)


def _pages(shelf: Shelf, lan: Lan | None) -> None:
    @ui.page(addresses.START, title="Firmpedal")
    def start_page(refused: str = "") -> None:
        start.show(shelf, ui.context.client, refused, phone=_from_phone())

    @ui.page(addresses.NEW, title="A new aircraft - Firmpedal")
    def new_page() -> None:
        new.show(_request().query_params)

    @ui.page(addresses.ON_PHONE, title="On the phone - Firmpedal")
    def phone_page() -> None:
        phone.show(lan)

    @ui.page(addresses.OPTIONS)
    async def options_page(file: str, option: str | None = None) -> None:
        page = Page(options.TITLE, "sound", addresses.options, options.show)
        await _show(shelf, file, option, page)

    @ui.page(addresses.RETROFIT)
    async def retrofit_page(file: str, option: str | None = None, before: str | None = None) -> None:
        way = retrofit.Way(before or None)
        await _show(shelf, file, option, Page(retrofit.TITLE, "fit", way.address, way.show))

    @ui.page(addresses.SPACE)
    async def space_page(file: str, option: str | None = None, at: str = "") -> None:
        page = Page(space.TITLE, "describe", addresses.space, lambda frame: space.SpacePage(frame, at))
        await _show(shelf, file, option, page)

    @ui.page(addresses.TEXT)
    async def text_page(file: str, option: str | None = None, line: int | None = None) -> None:
        client = ui.context.client
        page = Page(text.TITLE, "describe", addresses.text, lambda frame: text.TextPage(frame, client, line))
        await _show(shelf, file, option, page)

    @ui.page(addresses.STEP)
    async def step_page(
        file: str, name: str, option: str | None = None, line: int | None = None, at: str = ""
    ) -> Response | None:
        if name == "describe" and not at and (line is not None or _broken(shelf, file, option or None)):
            return RedirectResponse(addresses.text(file, option, line))
        await _show(shelf, file, option, _step(name, at))
        return None


def _broken(shelf: Shelf, file: str, option: str | None) -> bool:
    """Whether a text cannot be read, and so is mended as a text first."""
    document = shelf.document(file)
    if document is None:
        return False
    return bool(document.problems) or reading_of(document.text, file, option).aircraft is None


def _step(name: str, at: str) -> Page | None:
    """One step of the way, or None where there is none of that name."""
    if name == "describe":
        return Page(dict(STEPS)[name], name, None, lambda frame: describe.FormPage(frame, at))
    if name == "sound":
        return Page(sound.TITLE, name, None, sound.show)
    if name in FIGURES:
        figures = FIGURES[name]
        where = partial(addresses.step, name=name)
        return Page(
            figures.title,
            figures.step,
            lambda file, option: where(file, option=option),
            lambda frame: report.show(figures.page, frame),
        )
    if name not in REPORTS:
        return None
    title, page = REPORTS[name]
    return Page(title, name, None, lambda frame: report.show(page, frame))


async def _show(shelf: Shelf, file: str, option: str | None, page: Page | None) -> None:
    """A page of one aircraft, or word that there is none."""
    document, client = shelf.document(file), ui.context.client
    if document is None or page is None:
        client.status_code = 404
        _nothing(f"There is no {file} in this folder." if document is None else "There is no such step.")
        return
    ui.page_title(f"{page.title} - {file}")
    watch = _watch(document, option or None)
    page.show(Frame(watch, page.step, _steps(), page.address))
    await watch.start(client)


def _watch(document: Document, option: str | None) -> Watch:
    """What follows the document for a page; on a phone it only reads."""
    return Watch(ReadOnly(document) if _from_phone() else document, option, _system(_request()))


def _steps() -> tuple[tuple[str, str], ...]:
    """The steps that whoever asks may open."""
    return READ if _from_phone() else STEPS


def _nothing(words: str) -> None:
    with box(classes="fp-frame"), box(classes="fp-main"), box(classes="fp-empty"):
        said("h1", "Not found")
        said("p", words)
        link("All aircraft", addresses.START, "fp-button fp-button-main")


def _request() -> Request:
    return ui.context.client.request


def _from_phone() -> bool:
    return PHONE in _request().scope


def _system(request: Request) -> System | None:
    """The units that were chosen before, as the browser remembers them."""
    word = request.cookies.get("fp-units", "")
    return System(word) if word in tuple(System) else None


def _worth_saying(record: logging.LogRecord) -> bool:
    """Whether the server's word is for a builder: not that a window was closed before its page was there."""
    return not (record.exc_info and str(record.exc_info[1]) == "No response returned.")


def serve(
    shelf: Shelf,
    port: int,
    page: str,
    told: Callable[[str], None],
    *,
    browser: bool,
    lan: Lan | None = None,
) -> None:
    """Run the app until it is stopped.

    Args:
        shelf: The folder it is opened on.
        port: A free port.
        page: The address of the first page to show.
        told: Is called with the whole address as soon as it answers.
        browser: Whether to open a browser on it.
        lan: What lets phones of the local network in; without it this machine alone can reach it.
    """
    build(shelf, port, lan)
    address = "http://" + f"{HOST}:{port}"
    app.on_startup(lambda: told(f"{address}{page}"))
    logging.getLogger("uvicorn.error").addFilter(_worth_saying)
    ui.run(
        host=HOST if lan is None else EVERYWHERE,
        port=port,
        title="Firmpedal",
        favicon=STATIC / "mark.svg",
        language="en-US",
        reload=False,
        show=page if browser else False,
        show_welcome_message=False,
        tailwind=False,
        dark=None,
        binding_refresh_interval=None,
        reconnect_timeout=PATIENCE,
        proxy_headers=False,  # who asks is what the system says, not what a request says
    )
