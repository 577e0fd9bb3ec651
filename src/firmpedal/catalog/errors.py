"""What the catalogue says when it does not have what was asked for."""

from __future__ import annotations

from difflib import get_close_matches
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Collection

_LONGEST_QUOTE = 60


class CatalogueError(ValueError):
    """The catalogue has nothing by this name; the message is for the person who wrote it.

    `suggestion` is the name probably meant, or empty; `choices` are the names to choose from.
    """

    def __init__(self, message: str, *, suggestion: str = "", choices: tuple[str, ...] = ()) -> None:
        super().__init__(message)
        self.suggestion = suggestion
        self.choices = choices


class PartError(CatalogueError):
    """No part has this designation."""


class StockError(CatalogueError):
    """No tube, hose, plastic line or fluid is described by this phrase."""


class RecordError(Exception):
    """A record of the catalogue is not written as it should be: our mistake, not the builder's."""

    def __init__(self, record: str, what: str) -> None:
        super().__init__(f"{record}: {what}")


def near_miss(word: str, names: Collection[str], cutoff: float) -> str:
    """Give the name closest to what was written, or an empty string."""
    folded = {name.casefold(): name for name in names}
    found = get_close_matches(word.casefold(), folded, n=1, cutoff=cutoff)
    return folded[found[0]] if found else ""


def quoted(text: str) -> str:
    """Quote what somebody wrote, short and printable, for use in a message."""
    words = " ".join(text.split())
    short = words if len(words) <= _LONGEST_QUOTE else words[: _LONGEST_QUOTE - 3] + "..."
    return "`" + "".join(letter if letter.isprintable() else "?" for letter in short) + "`"


def advice(suggestion: str, choices: tuple[str, ...], noun: str) -> str:
    """Say the near miss where there is one, the choices otherwise."""
    if suggestion:
        return f"did you mean {suggestion}?"
    return f"{noun}: {', '.join(choices)}" if choices else ""
