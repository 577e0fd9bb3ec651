"""What only one kind of line can have: it goes from the file when its line is made of another kind."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.catalog import StockError, stock
from firmpedal.model.display import listed
from firmpedal.project.contradictions import ONLY_OF
from firmpedal.project.edit_keys import with_value, without_key
from firmpedal.project.read import read_text
from firmpedal.project.tree import REMOVED, at, branch_at, word_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.model.stock import LineKind
    from firmpedal.project.tree import Branch, Node

LINES, MADE_OF = "lines", "made of"


def settled(before: str, after: str, place: str) -> str:
    """A text in which a line was made of something else, without what it cannot have any more.

    That goes wherever the line became another kind by this change: in the option or the aircraft as written,
    in its mirror images, and in options that write a part of the line.

    Args:
        before: The text as it was.
        after: The text with the change.
        place: The place that was changed; only at what a line is made of there is something to do.

    Raises:
        EditError: It is not written by itself, or cannot be taken out without touching more.
    """
    if not place.startswith(f"{LINES}.") or not place.endswith(f".{MADE_OF}"):
        return after
    for option in (None, *read_text(before).options):
        was = read_text(before, option=option).tree
        while was is not None and (left := _next(was, read_text(after, option=option).tree)):
            at_place, node = left
            copied = node.via is not None
            out = (
                with_value(after, at_place, REMOVED, option)
                if copied
                else without_key(after, at_place, option)
            )
            if out == after:
                break
            after = out
    return after


def _next(was: Branch, now: Branch | None) -> tuple[str, Node] | None:
    """What still has to go, first what is written by itself: with it goes what is a copy of it."""
    left = [] if now is None else list(_left(was, now))
    return min(left, key=lambda each: each[1].via is not None, default=None)


def _left(was: Branch, now: Branch) -> Iterator[tuple[str, Node]]:
    """What stands in lines that became another kind, and can stand in those of one kind alone."""
    for name, line in branch_at(now, LINES).items():
        kind = _kind(now, name)
        if kind is None or kind is _kind(was, name):
            continue
        for only, keys in ONLY_OF.items():
            for key, _ in keys if only is not kind else ():
                node = at(line, key)
                if node is not None:
                    yield f"{LINES}.{name}.{key}", node


def _kind(tree: Branch, name: str) -> LineKind | None:
    """The kind of a line; none where it is not known, or nothing like it can be had."""
    word = word_of(at(tree, LINES, name, MADE_OF))
    try:
        return stock(word, "in").kind if word else None
    except StockError:
        return None


def went(before: str, after: str, place: str, option: str | None = None) -> str:
    """What went from a line as it was made of something else, in words; empty where nothing did."""
    line = place.split(".")[1:2] if place.endswith(f".{MADE_OF}") else []
    was, now = (branch_at(read_text(text, option=option).tree, LINES, *line) for text in (before, after))
    if not line:
        return ""
    told = []
    for kind, keys in ONLY_OF.items():
        gone = [key for key, _ in keys if key in was and key not in now]
        if gone:
            told.append(f"{listed(gone)} went with the {kind}")
    return "; ".join(told)
