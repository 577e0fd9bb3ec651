"""What a file leaves unknown, each once with its mirror images."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.project.field_places import walk_to
from firmpedal.project.tree import UNKNOWN, Branch, Leaf, Node, children

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.model.fields import Reads
    from firmpedal.project.read import Reading


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
