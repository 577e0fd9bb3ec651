"""Threads of ports that a file only supposes: nobody has looked yet, so they are to be looked at."""

from __future__ import annotations

from firmpedal.project.field_cells import words_of
from firmpedal.project.tree import Branch, Node, at, word_of
from firmpedal.quantity import Mark

GUESSED = tuple(mark.word for mark in Mark if mark.guessed)


def guessed(node: Node | None) -> bool:
    """Whether what stands there has a mark that says that nobody has looked."""
    return isinstance(node, Branch) and "value" in node.entries and word_of(at(node, "mark")) in GUESSED


def supposed_thread(node: Node | None) -> str:
    """What the thread of a port is supposed to be, as it is written; empty for anything else.

    A figure can be a little off and be used all the same. A thread cannot: it is the right one or it is not.
    """
    if node is None or not guessed(node):
        return ""
    return words_of(at(node, "value")) if is_thread(node.path) else ""


def is_thread(place: str) -> bool:
    """Whether the thread of a port stands at a place."""
    steps = place.split(".")
    return steps[-1] == "thread" and steps[-3:-2] == ["ports"]
