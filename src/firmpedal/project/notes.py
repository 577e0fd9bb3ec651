"""The one place where problems are collected, so that one mistake is spoken of once."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from firmpedal.finding import Problem
from firmpedal.project.tree import Leaf

if TYPE_CHECKING:
    from firmpedal.finding import Span
    from firmpedal.project.tree import Node


@dataclass
class Notes:
    """Problems of one file.

    A piece of text that serves twice (mirrored, or like another) is wrong twice; `copies` are kept apart
    and shown only where the original is right. `uncertain` has the object paths whose inside is not
    fully known because of a problem: nothing is said to be missing there.
    """

    found: list[Problem] = field(default_factory=list)
    copies: list[Problem] = field(default_factory=list)
    uncertain: set[str] = field(default_factory=set)

    @property
    def count(self) -> int:
        """How much is noted or doubted by now."""
        return len(self.found) + len(self.copies) + len(self.uncertain)

    def note(self, node: Node, message: str, suggestion: str = "", also: Span | None = None) -> None:
        """Note a problem with a piece of the file."""
        text = node.text if isinstance(node, Leaf) else ""
        self.note_at(node.span, message, text, suggestion, also, node.via)

    def note_at(
        self,
        span: Span,
        message: str,
        text: str = "",
        suggestion: str = "",
        also: Span | None = None,
        via: Span | None = None,
    ) -> None:
        """Note a problem at a place; `via` is the place that asked for a copy."""
        if via is not None and also is None and via != span:
            also = via
        problem = Problem(span, message, text, suggestion, also)
        (self.found if via is None else self.copies).append(problem)

    def doubt(self, path: str) -> None:
        """Remember that not everything inside an object path is known."""
        self.uncertain.add(path)

    def doubtful(self, *paths: str) -> bool:
        return any(path in self.uncertain for path in paths)

    def problems(self) -> tuple[Problem, ...]:
        """Every problem once, in the order of the file."""
        said = {problem.span for problem in self.found}
        kept = list(self.found)
        for problem in self.copies:
            if problem.span not in said:
                said.add(problem.span)
                kept.append(problem)
        ordered = sorted(kept, key=lambda problem: (problem.span.line, problem.span.column))
        return tuple(dict.fromkeys(ordered))
