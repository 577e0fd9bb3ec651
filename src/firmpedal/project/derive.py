"""`like` and `mirror of`: one thing of the file serving as another."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import lru_cache
from typing import TYPE_CHECKING

from firmpedal.hashing import Same
from firmpedal.model.aircraft import Aircraft
from firmpedal.project.copying import Copying, copied
from firmpedal.project.mirroring import LONGEST_CHAIN, NOTHING, Mirror, mirrored_tree, opposite_states
from firmpedal.project.names import parted, quoted, suggest, swap_words
from firmpedal.project.overlay import POINTS, overlay
from firmpedal.project.points import AXES, suggest_way
from firmpedal.project.schema import known_keys
from firmpedal.project.tree import (
    UNKNOWN,
    Absent,
    Branch,
    Leaf,
    Node,
    at,
    branch_at,
    is_empty,
    size_of,
    word_of,
)
from firmpedal.units import Dimension, UnitError, read

if TYPE_CHECKING:
    from firmpedal.model.fields import Declared
    from firmpedal.project.notes import Notes

MOST_COPIED = 50_000

# Sections of named things that can be like one another.
SECTIONS = (
    "moving",
    "zones",
    "components",
    "pedals",
    "bulkheads",
    "panels",
    "wheels",
    "keep clear of",
    "lines",
)
WORDS = ("like", "mirror of", "swap", "shift")


def derive(tree: Branch, notes: Notes) -> Branch:
    """Work out every `like`, `mirror of` and mirror list of a file with its option applied."""
    tree, mirror = mirrored_tree(tree, (*SECTIONS, POINTS), notes)
    work = _Deriver(tree, notes, mirror, opposite_states(tree))
    for section in SECTIONS:
        node = tree.entries.get(section)
        if isinstance(node, Branch):
            entries = {name: work.entry(section, name) for name in node.entries}
            tree = tree.with_entry(section, node.with_entries(entries))
    return tree.without("mirror")


@dataclass
class _Deriver:
    tree: Branch
    notes: Notes
    mirror: Mirror
    opposite: frozenset[str]
    busy: list[tuple[str, str]] = field(default_factory=list)
    done: dict[tuple[str, str], Node] = field(default_factory=dict)
    copied: int = 0

    def entry(self, section: str, name: str) -> Node:
        """One entry with its `like` or `mirror of` worked out."""
        key = (section, name)
        if key not in self.done:
            self.busy.append(key)
            self.done[key] = self._derived(section, name, branch_at(self.tree, section)[name])
            self.busy.pop()
        return self.done[key]

    def _derived(self, section: str, name: str, node: Node) -> Node:
        if not isinstance(node, Branch):
            return node
        words = [word for word in ("like", "mirror of") if word in node.entries]
        if not words or (words == ["mirror of"] and word_of(node.entries["mirror of"]) == NOTHING):
            return self._without_words(node)
        source = node.entries[words[0]]
        if len(words) > 1:
            message = f"{quoted(name)} cannot be like one thing and the mirror of another"
            self.notes.note(source, message, "take one of the two out", node.key_span(words[1]))
        elif self._found(section, name, source):
            cls = _class_of(section)
            original = self.entry(section, word_of(source))
            how = self._how(node, words[0], source)
            if how is not None and isinstance(original, Branch) and self._small_enough(original, source):
                return self._copy(cls, original, node, how)
        self.notes.doubt(f"{section}.{name}")
        return Absent(node.span)

    def _copy(self, cls: type[Declared], original: Branch, node: Branch, how: Copying) -> Node:
        """The copy that a node asks for, as it was made before where it would be the same again.

        What is noted while it is made is noted each time.
        """
        kept = _kept(cls, Same(original), Same(node), frozenset(self.mirror.images.items()), self.opposite)
        if kept:
            return kept[0]
        before = self.notes.count
        own = node.without(*WORDS)
        copy = overlay(copied(original, cls, how, own), own, cls)
        if self.notes.count == before:
            kept.append(copy)
        return copy

    def _without_words(self, node: Branch) -> Node:
        for word in ("swap", "shift"):
            if word in node.entries:
                message = f"`{word}` goes with `like`, and there is none here"
                self.notes.note_at(
                    node.key_span(word), message, word, "write what it is like: `like: a_name`"
                )
        return node.without(*WORDS)

    def _found(self, section: str, name: str, source: Node) -> bool:
        """Note a source that is no name, is not there, or goes round in a circle."""
        known = branch_at(self.tree, section)
        if not isinstance(source, Leaf) or is_empty(source):
            others = [other for other in known if other != name]
            self.notes.note(source, f"name one of the {section} here", suggest("", others))
        elif source.text not in known:
            others = [other for other in known if other != name]
            message = f"there is no {quoted(source.text)} among the {section}"
            elsewhere = [other for other in SECTIONS if source.text in branch_at(self.tree, other)]
            advice = f"it is one of the {elsewhere[0]}; name one of the {section}" if elsewhere else ""
            self.notes.note(source, message, advice or suggest(source.text, others))
        elif (section, source.text) in self.busy:
            circle = [other for _, other in self.busy[self.busy.index((section, source.text)) :]]
            message = f"{quoted(circle[0])} is like itself, round in a circle: {' - '.join(circle)}"
            self.notes.note(source, message, "write one of them out")
        elif len(self.busy) > LONGEST_CHAIN:
            message = f"{quoted(name)} is like something that is like something, and so on, too often"
            self.notes.note(source, message, "name the first of them here")
        else:
            return True
        return False

    def _small_enough(self, original: Node, source: Node) -> bool:
        if self.copied > MOST_COPIED:
            return False  # said already, and counting on would take as long as copying
        self.copied += size_of(original)
        if self.copied > MOST_COPIED:
            self.notes.note(source, "the file unfolds to too many pieces", "take some copies out")
        return self.copied <= MOST_COPIED

    def _how(self, node: Branch, word: str, source: Node) -> Copying | None:
        if word == "mirror of":
            other = next((word for word in ("swap", "shift") if word in node.entries), "")
            if other:
                message, advice = (
                    f"`{other}` goes with `like`, not with `mirror of`",
                    "write what differs by its key",
                )
                self.notes.note_at(node.key_span(other), message, other, advice)
                return None
            rename = self.mirror.rename
            return Copying(source.span, rename, self.notes, mirror=True, opposite=self.opposite)
        shift, swap = self._shift(node), self._swap(node)
        if shift is None or swap is None:
            return None
        return Copying(source.span, lambda name: swap_words(name, swap), self.notes, shift=shift)

    def _swap(self, node: Branch) -> dict[str, str] | None:
        """Read {left: right}: each word for the other."""
        swap = node.entries.get("swap")
        if swap is None:
            return {}
        pairs = branch_at(node, "swap")
        if not pairs or not all(isinstance(item, Leaf) and item.text for item in pairs.values()):
            self.notes.note(swap, "a swap is two words", "write `swap: {left: right}`")
            return None
        words = {key: word_of(item) for key, item in pairs.items()}
        return {other: word for word, other in words.items()} | words

    def _shift(self, node: Branch) -> Branch | None:
        """Read {right: 7}: how far the copy is from its original, each way."""
        shift = node.entries.get("shift")
        if shift is None:
            return Branch({}, {}, node.span)
        if not isinstance(shift, Branch) or not shift.entries:
            self.notes.note(shift, "a shift is a way and a length", "write `shift: {right: 7}`")
            return None
        for key in shift.entries:
            if key not in AXES:
                message = f"{quoted(key)} is not a way to go"
                self.notes.note_at(shift.key_span(key), message, key, suggest_way(key))
                return None
        lengths = [self._is_length(item) for item in shift.entries.values()]  # each is looked at
        return shift if all(lengths) else None

    def _is_length(self, node: Node) -> bool:
        """Note a shift that is no length, even where nothing of the copy is shifted by it."""
        text = word_of(at(node, "value") or node)
        if text == UNKNOWN:
            return True
        try:
            read(text, Dimension.LENGTH, "m")
        except UnitError as error:
            message, advice = parted(str(error))
            self.notes.note(node, f"shift: {message}", advice or "write `shift: {right: 7}`")
            return False
        return True


@lru_cache(maxsize=512)
def _kept(
    _cls: type[Declared],
    _original: Same[Branch],
    _node: Same[Branch],
    _images: frozenset[tuple[str, str]],
    _opposite: frozenset[str],
) -> list[Node]:
    """Where one copy is kept under all that it goes by; empty before it was made."""
    return []


def _class_of(section: str) -> type[Declared]:
    inner = known_keys(Aircraft)[section].inner
    if inner is None:
        raise AssertionError(section)
    return inner
