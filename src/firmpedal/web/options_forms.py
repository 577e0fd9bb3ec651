"""Options begun and renamed on the page that shows them side by side."""

from __future__ import annotations

from typing import TYPE_CHECKING

from nicegui import ui

from firmpedal.project.edit import EditError
from firmpedal.project.options_edit import option_begun, option_renamed
from firmpedal.web import addresses
from firmpedal.web.answers import reading_of
from firmpedal.web.elements import box, said
from firmpedal.web.form.sheet import ALONE
from firmpedal.web.options import BEGIN
from firmpedal.web.sound.forms import Pen, form, refusal_words
from firmpedal.web.turns import in_turn

if TYPE_CHECKING:
    from collections.abc import Callable

    from nicegui.element import Element

    from firmpedal.project import Reading
    from firmpedal.web.answers import Answer
    from firmpedal.web.frame import Frame
    from firmpedal.web.sound.forms import Given

HOW = (
    f"It is the aircraft as written at first. Then choose what differs in the picture, press {ALONE}, "
    "and change it there. For the lines that are in the aircraft now: begin one for them, describe them in "
    "it, and the work from old to new is planned on a page of its own, under Fit and fill."
)
RENAME = "Give an option another name"
TWO_VERSIONS = "There are two versions of this file. Choose one of them first, above."


def begin(frame: Frame) -> None:
    """A form that begins an option and goes to its fields."""
    if not frame.watch.document.may_change:
        return

    def done(name: str) -> None:
        ui.navigate.to(addresses.step(frame.file, "describe", name))

    with _part(BEGIN, addresses.BEGIN):
        said("p", HOW)
        _NameForm(frame, "its name, such as braided hose", BEGIN, option_begun, "option {name} begun", done)


def rename(frame: Frame) -> None:
    """A form for each option of the file."""
    if not frame.watch.document.may_change:
        return
    shown: tuple[str, ...] = ()
    with box() as part, _part(RENAME):
        forms = box(classes="fp-section")
    part.set_visibility(False)

    def answered(answer: Answer) -> None:
        nonlocal shown
        part.set_visibility(bool(answer.reading.options))
        if answer.reading.options == shown:
            return
        shown = answer.reading.options
        forms.clear()
        with forms:
            for option in shown:
                _rename_form(frame, option)

    frame.watch.when_answered(answered)


def _part(title: str, name: str = "") -> Element:
    """A part of the page under its title, folded on a narrow screen until it is wanted."""
    named = {"id": name} if name else {}
    with box("details", "fp-part fp-form-part", open="", data_fold=title, **named):
        with box("summary"):
            said("h2", title)
        return box("section", "fp-section fp-part-in", aria_label=title)


def _rename_form(frame: Frame, option: str) -> None:
    def does(reading: Reading, name: str) -> str:
        return option_renamed(reading, option, name)

    def done(name: str) -> None:
        if frame.watch.option == option:  # the page stands on a name that is gone
            ui.navigate.to(addresses.options(frame.file, name))

    said_ = f"option {option} renamed {{name}}"
    _NameForm(frame, f"another name for {option}", f"Rename {option}", does, said_, done)


class _NameForm:
    """One box for a name and its button."""

    def __init__(
        self,
        frame: Frame,
        words: str,
        press: str,
        does: Callable[[Reading, str], str],
        said_: str,
        done: Callable[[str], None],
    ) -> None:
        self._frame, self._does, self._said, self._done = frame, does, said_, done
        with form(self._sent):
            self._pen = Pen(words, "name")
            said("button", press, "fp-button", type="submit")

    async def _sent(self, given: Given) -> None:
        document, file = self._frame.watch.document, self._frame.file
        name = " ".join(" ".join(given.get("name", [])).split())
        if document.conflict is not None:
            self._pen.refuse(TWO_VERSIONS)
            return

        def put(text: str) -> None:
            document.rewrite(text, self._said.format(name=name))

        try:
            await in_turn(document, lambda text: self._does(reading_of(text, file, None), name), put)
        except EditError as refusal:
            self._pen.refuse(refusal_words(refusal))
        else:
            self._pen.refuse("")
            self._done(name)
