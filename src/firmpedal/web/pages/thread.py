"""Which thread is it? For whoever holds a part in the hand, with an aircraft or without."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from nicegui import ui

from firmpedal.web import addresses
from firmpedal.web.answers import System
from firmpedal.web.elements import box, button, link, put, said
from firmpedal.web.thread.asking import Asking
from firmpedal.web.thread.place import Place
from firmpedal.web.thread.typed import typed

if TYPE_CHECKING:
    from collections.abc import Mapping

    from firmpedal.decide.thread_spelled import Spelled
    from firmpedal.web.answers import Answer
    from firmpedal.web.frame import Frame

TITLE = "Which thread is it?"
LEAD = (
    "Type what you measure on the port, fitting or tube in your hand. The answer stands below at once. "
    "Fractions and units are taken as you write them: 13/32, 0.405 in, 9.9 mm."
)
IN_FILE = "The file of an aircraft calls it {words}."


def show(given: Mapping[str, str], system: System | None) -> None:
    """Lay out the page for nobody's aircraft, with what stands in its address."""
    with box(classes="fp-frame"):
        with box("header", "fp-top"):
            link("All aircraft", addresses.START, "fp-back")
            with box(classes="fp-title"):
                said("h1", TITLE)
            tools = box(classes="fp-tools")
        with box(classes="fp-main", id="main"):
            said("p", LEAD, "fp-step-lead")
            asking = Asking(typed(given), system or System.INCH, _told)

    def choose(wanted: System) -> None:
        ui.run_javascript(f"fpRemember('units', '{wanted.value}')")
        asking.again(asking.form, wanted)
        pressed()

    def pressed() -> None:
        for each, made in buttons.items():
            put(made, aria_pressed=str(each is asking.system).lower())

    with tools, box(classes="fp-pair", role="group", aria_label="Figures in"):
        buttons = {each: button(each.value, partial(choose, each)) for each in System}
    pressed()


def _told(found: tuple[Spelled, ...]) -> None:
    for each in found:
        said("p", f"{IN_FILE.format(words=each.words)}{f' That is for {each.looks}.' if each.looks else ''}")


class ThreadPage:
    """The same in the frame of an aircraft, where what was found can be written at its place."""

    def __init__(self, frame: Frame, given: Mapping[str, str]) -> None:
        self._watch = frame.watch
        with frame.main:
            said("p", LEAD, "fp-step-lead")
            self._place = Place(frame, given.get("at", ""), self._again)
            form = self._place.begun(typed(given)) if "where" not in given else typed(given)
            self._asking = Asking(form, frame.watch.system or self._place.system, self._place.offer)
        self._watch.when_answered(self._answered)

    def _answered(self, answer: Answer) -> None:
        """Another unit was chosen, or the file changed."""
        system = self._watch.system or self._place.system
        self._place.show()
        if system is not self._asking.system:
            self._asking.again(self._asking.form, system)
        elif answer.evaluation is not None:
            self._asking.show()

    def _again(self) -> None:
        """Another place was chosen: what is there says where its thread is."""
        form = self._place.begun(self._asking.form)
        if form == self._asking.form:
            self._asking.show()
        else:
            self._asking.again(form, self._asking.system)
