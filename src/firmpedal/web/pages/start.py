"""The first page: my aircraft, an example to play with, or a new one."""

from __future__ import annotations

from html import escape
from typing import TYPE_CHECKING

from nicegui import background_tasks, run

from firmpedal.project.examples import examples, story
from firmpedal.report.cover import CAUTIONS, verdict_line
from firmpedal.report.next_step import first_step, next_step, to_mend
from firmpedal.web import addresses
from firmpedal.web.answers import answer
from firmpedal.web.elements import WORKING, box, link, put, put_words, raw, said
from firmpedal.web.frame import UNREADABLE

if TYPE_CHECKING:
    from nicegui import Client, ui
    from nicegui.element import Element

    from firmpedal.web.answers import Answer
    from firmpedal.web.shelf import Shelf

    Row = tuple[Element, ui.html, ui.html, ui.html]

EMPTY = (
    "There is no aircraft in this folder yet. Begin your own from pictures of its layout, or play with an "
    "example first: nothing that you do there can break anything."
)
EMPTY_ON_PHONE = "There is no aircraft in this folder yet. One is begun on the computer."
THREAD = "Which thread is it?"
AWAY = "Brake lines, from tape measure to packet. Nothing leaves this machine."


def show(shelf: Shelf, client: Client, refused: str = "", *, phone: bool = False) -> None:
    """Lay out the page; the verdicts come in as they are worked out."""
    with box(classes="fp-frame"):
        with box("header", "fp-top"), box(classes="fp-title"):
            said("h1", "Firmpedal")
            said("p", AWAY, "fp-small")
        with box(classes="fp-main", id="main"):
            if refused:
                said("p", refused, "fp-refused", role="alert")
            _mine(shelf, client, phone=phone)
            if not phone:
                _examples()
            with box(classes="fp-two"):
                with box("section", "fp-card"):
                    said("h2", "Before any of it")
                    raw("".join(f"<li>{escape(words)}</li>" for words in CAUTIONS), "ul", "fp-list")
                with box(classes="fp-section"):
                    _thread()
                    if not phone:
                        _let_in()


def _thread() -> None:
    """The one question that needs no aircraft."""
    with box("section", "fp-card"):
        said("h2", THREAD)
        said("p", "Measure the port, fitting or tube in your hand, and see what it can be.")
        link("Find it out", addresses.THREAD, "fp-button")


def _let_in() -> None:
    """How to take it to the hangar; a phone that is in needs no other."""
    with box("section", "fp-card"):
        said("h2", "On the phone")
        said("p", "Read the cards and the torques in the hangar, and tick the joints there.")
        link("Let a phone in", addresses.ON_PHONE, "fp-button")


def _mine(shelf: Shelf, client: Client, *, phone: bool) -> None:
    names = shelf.names()
    with box("section", "fp-section"):
        said("h2", "My aircraft")
        said("p", f"Folder: {shelf.folder.name or shelf.folder}", "fp-small")
        if not names:
            with box(classes="fp-empty"):
                said("p", EMPTY_ON_PHONE if phone else EMPTY)
                if not phone:
                    with box(classes="fp-actions"):
                        link("Begin your own", addresses.NEW, "fp-button fp-button-main")
                        link("Play with an example", "#examples", "fp-button")
            return
        rows = {name: _row(name) for name in names}
        if not phone:
            with box(classes="fp-actions"):
                link("Begin another aircraft", addresses.NEW, "fp-button")
    client.on_connect(
        lambda: background_tasks.create(_verdicts(shelf, client, rows, phone=phone), name="verdicts")
    )


def _row(name: str) -> Row:
    with box("a", "fp-verdict-bar fp-row", href=addresses.step(name, "sound")) as row:
        title = said("span", name, "fp-row-name")
        word = said("strong", WORKING)
        then = said("span", "", "fp-row-next")
        said("span", name, "fp-small")
    return row, title, word, then


async def _verdicts(shelf: Shelf, client: Client, rows: dict[str, Row], *, phone: bool) -> None:
    """Work the verdicts out one after the other, apart from the page's own loop."""
    for name, row in rows.items():
        document = shelf.document(name)
        if document is None or client.is_deleted:
            continue
        found = await run.io_bound(answer, document.text, name, None, None)
        if found is not None:
            with client:
                _tell(row, found, name, phone=phone)


def _tell(row: Row, found: Answer, name: str, *, phone: bool) -> None:
    """Say how an aircraft stands, and lead to where it goes on."""
    bar, title, word, then = row
    evaluation = found.evaluation
    if evaluation is None:
        put(bar, data_verdict="not sound")
        put_words(word, UNREADABLE)
        put_words(then, to_mend(len(found.reading.problems)).words)
    else:
        step = "sound" if phone else first_step(evaluation)
        put(bar, data_verdict=evaluation.verdict.value, href=addresses.step(name, step))
        put_words(word, verdict_line(evaluation))
        put_words(title, evaluation.aircraft.aircraft.name)
        put_words(then, next_step(evaluation, step).words)


def _examples() -> None:
    with box("section", "fp-section", id="examples"):
        said("h2", "An example to play with")
        words = "A copy is put into your folder. Change what you like: the example itself stays."
        said("p", words, "fp-small")
        with box(classes="fp-examples"):
            for name, path in examples().items():
                with box("form", "fp-card", method="post", action=addresses.BEGIN_EXAMPLE):
                    said("h3", name.capitalize())
                    said("p", _told(story(path), name.capitalize()))
                    box("input", type="hidden", name="example", value=name)
                    said("button", f"Open {name.capitalize()}", "fp-button", type="submit")


def _told(words: str, name: str) -> str:
    """What an example is, without its name, which stands over it, and without the marks of the text."""
    rest = words.removeprefix(f"{name}:").strip().replace("`", "")
    return rest[:1].upper() + rest[1:]
