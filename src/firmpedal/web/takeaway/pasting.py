"""A box to paste a list into, or to choose its file; it is kept with the open file and is not in it."""

from __future__ import annotations

import json
from base64 import b64decode
from binascii import Error as NotBase64
from html import escape
from typing import TYPE_CHECKING

from nicegui import ui

from firmpedal.decide.listing import ListError, decoded, entries
from firmpedal.web.elements import box, button, put, put_words, raw, said
from firmpedal.web.wording import in_words, sentence

if TYPE_CHECKING:
    from nicegui.events import GenericEventArguments

    from firmpedal.web.frame import Frame

LONGEST = 200_000  # signs, or bytes of a file; a parts list is a few pages
WORDS, FILE = "The list", "Or choose its file (CSV or text)"
HOW = "One part to a row, how many and what: 4, AN818-4D. With titles or without, from any spreadsheet."
KEPT = "It stays here while Firmpedal is open, for every option. It is not in your file."
CLEAR = "Clear it"
TOO_LONG = ("this is too long for a parts list", "keep the rows that belong to the brakes")
PASTE = f"(event) => fpPasted(event, emit, {LONGEST})"
CHOOSE = f"(event) => fpChosenFile(event, emit, {LONGEST})"


class Pasting:
    """The box of one page.

    `usable` is what can be held against ours: nothing where the list cannot be read, which its box says.
    """

    def __init__(self, frame: Frame) -> None:
        self._watch, self._document = frame.watch, frame.watch.document
        self.usable = ""
        self._text: ui.html
        self._fault: ui.html

    def put(self, _frame: Frame) -> None:
        """Put the box on the page."""
        with box("section", "fp-card fp-pasting", aria_label=WORDS):
            with box("label", "fp-entry fp-entry-wide"):
                said("span", WORDS)
                shown = escape(self._document.pasted)
                self._text = raw(shown, "textarea", "fp-pen", rows="8", spellcheck="false")
            self._fault = said("p", "", "fp-fault", role="alert")
            how = said("p", HOW, "fp-small")
            with box(classes="fp-pasting-file"):
                with box("label", "fp-entry"):
                    said("span", FILE)
                    chosen = box("input", "fp-pen", type="file", accept=".csv,.tsv,.txt,text/*")
                button(CLEAR, self._clear)
            said("p", KEPT, "fp-small")
        put(self._text, aria_describedby=f"{self._fault.html_id} {how.html_id}")
        self._text.on("input", self._pasted, js_handler=PASTE)
        chosen.on("change", self._file, js_handler=CHOOSE)
        self._read()

    def _pasted(self, event: GenericEventArguments) -> None:
        if isinstance(event.args, str):
            self._take(event.args)
        else:
            self._refuse(ListError(*TOO_LONG))

    def _file(self, event: GenericEventArguments) -> None:
        try:
            if not isinstance(event.args, str):
                self._refuse(ListError(*TOO_LONG))
                return
            text = decoded(b64decode(event.args, validate=True))
        except ListError as error:
            self._refuse(error)
        except NotBase64:
            return  # nothing that this page sends
        else:
            self._show(text)
            self._take(text)

    def _clear(self) -> None:
        self._show("")
        self._take("")

    def _show(self, text: str) -> None:
        """Put a text in the box, in the place of what was typed there."""
        ui.run_javascript(f"getHtmlElement({self._text.id}).value = {json.dumps(text)}")

    def _take(self, text: str) -> None:
        self._document.pasted = text
        self._read()
        self._watch.again()

    def _read(self) -> None:
        """See whether it is a list; where it is none the box says why."""
        self.usable, text = "", self._document.pasted
        try:
            if text.strip():
                entries(text)
        except ListError as error:
            self._refuse(error)
        else:
            self.usable = text
            self._tell("")

    def _refuse(self, error: ListError) -> None:
        self._tell(sentence(in_words(error.message, error.suggestion)))

    def _tell(self, words: str) -> None:
        put_words(self._fault, words)
        self._fault.set_visibility(bool(words))
        put(self._text, aria_invalid="true" if words else None)
