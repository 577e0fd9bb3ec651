"""Two versions of one file: where they differ, and which of them goes on at each place."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.display import count_of
from firmpedal.project.names import label_of
from firmpedal.web import addresses
from firmpedal.web.elements import box, button, link, put_words, said
from firmpedal.web.form.clash import NOTHING
from firmpedal.web.merging import Version, hunks, merged
from firmpedal.web.sound.forms import form

if TYPE_CHECKING:
    from nicegui import ui

    from firmpedal.web.desk import Conflict, Document
    from firmpedal.web.form.clash import Clash

    Unsettled = tuple[tuple[str | None, Clash], ...]  # each with its option
    from firmpedal.web.merging import Hunk
    from firmpedal.web.sound.forms import Given

CHANGED = "The file was changed by another program or window while it was being changed here."
GONE = "The file is no longer there as it was."
KEPT = "Nothing was overwritten."
HOW = "Choose at each place which version goes on; what both have stays. Undo brings both versions back."
NAMES = {Version.MINE: "From here, not saved", Version.THEIRS: "On the disk"}
NO_LINES = "(no line here)"
WRITE = "Write what is chosen"
CHOSEN = "both versions put together"
UNSETTLED = "Not saved yet"
FIRST = "Choose at place {place} first."


def conflict_card(document: Document) -> None:
    """Show what differs between both versions of a document, each place to be chosen by itself."""
    conflict = document.conflict
    if conflict is None:
        return
    with box("section", "fp-card fp-conflict", role="alert", aria_label="Two versions"):
        said("h2", "Two versions of this file")
        said("p", f"{GONE if conflict.gone else CHANGED} {KEPT}")
        if conflict.theirs.problems:
            said("p", "; ".join(each.message for each in conflict.theirs.problems))
        else:
            _Choices(document, conflict)
        with box(classes="fp-actions"):
            button("Keep the version from here", document.keep_mine)
            if not conflict.theirs.problems:
                button("Take the version on the disk", document.take_theirs)


def unsettled_of(document: Document) -> Unsettled:
    """What was typed in fields and is neither written nor given up; on a phone nothing is typed."""
    found = document.unsettled if document.may_change else {}
    return tuple((option, each) for option, own in found.items() for each in own.values())


def unsettled_card(file: str, unsettled: Unsettled) -> None:
    """Say what was typed in fields and waits for a choice, each with the way to it."""
    if not unsettled:
        return
    with box("section", "fp-card fp-conflict", role="alert", aria_label=UNSETTLED):
        said("h2", UNSETTLED)
        for option, clash in unsettled:
            place = clash.where[0]
            more = clash.words if clash.refused else "It waits for you to choose."
            said("p", f"{label_of(place)}: you typed {clash.mine or NOTHING}. {more}")
            with box(classes="fp-actions"):
                link(f"Go to {label_of(place)}", addresses.field(file, place, option), "fp-button")


class _Choices:
    """The places where both versions differ, as a form."""

    def __init__(self, document: Document, conflict: Conflict) -> None:
        self._document, self._conflict = document, conflict
        self._hunks = hunks(conflict.mine, conflict.theirs.text)
        said("p", f"{_places(len(self._hunks))} {HOW}")
        with form(self._sent):
            for number, hunk in enumerate(self._hunks):
                self._place(number, hunk)
            self._fault: ui.html = said("p", "", "fp-fault", role="alert")
            said("button", WRITE, "fp-button fp-button-main", type="submit")
        self._fault.set_visibility(False)

    def _place(self, number: int, hunk: Hunk) -> None:
        words = f"Place {number + 1} of {len(self._hunks)}, line {hunk.line}"
        with box("fieldset", "fp-hunk"):
            said("legend", words)
            _around(hunk.before)
            with box(classes="fp-versions"):
                self._version(number, Version.MINE, hunk.mine)
                self._version(number, Version.THEIRS, hunk.theirs)
            _around(hunk.after)

    def _version(self, number: int, version: Version, lines: tuple[str, ...]) -> None:
        with box("label", "fp-version"):
            with box("span", "fp-version-name"):
                box("input", type="radio", name=str(number), value=version.value)
                said("span", NAMES[version])
            if lines:
                with box("pre"):
                    said("mark", "\n".join(lines))
            else:
                said("em", NO_LINES)

    async def _sent(self, given: Given) -> None:
        chosen = {int(name): Version(words[0]) for name, words in given.items() if name.isdecimal()}
        open_at = next((n for n in range(len(self._hunks)) if n not in chosen), None)
        if open_at is not None:
            put_words(self._fault, FIRST.format(place=open_at + 1))
            self._fault.set_visibility(True)
            return
        text = merged(self._conflict.mine, self._conflict.theirs.text, chosen)
        self._document.settle(self._conflict, text, CHOSEN)


def _around(lines: tuple[str, ...]) -> None:
    """Lines that both versions have."""
    if lines:
        said("pre", "\n".join(lines), "fp-same-lines")


def _places(count: int) -> str:
    return f"They differ at {count_of(count, 'place')}."
