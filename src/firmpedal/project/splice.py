"""Other words in the place of some of a builder's text; the remark at the line's end keeps its column.

How remarks stand under each other is the builder's own work. So one gives way only where the words before
it need its place, no further than they need, and no other line is touched.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from ruamel.yaml.nodes import CollectionNode, ScalarNode

from firmpedal.project.layout import compose

if TYPE_CHECKING:
    from ruamel.yaml.nodes import Node as YamlNode

APART = 2  # blanks before a remark that had to give way, if it had as many before

_LINE_END = re.compile(r"\r\n|\r|\n")
_MAY_BEGIN = re.compile(r"(?<=\s)#")  # a remark, or letters of a text in quotes


def spliced(text: str, start: int, finish: int, words: str) -> str:
    """Put words in the place of what stands from `start` up to `finish`.

    Args:
        text: The builder's text.
        start: Letters before the place.
        finish: Letters before what stays behind it.
        words: What is to stand there; nothing, or more lines than one, too.
    """
    after = text[:start] + words + text[finish:]
    remark = _remark(text, finish)
    if remark is None or text[remark - 1] != " " or "\t" in text[line_start(text, remark) : remark]:
        return after  # what stands behind a tab has no column
    gap = remark - len(text[:remark].rstrip(" "))
    column, moved = remark - line_start(text, remark), len(after) - len(text)
    return _at_column(after, remark + moved, column, min(gap, APART))


def _at_column(text: str, remark: int, column: int, apart: int) -> str:
    """Move a remark to a column by the blanks before it; so far apart, where the words reach that column."""
    begins = line_start(text, remark)
    end = begins + len(text[begins:remark].rstrip(" "))
    room = column - (end - begins)
    return text[:end] + " " * (room if room > 0 else apart) + text[remark:]


def _remark(text: str, at: int) -> int | None:
    """Where the remark begins that ends the line of a place, at or behind it."""
    may = [found.start() for found in _MAY_BEGIN.finditer(text[: line_end(text, at)], max(at - 1, 0))]
    may = [each for each in may if each >= at]
    if not may:
        return None
    root, _ = compose(text, "text")
    quoted = [] if root is None else _quoted(root)
    return next((each for each in may if not any(a <= each < b for a, b in quoted)), None)


def _quoted(root: YamlNode) -> list[tuple[int, int]]:
    """Where every text in quotes, or in lines of its own, begins and ends."""
    found, seen, left = [], set(), [root]
    while left:
        node = left.pop()
        if id(node) in seen:  # an alias gives a node once more
            continue
        seen.add(id(node))
        if isinstance(node, ScalarNode) and node.style is not None:
            found.append((node.start_mark.index, node.end_mark.index))
        elif isinstance(node, CollectionNode):
            left += [one for each in node.value for one in (each if isinstance(each, tuple) else (each,))]
    return found


def line_start(text: str, at: int) -> int:
    return max(text.rfind("\n", 0, at), text.rfind("\r", 0, at)) + 1


def line_end(text: str, at: int) -> int:
    found = _LINE_END.search(text, at)
    return found.end() if found else len(text)


def new_line(text: str) -> str:
    """How lines end in a text."""
    found = _LINE_END.search(text)
    return found[0] if found else "\n"
