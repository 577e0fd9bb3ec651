"""Steps that show sheets: each is a lead in words and what the report makes of the aircraft."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial
from typing import TYPE_CHECKING

from firmpedal.web import addresses
from firmpedal.web.elements import box, link, put_words, raw, said, working
from firmpedal.web.sheets import sheets_html

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Sheet
    from firmpedal.web.answers import Answer
    from firmpedal.web.frame import Frame
    from firmpedal.web.sheets import Sheets

STALE = "Out of date. It is being worked out again."
NOTHING = "There is nothing here yet: the text cannot be read. Put it right first."

PENS = "What you tick and write on these sheets stays in this browser. It is not in the file."
UNKEPT = "This browser keeps nothing: ticks and words are gone when you leave the page. Print it instead."


def no_sheets(_evaluation: Evaluation) -> tuple[Sheet, ...]:
    """Nothing."""
    return ()


@dataclass(frozen=True)
class Report:
    """One step of the job that shows sheets.

    `papers` are what can be printed here: the name of the paper and words for it. `titled` says that its
    one sheet is called as the page is, so that the name stands there once. Where it takes more than one
    evaluation, `work` makes HTML of a text, a file's name, an option and a system, in place of `sheets`.
    """

    lead: str
    sheets: Sheets = no_sheets
    papers: tuple[tuple[str, str], ...] = ()
    pens: bool = False  # whether there is something to tick or to write on
    titled: bool = False
    empty: str = "Nothing is needed here."
    beside: tuple[Callable[[Frame], None], ...] = ()  # what else is above the sheets, each puts itself
    below: tuple[Callable[[Frame], None], ...] = ()
    work: Callable[..., str] | None = None


def show(report: Report, frame: Frame) -> None:
    """Put a report into the frame and keep it abreast of the document."""
    watch = frame.watch
    with frame.main:
        lead = said("p", frame.words(report.lead), "fp-step-lead")
        with box(classes="fp-shelf"):
            if report.papers:
                with box(classes="fp-actions"):
                    for name, title in report.papers:
                        link(title, addresses.paper(frame.file, name, watch.option), "fp-button")
            for each in report.beside:
                each(frame)
        if report.pens:
            said("p", PENS, "fp-small")
            said("p", UNKEPT, "fp-refused fp-unkept-words", role="alert")
        stale = working()
        pane = raw("", classes="fp-pane fp-pane-titled" if report.titled else "fp-pane")
        empty = box(classes="fp-empty")
        with empty:
            words = said("p", frame.words(report.empty))
            mend = link("Go to the text", addresses.text(frame.file, watch.option), "fp-button")
        for each in report.below:
            each(frame)
    empty.set_visibility(False)

    def out_of_date() -> None:
        pane.classes("fp-stale-pane")
        stale.set_content(STALE)
        stale.set_visibility(True)

    def filled(made: str) -> None:
        pane.classes(remove="fp-stale-pane")
        stale.set_visibility(False)
        pane.set_content(made)
        empty.set_visibility(not made and not watch.document.gone)  # what is gone is said above

    def answered(answer: Answer) -> None:
        readable = answer.evaluation is not None
        put_words(lead, frame.words(report.lead))
        put_words(words, frame.words(report.empty) if readable else NOTHING)
        mend.set_visibility(not readable)

    watch.when_stale(out_of_date)
    watch.when_answered(answered)
    watch.fill(report.work or partial(sheets_html, report.sheets), filled)
