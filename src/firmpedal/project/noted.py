"""Problems as they are found, and the plain words that a key can hold."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, cast

from firmpedal.finding import Problem
from firmpedal.model.component import SideOf
from firmpedal.model.fields import Reads
from firmpedal.project.names import UNKNOWN, closest, label_of, suggest
from firmpedal.project.tree import Branch, Items, Leaf, Node, Spans
from firmpedal.quantity import Answer, Mark

if TYPE_CHECKING:
    from collections.abc import Iterable
    from enum import StrEnum

DECLARED_MARKS = {mark.word: mark for mark in Mark}
MARKED_KEYS = ("value", "mark", "because")


class UnreadableError(ValueError):
    """A piece that could not be read; the problem has been noted, so pydantic only has to stop here."""


@dataclass
class Noted:
    """Reads words, and notes every problem with its place."""

    tree: Branch
    spans: Spans
    problems: list[Problem] = field(default_factory=list)

    def problem(self, node: Node, message: str, suggestion: str = "") -> None:
        text = node.text if isinstance(node, Leaf) else ""
        self.problems.append(Problem(node.span, message, text, suggestion))

    def unreadable(self, node: Node, message: str, suggestion: str = "") -> UnreadableError:
        """Note a problem that leaves nothing to go on with."""
        self.problem(node, message, suggestion)
        return UnreadableError(message)

    def key_problem(self, node: Branch, key: str, message: str, choices: Iterable[str]) -> None:
        """Note a problem with a key; its text is the key's own."""
        self.problems.append(Problem(node.keys.get(key, node.span), message, key, suggest(key, choices)))

    def unknown_key(self, node: Branch, key: str, choices: Iterable[str]) -> str:
        """Refuse a key; gives the one that was probably meant."""
        choices = list(choices)
        message = f"`{key}` is not a key that {label_of(node.path) or 'the file'} can have"
        self.key_problem(node, key, message, choices)
        return closest(key, choices)

    def leaf_text(self, node: Node) -> str:
        """The text behind a key, which has to be there."""
        label = label_of(node.path)
        if not isinstance(node, Leaf):
            raise self.unreadable(node, f"{label} should be a few words of text")
        if not node.text:
            raise self.unreadable(node, f"nothing is written after {label}", "write it, or take the key out")
        return node.text

    def text(self, node: Node, _marker: Reads | None = None) -> str:
        return self.leaf_text(node)

    def words(self, node: Node, _marker: Reads) -> tuple[str, ...]:
        leaves = node.nodes if isinstance(node, Items) else (node,)
        return tuple(self.leaf_text(leaf) for leaf in leaves)

    def choice(self, node: Node, marker: Reads) -> StrEnum:
        choices = cast("type[StrEnum]", marker.choices)
        word = self.leaf_text(node)
        if word in list(choices):
            return choices(word)
        message = f"`{word}` is not a choice for {label_of(node.path)}"
        raise self.unreadable(node, message, suggest(word, list(choices)))

    def side(self, node: Node, _marker: Reads) -> SideOf:
        side = cast("SideOf", self.choice(node, Reads("choice", choices=SideOf)))
        mirrored = sum(change.mirror for change in node.changes) % 2
        return {SideOf.LEFT: SideOf.RIGHT, SideOf.RIGHT: SideOf.LEFT}.get(side, side) if mirrored else side

    def answer(self, node: Node, _marker: Reads) -> Answer:
        answers = {"yes": Answer.YES, "no": Answer.NO, UNKNOWN: Answer.UNKNOWN}
        answers |= {"true": Answer.YES, "false": Answer.NO}
        word = self.leaf_text(node).lower()
        if word not in answers:
            self.problem(node, f"{label_of(node.path)} should be yes, no or unknown, not `{word}`")
        return answers.get(word, Answer.UNKNOWN)

    def pairs(self, node: Node, _marker: Reads) -> tuple[tuple[str, str], ...]:
        items = node.nodes if isinstance(node, Items) else (node,)
        return tuple(self._pair(item) for item in items)

    def _pair(self, node: Node) -> tuple[str, str]:
        if not isinstance(node, Items) or len(node.nodes) != 2:
            raise self.unreadable(node, "a way is two ports: [left_in, left_out]")
        return self.leaf_text(node.nodes[0]), self.leaf_text(node.nodes[1])

    def state(self, node: Node, _marker: Reads) -> tuple[tuple[str, str], ...]:
        if not isinstance(node, Branch):
            raise self.unreadable(node, "say the state as keys: `measured in: {gear: on wheels}`")
        return tuple((key, self.leaf_text(leaf)) for key, leaf in node.entries.items())

    def marked_keys(self, node: Branch) -> None:
        """Refuse what does not belong into {value: 3/4, mark: assumed, because: ...}."""
        for key in node.entries:
            if key not in MARKED_KEYS:
                self.unknown_key(node, key, MARKED_KEYS)

    def mark_of(self, node: Branch) -> Mark | None:
        """Read how far the builder trusts a number: measured, memory, estimate, assumed."""
        self.marked_keys(node)
        leaf = node.entries.get("mark")
        if leaf is None:
            return None
        word = leaf.text if isinstance(leaf, Leaf) else ""
        if word not in DECLARED_MARKS:
            self.problem(leaf, f"`{word}` is not a mark", suggest(word, list(DECLARED_MARKS)))
        return DECLARED_MARKS.get(word)
