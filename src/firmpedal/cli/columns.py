"""The columns of a table in the width there is: names stay whole, or break where a name has a joint."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from firmpedal.units import held, let_go

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

_JOINTS = re.compile(r"(?<=[_./-])(?=[^_./\s-])")  # where left_master_cylinder.outlet may go on below
_GAP = re.compile(r"[ \n]+")  # figures and their units are held together by another sign


def widths(cells: Sequence[Sequence[str]], room: int) -> tuple[int, ...]:
    """Share out a row's room, in characters.

    The widest column gives first, and none gives so much that its longest word breaks; where that is not
    enough words break at their joints, and only then anywhere.

    Args:
        cells: Every row, its heading among them.
        room: What is left for text beside the gaps between columns.
    """
    columns = [[held(cell) for cell in column] for column in zip(*cells, strict=True)]
    found = [max(_longest(cell, str.splitlines) for cell in column) for column in columns]
    for pieces_of in (_words, _pieces, pieces, list):
        least = [max(_longest(cell, pieces_of) for cell in column) for column in columns]
        while sum(found) > room and any(width > low for width, low in zip(found, least, strict=True)):
            widest = max((width, n) for n, width in enumerate(found) if width > least[n])[1]
            found[widest] -= 1
    return tuple(found)


def _longest(cell: str, pieces_of: Callable[[str], Sequence[str]]) -> int:
    return max((len(piece) for piece in pieces_of(cell)), default=0)


def _words(text: str) -> list[str]:
    return _GAP.split(text)


def _pieces(text: str) -> list[str]:
    return [piece for word in _words(text) for piece in _JOINTS.split(word)]


def pieces(text: str) -> list[str]:
    """The pieces of a text that stay together: words, and the parts of a name with the joint behind each."""
    return [piece for word in text.split() for piece in _JOINTS.split(word)]


def filled(text: str, width: int) -> str:
    """Break a cell into lines of a width; a word breaks at its joints if it must, else anywhere."""
    return "\n".join(let_go(line) for row in text.split("\n") for line in _lines(held(row), width))


def _lines(row: str, width: int) -> list[str]:
    if len(row) <= width:
        return [row]
    lines = [""]
    for word in (each for one in _words(row) for each in ([one] if len(one) <= width else one.split())):
        if len(word) <= width:
            _add(lines, word, width, " ")
            continue
        for number, piece in enumerate(_JOINTS.split(word)):
            for start in range(0, len(piece), width):
                _add(lines, piece[start : start + width], width, "" if number or start else " ")
    return lines


def _add(lines: list[str], word: str, width: int, between: str) -> None:
    """Put a word on the last line if there is room, else on one of its own."""
    gap = between if lines[-1] else ""
    if len(lines[-1]) + len(gap) + len(word) <= width:
        lines[-1] += gap + word
    else:
        lines.append(word)
