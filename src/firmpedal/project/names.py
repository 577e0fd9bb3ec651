"""Names: near misses, lists of choices, and how an object path reads to a person."""

from __future__ import annotations

import re
import unicodedata
from difflib import get_close_matches
from functools import lru_cache
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

CONTAINERS = {
    "ports",
    "sides",
    "components",
    "bulkheads",
    "lines",
    "zones",
    "pedals",
    "moving",
    "panels",
    "wheels",
    "keep clear of",
    "states",
    "attitudes",
    "aircraft",
    "points",
    "where",
    "value",
}
BEGIN_ANEW = "begin a new one, by a few questions or as a copy of an example"  # what an empty file needs
RESERVED = {"unknown", "removed"}

_NONE = "there is none in this file yet"
_MOST_CHOICES = 24
_LONGEST_WORD = 80
_ADVICE = re.compile(r"(?:: |\. |, or |; )(?=(?:did you mean|[Ww]rite |choose from|choose one of))")


@lru_cache(maxsize=8192)
def label_of(path: str) -> str:
    """Turn lines.left_leg.via.2 into `left_leg via 2`."""
    parts = path.split(".")
    words = " ".join(part for part in parts if part not in CONTAINERS) or parts[-1]
    return " ".join(words[:_LONGEST_WORD].split())


def quoted(text: str) -> str:
    """Quote what somebody wrote, short and printable, for use in a message."""
    words = " ".join(text.split())
    short = words if len(words) <= _LONGEST_WORD else words[: _LONGEST_WORD - 3] + "..."
    return "`" + "".join(letter if letter.isprintable() else "?" for letter in short) + "`"


def near_miss(word: str, names: Iterable[str]) -> str:
    """Give the name closest to what was written, capitals apart, or an empty string."""
    folded = {name[:_LONGEST_WORD].casefold(): name for name in names}
    found = get_close_matches(word[:_LONGEST_WORD].casefold(), folded, n=1, cutoff=0.6)
    return folded[found[0]] if found else ""


def suggest(word: str, choices: Iterable[str]) -> str:
    """Name the near miss, or else the choices."""
    choices = list(choices)
    close = near_miss(word, choices)
    return f"did you mean `{close}`?" if close else choices_text(choices) or _NONE


def choices_text(choices: Iterable[str]) -> str:
    listed = list(choices)
    more = f", and {len(listed) - _MOST_CHOICES} more" if len(listed) > _MOST_CHOICES else ""
    return f"choose one of: {', '.join(listed[:_MOST_CHOICES])}{more}" if listed else ""


def parted(message: str, near: str = "") -> tuple[str, str]:
    """Part a message of the units or the catalogue into what is wrong and what to do about it."""
    found = _ADVICE.search(message)
    if near:
        return message[: found.start()] if found else message, f"did you mean `{near}`?"
    if not found:
        return message, ""
    advice = message[found.end() :]
    return message[: found.start()], advice[:1].lower() + advice[1:]


def sign_in_words(sign: str) -> str:
    """A sign as it is shown, by its name where it is easily overlooked or not seen at all."""
    if sign == "/":
        return "a slash (/)"
    named = unicodedata.name(sign, "a sign that is not shown").lower()
    return f"{sign} ({named})" if sign.isprintable() else named


def known_word(word: str, words: Iterable[str]) -> str:
    """The one of some words that was written, whatever its capitals and blanks; empty where none was."""
    known = list(words)
    return word if word in known else next((each for each in known if _bare(each) == _bare(word)), "")


def _bare(words: str) -> str:
    return "".join(words.casefold().split())


def other_side(name: str) -> str:
    """Swap the words left and right inside a name."""
    swapped = {"left": "right", "right": "left", "Left": "Right", "Right": "Left"}
    return "".join(swapped.get(word, word) for word in re.split(r"([^A-Za-z]+)", name))


def swap_words(name: str, swap: dict[str, str]) -> str:
    """Exchange words in a name such as left_leg.from: a whole name first, else its parts, else its words."""
    if name in swap:
        return swap[name]
    head, dot, tail = name.partition(".")
    return _swapped(head, swap) + dot + _swapped(tail, swap)


def _swapped(name: str, swap: dict[str, str]) -> str:
    if name in swap:
        return swap[name]
    return "".join(swap.get(word, word) for word in re.split(r"([_ -])", name))
