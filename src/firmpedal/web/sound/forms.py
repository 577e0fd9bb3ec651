"""Small forms on a page: sent to the server as a whole, and a refusal stands at the field it is about."""

from __future__ import annotations

from asyncio import Lock
from typing import TYPE_CHECKING

from firmpedal.web.elements import box, put, put_words, said
from firmpedal.web.wording import in_words, sentence

if TYPE_CHECKING:
    from collections.abc import Awaitable, Callable

    from nicegui import ui
    from nicegui.element import Element
    from nicegui.events import GenericEventArguments

    from firmpedal.project.edit import EditError

    Given = dict[str, list[str]]

# What the form holds by the names of its fields, each with all that was chosen or written under it.
SEND = """(event) => {
  event.preventDefault();
  const given = {};
  for (const [name, words] of new FormData(event.target)) (given[name] ??= []).push(String(words));
  emit(given);
}"""


def form(sent: Callable[[Given], Awaitable[None]]) -> Element:
    """A form that hands over what is in it when it is sent; nothing on the page goes anywhere else.

    Sent again before there is an answer, it is sent once.
    """
    made = box("form", "fp-asked", novalidate="", autocomplete="off")
    busy = Lock()

    async def send(event: GenericEventArguments) -> None:
        if busy.locked():
            return
        given = event.args if isinstance(event.args, dict) else {}
        async with busy:
            await sent({str(key): [str(each) for each in words] for key, words in given.items()})

    made.on("submit", send, js_handler=SEND)
    return made


class Pen:
    """One field to write in, with its words, and under it why what was written was refused."""

    def __init__(self, words: str, name: str, unit: str = "", hint: str = "") -> None:
        with box("label", "fp-entry fp-entry-long"):
            said("span", words)
            with box("span", "fp-entry-box" if unit else "fp-entry-alone"):
                self.field = box("input", "fp-pen", type="text", name=name, autocomplete="off")
                if unit:
                    said("span", unit, "fp-unit")
        self._fault: ui.html = said("p", "", "fp-fault", role="alert")
        told = [self._fault.html_id]
        if hint:
            told.append(said("p", hint, "fp-small").html_id)
        put(self.field, aria_describedby=" ".join(told))
        self.refuse("")

    def refuse(self, words: str) -> None:
        """Say why it was refused; empty when it was not."""
        put_words(self._fault, words)
        self._fault.set_visibility(bool(words))
        put(self.field, aria_invalid="true" if words else None)

    def put_back(self, typed: str, refused: str) -> None:
        """Show again what was typed before, and why it was refused."""
        put(self.field, **{"^value": typed})  # as it begins; what is typed in it from then on stays
        self.refuse(refused)


def refusal_words(refusal: EditError) -> str:
    """Why something cannot be written, and what to do instead, as sentences."""
    return sentence(in_words(str(refusal), refusal.suggestion))
