"""Is it sound? What was found, each to be understood and accepted, and what is still to be measured."""

from __future__ import annotations

from typing import TYPE_CHECKING

from nicegui import ui

from firmpedal.export.html import html
from firmpedal.project.acceptances import accepting, not_accepting
from firmpedal.project.measured import measured
from firmpedal.project.names import label_of
from firmpedal.report.cover import certificate
from firmpedal.report.findings import summary
from firmpedal.report.found import found
from firmpedal.report.measure_sheet import UNTIL_KNOWN
from firmpedal.report.sheet import Paragraph
from firmpedal.report.to_measure import to_measure
from firmpedal.web import addresses
from firmpedal.web.elements import box, link, put_words, raw, said, working
from firmpedal.web.figures import ways_to_figures
from firmpedal.web.pages.report import NOTHING, STALE
from firmpedal.web.sound.finding_card import FindingCard
from firmpedal.web.sound.kept import Kept
from firmpedal.web.sound.measure_row import MeasureRow
from firmpedal.web.turns import in_turn

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.found import Found
    from firmpedal.report.to_measure import ToMeasure
    from firmpedal.web.answers import Answer
    from firmpedal.web.frame import Frame

TITLE = "Is it sound?"
LEAD = "What could hurt somebody comes first, then what could break something. Each says what to try."
FORM = "Print the list"
AT_THE_COMPUTER = "Figures are written into the file at the computer."
HOW = (
    "Type a figure as you would write it: 3/4, 10-1/2 in, 12 mm, 3.4 to 3.6, about 2. What the file makes "
    "alike, such as the two sides, is one row."
)
ACCEPTED = "{rule} is accepted at {places}. Undo takes it back."
TAKEN_BACK = "{rule}: the acceptance is taken back."
WRITTEN = "{what}: {words} is in the file. Undo takes it out."
FOR_EVERY_OPTION = "It stands in the aircraft as written, for every option."


class SoundPage:
    """The page in its frame, kept abreast of the document."""

    def __init__(self, frame: Frame) -> None:
        self.watch, self.file = frame.watch, frame.file
        self._news = ""  # what was done here, to be said with the change that it makes
        option, changes = self.watch.option, self.watch.document.may_change
        with frame.main:
            said("p", LEAD, "fp-step-lead")
            ways_to_figures(frame, "sound")
            self._stale = working()
            self._done = said("p", "", "fp-done", role="status")
            self._all = box(classes="fp-sound")
            with self._all:
                with box("section", "fp-section", id="found", aria_label="What was found"):
                    self._found_title = said("h2", "What was found", tabindex="-1")
                    self._summary = raw("", classes="fp-sound-summary")
                    self._findings = Kept(box("ul", "fp-findings"), self._card)
                self._measuring = box("section", "fp-section", id="measure", aria_label="To measure")
                with self._measuring:
                    said("h2", "To measure")
                    said("p", UNTIL_KNOWN)
                    said("p", HOW if changes else AT_THE_COMPUTER, "fp-small")
                    with box(classes="fp-actions"):
                        link(FORM, addresses.paper(self.file, "form.pdf", option), "fp-button")
                    self._rows = Kept(box("ul", "fp-measures"), self._row)
            self._empty = box(classes="fp-empty")
            with self._empty:
                said("p", NOTHING)
                link("Go to the text", addresses.text(self.file, option), "fp-button")
        for each in (self._all, self._empty, self._done):
            each.set_visibility(False)
        self.watch.when_stale(self._out_of_date)
        self.watch.when_answered(self._answered)

    def _out_of_date(self) -> None:
        put_words(self._stale, STALE)
        self._stale.set_visibility(True)
        put_words(self._done, self._news)
        self._done.set_visibility(bool(self._news))
        self._news = ""
        self._all.classes("fp-stale-pane")

    def _answered(self, answer: Answer) -> None:
        self._stale.set_visibility(False)
        self._all.classes(remove="fp-stale-pane")
        evaluation = answer.evaluation
        self._all.set_visibility(evaluation is not None)
        self._empty.set_visibility(evaluation is None)
        if evaluation is None:
            return
        self._summary.set_content(html((*certificate(evaluation), Paragraph(summary(evaluation)))))
        gone = self._findings.show([(_about(each), (each, evaluation)) for each in found(evaluation)])
        lacking = to_measure(evaluation)
        self._measuring.set_visibility(bool(lacking))
        gone |= self._rows.show([(_row_of(each), (each, evaluation)) for each in lacking])
        if gone:  # whoever goes by keyboard stands on something still
            js = "if (document.activeElement === document.body)"
            ui.run_javascript(f"{js} getHtmlElement({self._found_title.id}).focus({{preventScroll: true}})")

    def _card(self, told: tuple[Found, Evaluation]) -> FindingCard:
        changes = self.watch.document.may_change
        return FindingCard(
            told[0], self.file, self._accept if changes else None, self._take_back if changes else None
        )

    def _row(self, told: tuple[ToMeasure, Evaluation]) -> MeasureRow:
        return MeasureRow(told[0], self.file, self._write if self.watch.document.may_change else None)

    async def _accept(self, one: Found, places: tuple[str, ...], reason: str) -> None:
        """Accept a finding in the file.

        Raises:
            EditError: It cannot be written there; nothing was changed.
        """
        document, option = self.watch.document, self.watch.option

        def put(text: str) -> None:
            self._news = ACCEPTED.format(rule=one.rule, places=_named(places))
            document.rewrite(text, f"{one.rule} accepted at {_named(places)}")

        await in_turn(document, lambda text: accepting(text, one.rule, places, reason, option), put)

    async def _take_back(self, one: Found) -> None:
        """Take the entries of a finding off the list of what is accepted.

        Raises:
            EditError: They are not there any more, or cannot be taken out; nothing was changed.
        """
        document, option, rule = self.watch.document, self.watch.option, one.entries[0].rule

        def put(text: str) -> None:
            self._news = TAKEN_BACK.format(rule=rule)
            document.rewrite(text, f"{rule} not accepted any more")

        await in_turn(document, lambda text: not_accepting(text, one.entries, option), put)

    async def _write(self, one: ToMeasure, words: str) -> None:
        """Write a measurement into the file.

        Raises:
            EditError: It cannot be read as one, or not be written there; nothing was changed.
        """
        document, option = self.watch.document, self.watch.option

        def put(made: tuple[str, str | None]) -> None:
            text, where = made
            everywhere = f" {FOR_EVERY_OPTION}" if option is not None and where is None else ""
            self._news = WRITTEN.format(what=label_of(one.at), words=words.strip()) + everywhere
            document.rewrite(text, f"{label_of(one.at)}: {words.strip()}")

        await in_turn(document, lambda text: measured(text, one.at, words, option), put)


def show(frame: Frame) -> None:
    """Put the page into its frame."""
    SoundPage(frame)


def _about(one: Found) -> tuple[object, ...]:
    """What a card is about: another wording of the same finding is the same card."""
    return (one.rule, one.level, one.places, one.entries, bool(one.sums), one.answer[0])


def _row_of(one: ToMeasure) -> tuple[object, ...]:
    return (one.what, one.rules, one.at, one.others, one.unit, one.how, one.when)


def _named(places: tuple[str, ...]) -> str:
    return ", ".join(map(label_of, places))
