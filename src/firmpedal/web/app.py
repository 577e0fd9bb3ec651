"""The app: its pages on their addresses, and how it is started."""

from __future__ import annotations

import logging
from pathlib import Path
from typing import TYPE_CHECKING

from nicegui import app, ui

from firmpedal.web import addresses
from firmpedal.web.answers import System
from firmpedal.web.desk import ReadOnly
from firmpedal.web.door import PHONE, Door
from firmpedal.web.elements import box, link, said
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
    phone,
    prove,
    report,
    sound,
    space,
    start,
)
from firmpedal.web.routes import Routes
from firmpedal.web.watch import Watch

if TYPE_CHECKING:
    from collections.abc import Callable

    from starlette.requests import Request

    from firmpedal.web.lan import Lan
    from firmpedal.web.shelf import Shelf

STATIC = Path(__file__).parent / "static"
HOST = "127.0.0.1"
LOOK_EVERY = 1.0  # s; how soon what another program did is seen

# The steps that show sheets, in the order in which people do them.
REPORTS: dict[str, tuple[str, report.Report]] = {
    "buy": ("Buy", buy.PAGE),
    "make": ("Make", make.PAGE),
    "fit": ("Fit and fill", fit.PAGE),
    "prove": ("Prove", prove.PAGE),
    "keep": ("Keep", keep.PAGE),
}
# The way through the job; what comes after the text may be read from a phone too.
READ = (("sound", sound.TITLE), *((name, title) for name, (title, _) in REPORTS.items()))
STEPS = (("describe", "Describe"), *READ)


def every_page(file: str, option: str | None = None) -> tuple[str, ...]:
    """The address of every page, for one aircraft: what looks at all of them takes them from here."""
    steps = (addresses.step(file, name, option) for name, _ in STEPS)
    rooms = addresses.space(file, option)
    return (addresses.START, addresses.NEW, addresses.ON_PHONE, *steps, rooms)


def build(shelf: Shelf, port: int, lan: Lan | None = None) -> None:
    """Put every page and route of the app in place.

    Args:
        shelf: The folder it is opened on.
        port: Where it listens; requests under another address are refused.
        lan: What lets phones in; without it this machine alone is answered.
    """
    door = Door(lan.pairing, frozenset(dict(READ))) if lan is not None else None
    app.add_middleware(Guard, port=port, door=door)
    app.add_static_files("/static", STATIC)
    ui.add_head_html(
        '<link rel="stylesheet" href="/static/firmpedal.css"><link rel="stylesheet" href="/static/app.css">'
        '<link rel="stylesheet" href="/static/sound.css">'
        '<script src="/static/look.js"></script><script src="/static/pens.js"></script>',
        shared=True,
    )
    app.router.routes.extend(Routes(shelf).all())
    app.timer(LOOK_EVERY, shelf.look)
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

    @ui.page(addresses.SPACE)
    async def space_page(file: str, option: str | None = None, at: str = "") -> None:
        await _space(shelf, file, option or None, at)

    @ui.page(addresses.STEP)
    async def step_page(file: str, name: str, option: str | None = None, line: int | None = None) -> None:
        await _step(shelf, file, name, option or None, line)


async def _step(shelf: Shelf, file: str, name: str, option: str | None, line: int | None) -> None:
    """One step of one aircraft, or word that there is none of that name."""
    document, title, client = shelf.document(file), dict(STEPS).get(name), ui.context.client
    if document is None or title is None:
        client.status_code = 404
        _nothing(f"There is no {file} in this folder." if document is None else f"There is no step {name}.")
        return
    ui.page_title(f"{title} - {file}")
    reads = _from_phone()
    watch = Watch(ReadOnly(document) if reads else document, option, _system(_request()))
    frame = Frame(watch, name, READ if reads else STEPS)
    if name == "describe":
        describe.TextPage(frame, client, line)
    elif name == "sound":
        sound.show(frame)
    else:
        report.show(REPORTS[name][1], frame)
    await watch.start(client)


async def _space(shelf: Shelf, file: str, option: str | None, at: str) -> None:
    """The lines of one aircraft in space, or word that there is none of that name."""
    document, client = shelf.document(file), ui.context.client
    if document is None:
        client.status_code = 404
        _nothing(f"There is no {file} in this folder.")
        return
    ui.page_title(f"{space.TITLE} - {file}")
    watch = Watch(document, option, _system(_request()))
    space.SpacePage(Frame(watch, "describe", STEPS, addresses.space), at)
    await watch.start(client)


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
        proxy_headers=False,  # who asks is what the system says, not what a request says
    )
