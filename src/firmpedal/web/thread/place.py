"""Where on the aircraft the thread is that was measured, and how what was found gets there."""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from firmpedal.project.edit import EditError
from firmpedal.project.field_cells import words_of
from firmpedal.project.locate import walked
from firmpedal.project.measured import measured, written_at
from firmpedal.project.names import label_of
from firmpedal.project.supposed import is_thread, supposed_thread
from firmpedal.project.thread import ThreadError, read_thread
from firmpedal.project.thread_spelling import spelled_thread
from firmpedal.project.tree import at
from firmpedal.project.unknowns import unknowns
from firmpedal.web import addresses
from firmpedal.web.answers import System, reading_of, system_of
from firmpedal.web.elements import box, button, link, put_words, said
from firmpedal.web.sound.forms import refusal_words
from firmpedal.web.sound.measuring import AT_THE_COMPUTER, WRITTEN
from firmpedal.web.sound.news import News
from firmpedal.web.turns import in_turn

if TYPE_CHECKING:
    from collections.abc import Callable

    from nicegui import ui

    from firmpedal.decide.thread_spelled import Spelled
    from firmpedal.project import Reading
    from firmpedal.web.frame import Frame
    from firmpedal.web.thread.typed import Typed

WHERE = "Where on the aircraft is it?"
NOWHERE = "nowhere in particular"
SUPPOSED = "The file supposes {words} there; nobody has looked yet."
STANDS = "The file has {words} there."
SAME = "That is what the file has there."
OTHER = (
    "The file has {words} there, which is another thread. Measure once more, then change it in its fields."
)
CALLED = "The file calls it {words}. Choose above where it is, and it can be written there."
TWO_VERSIONS = "There are two versions of this file. Choose one of them first, above."


class Place:
    """The choice of a port whose thread nobody has looked at yet; `chosen` is called with another choice.

    Args:
        frame: The page.
        place: The place that the page was opened for; empty for none.
        chosen: Called when another place was chosen.
    """

    def __init__(self, frame: Frame, place: str, chosen: Callable[[], None]) -> None:
        self._frame, self._watch, self._chosen = frame, frame.watch, chosen
        self._place = written_at(self._reading, place) if is_thread(place) else ""
        self._fault: ui.html | None = None
        self._shown: tuple[object, ...] = ()
        self._around = box(classes="fp-which-place")
        self._news = News(frame.watch)
        self.show()

    @property
    def _reading(self) -> Reading:
        return reading_of(self._watch.document.text, self._frame.file, self._watch.option)

    @property
    def system(self) -> System:
        """What the file is written in."""
        aircraft = self._reading.aircraft
        return System.INCH if aircraft is None else system_of(aircraft.units)

    def begun(self, form: Typed) -> Typed:
        """The form, with the half of the thread that the file has at the place."""
        try:
            return replace(form, where=read_thread(self._written()[0]).gender.value)
        except ThreadError:
            return form

    def show(self) -> None:
        """Show the places that there are now, and what stands at the one that is chosen."""
        waiting = tuple(each.path for each in unknowns(self._reading) if each.supposed)
        words, supposed = self._written()
        state = (waiting, self._place, words, supposed)
        if state == self._shown:
            return
        self._shown = state
        self._around.clear()
        with self._around:
            if waiting or self._place:
                self._select(tuple(dict.fromkeys((*waiting, *((self._place,) if self._place else ())))))
            if words:
                said("p", (SUPPOSED if supposed else STANDS).format(words=words))

    def offer(self, found: tuple[Spelled, ...]) -> None:
        """Put under the answer how the file spells it, and the way to get it there."""
        words, supposed = self._written()
        if not self._place or not words:
            for each in found:
                said("p", CALLED.format(words=each.words) + _looks(each))
        elif not supposed and _same(words, found):
            said("p", SAME)
        elif not supposed:
            said("p", OTHER.format(words=words))
            to = addresses.field(self._frame.file, self._place, self._watch.option)
            if self._watch.document.may_change:
                link("Go to its fields", to, "fp-button")
        elif not self._watch.document.may_change:
            said("p", f"It is {' or '.join(each.words for each in found)}. {AT_THE_COMPUTER}")
        else:
            self._buttons(found)

    def _buttons(self, found: tuple[Spelled, ...]) -> None:
        for each in found:
            if each.looks:
                said("p", f"For {each.looks}:")
            words = f"Write {each.words} at {_port(self._place)}"
            button(words, partial(self._write, each.words), main=len(found) == 1)
        self._fault = said("p", "", "fp-fault", role="alert")
        self._fault.set_visibility(False)

    async def _write(self, words: str) -> None:
        document, place, option = self._watch.document, self._place, self._watch.option
        if document.conflict is not None:
            self._refuse(TWO_VERSIONS)
            return

        def put(made: tuple[str, str | None]) -> None:
            self._news.tell(WRITTEN.format(what=label_of(place), words=words))
            document.rewrite(made[0], f"{label_of(place)}: {words}")

        try:
            await in_turn(document, lambda text: measured(text, place, words, option), put)
        except EditError as refusal:
            self._refuse(refusal_words(refusal))

    def _refuse(self, words: str) -> None:
        if self._fault is not None:
            put_words(self._fault, words)
            self._fault.set_visibility(True)

    def _written(self) -> tuple[str, bool]:
        """What the file has at the place, and whether that is only supposed."""
        tree = self._reading.tree
        node = walked(tree, self._place) if tree is not None and self._place else None
        if node is None:
            return "", False
        supposed = supposed_thread(node)
        return supposed or words_of(at(node, "value") or node), bool(supposed)

    def _select(self, places: tuple[str, ...]) -> None:
        with box("label", "fp-entry fp-entry-long"):
            said("span", WHERE)
            with box("select", "fp-pen") as made:
                for place in ("", *places):
                    here = {"selected": ""} if place == self._place else {}
                    said("option", _port(place) if place else NOWHERE, value=place, **here)
        made.on(
            "change",
            lambda event: self._choose(str(event.args)),
            js_handler="(event) => { fpKeep('at', event.target.value); emit(event.target.value); }",
        )

    def _choose(self, place: str) -> None:
        self._place = place
        self.show()
        self._chosen()


def _port(place: str) -> str:
    """The port that a thread is of, in words."""
    return label_of(place.removesuffix(".thread"))


def _same(words: str, found: tuple[Spelled, ...]) -> bool:
    """Whether what the file has is one of these, however it is spelled there."""
    try:
        return spelled_thread(read_thread(words)) in {each.words for each in found}
    except ThreadError:
        return False


def _looks(each: Spelled) -> str:
    return f" That is for {each.looks}." if each.looks else ""
