"""The options of a text, each with what it comes to: worked out once for all pages that want them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.web.answers import answer

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.web.answers import System


BEGIN = "Begin an option"  # what leads to the page where that is done, and what does it there


@dataclass(frozen=True)
class Option:
    """One option, or the file as written under no name; no evaluation where its text cannot be read."""

    name: str | None
    evaluation: Evaluation | None


def options_of(text: str, file: str, system: System | None) -> tuple[Option, ...]:
    """Evaluate a text as written and in each of its options, in the units that are wanted."""
    first = answer(text, file, None, system)
    others = (Option(name, answer(text, file, name, system).evaluation) for name in first.reading.options)
    return (Option(None, first.evaluation), *others)
