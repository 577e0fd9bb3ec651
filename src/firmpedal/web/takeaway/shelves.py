"""What lies ready to be taken away on each page that has something."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from firmpedal.export.step import MissingCadError, available
from firmpedal.export.text import parts_text
from firmpedal.web import addresses
from firmpedal.web.answers import answer
from firmpedal.web.elements import box, button, link, put, put_words, raw, said
from firmpedal.web.takeaway.panel import Panel

if TYPE_CHECKING:
    from firmpedal.web.answers import Answer, System
    from firmpedal.web.frame import Frame

ON_THE_COMPUTER = "These are made on the computer."
WHOLE = "Everything on paper: cover, circuit, findings, parts, cards, torques, checks, sums and sources."
FOR_OTHERS = "For other programs"
FORMATS = (
    ("dxf", "Flat drawings of the tubes (DXF)"),
    ("csv", "Bends and corners as tables (CSV)"),
    ("svg", "All drawings as pictures (SVG)"),
)
SOLIDS = "Solids for a CAD program need a library that is not installed here."
TAKE = "Take to the hangar"


def list_to_copy(frame: Frame) -> None:
    """The parts list for a spreadsheet, and as text for a letter or a forum."""
    watch = frame.watch
    with box("section", "fp-copy", aria_label="The parts list to take away"):
        with box(classes="fp-actions"):
            link("Save as a table (CSV)", addresses.paper(frame.file, "parts.csv", watch.option), "fp-button")
            copy = button("Copy as text", lambda: None)
            copy.on("click", js_handler="(event) => fpCopy(event.currentTarget)")
        told = said("p", "", "fp-copy-told", role="status")
        with box("details", "fp-fold"):
            said("summary", "The list as text")
            text = raw(
                "", "textarea", "fp-pen", readonly="readonly", rows="16", aria_label="The list as text"
            )

    def out_of_date() -> None:
        put(copy, disabled="disabled")
        put_words(told, "")

    def filled(made: str) -> None:
        put(copy, disabled=None if made else "disabled")
        put_words(text, made)

    watch.when_stale(out_of_date)
    watch.fill(list_as_text, filled)


@lru_cache(maxsize=16)
def list_as_text(text: str, file: str, option: str | None, system: System | None) -> str:
    """The parts list in the units that are shown; empty where the text cannot be read."""
    evaluation = answer(text, file, option, system).evaluation
    return "" if evaluation is None else parts_text(evaluation)


def way_to_retrofit(frame: Frame) -> None:
    """Where the work from one option to another is, for a file that has some."""
    actions = box(classes="fp-actions")
    with actions:
        to = addresses.retrofit(frame.file, frame.watch.option)
        link("The work from one option to another", to, "fp-button")
    actions.set_visibility(False)

    def answered(found: Answer) -> None:
        actions.set_visibility(bool(found.reading.options))

    frame.watch.when_answered(answered)


def way_to_held(frame: Frame) -> None:
    """Where a supplier's list is held against ours; a phone has nothing to paste."""
    if not frame.watch.document.may_change:
        return
    with box(classes="fp-actions"):
        to = addresses.held(frame.file, frame.watch.option)
        link("Hold a supplier's list against this one", to, "fp-button")


def packet_is_there(frame: Frame) -> None:
    """Where the whole packet is."""
    to = addresses.step(frame.file, "keep", frame.watch.option)
    with box(classes="fp-actions"):
        link("The whole packet on paper", f"{to}#packet", "fp-button")


def packet(frame: Frame) -> None:
    """The whole packet, with pictures of its pages; on a phone the paper alone."""
    with box("section", "fp-section", id="packet", aria_label="The packet"):
        said("h2", "The packet")
        said("p", WHOLE)
        if frame.watch.document.may_change:
            Panel(frame, "packet.pdf", "the packet")
        else:
            link(
                "Open the packet", addresses.paper(frame.file, "packet.pdf", frame.watch.option), "fp-button"
            )


def hangar(frame: Frame) -> None:
    """One page to take along."""
    to = addresses.paper(frame.file, "hangar.html", frame.watch.option)
    with box("section", "fp-section", aria_label=TAKE):
        said(
            "p", "One page with the cards, torques and checks: copy it to your phone. It needs no connection."
        )
        with box(classes="fp-actions"):
            link(TAKE, to, "fp-button")


def for_others(frame: Frame) -> None:
    """The lines for other programs; nothing is exported from a phone."""
    with box("section", "fp-section", aria_label=FOR_OTHERS):
        said("h2", FOR_OTHERS)
        if not frame.watch.document.may_change:
            said("p", ON_THE_COMPUTER)
            return
        with box(classes="fp-actions"):
            for name, words in FORMATS:
                link(words, addresses.export(frame.file, f"{name}.zip", frame.watch.option), "fp-button")
        if available():
            Panel(frame, "step.zip", "solids for a CAD program (STEP)")
        else:
            said("p", f"{SOLIDS} {MissingCadError()}", "fp-small")
