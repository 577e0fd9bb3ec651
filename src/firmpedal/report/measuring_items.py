"""What a file only supposes, each once with its mirror images."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.project.plain import flow
from firmpedal.project.supposed import guessed, supposed_thread
from firmpedal.project.tree import UNKNOWN, Branch, Items, Leaf, Node, at, branch_at, children, word_of
from firmpedal.project.unknowns import Item, reads_at
from firmpedal.report.measuring_words import with_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.model.display import Display
    from firmpedal.project import Reading


def doubtful(reading: Reading, display: Display) -> tuple[tuple[str, str], ...]:
    """What a file gives as a guess, with its words and the unit meant; copies are left out.

    A thread that is only supposed is none of these: it is to be looked at, among what is to be measured.

    Args:
        reading: The file.
        display: The units in which the file is written.
    """
    if reading.tree is None:
        return ()
    guesses = (
        (path, with_unit(Item(path, reads_at(reading.tree, path), ()), words, display) + doubt)
        for path, words, doubt in _guesses(reading.tree)
    )
    return (*guesses, *_threads(reading.tree))


def _threads(tree: Branch) -> Iterator[tuple[str, str]]:
    """Threads of ports that nobody has measured yet: more likely taken from a book than from the part."""
    for name, part in branch_at(tree, "components").items():
        for port, entry in branch_at(tree, "components", name, "ports").items():
            places = {word_of(at(entry, key)) for key in ("seat", "at")}
            thread = at(entry, "thread")
            if getattr(part, "via", None) is None and UNKNOWN in places and not supposed_thread(thread):
                path = f"components.{name}.ports.{port}.thread"
                yield path, f"{word_of(thread)} (its port is not measured yet)"


def _guesses(node: Node) -> Iterator[tuple[str, str, str]]:
    """Object path, figure and mark of each guess."""
    if getattr(node, "via", None) is not None or supposed_thread(node):
        return
    if isinstance(node, Branch) and guessed(node):
        yield node.path, flow(node.entries["value"]), f" ({word_of(at(node, 'mark'))})"
        return
    if isinstance(node, Leaf) and node.text.startswith("about "):
        yield node.path, node.text, ""
    if isinstance(node, Branch | Items):
        for child in children(node):
            yield from _guesses(child)
