"""What a text says, whatever it looks like: to see that an edit changed one thing and nothing besides."""

from __future__ import annotations

from functools import lru_cache

from firmpedal.hashing import Same
from firmpedal.project.grow import REMEMBERED_TO, load_text
from firmpedal.project.notes import Notes
from firmpedal.project.tree import Branch, Items, Node, word_of

Said = str | list["Said"] | dict[str, "Said"]


@lru_cache(maxsize=8)  # what comes out of one change is what the next begins with; nobody changes it
def said_by(text: str) -> Said | None:
    """Give what a text says as plain lists and keys; None where it cannot be read."""
    tree = load_text(text, "text", Notes())
    return None if tree is None else _said(tree)


def said_of(node: Node) -> Said:
    """What a piece of a tree says as plain lists and keys."""
    return _said(node)


def _said(node: Node, depth: int = 0) -> Said:
    if isinstance(node, Branch):
        remembers = 0 < depth <= REMEMBERED_TO
        return _said_by_thing(Same(node), depth) if remembers else _said_by_keys(node, depth)
    if isinstance(node, Items):
        return [_said(item, depth + 1) for item in node.nodes]
    return word_of(node)


def _said_by_keys(branch: Branch, depth: int) -> Said:
    return {key: _said(item, depth + 1) for key, item in branch.entries.items()}


@lru_cache(maxsize=1024)
def _said_by_thing(thing: Same[Branch], depth: int) -> Said:
    return _said_by_keys(thing.thing, depth)


def at_place(said: Said, steps: tuple[str, ...]) -> Said | None:
    """What is said at one place; None where nothing is."""
    for step in steps:
        if isinstance(said, dict) and step in said:
            said = said[step]
        elif isinstance(said, list) and step.isdecimal() and 0 < int(step) <= len(said):
            said = said[int(step) - 1]
        else:
            return None
    return said


def with_another(said: Said, steps: tuple[str, ...], wanted: Said) -> Said:
    """The same with another value at one place; the last key may be a new one."""
    if not steps:
        return wanted
    if isinstance(said, dict):
        head, rest = steps[0], steps[1:]
        if head not in said:
            return said if rest else {**said, head: wanted}
        return {key: with_another(item, rest, wanted) if key == head else item for key, item in said.items()}
    if isinstance(said, list):
        place = int(steps[0]) - 1
        return [with_another(item, steps[1:], wanted) if n == place else item for n, item in enumerate(said)]
    return said


def without_place(said: Said, steps: tuple[str, ...]) -> Said:
    """The same without the key that the steps lead to."""
    if not steps:
        return said
    if isinstance(said, list):
        place = int(steps[0]) - 1
        return [without_place(item, steps[1:]) if n == place else item for n, item in enumerate(said)]
    if not isinstance(said, dict):
        return said
    if len(steps) == 1:
        return {key: item for key, item in said.items() if key != steps[0]}
    return {key: without_place(item, steps[1:]) if key == steps[0] else item for key, item in said.items()}
