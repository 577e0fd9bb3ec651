"""The form about a thread: what to measure, how, and beside each figure why it cannot be used."""

from __future__ import annotations

from html import escape
from typing import TYPE_CHECKING

from firmpedal.decide.identify import CALLIPERS, COUNTED
from firmpedal.decide.thread_ends import Quantity
from firmpedal.model.display import INCH, METRIC, Display
from firmpedal.model.part import Gender
from firmpedal.quantity import Answer
from firmpedal.report.identify_words import advice_of
from firmpedal.web.answers import System
from firmpedal.web.elements import box, raw, said
from firmpedal.web.sound.forms import Pen
from firmpedal.web.thread.typed import typed
from firmpedal.web.wording import sentence

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from nicegui.events import GenericEventArguments

    from firmpedal.web.thread.typed import Typed

# What is typed is told after a short pause, and at once with Enter; the page's address keeps it.
LIVE = "(event) => fpAsk(event, emit)"
WHERE = {
    Gender.MALE.value: "Outside, on a fitting or a bolt: male",
    Gender.FEMALE.value: "Inside, in a port or a nut: female",
}
TAPERS = {Answer.YES.value: "Yes", Answer.NO.value: "No", Answer.UNKNOWN.value: "Not looked"}
FURTHER = "More that tells threads apart"


class ThreadForm:
    """The form; `tell` is called with what stands in it whenever that changes."""

    def __init__(self, form: Typed, system: System, tell: Callable[[Typed], None]) -> None:
        self._tell = tell
        self._pens: dict[str, Pen] = {}
        with box("form", "fp-card fp-which", novalidate="", autocomplete="off") as made:
            raw(_choice("where", "Outside or inside?", WHERE, form.where))
            self._pen("threads", "Threads to the inch, or the pitch", "", _pitch(), form.threads)
            self._pen("wide", "How wide is it?", system.value, _width(), form.wide)
            raw(_choice("taper", "Does it taper?", TAPERS, form.taper, sentence(advice_of(Quantity.TAPER))))
            self._pen("seat", "Seat angle, if it has a cone", "deg", _seat(), form.seat)
            opened = {"open": ""} if form.further else {}
            with box("details", "fp-fold", data_fold=FURTHER, **opened):
                said("summary", FURTHER)
                with box(classes="fp-fold-in"):
                    self._further(form, system)
        for event in ("input", "submit"):
            made.on(event, self._told, js_handler=LIVE)

    def _further(self, form: Typed, system: System) -> None:
        unit = Display(tuple((METRIC if system is System.METRIC else INCH).items()))
        tube, turns = sentence(advice_of(Quantity.TUBE)), "Clean and dry, until it stops: 4, or 3-1/2."
        self._pen("tube", "The tube that it takes", system.value, tube, form.tube)
        self._pen("turns", "Turns by hand", "", turns, form.turns)
        callipers = f"Left out: {unit.value(CALLIPERS)}, as with callipers. A tape is good to 1/32 in."
        self._pen("accuracy", "How well was it measured?", system.value, callipers, form.accuracy)
        counted = f"Left out: {COUNTED.middle:g} threads."
        self._pen("counted", "Over how many threads was the pitch measured?", "", counted, form.counted)

    def refuse(self, faults: Mapping[str, str]) -> None:
        """Say at each field why it cannot be used; nothing where it can."""
        for name, pen in self._pens.items():
            words = faults.get(name, "")
            pen.refuse(sentence(words) if words else "")

    def _pen(self, name: str, words: str, unit: str, hint: str, begins: str) -> None:
        with box(classes="fp-which-pen"):
            pen = Pen(words, name, unit, hint)
        if begins:
            pen.put_back(begins, "")
        self._pens[name] = pen

    def _told(self, event: GenericEventArguments) -> None:
        given = event.args if isinstance(event.args, dict) else {}
        self._tell(typed({str(name): str(words) for name, words in given.items()}))


def _width() -> str:
    outside, inside = advice_of(Quantity.OUTSIDE), advice_of(Quantity.INSIDE)
    return f"{sentence(outside)} In a hole {inside}."


def _pitch() -> str:
    return f"{sentence(advice_of(Quantity.PITCH))} Such as 27, or 1.5 mm."


def _seat() -> str:
    return sentence(advice_of(Quantity.SEAT))


def _choice(name: str, words: str, choices: Mapping[str, str], chosen: str, hint: str = "") -> str:
    rows = "".join(
        f'<label class="fp-tick"><input type="radio" name="{name}" value="{escape(value)}"'
        f"{' checked' if value == chosen else ''}><span>{escape(label)}</span></label>"
        for value, label in choices.items()
    )
    told = f'<p class="fp-small">{escape(hint)}</p>' if hint else ""
    return f'<fieldset><legend>{escape(words)}</legend><div class="fp-few">{rows}</div>{told}</fieldset>'
