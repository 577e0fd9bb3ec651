"""What a file leaves unknown, and what it only supposes, each once with its mirror images."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.project.field_places import walk_to
from firmpedal.project.plain import flow
from firmpedal.project.tree import UNKNOWN, Branch, Items, Leaf, Node, at, branch_at, children, word_of
from firmpedal.report.measuring_words import with_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.model.display import Display
    from firmpedal.model.fields import Reads
    from firmpedal.project import Reading

GUESSED = ("assumed", "estimate", "memory")


@dataclass(frozen=True, slots=True)
class Item:
    """One `unknown` of a file: where it stands, how it is read, and which copies repeat it."""

    path: str
    reads: Reads | None
    copies: tuple[str, ...]

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
    """Every `unknown` that is written in a file, in its order; copies go with their original."""
    if reading.tree is None:
        return ()
    found: dict[object, list[Leaf]] = {}
    for leaf in _leaves(reading.tree):
        if leaf.text == UNKNOWN:
            found.setdefault(leaf.span, []).append(leaf)
    items = []
    for leaves in found.values():
        ordered = sorted(leaves, key=lambda leaf: leaf.via is not None)
        paths = [leaf.path for leaf in ordered]
        items.append(Item(paths[0], reads_at(reading.tree, paths[0]), tuple(paths[1:])))
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


def _leaves(node: Node) -> Iterator[Leaf]:
    if isinstance(node, Leaf):
        yield node
    for child in children(node):
        yield from _leaves(child)


def reads_at(tree: Branch, path: str) -> Reads | None:
    """How the key that a path leads to is read; nothing inside a shape or a movement."""
    found = walk_to(tree, path)
    return None if found is None else found[0].reads


def doubtful(reading: Reading, display: Display) -> tuple[tuple[str, str], ...]:
    """What a file gives as a guess, with its words and the unit meant; copies are left out.

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
            if getattr(part, "via", None) is None and UNKNOWN in places:
                path = f"components.{name}.ports.{port}.thread"
                yield path, f"{word_of(at(entry, 'thread'))} (its port is not measured yet)"


def _guesses(node: Node) -> Iterator[tuple[str, str, str]]:
    """Object path, figure and mark of each guess."""
    if getattr(node, "via", None) is not None:
        return
    if isinstance(node, Branch) and word_of(at(node, "mark")) in GUESSED and "value" in node.entries:
        yield node.path, flow(node.entries["value"]), f" ({word_of(at(node, 'mark'))})"
        return
    if isinstance(node, Leaf) and node.text.startswith("about "):
        yield node.path, node.text, ""
    if isinstance(node, Branch | Items):
        for child in children(node):
            yield from _guesses(child)
