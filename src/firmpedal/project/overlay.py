"""Laying one piece of the file over another: an option over the aircraft, an exception over a copy.

Things with keys merge key by key. A value is replaced as a whole, however many keys it is written
with, so that no half of an old measurement survives under a new one. `removed` takes an entry out; the
word stays in the tree until everything is laid, because it may have to outlast a mirror image. Of a key
that the thing may have it says that it has none, whether or not there is one below.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import TYPE_CHECKING

from firmpedal.hashing import Same
from firmpedal.model.aircraft import Aircraft
from firmpedal.project.names import label_of, quoted, suggest
from firmpedal.project.schema import keys_at
from firmpedal.project.tree import Branch, Items, Leaf, Node, at, children, is_removed

if TYPE_CHECKING:
    from firmpedal.model.fields import Declared
    from firmpedal.project.notes import Notes
    from firmpedal.project.schema import Key

POINTS = "points"  # a section of named values, which no class of the model stands for


def overlay(base: Node | None, over: Node, cls: type[Declared]) -> Node:
    """Lay a piece over another one of the same class."""
    if not isinstance(base, Branch) or not isinstance(over, Branch):
        return over
    known = keys_at(cls, over, base)
    entries = dict(base.entries)
    for key, node in over.entries.items():
        entries[key] = _laid(entries.get(key), node, known.get(key), key)
    return base.with_entries(entries, {**base.keys, **over.keys})


def _laid(below: Node | None, node: Node, key: Key | None, name: str) -> Node:
    if is_removed(node):
        return _removing(node, below, known=key is not None)
    if key is not None and key.inner is not None and not key.many:
        return overlay(below, node, key.inner)
    if (key is not None and key.named) or name == POINTS:
        return _by_name(below, node, None if key is None else key.inner)
    return node


def _by_name(base: Node | None, over: Node, cls: type[Declared] | None) -> Node:
    """Lay things with names over others: those of one name over each other."""
    if not isinstance(base, Branch) or not isinstance(over, Branch):
        return over
    entries = dict(base.entries)
    for name, node in over.entries.items():
        below = entries.get(name)
        if is_removed(node):
            entries[name] = _removing(node, below, known=False)
        else:
            entries[name] = node if cls is None or is_removed(below) else overlay(below, node, cls)
    return base.with_entries(entries, {**base.keys, **over.keys})


def _removing(node: Node, below: Node | None, *, known: bool) -> Node:
    """Remember whether the word `removed` took something out, or stands at a key that may be left out."""
    there = below is not None and (not isinstance(below, Leaf) or not is_removed(below) or below.replaced)
    return replace(node, replaced=node.replaced or known or there) if isinstance(node, Leaf) else node


def whole_at(tree: Branch, place: str) -> str:
    """The place of the value round a place that is replaced as a whole; empty where keys and names merge."""
    steps = place.split(".")
    if steps[0] == POINTS:
        return ".".join(steps[:2]) if len(steps) > 1 else ""
    cls: type[Declared] = Aircraft
    node: Node | None = tree
    number = 0
    while number < len(steps):
        key = keys_at(cls, node).get(steps[number])
        number += 1
        if key is None or key.inner is None or (key.many and not key.named):
            return ".".join(steps[:number])
        cls, here = key.inner, steps[number - 1 : number + key.many]
        node, number = at(node, *here), number + key.many
    return ""


def without_removed(node: Node, notes: Notes, path: str = "") -> Node:
    """Take out what was removed, and say where there was nothing to remove."""
    if not _has_removed(node):
        return node
    if isinstance(node, Items):
        return replace(node, nodes=tuple(without_removed(item, notes, path) for item in node.nodes))
    if not isinstance(node, Branch):
        return node
    entries: dict[str, Node] = {}
    for key, item in node.entries.items():
        if not isinstance(item, Leaf) or not is_removed(item):
            entries[key] = without_removed(item, notes, f"{path}.{key}" if path else key)
        elif not item.replaced:
            others = [name for name, other in node.entries.items() if not is_removed(other)]
            message = f"there is no {quoted(key)} in {label_of(path) or path or 'the file'} to remove"
            notes.note_at(node.key_span(key), message, key, suggest(key, others), via=item.via)
    return node.with_entries(entries)


def _has_removed(node: Node) -> bool:
    """Whether the word `removed` stands anywhere in a piece; hardly ever it does."""
    if isinstance(node, Branch):
        return _branch_has_removed(Same(node))
    return is_removed(node) if isinstance(node, Leaf) else any(map(_has_removed, children(node)))


@lru_cache(maxsize=4096)  # an edit leaves nearly every piece of a file as it was
def _branch_has_removed(branch: Same[Branch]) -> bool:
    return any(map(_has_removed, children(branch.thing)))
