"""Names: near misses, lists of choices, and how an object path reads to a person."""

from __future__ import annotations

import difflib
import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.project.tree import Change

UNKNOWN = "unknown"  # the word for a thing that somebody still has to measure

_LONGEST_COMPARED = 100  # letters; comparing takes time that grows with their square

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
    "states",
    "attitudes",
    "aircraft",
    "points",
    "where",
}


def label_of(path: str) -> str:
    """Turn lines.left_leg.via.2 into `left_leg via 2`; a section by itself keeps its name."""
    parts = path.split(".")
    return " ".join(part for part in parts if part not in CONTAINERS) or parts[-1]


def suggest(word: str, choices: Iterable[str]) -> str:
    """Name the near miss, or else the choices."""
    choices = list(choices)
    return suggest_from(closest(word, choices), choices)


def closest(word: str, choices: Iterable[str]) -> str:
    """Name the near miss, or nothing."""
    close = difflib.get_close_matches(word[:_LONGEST_COMPARED], list(choices), 1, 0.6)
    return close[0] if close else ""


def without_advice(error: Exception) -> str:
    """What an error says, without the near miss that a problem keeps apart."""
    return str(error).partition(": did you mean")[0]


def suggest_from(near_miss: str, choices: Iterable[str]) -> str:
    """Say what another layer suggests: its near miss, or else its choices."""
    return f"did you mean `{near_miss}`?" if near_miss else choices_text(choices)


MOST_CHOICES = 16


def choices_text(choices: Iterable[str]) -> str:
    """List what can be chosen; a very long list is cut."""
    listed = list(choices)
    more = f", and {len(listed) - MOST_CHOICES} more" if len(listed) > MOST_CHOICES else ""
    return f"choose one of: {', '.join(listed[:MOST_CHOICES])}{more}" if listed else ""


def renamed(name: str, changes: tuple[Change, ...]) -> str:
    """Apply the swaps that a piece went through to a name such as left_leg.from."""
    for change in changes:
        swap = dict(change.swap)
        head, dot, tail = name.partition(".")
        if change.by_words:
            swap |= {other: word for word, other in change.swap if other not in swap}
            head = swap.get(head) or _swap_words(head, swap)
            tail = _swap_words(tail, swap)
        else:
            # The mirror image goes to its own port of a part that both sides share.
            tail = tail if head in swap or not change.mirror else other_side(tail)
            head = swap.get(head, head)
        name = head + dot + tail
    return name


def _swap_words(name: str, swap: dict[str, str]) -> str:
    return "_".join(swap.get(word, word) for word in name.split("_"))


def other_side(name: str) -> str:
    """Swap the words left and right inside a name."""
    swapped = {"left": "right", "right": "left", "Left": "Right", "Right": "Left"}
    return "".join(swapped.get(word, word) for word in re.split(r"([^A-Za-z]+)", name))
