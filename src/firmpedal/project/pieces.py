"""YAML's nodes of a text put together from those of its keys, each remembered.

Whoever changes one line of a file has every other key composed already: those at its top, and those of
the keys behind them. Where a text is not simply a row of keys, nothing is put together and YAML reads it
whole.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import TYPE_CHECKING, Any, NamedTuple

from ruamel.yaml.error import YAMLError
from ruamel.yaml.nodes import MappingNode, ScalarNode, SequenceNode

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from ruamel.yaml.nodes import Node

    Compose = Callable[[str, int], Node | None]  # a text, and into how many levels it may go

REMEMBERED = 8  # whole texts: one that is looked at as an edit makes it is read as the file right after
_ROW = re.compile(r"^(?P<indent> *)(?=[^\s#])", re.MULTILINE)
_KEY = re.compile(r"[A-Za-z][\w ]*:(?=\s)")
_ALONE = re.compile(r"[A-Za-z][\w ]*: *(?:#.*)?\r?\n")  # a key with nothing behind it on its own line
_SHARED = re.compile(r"[&*!](?=\S)|<<|^%")  # what one key may take from another, or says of them all
_ODD_LINE_END = re.compile(r"\r(?!\n)|[\x85\u2028\u2029]")  # YAML's own, which hide a line from us


@dataclass(frozen=True, slots=True)
class Mark:
    """A place in the whole text: letters before it, lines before it, letters before it on its line."""

    index: int
    line: int
    column: int


class _Piece(NamedTuple):
    """A key with all that belongs to it; the letters and the lines before it, and how far in it stands."""

    text: str
    start: int
    line: int
    column: int


@lru_cache(maxsize=REMEMBERED)
def shares(text: str) -> bool:
    """Whether one key of a text may take something from another: by an anchor, an alias, a tag."""
    return _SHARED.search(text) is not None


@lru_cache(maxsize=REMEMBERED)
def composed(text: str, levels: int, compose: Compose, *, by_line: bool = False) -> MappingNode | None:
    """Put a text's nodes together from its keys; None where it has to be read whole.

    Args:
        text: The builder's text.
        levels: How deep it may be nested.
        compose: How YAML reads a text by itself.
        by_line: Lines and columns are enough: how many letters come before a place is not told. So all keys
            after a line that got longer are still known.
    """
    if shares(text) or _ODD_LINE_END.search(text):
        return None
    return _row_of_keys(text, 0, levels, compose, by_line)


def _row_of_keys(text: str, begin: int, levels: int, compose: Compose, by_line: bool) -> MappingNode | None:
    """Put keys together that stand under each other; what comes before `begin` is no part of them."""
    rows = [(found.end(), len(found["indent"])) for found in _ROW.finditer(text, begin)] if levels else []
    if not rows:
        return None
    column = rows[0][1]
    starts = [start for start, indent in rows if indent == column]
    if min(rows, key=_indent)[1] < column or not all(_KEY.match(text, start) for start in starts):
        return None
    pairs = []
    for piece in _pieces(text, starts, column):
        place = piece._replace(start=0) if by_line else piece
        found = _placed(*place, levels, compose, by_line)
        if found is None:
            return None
        pairs.append(found)
    rest = text.rpartition("\n")[2]
    end = Mark(len(text), text.count("\n"), len(rest))
    return MappingNode("tag:yaml.org,2002:map", pairs, pairs[0][0].start_mark, end, flow_style=False)


def _indent(row: tuple[int, int]) -> int:
    return row[1]


def _pieces(text: str, starts: list[int], column: int) -> Iterator[_Piece]:
    line = text.count("\n", 0, starts[0])
    for start, stop in pairwise([*starts, len(text)]):
        piece = text[start:stop]
        yield _Piece(piece, start, line, column)
        line += piece.count("\n")


@lru_cache(maxsize=1024)
def _alone(piece: str, column: int, levels: int, compose: Compose, by_line: bool) -> tuple[Node, Node] | None:
    """The key and the value that a piece gives by itself; None where it is not one key with its value."""
    head = _ALONE.match(piece)
    value = _row_of_keys(piece, head.end(), levels - 1, compose, by_line) if head else None
    found = _read_alone(piece[: head.end()] if head and value else piece, column, levels, compose)
    return (found[0], value or found[1]) if found else None


@lru_cache(maxsize=1024)
def _read_alone(piece: str, column: int, levels: int, compose: Compose) -> tuple[Node, Node] | None:
    """The key and the value of a piece as YAML reads it."""
    try:
        root = compose(" " * column + piece, levels)
    except (YAMLError, ValueError, RecursionError):  # whoever reads the text whole says what is wrong
        return None
    if not isinstance(root, MappingNode) or len(root.value) != 1:
        return None
    key, value = (_moved(node, -column, 0) for node in root.value[0])
    return key, value


@lru_cache(maxsize=4096)
def _placed(
    piece: str, index: int, line: int, column: int, levels: int, compose: Compose, by_line: bool
) -> tuple[Node, Node] | None:
    """The same, marked with where the piece stands in the text."""
    pair = _alone(piece, column, levels, compose, by_line)
    return None if pair is None else (_moved(pair[0], index, line), _moved(pair[1], index, line))


def _moved(node: Any, index: int, line: int) -> Node:
    start, end = (
        Mark(mark.index + index, mark.line + line, mark.column) for mark in (node.start_mark, node.end_mark)
    )
    if isinstance(node, ScalarNode):
        return ScalarNode(node.ctag, node.value, start, end, style=node.style)
    if isinstance(node, SequenceNode):
        items = [_moved(item, index, line) for item in node.value]
        return SequenceNode(node.ctag, items, start, end, flow_style=node.flow_style)
    pairs = [(_moved(key, index, line), _moved(value, index, line)) for key, value in node.value]
    return MappingNode(node.ctag, pairs, start, end, flow_style=node.flow_style)
