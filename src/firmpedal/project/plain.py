"""A tree written as plain YAML, short things in one line."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from firmpedal.project.tree import Branch, Items, Leaf, Node

if TYPE_CHECKING:
    from collections.abc import Iterator

WIDEST = 100

_SAFE = re.compile(r"(?:[A-Za-z0-9_]|[+-](?=[\d./])|\.(?=\d))[A-Za-z0-9_ .+/'\"()-]*")
_NOT_PLAIN = ("null", "Null", "NULL")
_ESCAPES = {'"': '\\"', "\\": "\\\\", "\n": "\\n"}


def text_of(tree: Branch) -> str:
    """Write keys under each other, each section apart from the next."""
    lines: list[str] = []
    for key, node in tree.entries.items():
        shallow = any(isinstance(item, Branch) for item in _inner(node))
        entry = list(_entry(key, node, 0, in_one=not shallow))
        if len(entry) > 1 and lines:
            lines.append("")
        lines += entry
    return "".join(f"{line}\n" for line in lines)


def lines_of(tree: Branch, indent: int = 0) -> list[str]:
    """Keys on lines of their own, each in one line where it is short enough for that."""
    return [line for key, node in tree.entries.items() for line in _entry(key, node, indent)]


def entry_of(key: str, node: Node) -> list[str]:
    """A thing with what stands under it on lines of its own; a value in one line where it is short enough."""
    return list(_entry(key, node, 0, in_one=not isinstance(node, Branch)))


def _entry(key: str, node: Node, indent: int, *, in_one: bool = True) -> Iterator[str]:
    start = " " * indent + quoted_if_needed(key) + ":"
    line = f"{start} {flow(node)}"
    if isinstance(node, Leaf) or not _inner(node) or (in_one and len(line) <= WIDEST):
        yield line
        return
    yield start
    if isinstance(node, Branch):
        yield from lines_of(node, indent + 2)
    else:
        yield from (" " * (indent + 2) + "- " + flow(item) for item in _inner(node))


def _inner(node: Node) -> list[Node]:
    if isinstance(node, Branch):
        return list(node.entries.values())
    return list(node.nodes) if isinstance(node, Items) else []


def flow(node: Node) -> str:
    """Write a piece in one line."""
    if isinstance(node, Branch):
        inner = (f"{quoted_if_needed(key)}: {flow(item)}" for key, item in node.entries.items())
        return "{" + ", ".join(inner) + "}"
    if isinstance(node, Items):
        return "[" + ", ".join(map(flow, node.nodes)) + "]"
    return quoted_if_needed(node.text) if isinstance(node, Leaf) else "unknown"


def quoted_if_needed(text: str) -> str:
    """Put quotes round a text that YAML would take for something else."""
    if _SAFE.fullmatch(text) and text == text.strip() and text not in _NOT_PLAIN:
        return text
    return in_quotes(text)


def in_quotes(text: str) -> str:
    """Write a text in double quotes, with what cannot be seen as its number."""
    return '"' + "".join(_ESCAPES.get(letter) or _seen(letter) for letter in text) + '"'


def _seen(letter: str) -> str:
    if letter.isprintable():
        return letter
    number = ord(letter)
    return f"\\u{number:04x}" if number < 0x10000 else f"\\U{number:08x}"
