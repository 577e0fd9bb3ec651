"""What stands round every step: whose aircraft, the verdict, the way through the job, and the way back."""

from __future__ import annotations

from typing import TYPE_CHECKING

from nicegui import ui

from firmpedal.model.display import count_of
from firmpedal.report.advice import option_name
from firmpedal.report.cover import verdict_line, why_line
from firmpedal.web import addresses
from firmpedal.web.answers import System, reading_of, system_of
from firmpedal.web.conflict import conflict_card, unsettled_card, unsettled_of
from firmpedal.web.elements import WORKING, box, button, link, put, put_words, raw, said, unfolding
from firmpedal.web.gone_option import WORD as NO_SUCH_OPTION
from firmpedal.web.gone_option import GoneOption
from firmpedal.web.onward import Onward
from firmpedal.web.option_ways import OptionWays
from firmpedal.web.turns import redo, undo
from firmpedal.web.unreadable import unreadable_card
from firmpedal.web.wording import worded
from firmpedal.web.worker import BROKEN

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.web.answers import Answer
    from firmpedal.web.desk import Conflict
    from firmpedal.web.watch import Watch

HALVES = (
    '<svg viewBox="0 0 24 24" width="20" height="20" aria-hidden="true"><circle cx="12" cy="12" r="9" '
    'fill="none" stroke="currentColor" stroke-width="2"/>'
    '<path d="M12 3a9 9 0 0 1 0 18z" fill="currentColor"/></svg>'
)
# Where there is room for the sign alone, the words are still heard.
BACK = (
    '<span class="fp-back-mark" aria-hidden="true">\u2039</span>'
    '<span class="fp-back-words">All aircraft</span>'
)
UNREADABLE, GONE = "CANNOT BE READ", "THE FILE IS GONE"
TO_THE_CARD = "document.querySelector('.fp-conflict')?.scrollIntoView()"  # it stands above what is looked at
TOOLS, WHY = "Tools", "Why"


class Frame:
    """The frame round one step of one aircraft, or round a page of a step.

    Args:
        watch: The option of the document that is looked at.
        step: The step's name.
        steps: All steps, each with its title.
        title: What the page is called.
        page: Gives the address of a page under the step, from the file and an option.
    """

    def __init__(
        self,
        watch: Watch,
        step: str,
        steps: tuple[tuple[str, str], ...],
        title: str,
        page: Callable[[str, str | None], str] | None = None,
    ) -> None:
        self.watch, self.step = watch, step
        self._conflict: Conflict | None = None  # the one that is shown
        self._file_state: object = None  # what is said of the file itself
        self.in_place: set[str] = set()  # the fields that the page itself has: what waits is seen there
        self._is_form = step == "describe" and page is None  # where fields are settled
        self._page = page or (lambda file, option: addresses.step(file, step, option))
        self.file = watch.document.path.name
        link("To what this page says", "#main", "fp-skip")
        with box(classes="fp-frame"):
            self._head()
            self._verdict()
            self._option_gone = GoneOption(watch, self.file, self._page)
            self._alerts = box("div", "fp-alerts")
            self._path(steps)
            self.main = box(classes="fp-main", id="main", tabindex="-1")
        with self.main, box("header", "fp-step-head"):
            with box(classes="fp-step-title"):
                said("h2", self.words(title))
                said("p", _counted(step, steps), "fp-small fp-step-count")
            here = self._page(self.file, watch.option)
            self._onward = Onward(self.file, watch.option, step, here, changes=watch.document.may_change)
        watch.when_stale(self._stale)
        watch.when_answered(self._answered)
        watch.when_failed(self._failed)
        self.history()
        ui.context.client.on_connect(lambda: ui.run_javascript("fpShowStep()"))

    def words(self, words: str) -> str:
        """Words of the page for the brakes that this aircraft has."""
        return worded(reading_of(self.watch.document.text, self.file, self.watch.option), words)

    def _head(self) -> None:
        with box("header", "fp-top"):
            raw(BACK, "a", "fp-back", href=addresses.START)
            with box(classes="fp-title"):
                self._name = said("h1", self.file)
                self._saved = said("p", "", "fp-small fp-saved")
            unfolding(TOOLS, "tools")
            with box(classes="fp-tools", id="tools"):
                with box(classes="fp-pair fp-changes") as back_and_forth:
                    self._undo = button("Undo", lambda: undo(self.watch.document))
                    self._redo = button("Redo", lambda: redo(self.watch.document))
                back_and_forth.set_visibility(self.watch.document.may_change)
                self._units()
                turn = raw(
                    HALVES,
                    "button",
                    "fp-button",
                    type="button",
                    aria_label="Light or dark",
                    title="Light or dark",
                )
                turn.on("click", js_handler="() => fpTurnLook()")

    def _units(self) -> None:
        with box(classes="fp-pair", role="group", aria_label="Figures in"):
            self._systems = {each: self._system_button(each) for each in System}

    def _system_button(self, system: System) -> ui.html:
        def choose() -> None:
            self.watch.system = system
            ui.run_javascript(f"fpRemember('units', '{system.value}')")
            self.watch.again()

        return button(system.value, choose)

    def _verdict(self) -> None:
        self._bar = box(classes="fp-verdict-bar", role="status", data_verdict="unknown")
        with self._bar:
            self._word = said("strong", WORKING)
            unfolding(WHY, "why")
            self._why = said("span", "", id="why")
        self._options = OptionWays(self.watch, self.file, self.step, self._page)

    def _path(self, steps: tuple[tuple[str, str], ...]) -> None:
        own = None if self._option_gone.gone else self.watch.option
        with box("nav", "fp-steps", aria_label="The way through the job"), box("ol"):
            for name, title in steps:
                with box("li"):
                    here = {"aria_current": "page"} if name == self.step else {}
                    link(title, addresses.step(self.file, name, own), **here)

    def _stale(self) -> None:
        self._bar.classes("fp-stale")
        self._onward.out_of_date()
        self.history()

    def _answered(self, answer: Answer) -> None:
        self._bar.classes(remove="fp-stale")
        evaluation, reading = answer.evaluation, answer.reading
        if evaluation is None:
            put(self._bar, data_verdict="not sound")
            word, why = self._no_answer(len(reading.problems))
            put_words(self._word, word)
            put_words(self._why, why)
        else:
            put(self._bar, data_verdict=evaluation.verdict.value)
            whose = f" ({option_name(self.watch.option)})" if self._options.abreast else ""
            put_words(self._word, f"{verdict_line(evaluation)}{whose}")
            put_words(self._why, why_line(evaluation))
            put_words(self._name, evaluation.aircraft.aircraft.name or self.file)
            own = self.watch.system or system_of(evaluation.aircraft.units)
            for system, each in self._systems.items():
                put(each, aria_pressed=str(system is own).lower())
        self._options.show(reading.options)
        if self.watch.document.gone or self._option_gone.gone:
            self._onward.nothing()
        else:
            self._onward.show(answer)

    def _no_answer(self, count: int) -> tuple[str, str]:
        """Why there is none: the file is gone, or its option, or some things in it cannot be read."""
        if self.watch.document.gone:
            return GONE, ""
        if self._option_gone.gone:
            return NO_SUCH_OPTION, self._option_gone.words
        return UNREADABLE, f"{count_of(count, 'thing')} to put right in the text."

    def _failed(self) -> None:
        put_words(self._word, "no answer")
        put_words(self._why, BROKEN)

    def history(self) -> None:
        """What can be undone, whether all is saved, and what stands against it."""
        document = self.watch.document
        self._option_gone.show(self.main)
        for each, does, words in (
            (self._undo, document.undoes, "Undo"),
            (self._redo, document.redoes, "Redo"),
        ):
            free = bool(does) and document.conflict is None
            put(each, aria_disabled=str(not free).lower(), title=f"{words}: {does}" if does else None)
        put_words(self._saved, self._saved_words())
        unsettled = unsettled_of(document)
        elsewhere = tuple(each for each in unsettled if each[1].where[0] not in self.in_place)
        bad = document.conflict or document.trouble or document.problems or unsettled
        put(self._saved, data_well=None if bad else "")
        state = (document.problems, document.gone, elsewhere)
        if document.conflict is self._conflict and state == self._file_state:  # what is chosen there stays
            return
        self._conflict, self._file_state = document.conflict, state
        self._alerts.clear()
        with self._alerts:
            if document.conflict is not None and document.may_change:
                conflict_card(document)
                ui.run_javascript(TO_THE_CARD)
            elif document.conflict is None:
                unreadable_card(document)
                if not document.problems and not self._is_form:
                    unsettled_card(self.file, elsewhere)

    def _saved_words(self) -> str:
        document = self.watch.document
        if document.conflict is not None:
            return f"{self.file}: not saved, two versions"
        if document.trouble:
            return f"{self.file}: not saved ({document.trouble}). It is tried again with the next change."
        if document.problems:
            return f"{self.file}: {'gone' if document.gone else 'cannot be read'}"
        if unsettled_of(document):
            return f"{self.file}: what you typed in a field is not saved yet"
        return f"{self.file}: every change is saved"


def _counted(step: str, steps: tuple[tuple[str, str], ...]) -> str:
    """Which step of how many it is."""
    names = [name for name, _ in steps]
    return f"Step {names.index(step) + 1} of {len(steps)}" if step in names else ""
