"""Is it sound? What was found, each to be understood and accepted, and what is still to be measured."""

from __future__ import annotations

from typing import TYPE_CHECKING

from nicegui import ui

from firmpedal.checks.rules import asked_by
from firmpedal.export.html import html
from firmpedal.finding import Level
from firmpedal.project.acceptances import accepting, not_accepting
from firmpedal.project.names import label_of
from firmpedal.report.cover import certificate
from firmpedal.report.findings import level_words, summary
from firmpedal.report.found import found
from firmpedal.report.measure_sheet import until_known
from firmpedal.report.sheet import Paragraph
from firmpedal.report.to_measure import to_measure
from firmpedal.web import addresses
from firmpedal.web.elements import OPENING, box, link, put_words, raw, said, working
from firmpedal.web.figures import ways_to_figures
from firmpedal.web.form.accepted import GONE
from firmpedal.web.pages.report import NOTHING, STALE
from firmpedal.web.sound.finding_card import FindingCard
from firmpedal.web.sound.kept import Kept
from firmpedal.web.sound.measuring import Measuring
from firmpedal.web.sound.news import News
from firmpedal.web.turns import in_turn

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.found import Found
    from firmpedal.web.answers import Answer
    from firmpedal.web.frame import Frame

TITLE = "Is it sound?"
LEAD = "What could hurt somebody comes first, then what could break something. Each says what to try."
ACCEPTED = "Accepted at {places}; undo takes it back. What was checked: {asks}"
TAKEN_BACK = "The acceptance is taken back. What was checked: {asks}"


class SoundPage:
    """The page in its frame, kept abreast of the document."""

    def __init__(self, frame: Frame) -> None:
        self.watch, self.file = frame.watch, frame.file
        self._first: Found | None = None
        option = self.watch.option
        with frame.main:
            said("p", LEAD, "fp-step-lead")
            ways_to_figures(frame, "sound")
            self._stale = working()
            self._news = News(self.watch)
            self._all = box(classes="fp-sound")
            with self._all:
                with box("section", "fp-section", id="found", aria_label="What was found"):
                    self._found_title = said("h2", "What was found", tabindex="-1")
                    self._summary = raw("", classes="fp-sound-summary")
                    raw(OPENING, classes="fp-opening")
                    self._findings = Kept(box("ul", "fp-findings"), self._card)
                    with box("details", "fp-fold fp-notes", data_fold="notes") as self._notes_fold:
                        self._notes_words = said("summary", "")
                        self._notes = Kept(box("ul", "fp-findings"), self._card)
                self._measuring = Measuring(frame, to_measure, until_known, self._news)
            self._empty = box(classes="fp-empty")
            with self._empty:
                said("p", NOTHING)
                link("Go to the text", addresses.text(self.file, option), "fp-button")
        for each in (self._all, self._empty):
            each.set_visibility(False)
        self.watch.when_stale(self._out_of_date)
        self.watch.when_answered(self._answered)

    def _out_of_date(self) -> None:
        put_words(self._stale, STALE)
        self._stale.set_visibility(True)
        self._all.classes("fp-stale-pane")

    def _answered(self, answer: Answer) -> None:
        self._stale.set_visibility(False)
        self._all.classes(remove="fp-stale-pane")
        evaluation = answer.evaluation
        self._all.set_visibility(evaluation is not None)
        self._empty.set_visibility(evaluation is None and not self.watch.document.gone)
        if evaluation is None:
            return
        self._summary.set_content(html((*certificate(evaluation), Paragraph(summary(evaluation)))))
        told = found(evaluation)
        self._first = told[0] if told else None
        gone = self._show_found(told, evaluation)
        gone |= self._measuring.show(evaluation)
        if gone:  # whoever goes by keyboard stands on something still
            js = "if (document.activeElement === document.body)"
            ui.run_javascript(f"{js} getHtmlElement({self._found_title.id}).focus({{preventScroll: true}})")

    def _show_found(self, told: tuple[Found, ...], evaluation: Evaluation) -> bool:
        """Show what was found, NOTES folded where worse stands before them; says whether one went."""
        worse = [each for each in told if each.level is not Level.NOTE]
        notes = [each for each in told if each.level is Level.NOTE] if worse else []
        first = worse or told
        gone = self._findings.show([(_about(each), (each, evaluation)) for each in first])
        self._notes_fold.set_visibility(bool(notes))
        put_words(self._notes_words, level_words(evaluation, Level.NOTE))
        return self._notes.show([(_about(each), (each, evaluation)) for each in notes]) or gone

    def _card(self, told: tuple[Found, Evaluation]) -> FindingCard:
        changes = self.watch.document.may_change
        accept, take_back = (self._accept, self._take_back) if changes else (None, None)
        return FindingCard(told[0], self.file, accept, take_back, unfolded=told[0] is self._first)

    async def _accept(self, one: Found, places: tuple[str, ...], reason: str) -> None:
        """Accept a finding in the file.

        Raises:
            EditError: It cannot be written there; nothing was changed.
        """
        document, option = self.watch.document, self.watch.option

        def put(text: str) -> None:
            self._news.tell(ACCEPTED.format(places=_named(places), asks=asked_by(one.rule)))
            document.rewrite(text, f"a finding accepted at {_named(places)}")

        await in_turn(document, lambda text: accepting(text, one.rule, places, reason, option), put)

    async def _take_back(self, one: Found) -> None:
        """Take the entries of a finding off the list of what is accepted.

        Raises:
            EditError: They are not there any more, or cannot be taken out; nothing was changed.
        """
        document, option, first = self.watch.document, self.watch.option, one.entries[0]

        def put(text: str) -> None:
            self._news.tell(TAKEN_BACK.format(asks=asked_by(first.rule) or GONE))
            document.rewrite(text, f"a finding at {label_of(first.at)} not accepted any more")

        await in_turn(document, lambda text: not_accepting(text, one.entries, option), put)


def show(frame: Frame) -> None:
    """Put the page into its frame."""
    SoundPage(frame)


def _about(one: Found) -> tuple[object, ...]:
    """What a card is about: another wording of the same finding is the same card."""
    return (one.rule, one.level, one.places, one.entries, bool(one.sums), one.answer[0])


def _named(places: tuple[str, ...]) -> str:
    return ", ".join(map(label_of, places))
