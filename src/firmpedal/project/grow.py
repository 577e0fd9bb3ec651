"""From YAML's nodes to our tree: duplicate keys, anchors, merged keys, and a bound on the size."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import lru_cache
from typing import TYPE_CHECKING

from ruamel.yaml.nodes import MappingNode, ScalarNode, SequenceNode

from firmpedal.finding import Span
from firmpedal.project.layout import DEEPEST, compose
from firmpedal.project.names import BEGIN_ANEW, quoted
from firmpedal.project.notes import Notes
from firmpedal.project.pieces import shares
from firmpedal.project.tree import Absent, Branch, Items, Leaf, Node, is_empty, stamped

if TYPE_CHECKING:
    from ruamel.yaml.nodes import Node as YamlNode

    from firmpedal.finding import Problem

MOST_PIECES = 20_000  # an aircraft has some hundreds
REMEMBERED_TO = 2  # of keys behind keys: the things of a section

_MERGE = "<<"
_UNFOLDS = "the file unfolds to too many pieces"
_NOTHING = ("~", "null", "Null", "NULL")
_OWN_TAGS = frozenset(
    f"tag:yaml.org,2002:{name}"
    for name in ("str", "int", "float", "bool", "null", "map", "seq", "timestamp", "merge", "value")
)


def load_text(text: str, file: str, notes: Notes) -> Branch | None:
    """Turn a text into a tree; None when it is not laid out as a tree of keys."""
    root, problems = compose(text, file, by_line=True)
    notes.found += problems
    if root is None:
        return None
    grower = _Grower(file, notes, remembers=not shares(text))
    if not isinstance(root, MappingNode):
        notes.note_at(
            grower.span(root),
            "the file should be a list of keys such as `aircraft:`",
            suggestion=BEGIN_ANEW,
        )
        return None
    try:
        tree = grower.grow(root, 0)
    except _TooMuchError as error:
        notes.note_at(Span(file, 1, 1), str(error), suggestion="look at its anchors (&) and aliases (*)")
        return None
    return tree if isinstance(tree, Branch) else None


@dataclass
class _Grower:
    """Turns YAML's nodes into ours, counting so that aliases of aliases cannot run away."""

    file: str
    notes: Notes
    remembers: bool = False
    pieces: int = 0
    seen: set[int] = field(default_factory=set)
    anchors: dict[str, tuple[int, Span]] = field(default_factory=dict)

    def span(self, node: YamlNode) -> Span:
        return Span(self.file, node.start_mark.line + 1, node.start_mark.column + 1)

    def grow(self, node: YamlNode, depth: int) -> Node:
        """Grow one node; one that was met before stands behind an alias."""
        self.pieces += 1
        if self.pieces > MOST_PIECES:
            raise _TooMuchError(_UNFOLDS)
        if depth > DEEPEST:
            raise _TooMuchError("lists or keys are nested too deeply")
        again = id(node) in self.seen
        self.seen.add(id(node))
        plain = again or self._look_at(node)
        if isinstance(node, ScalarNode):
            grown: Node = Leaf(_text(node), self.span(node)) if plain else Absent(self.span(node))
        elif isinstance(node, SequenceNode):
            grown = Items(tuple(self.grow(item, depth + 1) for item in node.value), self.span(node))
        elif isinstance(node, MappingNode):
            grown = self._branch(node, depth)
        else:  # there is no other kind of node
            raise TypeError(node)
        return stamped(grown, self.span(node)) if again else grown

    def _look_at(self, node: YamlNode) -> bool:
        """Note an anchor whose name is taken, and a tag, which means nothing here; say if there is no tag."""
        tag = str(node.tag or "")
        if tag and tag not in _OWN_TAGS:
            message = f"{quoted(tag)} is a tag, and tags mean nothing here"
            self.notes.note_at(self.span(node), message, tag, "put quotes round a text that begins with !")
        if node.anchor:
            first, span = self.anchors.setdefault(str(node.anchor), (id(node), self.span(node)))
            if first != id(node):
                message = f"the anchor {quoted('&' + str(node.anchor))} stands here a second time"
                self.notes.note_at(self.span(node), message, f"&{node.anchor}", "name one of them anew", span)
        return not tag or tag in _OWN_TAGS

    def _branch(self, node: MappingNode, depth: int) -> Branch:
        own = Branch({}, {}, self.span(node))
        merged: list[Branch] = []
        for key, value in node.value:
            if not isinstance(key, ScalarNode):
                message = "a key should be one word or a few, not a list"
                self.notes.note_at(
                    self.span(key), message, suggestion="write `key: value`, or put quotes round it"
                )
                continue
            name, span = " ".join(str(key.value).split()), self.span(key)
            grown = self._behind(value, depth + 1, span)
            if is_empty(grown):
                name, grown = self._without_value(key, name, value)
            if name == _MERGE:
                merged += self._merged(grown, span)
            elif name in own.entries:
                self._twice(name, span, own.keys[name])
                own.entries[name] = _joined(own.entries[name], grown)
            else:
                own.entries[name], own.keys[name] = grown, span
        return _under(merged, own)

    def _behind(self, node: YamlNode, depth: int, key: Span) -> Node:
        """Grow what stands behind a key; a thing that takes nothing from elsewhere may be known already."""
        if not self.remembers or depth > REMEMBERED_TO or not isinstance(node, MappingNode):
            return _named_at(self.grow(node, depth), key)
        grown, pieces, found = _grown_alone(node, depth, key)
        self.pieces += pieces
        self.notes.found += found
        if self.pieces > MOST_PIECES:
            raise _TooMuchError(_UNFOLDS)
        return grown

    def _without_value(self, key: ScalarNode, name: str, value: YamlNode) -> tuple[str, Leaf]:
        """A key with nothing behind it; or `{value:3}`, which to YAML is one long key, as it is meant."""
        span = self.span(key)
        if key.style is None and ":" in name:
            name, _, rest = (part.strip() for part in name.partition(":"))
            if rest:
                message, advice = (
                    f"a space is missing after the `:` of {quoted(name)}",
                    f"write `{name}: {rest}`",
                )
                self.notes.note_at(span, message, name, advice)
            return name, Leaf(rest, span)
        quotes = isinstance(value, ScalarNode) and value.style is not None
        return name, Leaf("", self.span(value) if quotes else span)

    def _twice(self, name: str, span: Span, first: Span) -> None:
        advice = "take one of them out, or give it another name"
        self.notes.note_at(span, f"{quoted(name)} stands here a second time", name, advice, first)

    def _merged(self, grown: Node, span: Span) -> list[Branch]:
        """Read what stands behind `<<`: the keys of one or several other things."""
        sources = grown.nodes if isinstance(grown, Items) else (grown,)
        if not all(isinstance(source, Branch) for source in sources):
            message = "`<<` takes over the keys of an anchored thing, and this is none"
            self.notes.note_at(span, message, _MERGE, "write `<<: *name`, or `like: other_thing`")
        return [source for source in sources if isinstance(source, Branch)]


@lru_cache(maxsize=1024)
def _grown_alone(node: MappingNode, depth: int, key: Span) -> tuple[Node, int, tuple[Problem, ...]]:
    """What a node behind a key, and no other, grows to, with the count of its pieces and its problems."""
    grower = _Grower(key.file, Notes(), remembers=True)
    grown = _named_at(grower.grow(node, depth), key)
    return grown, grower.pieces, tuple(grower.notes.found)


def _named_at(node: Node, span: Span) -> Node:
    if not isinstance(node, Branch):
        return node
    return Branch(node.entries, node.keys, node.span, node.path, node.via, span)


def _text(node: ScalarNode) -> str:
    text = str(node.value).strip()
    return "" if node.style is None and text in _NOTHING else text


def _joined(first: Node, second: Node) -> Node:
    """Read on with both pieces behind a key that stands twice, so that nothing else seems missing."""
    if not isinstance(first, Branch) or not isinstance(second, Branch):
        return first
    entries = {**second.entries, **first.entries}
    both = first.entries.keys() & second.entries.keys()
    entries |= {key: _joined(first.entries[key], second.entries[key]) for key in both}
    return first.with_entries(entries, {**second.keys, **first.keys})


def _under(merged: list[Branch], own: Branch) -> Branch:
    """Put taken-over keys under a thing's own, the first source winning."""
    for source in merged:
        entries = {**source.entries, **own.entries}
        own = Branch(entries, {**source.keys, **own.keys}, own.span)
    return own


class _TooMuchError(Exception):
    """The file unfolds to more than a builder's file can hold."""
