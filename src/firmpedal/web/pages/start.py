"""The first page: my aircraft, an example to play with, or a new one."""

from __future__ import annotations

from html import escape
from typing import TYPE_CHECKING

from nicegui import background_tasks, run

from firmpedal.project.examples import examples, story
from firmpedal.report.cover import CAUTIONS, verdict_line
from firmpedal.web import addresses
from firmpedal.web.answers import answer
from firmpedal.web.elements import WORKING, box, link, put, put_words, raw, said
from firmpedal.web.frame import UNREADABLE

if TYPE_CHECKING:
    from nicegui import Client, ui
    from nicegui.element import Element

    from firmpedal.web.answers import Answer
    from firmpedal.web.shelf import Shelf

    Row = tuple[Element, ui.html, ui.html]

EMPTY = "There is no aircraft in this folder yet. Play with one of the examples, or begin your own."


def show(shelf: Shelf, client: Client, refused: str = "", *, phone: bool = False) -> None:
    """Lay out the page; the verdicts come in as they are worked out."""
    with box(classes="fp-frame"):
        with box("header", "fp-top"), box(classes="fp-title"):
            said("h1", "Firmpedal")
            said("p", "Brake lines, from tape measure to packet. Nothing leaves this machine.", "fp-small")
        with box(classes="fp-main", id="main"):
            if refused:
                said("p", refused, "fp-refused", role="alert")
            _mine(shelf, client)
            if not phone:
                _beginnings()
            with box("section", "fp-card"):
                said("h2", "Before any of it")
                raw("".join(f"<li>{escape(words)}</li>" for words in CAUTIONS), "ul", "fp-list")


def _beginnings() -> None:
    """What a phone has not: other files to begin, and other phones to let in."""
    _examples()
    with box("section", "fp-card"):
        said("h2", "A new one")
        said("p", "Choose the layout by its pictures. The file that is written has every measurement "
             "still to take, and so has the form to print.")  # fmt: skip
        link("Choose the layout", addresses.NEW, "fp-button fp-button-main")
    with box("section", "fp-card"):
        said("h2", "On the phone")
        said("p", "Read the cards and the torques in the hangar, and tick the joints there.")
        link("Let a phone in", addresses.ON_PHONE, "fp-button")


def _mine(shelf: Shelf, client: Client) -> None:
    names = shelf.names()
    with box("section", "fp-section"):
        said("h2", "My aircraft")
        said("p", f"Folder: {shelf.folder.name or shelf.folder}", "fp-small")
        if not names:
            with box(classes="fp-empty"):
                said("p", EMPTY)
            return
        rows = {name: _row(name) for name in names}
    client.on_connect(lambda: background_tasks.create(_verdicts(shelf, client, rows), name="verdicts"))


def _row(name: str) -> Row:
    with box("a", "fp-verdict-bar fp-row", href=addresses.step(name, "sound")) as row:
        title = said("span", name, "fp-row-name")
        word = said("strong", WORKING)
        said("span", name, "fp-small")
    return row, title, word


async def _verdicts(shelf: Shelf, client: Client, rows: dict[str, Row]) -> None:
    """Work the verdicts out one after the other, apart from the page's own loop."""
    for name, row in rows.items():
        document = shelf.document(name)
        if document is None or client.is_deleted:
            continue
        found = await run.io_bound(answer, document.text, name, None, None)
        if found is not None:
            with client:
                _tell(row, found)


def _tell(row: Row, found: Answer) -> None:
    bar, title, word = row
    evaluation = found.evaluation
    if evaluation is None:
        put(bar, data_verdict="not sound")
        put_words(word, UNREADABLE)
    else:
        put(bar, data_verdict=evaluation.verdict.value)
        put_words(word, verdict_line(evaluation))
        put_words(title, evaluation.aircraft.aircraft.name)


def _examples() -> None:
    with box("section", "fp-section"):
        said("h2", "A worked example to play with")
        said(
            "p", "A copy is put into your folder. Change what you like: the example itself stays.", "fp-small"
        )
        with box(classes="fp-examples"):
            for name, path in examples().items():
                with box("form", "fp-card", method="post", action=addresses.BEGIN_EXAMPLE):
                    said("h3", name.capitalize())
                    said("p", story(path))
                    box("input", type="hidden", name="example", value=name)
                    said("button", f"Open {name.capitalize()}", "fp-button", type="submit")
