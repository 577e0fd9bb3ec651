"""The file as a tree of text that remembers where every piece stands."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from firmpedal.hashing import Same

if TYPE_CHECKING:
    from firmpedal.finding import Span

UNKNOWN = "unknown"
REMOVED = "removed"


@dataclass(frozen=True, slots=True)
class Leaf:
    """One piece of text as the builder wrote it.

    `via` is, for a piece that serves a second time, the place that asked for it: a `like`, a `mirror of`,
    a name on the mirror list, an anchor. `replaced` says of the word `removed` that it took something out.
    """

    text: str
    span: Span
    path: str = ""
    via: Span | None = None
    replaced: bool = False


@dataclass(frozen=True, slots=True)
class Items:
    """A list."""

    nodes: tuple[Node, ...]
    span: Span
    path: str = ""
    via: Span | None = None


@dataclass(frozen=True, slots=True)
class Branch:
    """Keys and what stands behind them; `keys` has the place of each key, `name_span` that of its own."""

    entries: dict[str, Node]
    keys: dict[str, Span]
    span: Span
    path: str = ""
    via: Span | None = None
    name_span: Span | None = None

    def without(self, *names: str) -> Branch:
        if self.entries.keys().isdisjoint(names):
            return self
        return self.with_entries({key: node for key, node in self.entries.items() if key not in names})

    def with_entries(self, entries: dict[str, Node], keys: dict[str, Span] | None = None) -> Branch:
        """The same with other entries and, if wanted, other places of their keys."""
        keys = self.keys if keys is None else keys
        return Branch(entries, keys, self.span, self.path, self.via, self.name_span)

    def with_entry(self, key: str, node: Node, span: Span | None = None) -> Branch:
        keys = self.keys if span is None else {**self.keys, key: span}
        return self.with_entries({**self.entries, key: node}, keys)

    def key_span(self, key: str) -> Span:
        return self.keys.get(key, self.span)


@dataclass(frozen=True, slots=True)
class Absent:
    """What the builder left out, or what could not be read and has been spoken of already."""

    span: Span
    path: str = ""
    via: Span | None = None


Node = Leaf | Items | Branch | Absent


@dataclass(slots=True)
class Spans:
    """Where each object path stands in the file, filled while paths are given out."""

    by_path: dict[str, Span] = field(default_factory=dict)


def is_removed(node: Node | None) -> bool:
    return isinstance(node, Leaf) and node.text == REMOVED


def is_empty(node: Node) -> bool:
    """Say whether nothing stands behind a key."""
    return isinstance(node, Leaf) and not node.text


def word_of(node: Node | None) -> str:
    """The text of a leaf; nothing for anything else."""
    return node.text if isinstance(node, Leaf) else ""


def children(node: Node) -> tuple[Node, ...]:
    if isinstance(node, Items):
        return node.nodes
    return tuple(node.entries.values()) if isinstance(node, Branch) else ()


def size_of(node: Node) -> int:
    """Count the pieces of a tree."""
    return 1 + sum(map(size_of, children(node)))


def stamped(node: Node, via: Span) -> Node:
    """Mark a whole piece as a copy that somebody asked for."""
    if isinstance(node, Leaf):  # most pieces are, and `replace` takes its time
        return Leaf(node.text, node.span, node.path, via, node.replaced)
    if isinstance(node, Items):
        return Items(tuple(stamped(item, via) for item in node.nodes), node.span, node.path, via)
    if isinstance(node, Branch):
        entries = {key: stamped(item, via) for key, item in node.entries.items()}
        return Branch(entries, node.keys, node.span, node.path, via, node.name_span)
    return Absent(node.span, node.path, via)


def with_path(node: Node, path: str) -> Node:
    """The same piece under another object path."""
    if isinstance(node, Leaf):
        return Leaf(node.text, node.span, path, node.via, node.replaced)
    return replace(node, path=path)


def placed(node: Node, path: str, spans: Spans) -> Node:
    """Give every piece its object path and note where each path stands; list items count from 1."""
    spans.by_path.setdefault(path, node.span)
    if isinstance(node, Leaf):
        return Leaf(node.text, node.span, path, node.via, node.replaced)
    if isinstance(node, Items):
        nodes = tuple(placed(item, f"{path}.{n}", spans) for n, item in enumerate(node.nodes, 1))
        return Items(nodes, node.span, path, node.via)
    if not isinstance(node, Branch):
        return Absent(node.span, path, node.via)
    prefix = f"{path}." if path else ""
    for key, item in node.entries.items():
        if isinstance(item, Branch):
            spans.by_path[prefix + key] = node.key_span(key)
    entries = {key: _placed_behind(item, prefix + key, spans) for key, item in node.entries.items()}
    return Branch(entries, node.keys, node.span, path, node.via, node.name_span)


def _placed_behind(node: Node, path: str, spans: Spans) -> Node:
    """Place what stands behind a key; the sections and their things may be known already."""
    if not isinstance(node, Branch) or path.count(".") > 1:
        return placed(node, path, spans)
    found, inside = _placed_alone(Same(node), path)
    spans.by_path.setdefault(path, node.span)
    spans.by_path.update(inside)
    return found


@lru_cache(maxsize=1024)
def _placed_alone(node: Same[Branch], path: str) -> tuple[Node, dict[str, Span]]:
    """A thing with its path, and where everything inside it stands."""
    spans = Spans()
    found = placed(node.thing, path, spans)
    return found, {key: span for key, span in spans.by_path.items() if key != path}


def at(node: Node | None, *keys: str) -> Node | None:
    """Walk down by keys; None where there is nothing."""
    for key in keys:
        if not isinstance(node, Branch) or key not in node.entries:
            return None
        node = node.entries[key]
    return node


def branch_at(node: Node | None, *keys: str) -> dict[str, Node]:
    """The entries of a branch further down; none where there is no branch."""
    found = at(node, *keys)
    return found.entries if isinstance(found, Branch) else {}
