"""Plain YAML text from words, lists and keys."""

from __future__ import annotations

import json
import re

Piece = str | list["Piece"] | dict[str, "Piece"]

WIDEST = 100
_SAFE = re.compile(r"(?:\w|[+-][\d./]|\.\d)[\w .+/'\"()-]*", re.ASCII)


def text_of(piece: dict[str, Piece]) -> str:
    """Write keys under each other; what is short enough stands in one line."""
    return "".join(f"{line}\n" for key, each in piece.items() for line in _entry(key, each, 0))


def _entry(key: str, piece: Piece, indent: int) -> list[str]:
    start = " " * indent + _word(key) + ":"
    line = f"{start} {_flow(piece)}"
    if isinstance(piece, str) or not piece or (indent and len(line) <= WIDEST):
        return [line]
    return [start, *_block(piece, indent + 2)]


def _block(piece: Piece, indent: int) -> list[str]:
    if isinstance(piece, dict):
        return [line for key, each in piece.items() for line in _entry(key, each, indent)]
    return [" " * indent + "- " + _flow(each) for each in piece]


def _flow(piece: Piece) -> str:
    if isinstance(piece, dict):
        return "{" + ", ".join(f"{_word(key)}: {_flow(each)}" for key, each in piece.items()) + "}"
    if isinstance(piece, list):
        return "[" + ", ".join(_flow(each) for each in piece) + "]"
    return _word(piece)


def _word(text: str) -> str:
    """One word or a few; in quotes where YAML would take them for something else."""
    return text if _SAFE.fullmatch(text) and text == text.strip() else json.dumps(text)
