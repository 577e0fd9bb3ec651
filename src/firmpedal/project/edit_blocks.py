"""Putting a thing with a name at the end of keys of a builder's text, on lines of its own.

Keys that are not there are begun, and keys that stand in braces on the way there are laid out in lines first.
Remarks stay: braces with a remark in them, or with what is shared with another place, are left alone.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from ruamel.yaml.nodes import MappingNode, ScalarNode

from firmpedal.project.edit import EditError, composed
from firmpedal.project.edit_lists import real_end
from firmpedal.project.grow import load_text
from firmpedal.project.locate import Located, locate
from firmpedal.project.notes import Notes
from firmpedal.project.plain import lines_of, quoted_if_needed
from firmpedal.project.said import said_by
from firmpedal.project.splice import line_end, line_start, new_line
from firmpedal.project.tree import Branch, at

if TYPE_CHECKING:
    from collections.abc import Sequence

STEP = "  "
_SHARED_OR_SAID = re.compile(r"[&*](?=\w)|<<|(?<=\s)#")  # what cannot be laid out anew without loss


@dataclass(frozen=True, slots=True)
class _Gap:
    """Where lines go: after `at`, in place of what stands up to `until`, so many blanks in."""

    at: int
    until: int
    indent: str


def with_lines(text: str, steps: Sequence[str], lines: Sequence[str]) -> str:
    """Put lines at the end of the keys that the steps lead to.

    Args:
        text: The builder's text.
        steps: Such as `options`, `braided`, `lines`; what is not there is begun.
        lines: A key with what stands under it, not indented.

    Raises:
        EditError: What stands there has no keys, or cannot be laid out in lines without touching more.
    """
    for number in range(1, len(steps) + 1):
        found = locate(composed(text), list(steps[:number]))
        if found is None:
            missing = steps[number - 1 :]
            begun = [STEP * n + quoted_if_needed(step) + ":" for n, step in enumerate(missing)]
            return _put(text, steps[: number - 1], [*begun, *(STEP * len(missing) + line for line in lines)])
        text = _in_lines(text, found)
    return _put(text, steps, lines)


def _put(text: str, steps: Sequence[str], lines: Sequence[str]) -> str:
    end = new_line(text)
    if not steps:
        head = text if not text or text.endswith(("\n", "\r")) else text + end
        return head + end + "".join(line + end for line in lines)
    found = locate(composed(text), list(steps))
    if found is None:  # it was there just now
        raise EditError(f"{steps[-1]} is not written by itself", "write it out by hand, in the text")
    gap = _gap(text, found)
    body = end.join(gap.indent + line if line else line for line in lines)
    before, after = text[: gap.at], text[gap.until :]
    closed = before.endswith(("\n", "\r"))
    return before + (body + end if closed else end + body) + after


def _gap(text: str, found: Located) -> _Gap:
    """Under what is there; or under the key itself, where nothing stands behind it but a remark."""
    node = found.node
    if isinstance(node, MappingNode) and node.value:
        key_at = node.value[0][0].start_mark.index
        at_ = line_end(text, real_end(node))
        return _Gap(at_, at_, text[line_start(text, key_at) : key_at])
    at_ = line_end(text, found.key_end - 1)
    start = line_start(text, found.key_end - 1)
    own = text[start : found.key_end]
    return _Gap(at_, at_, own[: len(own) - len(own.lstrip())] + STEP)


def _in_lines(text: str, found: Located) -> str:
    """The same with the keys of one thing on lines of their own, if they are not; none where it is empty."""
    node, name = found.node, found.steps[-1]
    by_hand = EditError(f"{name} is not laid out in lines", "write it out by hand, in the text")
    if found.shared or node.anchor is not None:
        raise by_hand
    if isinstance(node, ScalarNode) and not str(node.value).strip("~") and node.style is None:
        return text  # a key with nothing behind it
    if not isinstance(node, MappingNode):
        raise by_hand
    if not node.flow_style:
        return text
    start, finish = node.start_mark.index, node.end_mark.index
    if not node.value:
        return text[:start].rstrip(" ") + text[finish:]
    key_line = line_start(text, found.key_end - 1)
    tree = at(load_text(text, "text", Notes()), *found.steps)
    if _SHARED_OR_SAID.search(text[start:finish]) or not isinstance(tree, Branch):
        raise by_hand
    indent = " " * (len(text[key_line:start]) - len(text[key_line:start].lstrip())) + STEP
    body = "".join(new_line(text) + indent + line for line in lines_of(tree))
    rest = line_end(text, finish)  # a remark behind the braces stays beside the name
    after = (
        text[:start].rstrip(" ")
        + _beside(text[finish:rest])
        + body
        + _ending(text[finish:rest])
        + text[rest:]
    )
    if said_by(after) != said_by(text):
        raise by_hand
    return after


def _beside(rest: str) -> str:
    return rest.rstrip("\r\n")


def _ending(rest: str) -> str:
    return rest[len(_beside(rest)) :]
