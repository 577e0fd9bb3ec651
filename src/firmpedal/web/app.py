"""The app: its pages on their addresses, and what stands before them.

The pages of one aircraft, and all that they show, are loaded when the first of them is asked for: the page
that comes before them is there so much sooner.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from nicegui import app, ui
from starlette.responses import RedirectResponse

from firmpedal.web import addresses
from firmpedal.web.answers import System, reading_of
from firmpedal.web.door import PHONE, Door
from firmpedal.web.elements import box, link, said
from firmpedal.web.frame import Frame
from firmpedal.web.guard import Guard
from firmpedal.web.pages import new, start
from firmpedal.web.read_only import ReadOnly
from firmpedal.web.routes import Routes
from firmpedal.web.tidying import TIDIER
from firmpedal.web.watch import Watch
from firmpedal.web.works import WORKS

if TYPE_CHECKING:
    from types import ModuleType

    from starlette.requests import Request
    from starlette.responses import Response

    from firmpedal.web.desk import Document
    from firmpedal.web.lan import Lan
    from firmpedal.web.shelf import Shelf
    from firmpedal.web.site import Page

STATIC = Path(__file__).parent / "static"
STYLES = ("firmpedal", "app", "folds", "takeaway", "fields", "sound", "asking", "narrow")
SCRIPTS = ("takeaway", "look", "pens", "folds", "drawings", "unknown", "asking")
PATIENCE = 60.0  # s for a page to be made: a machine that is busy is slow, and still has it in the end
LOOK_EVERY = 1.0  # s; how soon what another program did is seen


def build(shelf: Shelf, port: int, lan: Lan | None = None) -> None:
    """Put every page and route of the app in place.

    Args:
        shelf: The folder it is opened on.
        port: Where it listens; requests under another address are refused.
        lan: What lets phones in; without it this machine alone is answered.
    """
    door = Door(lan.pairing, _read_from_a_phone()) if lan is not None else None
    app.add_middleware(Guard, port=port, door=door)
    app.add_static_files("/static", STATIC)
    styles = (f'<link rel="stylesheet" href="/static/{name}.css">' for name in STYLES)
    scripts = (f'<script src="/static/{name}.js"></script>' for name in SCRIPTS)
    ui.add_head_html("".join((*styles, *scripts)), shared=True)
    app.router.routes.extend(Routes(shelf).all())
    app.timer(LOOK_EVERY, shelf.look)
    app.timer(LOOK_EVERY, TIDIER.look)
    app.on_shutdown(WORKS.stop_all)
    _pages(shelf, lan)


def _pages(shelf: Shelf, lan: Lan | None) -> None:
    _held_in_hand(shelf)

    @ui.page(addresses.START, title="Firmpedal")
    def start_page(refused: str = "") -> None:
        start.show(shelf, ui.context.client, refused, phone=_from_phone())

    @ui.page(addresses.NEW, title="A new aircraft - Firmpedal")
    def new_page() -> None:
        new.show(_request().query_params)

    @ui.page(addresses.ON_PHONE, title="On the phone - Firmpedal")
    def phone_page() -> None:
        _site().phone.show(lan, shelf.folder)

    @ui.page(addresses.OPTIONS, response_timeout=PATIENCE)
    async def options_page(file: str, option: str | None = None) -> None:
        await _show(shelf, file, option, _site().options_page())

    @ui.page(addresses.RETROFIT, response_timeout=PATIENCE)
    async def retrofit_page(
        file: str, option: str | None = None, before: str | None = None
    ) -> Response | None:
        return await _work(shelf, file, option or None, before or None)

    @ui.page(addresses.SPACE, response_timeout=PATIENCE)
    async def space_page(file: str, option: str | None = None, at: str = "") -> None:
        await _show(shelf, file, option, _site().space_page(at))

    @ui.page(addresses.TEXT, response_timeout=PATIENCE)
    async def text_page(file: str, option: str | None = None, line: int | None = None) -> None:
        await _show(shelf, file, option, _site().text_page(ui.context.client, line))

    @ui.page(addresses.STEP, response_timeout=PATIENCE)
    async def step_page(
        file: str, name: str, option: str | None = None, line: int | None = None, at: str = ""
    ) -> Response | None:
        if name == "describe" and not at and (line is not None or _broken(shelf, file, option or None)):
            return RedirectResponse(addresses.text(file, option, line))
        await _show(shelf, file, option, _site().page_of(name, at))
        return None


def _held_in_hand(shelf: Shelf) -> None:
    """The pages on which a thing that somebody has, or a list of them, is held against what is known."""

    @ui.page(addresses.THREAD, title="Which thread is it? - Firmpedal")
    def thread_page() -> None:
        _site().thread.show(_request().query_params, _system(_request()))

    @ui.page(addresses.THREAD_AT, response_timeout=PATIENCE)
    async def thread_at_page(file: str, option: str | None = None) -> None:
        await _show(shelf, file, option, _site().thread_page(dict(_request().query_params)))

    @ui.page(addresses.HELD, response_timeout=PATIENCE)
    async def held_page(file: str, option: str | None = None) -> None:
        await _show(shelf, file, option, _site().held_page())


def _site() -> ModuleType:
    """All that the pages of an aircraft are made of, loaded with the first of them and not before."""
    from firmpedal.web import site  # noqa: PLC0415

    return site


async def _work(shelf: Shelf, file: str, option: str | None, before: str | None) -> Response | None:
    """The way from one option to another; where nothing is chosen and there is one option, to that."""
    only = None if option or before else _only_option(shelf, file)
    if only is not None:
        return RedirectResponse(addresses.retrofit(file, only))
    await _show(shelf, file, option, _site().retrofit_page(before))
    return None


def _only_option(shelf: Shelf, file: str) -> str | None:
    """The option of a file that has just one, beside what is written."""
    document = shelf.document(file)
    found = reading_of(document.text, file, None).options if document is not None else ()
    return found[0] if len(found) == 1 else None


def _broken(shelf: Shelf, file: str, option: str | None) -> bool:
    """Whether a text cannot be read, and so is mended as a text first."""
    document = shelf.document(file)
    if document is None:
        return False
    if option is not None and option not in reading_of(document.text, file, None).options:
        option = None  # the page says so
    return bool(document.problems) or reading_of(document.text, file, option).aircraft is None


async def _show(shelf: Shelf, file: str, option: str | None, page: Page | None) -> None:
    """A page of one aircraft, or word that there is none."""
    document, client = shelf.document(file), ui.context.client
    if document is None or page is None:
        client.status_code = 404
        _nothing(f"There is no {file} in this folder." if document is None else "There is no such step.")
        return
    watch = _watch(document, option or None)
    frame = Frame(watch, page.step, _steps(), page.title, page.address)
    ui.page_title(f"{frame.words(page.title)} - {file}")
    page.show(frame)
    await watch.start(client)


def _watch(document: Document, option: str | None) -> Watch:
    """What follows the document for a page; on a phone it only reads."""
    return Watch(ReadOnly(document) if _from_phone() else document, option, _system(_request()))


def _steps() -> tuple[tuple[str, str], ...]:
    """The steps that whoever asks may open."""
    steps: tuple[tuple[str, str], ...] = _site().READ if _from_phone() else _site().STEPS
    return steps


def _read_from_a_phone() -> frozenset[str]:
    """The pages of an aircraft that a phone may read."""
    return frozenset((*dict(_site().READ), *_site().READ_ALONG))


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
