"""The form about a thread and the answer under it, kept abreast of what is typed."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.decide.identify import identify
from firmpedal.decide.identify_reading import display_of_asked, heard
from firmpedal.decide.thread_ends import Quantity
from firmpedal.decide.thread_spelled import spelled_as
from firmpedal.report.identify import identify_sheet
from firmpedal.report.identify_words import advice_of
from firmpedal.report.sheet import Paragraph, Tone
from firmpedal.web.elements import box, raw, said
from firmpedal.web.sheets import alone
from firmpedal.web.thread.form import ThreadForm
from firmpedal.web.thread.typed import FIELDS, asked_of
from firmpedal.web.wording import sentence

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.decide.identify import Identification
    from firmpedal.decide.thread_spelled import Spelled
    from firmpedal.web.answers import System
    from firmpedal.web.thread.typed import Typed

    Offer = Callable[[tuple[Spelled, ...]], None]

BEGIN = "Begin with two figures"
SELDOM = "One figure alone seldom decides. Measure in this order, and type each as you get it:"
FIRST = (Quantity.PITCH, Quantity.OUTSIDE, Quantity.TAPER, Quantity.SEAT)
NO_WORD = "No fitting for this thread is known here, so the file of an aircraft has no word for it."


class Asking:
    """The form, and under it what the answer is.

    Args:
        form: What stands in the form at first.
        system: The unit of bare figures, and of the answer.
        offer: Puts under the answer how the file spells what was found; called with nothing where it cannot.
    """

    def __init__(self, form: Typed, system: System, offer: Offer) -> None:
        self.form, self.system, self._offer = form, system, offer
        self._around = box(classes="fp-which-box")
        self._answer = box("section", "fp-which-answer", aria_label="The answer", role="status")
        self._pane = raw("", classes="fp-pane fp-pane-titled")
        self._empty = box(classes="fp-empty")
        with self._empty:
            said("h2", BEGIN, "fp-which-begin")
            said("p", SELDOM)
            with box("ol", "fp-list"):
                for each in FIRST:
                    said("li", sentence(advice_of(each)))
        self.again(form, system)

    def again(self, form: Typed, system: System) -> None:
        """Put another form in the place of this one."""
        self.form, self.system = form, system
        self._around.clear()
        with self._around:
            self._fields = ThreadForm(form, system, self._told)
        self.show()

    def show(self) -> None:
        """Answer what stands in the form."""
        asked = asked_of(self.form, self.system.value)
        measured, faults = heard(asked)
        self._fields.refuse({FIELDS[name]: words for name, words in faults.items() if name in FIELDS})
        found = identify(measured) if measured.anything else None
        self._empty.set_visibility(found is None)
        self._answer.clear()
        if found is None:
            self._pane.set_content("")
            return
        sheet = identify_sheet(found, display_of_asked(asked))
        answers = [each for each in sheet.blocks if isinstance(each, Paragraph) and each.tone is Tone.LEAD]
        rest = tuple(each for each in sheet.blocks if each not in answers)
        self._pane.set_content(alone(replace(sheet, blocks=rest)))
        with self._answer:
            for each in answers:
                said("p", each.text, "fp-lead")
            self._spell(found)

    def _told(self, form: Typed) -> None:
        self.form = form
        self.show()

    def _spell(self, found: Identification) -> None:
        """How the file has what was found; nothing where something speaks against it."""
        decided = [each for each in found.questions if each.subject == "thread" and each.decided]
        if not decided or not found.settled:
            return
        words = spelled_as(decided[0], self.form.gender)
        if words:
            self._offer(words)
        else:
            said("p", NO_WORD)
