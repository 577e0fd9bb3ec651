"""Aircraft as texts: the example, small ones of the tests' own, and edits that have to bite."""

from __future__ import annotations

from functools import cache
from pathlib import Path

EXAMPLES = Path(__file__).parents[1] / "examples"
SMALL = Path(__file__).parent / "aircraft"


@cache
def example(name: str) -> str:
    return (EXAMPLES / f"{name}.yaml").read_text(encoding="utf-8")


@cache
def small(name: str) -> str:
    return (SMALL / f"{name}.yaml").read_text(encoding="utf-8")


def edited(text: str, *edits: tuple[str, str]) -> str:
    """Put new words in the place of old ones, each of which has to stand in the text exactly once."""
    for old, new in edits:
        assert text.count(old) == 1, f"{text.count(old)} times in the text: {old!r}"
        text = text.replace(old, new)
    return text
