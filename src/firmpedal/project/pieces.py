"""YAML's nodes of a text put together from those of its top keys, each remembered.

Whoever changes one line of a file has every other key composed already. Where a text is not simply a row
of top keys, nothing is put together and YAML reads it whole.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import TYPE_CHECKING, Any

from ruamel.yaml.error import YAMLError
from ruamel.yaml.nodes import MappingNode, ScalarNode, SequenceNode

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from ruamel.yaml.nodes import Node

    Compose = Callable[[str], Node | None]

_TOP = re.compile(r"^(?=[^\s#])", re.MULTILINE)
_KEY = re.compile(r"[A-Za-z][\w ]*:(?=\s)")
_SHARED = re.compile(r"[&*!](?=\S)|<<|^%")  # what one key may take from another, or says of them all
_LINE_END = re.compile(r"\r\n|[\n\r\x85\u2028\u2029]")


@dataclass(frozen=True, slots=True)
class Mark:
    """A place in the whole text: letters before it, lines before it, letters before it on its line."""

    index: int
    line: int
    column: int


def composed(text: str, compose: Compose) -> MappingNode | None:
    """Put a text's nodes together from its top keys; None where it has to be read whole.

    Args:
        text: The builder's text.
        compose: How YAML reads a text by itself.
    """
    starts = [found.start() for found in _TOP.finditer(text)]
    if not starts or _SHARED.search(text) or not all(_KEY.match(text, start) for start in starts):
        return None
    pairs = []
    for piece, index, line in _pieces(text, starts):
        found = _placed(piece, index, line, compose)
        if found is None:
            return None
        pairs.append(found)
    key, value = pairs[0][0], pairs[-1][1]
    return MappingNode("tag:yaml.org,2002:map", pairs, key.start_mark, value.end_mark, flow_style=False)


def _pieces(text: str, starts: list[int]) -> Iterator[tuple[str, int, int]]:
    """Each top key with what belongs to it, the letters and the lines before it; the first has the head."""
    edges = [0, *starts[1:], len(text)]
    line = 0
    for start, stop in pairwise(edges):
        piece = text[start:stop]
        yield piece, start, line
        line += len(_LINE_END.findall(piece))


@lru_cache(maxsize=256)
def _alone(piece: str, compose: Compose) -> tuple[Node, Node] | None:
    """The key and the value that a piece gives by itself; None where it is not one key with its value."""
    try:
        root = compose(piece)
    except (YAMLError, ValueError, RecursionError):  # whoever reads the text whole says what is wrong
        return None
    if not isinstance(root, MappingNode) or len(root.value) != 1:
        return None
    pair: tuple[Node, Node] = root.value[0]
    return pair


@lru_cache(maxsize=1024)
def _placed(piece: str, index: int, line: int, compose: Compose) -> tuple[Node, Node] | None:
    """The same, marked with where the piece stands in the text."""
    pair = _alone(piece, compose)
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
