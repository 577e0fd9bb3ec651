"""The file as a tree of text that remembers where every piece stands."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from firmpedal.finding import Span


@dataclass(frozen=True, slots=True)
class Change:
    """What was done to a piece of the file that serves a second time: mirrored, shifted, renamed."""

    mirror: bool = False
    shift: Node | None = None
    swap: tuple[tuple[str, str], ...] = ()
    by_words: bool = False  # swap words inside names (left in left_leg), not only whole names


@dataclass(frozen=True, slots=True)
class Leaf:
    """One piece of text as the builder wrote it."""

    text: str
    span: Span
    path: str = ""
    changes: tuple[Change, ...] = ()


@dataclass(frozen=True, slots=True)
class Items:
    """A list."""

    nodes: tuple[Node, ...]
    span: Span
    path: str = ""
    changes: tuple[Change, ...] = ()


@dataclass(frozen=True, slots=True)
class Branch:
    """Keys and what stands behind them; `keys` has the place of each key."""

    entries: dict[str, Node]
    keys: dict[str, Span]
    span: Span
    path: str = ""
    changes: tuple[Change, ...] = ()

    def without(self, *names: str) -> Branch:
        return replace(self, entries={key: node for key, node in self.entries.items() if key not in names})


Node = Leaf | Items | Branch

REMOVED = "removed"


@dataclass(slots=True)
class Spans:
    """Where each object path stands in the file, filled while paths are given out."""

    by_path: dict[str, Span] = field(default_factory=dict)

    def nearest(self, path: str) -> Span:
        """Find the place of a path, or of the nearest thing around it that is written."""
        while path and path not in self.by_path:
            path = path.rpartition(".")[0]
        return self.by_path[path]


def with_change(node: Node, change: Change) -> Node:
    """Mark a whole piece as changed; nothing is computed until it is read."""
    changes = (*node.changes, change)
    if isinstance(node, Leaf):
        return replace(node, changes=changes)
    if isinstance(node, Items):
        return replace(node, nodes=tuple(with_change(item, change) for item in node.nodes), changes=changes)
    entries = {key: with_change(item, change) for key, item in node.entries.items()}
    return replace(node, entries=entries, changes=changes)


def overlay(base: Node | None, over: Node) -> Node:
    """Lay one piece over another: branches merge key by key, anything else replaces.

    A key whose text is `removed` takes the entry out. A value with its mark, a chain, a swing and a
    shape are each one thing: half of one and half of another would mean something else.
    """
    if not isinstance(base, Branch) or not isinstance(over, Branch) or _is_one_thing(over):
        return over
    entries = dict(base.entries)
    for key, node in over.entries.items():
        if isinstance(node, Leaf) and node.text == REMOVED:
            entries.pop(key, None)
        else:
            entries[key] = overlay(entries.get(key), node)
    return replace(base, entries=entries, keys={**base.keys, **over.keys})


_WAYS = frozenset({"aft", "forward", "right", "left", "up", "down"})
_ONE_THING = (
    ("value", frozenset({"value", "mark", "because"})),
    ("about", frozenset({"about", "axis", "swing"})),
    ("box", frozenset({"box"})),
    ("ball", frozenset({"ball", "radius"})),
    ("line", frozenset({"line", "from", "to"})),
)


def _is_one_thing(node: Branch) -> bool:
    """Say whether keys make one value; a thing that only has such a name holds keys of its own."""
    keys = node.entries.keys()
    if "from" in keys and keys - {"from"} and keys <= _WAYS | {"from"}:
        return True
    return any(
        first in keys and keys <= whole and not _is_thing(node.entries[first]) for first, whole in _ONE_THING
    )


def _is_thing(node: Node) -> bool:
    if isinstance(node, Branch):
        return not ("value" in node.entries or "from" in node.entries)
    return isinstance(node, Leaf) and node.text == REMOVED


def placed(node: Node, path: str, spans: Spans) -> Node:
    """Give every piece its object path and note where each path stands; list items count from 1."""
    spans.by_path[path] = node.span
    if isinstance(node, Leaf):
        return replace(node, path=path)
    if isinstance(node, Items):
        nodes = tuple(placed(item, f"{path}.{n}", spans) for n, item in enumerate(node.nodes, 1))
        return replace(node, nodes=nodes, path=path)
    prefix = f"{path}." if path else ""
    entries = {key: placed(item, prefix + key, spans) for key, item in node.entries.items()}
    for key, item in node.entries.items():
        if isinstance(item, Branch):
            spans.by_path[prefix + key] = node.keys.get(key, item.span)
    return replace(node, entries=entries, path=path)


def at(node: Node | None, *keys: str) -> Node | None:
    """Walk down by keys; None where there is nothing."""
    for key in keys:
        if not isinstance(node, Branch) or key not in node.entries:
            return None
        node = node.entries[key]
    return node
