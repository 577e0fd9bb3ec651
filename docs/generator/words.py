"""The words of the Makefile, from the Makefile."""

from __future__ import annotations

import re
from pathlib import Path

from generator.region import table

_MAKEFILE = Path(__file__).parents[2] / "Makefile"
_WORD = re.compile(r"^(?P<word>[a-z]+):.*?## (?P<what>.*)$", re.MULTILINE)


def table_of_words(text: str) -> list[tuple[str, str]]:
    """Each word with what it does."""
    return [(found["word"], found["what"]) for found in _WORD.finditer(text)]


def table_rows() -> list[tuple[str, ...]]:
    """The rows of the table."""
    return [(f"`make {word}`", what) for word, what in table_of_words(_MAKEFILE.read_text(encoding="utf-8"))]


def page(_argument: str) -> str:
    """The table of words."""
    return table(("word", "what it does"), table_rows())
