"""The generated parts of a page: everything else on it is written by hand and stays."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

Generator = Callable[[str], str]

_OPEN = re.compile(r"^<!-- generated: (?P<name>[a-z]+)(?: (?P<argument>[a-z ]+))? -->$")
_CLOSE = "<!-- end -->"


class PageError(Exception):
    """A page cannot be made; the message says which and why, for the person who runs `make docs`."""


def filled(page: str, text: str, generators: Mapping[str, Generator]) -> str:
    """Give a page's text with every generated part made anew.

    Raises:
        PageError: A part is never closed, or asks for something that nothing makes.
    """
    lines: list[str] = []
    inside = ""
    for line in text.splitlines():
        found = _OPEN.match(line)
        if found and inside:
            raise PageError(f"{page}: `{line}` stands inside `{inside}`; close that with {_CLOSE}")
        if found:
            inside = line
            lines += [line, "", _made(page, found["name"], found["argument"] or "", generators), ""]
        elif line == _CLOSE:
            if not inside:
                raise PageError(f"{page}: {_CLOSE} without a beginning")
            inside = ""
        if not inside:
            lines.append(line)
    if inside:
        raise PageError(f"{page}: `{inside}` is never closed with {_CLOSE}")
    return "\n".join(lines) + "\n"


def _made(page: str, name: str, argument: str, generators: Mapping[str, Generator]) -> str:
    if name not in generators:
        raise PageError(f"{page}: nothing makes `{name}`; choose one of {', '.join(generators)}")
    return generators[name](argument).strip("\n")


def row(*cells: str) -> str:
    """One row of a table; a bar inside a cell is escaped."""
    return "| " + " | ".join(" ".join(cell.split()).replace("|", "\\|") for cell in cells) + " |"


def table(head: tuple[str, ...], rows: list[tuple[str, ...]], right: frozenset[int] = frozenset()) -> str:
    """Lay out a table; columns in `right` are set flush right."""
    rule = "|" + "|".join(" ---: " if n in right else " --- " for n in range(len(head))) + "|"
    return "\n".join([row(*head), rule, *(row(*cells) for cells in rows)])
