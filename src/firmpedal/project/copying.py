"""One thing of the file serving as another: mirrored, shifted, with other names.

The copy is written as a builder would have written it out by hand, so that nobody later on has to know
that it is one.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.model.circuit import Passage
from firmpedal.project.points import copied_point, mirrored_direction
from firmpedal.project.schema import keys_at
from firmpedal.project.surrounding_copies import copied_motion, copied_shape
from firmpedal.project.tree import Branch, Items, Leaf, Node, is_removed, stamped

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.finding import Span
    from firmpedal.model.fields import Declared
    from firmpedal.project.notes import Notes
    from firmpedal.project.schema import Key

_NAMES = ("reference", "connection")


@dataclass(frozen=True)
class Copying:
    """What happens to a copy: new names, the other side, a shift; `via` is the place that asked for it.

    `opposite` holds the states in which a mirrored thing moves the other way.
    """

    via: Span
    rename: Callable[[str], str]
    notes: Notes
    mirror: bool = False
    shift: Branch | None = None
    opposite: frozenset[str] = frozenset()


def copied(node: Node, cls: type[Declared], how: Copying, own: Node | None = None) -> Node:
    """Copy a thing of a class; keys that the copy writes itself as `own` are left out."""
    if not isinstance(node, Branch):
        return stamped(node, how.via)
    known = keys_at(cls, own, node)
    entries: dict[str, Node] = {}
    for name, item in node.entries.items():
        key = known.get(name)
        written = own.entries.get(name) if isinstance(own, Branch) else None
        if written is not None and not is_removed(written) and (key is None or key.inner is None):
            continue
        if key is not None:
            entries[name] = _by_key(item, key, how, written)
        elif cls.free_keys:
            entries[name] = stamped(copied_motion(item, name, how), how.via)
        else:
            entries[name] = stamped(item, how.via)
    return replace(node, entries=entries, via=how.via)


def _by_key(node: Node, key: Key, how: Copying, own: Node | None) -> Node:
    if key.inner is None:
        method = key.reads.method if key.reads else ""
        is_name = key.reads is not None and key.reads.target == "names"
        return stamped(_value(node, "reference" if is_name else method, how), how.via)
    if not key.many:
        return copied(node, key.inner, how, own)
    if not isinstance(node, Branch):
        return stamped(node, how.via)
    named = how.rename if key.inner is Passage else str
    written = own.entries if isinstance(own, Branch) else {}
    entries = {
        named(name): copied(item, key.inner, how, written.get(named(name)))
        for name, item in node.entries.items()
    }
    keys = {named(name): span for name, span in node.keys.items()}
    return replace(node, entries=entries, keys=keys, via=how.via)


def _value(node: Node, method: str, how: Copying) -> Node:
    if method in _NAMES and isinstance(node, Leaf):
        return replace(node, text=how.rename(node.text))
    if method == "side" and isinstance(node, Leaf):
        return _side(node, how)
    if method == "position":
        return copied_point(node, how)
    if method == "positions" and isinstance(node, Items):
        return replace(node, nodes=tuple(copied_point(item, how) for item in node.nodes))
    if method in ("direction", "vector"):  # a shift of where things are changes neither
        return mirrored_direction(node) if how.mirror else node
    return copied_shape(node, how) if method in ("shape", "body", "sheet") else node


def _side(node: Leaf, how: Copying) -> Leaf:
    """A mirrored thing is on the other side; a copy with other names is on the side that it declares."""
    other = {"left": "right", "right": "left"} if how.mirror else {}
    return replace(node, text=other.get(node.text, node.text))
