"""What a file leaves to be found out, each once with its mirror images."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.project.field_places import walk_to
from firmpedal.project.names import known_word
from firmpedal.project.supposed import supposed_thread
from firmpedal.project.tree import UNKNOWN, Branch, Node, children, word_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.model.fields import Reads
    from firmpedal.project.read import Reading


@dataclass(frozen=True, slots=True)
class Item:
    """One `unknown` of a file: where it stands, how it is read, and which copies repeat it.

    `supposed` is what a thread is supposed to be that nobody has looked at yet; empty for anything else.
    """

    path: str
    reads: Reads | None
    copies: tuple[str, ...]
    supposed: str = ""

    @property
    def steps(self) -> list[str]:
        return self.path.split(".")

    @property
    def owner(self) -> str:
        """The thing it belongs to, by its name."""
        return self.steps[1] if len(self.steps) > 2 else self.steps[0]

    @property
    def key(self) -> str:
        """The last word of its path that is not the number of something in a list."""
        return next((step for step in reversed(self.steps) if not step.isdecimal()), "")

    @property
    def images(self) -> tuple[str, ...]:
        return tuple(
            dict.fromkeys(path.split(".")[1] for path in self.copies if path.split(".")[1] != self.owner)
        )


def unknowns(reading: Reading) -> tuple[Item, ...]:
    """Every `unknown` and every supposed thread of a file, in its order; copies go with their original."""
    if reading.tree is None:
        return ()
    found: dict[object, list[Node]] = {}
    for node in _open(reading.tree):
        found.setdefault(node.span, []).append(node)
    items = []
    for nodes in found.values():
        ordered = sorted(nodes, key=lambda node: node.via is not None)
        first, *copies = [node.path for node in ordered]
        supposed = supposed_thread(ordered[0])
        items.append(Item(first, reads_at(reading.tree, first), tuple(copies), supposed))
    return tuple(items)


def next_unknown(reading: Reading, chosen: str, last: tuple[str, int]) -> tuple[str, int]:
    """What to measure next: first in the thing that is chosen, then on in the file, and round again.

    Args:
        reading: The file.
        chosen: The object path of the thing that is looked at.
        last: What this said the last time; an empty path and -1 at first.

    Returns:
        Its object path, and which one of them it is; an empty path where nothing is unknown.
    """
    paths = [item.path for item in unknowns(reading)]
    if not paths:
        return "", -1
    own = [path for path in paths if path.startswith(f"{chosen}.")]
    if own and not last[0].startswith(f"{chosen}."):
        return own[0], paths.index(own[0])
    after = last[1] + 1 if last[0] in paths else max(last[1], 0)  # a filled one made room for the next
    number = after % len(paths)
    return paths[number], number


def _open(node: Node) -> Iterator[Node]:
    if word_of(node) == UNKNOWN or supposed_thread(node):
        yield node
        return
    for child in children(node):
        yield from _open(child)


def reads_at(tree: Branch, path: str) -> Reads | None:
    """How the key that a path leads to is read; nothing inside a shape or a movement."""
    found = walk_to(tree, path)
    return None if found is None else found[0].reads


def as_known(tree: Branch | None, path: str, words: str) -> str:
    """Words that somebody typed for a key, in the known spelling where that takes one of a few words."""
    reads = None if tree is None else reads_at(tree, path)
    choices = () if reads is None or reads.choices is None else tuple(each.value for each in reads.choices)
    return known_word(words.strip(), choices) or words
