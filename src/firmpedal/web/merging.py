"""Two versions of a text laid against each other: where they differ, and the text that choices make."""

from __future__ import annotations

from dataclasses import dataclass
from difflib import SequenceMatcher
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

AROUND = 3  # lines shown before and after a place where two versions differ


class Version(StrEnum):
    """Which of two versions goes on at one place."""

    MINE = "mine"
    THEIRS = "theirs"


@dataclass(frozen=True, slots=True)
class Hunk:
    """One place where two versions differ.

    `line` counts from 1 in the version from here; `before` and `after` are lines that both have.
    """

    line: int
    before: tuple[str, ...]
    mine: tuple[str, ...]
    theirs: tuple[str, ...]
    after: tuple[str, ...]


def hunks(mine: str, theirs: str) -> tuple[Hunk, ...]:
    """Every place where two versions differ, from the top."""
    here, there = mine.split("\n"), theirs.split("\n")
    found, ended = [], 0
    codes = _differences(here, there)
    for number, (a, b, c, d) in enumerate(codes):
        ends = codes[number + 1][0] if number + 1 < len(codes) else len(here)
        before, after = here[max(ended, a - AROUND) : a], here[b : min(ends, b + AROUND)]
        found.append(Hunk(a + 1, tuple(before), tuple(here[a:b]), tuple(there[c:d]), tuple(after)))
        ended = b
    return tuple(found)


def merged(mine: str, theirs: str, chosen: Mapping[int, Version]) -> str:
    """One text of two: what both have, and at each place the lines of the version that was chosen.

    Args:
        mine: The version from here.
        theirs: The other one.
        chosen: By the number of each place, counted from 0.

    Raises:
        KeyError: Nothing was chosen for a place.
    """
    here, there = mine.split("\n"), theirs.split("\n")
    lines, ended = [], 0
    for number, (a, b, c, d) in enumerate(_differences(here, there)):
        lines += here[ended:a] + (here[a:b] if chosen[number] is Version.MINE else there[c:d])
        ended = b
    return "\n".join([*lines, *here[ended:]])


def _differences(here: list[str], there: list[str]) -> list[tuple[int, int, int, int]]:
    codes = SequenceMatcher(None, here, there, autojunk=False).get_opcodes()
    return [(a, b, c, d) for kind, a, b, c, d in codes if kind != "equal"]
