"""A line that begins too far in or not far enough: YAML stumbles over it, and seldom says which one it is."""

from __future__ import annotations

import re
from typing import NamedTuple

from firmpedal.finding import Problem, Span
from firmpedal.model.display import count_of

_ROW = re.compile(r"^(?P<blanks> *)(?P<words>[^\s#].*?)\s*$")
_ALONE = re.compile(r"^(?:- )?[^\"'\[{]*:(?:\s+#.*)?$")  # a key with nothing behind it
_IN_QUOTES = re.compile(r"\"[^\"]*\"|'[^']*'|\s#.*$")


class _Row(NamedTuple):
    """A line that says something: its number from 1, how many blanks it begins with, its words."""

    line: int
    blanks: int
    words: str


def out_of_line(text: str, line: int, file: str) -> Problem | None:
    """Say of a line that YAML stumbles over which of those above it it does not stand straight with.

    Args:
        text: The builder's text, without tabs.
        line: The line's number, counted from 1.
        file: Its name.

    Returns:
        None where the line stands as it may: then something else is wrong.
    """
    rows = _rows(text, line)
    row, before = next((each for each in rows if each.line == line), None), [r for r in rows if r.line < line]
    if row is None or not before or _within_brackets(before):
        return None
    above = before[-1]
    if row.blanks > above.blanks:
        return None if _ALONE.match(above.words) else _deeper(row, above, file)
    around = _around(before)
    if row.blanks == above.blanks or any(each.blanks == row.blanks for each in around):
        return None
    beside = [each for each in around if each.blanks > row.blanks][-1]
    less = [f"line {each.line} begins {_blanks(each)}" for each in around if each.blanks < row.blanks][:1]
    begin = " and ".join([f"line {beside.line} above it begins {_blanks(beside)}", *less])
    advice = "begin it straight under the one that it belongs beside"
    return _told(row, f"this line begins {_blanks(row)}, but {begin}", advice, beside, file)


def _deeper(row: _Row, above: _Row, file: str) -> Problem:
    """A line further in than one that has its value already, and so nothing under it."""
    message = f"this line begins {_blanks(row)}, and line {above.line} above it {_blanks(above)}"
    advice = f"begin both alike, if they belong to one thing: line {above.line} has its value already"
    return _told(row, message, advice, above, file)


def _told(row: _Row, message: str, advice: str, other: _Row, file: str) -> Problem:
    also = Span(file, other.line, other.blanks + 1)
    return Problem(Span(file, row.line, row.blanks + 1), message, suggestion=advice, also=also)


def _blanks(row: _Row) -> str:
    return f"{count_of(row.blanks, 'blank')} in" if row.blanks else "at the margin"


def _rows(text: str, line: int) -> list[_Row]:
    """The lines down to one that say something; what stands behind a dash is there as a row of its own."""
    found = []
    for number, words in enumerate(text.split("\n")[:line], 1):
        if row := _ROW.match(words):
            found.append(_Row(number, len(row["blanks"]), row["words"]))
            if row["words"].startswith("- "):
                inner = row["words"][1:].lstrip()
                found.append(_Row(number, len(words.rstrip()) - len(inner), inner))
    return found


def _around(rows: list[_Row]) -> list[_Row]:
    """The last line, and of those before it each that begins less far in than all after it, going up."""
    found: list[_Row] = []
    for row in reversed(rows):
        if not found or row.blanks < found[-1].blanks:
            found.append(row)
    return found


def _within_brackets(rows: list[_Row]) -> bool:
    """Whether brackets are open after the last of some lines: in them everything may begin anywhere."""
    words = [_IN_QUOTES.sub("", row.words) for row in rows]
    opened = sum(each.count("[") + each.count("{") for each in words)
    return opened > sum(each.count("]") + each.count("}") for each in words)
