"""Findings accepted in a builder's file: an entry put on its list, or taken off it again.

An option's own list stands in the place of the aircraft's. So the first entry that is made in an option
takes along what the aircraft accepts already, or that would be found anew there.
"""

from __future__ import annotations

from dataclasses import dataclass

from firmpedal.project.edit import EditError, is_written
from firmpedal.project.edit_lists import Item, with_items, with_key
from firmpedal.project.plain import quoted_if_needed
from firmpedal.project.reading_again import read_again
from firmpedal.project.said import Said, at_place, said_by

LIST = "accepted"


@dataclass(frozen=True, slots=True)
class Entry:
    """One entry of the list: the rule's name, a name or place in the file, and why it is accepted."""

    rule: str
    at: str
    reason: str

    @property
    def written(self) -> str:
        """The entry in one line, as it goes into the file."""
        return _in_braces(self.said)

    @property
    def said(self) -> dict[str, str]:
        """Its keys as the file says them."""
        return {"rule": self.rule, "at": self.at, "reason": self.reason}


def accepting(text: str, rule: str, places: tuple[str, ...], reason: str, option: str | None = None) -> str:
    """Accept what a rule finds at some places.

    Args:
        text: The builder's text.
        rule: The rule's name.
        places: The whole places of what it found, such as `lines.left_leg`.
        reason: Why, in the builder's words; line ends become blanks.
        option: The option in which it was found; there alone it is accepted then.

    Raises:
        EditError: There is no reason, or the file cannot be changed there without touching more.
    """
    reason = " ".join(reason.split())
    if not reason:
        raise EditError("a reason is needed", "say in a few words why it is right as it is")
    new = [Entry(rule, place, reason) for place in places]
    if not is_written(text, LIST, option):
        taken_along = [] if option is None else _entries(text, None)
        rows = [_row(each) for each in taken_along] + [each.written for each in new]
        after = with_key(text, "", LIST, rows, option)
    else:
        kept = [Item(number) for number, _ in enumerate(_entries(text, option), 1)]
        after = with_items(text, LIST, (*kept, *(Item(None, each.written) for each in new)), option)
    read_again(text, after, option)
    return after


def not_accepting(text: str, entries: tuple[Entry, ...], option: str | None = None) -> str:
    """Take entries off the list that holds: the option's own, else that of the aircraft as written.

    Raises:
        EditError: None of them is there any more, or the file cannot be changed without touching more.
    """
    where = option if option is not None and is_written(text, LIST, option) else None
    gone = [each.said for each in entries]
    listed = _entries(text, where)
    kept = [Item(number) for number, each in enumerate(listed, 1) if each not in gone]
    if len(kept) == len(listed):
        raise EditError("it is not on the list of accepted findings any more", "look at the text")
    after = with_items(text, LIST, kept, where)
    read_again(text, after, option)
    return after


def holds_everywhere(text: str, option: str | None) -> bool:
    """Whether what is accepted where an option is looked at stands in the aircraft as written."""
    return option is not None and not is_written(text, LIST, option)


def _entries(text: str, option: str | None) -> list[Said]:
    """The entries of one list as they are said, in order."""
    steps = (LIST,) if option is None else ("options", option, LIST)
    said = said_by(text)
    listed = at_place(said, steps) if said is not None else None
    return listed if isinstance(listed, list) else []


def _row(said: Said) -> str:
    """An entry that is taken along, written in one line."""
    if not isinstance(said, dict) or not all(isinstance(words, str) for words in said.values()):
        raise EditError("the list of accepted findings cannot be taken along", "write it out by hand")
    return _in_braces({key: str(words) for key, words in said.items()})


def _in_braces(said: dict[str, str]) -> str:
    return "{" + ", ".join(f"{key}: {quoted_if_needed(words)}" for key, words in said.items()) + "}"
