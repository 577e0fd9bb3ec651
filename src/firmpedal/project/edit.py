"""Changing one value of a builder's text at its own place, and not a letter besides."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ruamel.yaml import YAML
from ruamel.yaml.nodes import MappingNode, ScalarNode, SequenceNode

from firmpedal.project.names import closest, suggest
from firmpedal.project.text import load_text
from firmpedal.project.tree import Branch, Items, Leaf, Node

if TYPE_CHECKING:
    from ruamel.yaml.nodes import Node as YamlNode


class EditError(ValueError):
    """A value that cannot be changed where it was asked for; `suggestion` says what may be meant."""

    def __init__(self, message: str, suggestion: str = "") -> None:
        super().__init__(message)
        self.suggestion = suggestion


def edited(text: str, path: str, new_text: str) -> str:
    """Put another value in the place of one that is written in a text.

    Args:
        text: The builder's text.
        path: The object path, such as `lines.left_leg.via.2` or `options.rigid.bench.bend radius`.
        new_text: What is to stand there, in one line.

    Raises:
        EditError: Nothing is written there, or it cannot be replaced without touching anything else.
    """
    before, problems = load_text(text, "text")
    if before is None or problems:
        raise EditError("a text that cannot be read cannot be changed: " + problems[0].message)
    start, finish = _place(YAML(typ="safe", pure=True).compose(text), text, path)
    if not new_text.strip() or len(new_text.splitlines()) != 1:
        raise EditError(f"what stands at `{path}` can be changed to a value in one line")
    gap = " " if start == finish else ""
    result = text[:start] + gap + new_text.strip() + text[finish:]
    after, problems = load_text(result, "text")
    if after is None or problems or not _same_but(before, after, path.split(".")):
        raise EditError(f"`{new_text}` cannot stand as a value at `{path}`", 'put it in quotes: "..."')
    return result


def _place(root: YamlNode, text: str, path: str) -> tuple[int, int]:
    """Find from which letter to which a value stands."""
    node, key_end = root, 0
    walked: list[str] = []
    for step in path.split("."):
        node, key_end = _step(node, step, walked)
        walked.append(step)
        if node.start_mark.index < key_end or text[node.start_mark.index : node.start_mark.index + 1] == "&":
            raise EditError(
                f"`{'.'.join(walked)}` is shared with another place by an anchor (&) or alias (*)"
            )
    start, finish = node.start_mark.index, node.end_mark.index
    if isinstance(node, ScalarNode) and not node.value and node.style is None:
        return key_end, key_end
    if (isinstance(node, ScalarNode) and node.style in ("|", ">")) or "\n" in text[start:finish]:
        raise EditError(f"`{path}` takes more than one line; change one value inside it")
    return start, finish


def _step(node: YamlNode, step: str, walked: list[str]) -> tuple[YamlNode, int]:
    """Go one key or one number of a list down; gives also where the text before the value ends."""
    here = ".".join(walked) or "the file"
    if isinstance(node, MappingNode):
        for key, value in node.value:
            if isinstance(key, ScalarNode) and key.value == step:
                return value, key.end_mark.index + 1
        keys = [key.value for key, _ in node.value if isinstance(key, ScalarNode)]
        message = f"`{step}` is not written under {here}; what is copied or mirrored is changed at its source"
        raise EditError(message, suggest(step, keys) if closest(step, keys) else "or write it out first")
    if isinstance(node, SequenceNode) and step.isdecimal() and 1 <= int(step) <= len(node.value):
        return node.value[int(step) - 1], node.start_mark.index + 1
    if isinstance(node, SequenceNode):
        raise EditError(f"{here} is a list of {len(node.value)}; its members count from 1")
    raise EditError(f"{here} is one value; nothing is written under it")


def _same_but(one: Node | None, other: Node | None, path: list[str]) -> bool:
    """Say whether two trees say the same but for what stands at a path."""
    if not path:
        return one is not None and other is not None
    if isinstance(one, Items) and isinstance(other, Items):
        if len(one.nodes) != len(other.nodes):
            return False
        pairs = [(str(n), *both) for n, both in enumerate(zip(one.nodes, other.nodes, strict=True), 1)]
    elif isinstance(one, Branch) and isinstance(other, Branch):
        if list(one.entries) != list(other.entries):
            return False
        pairs = [(key, each, other.entries[key]) for key, each in one.entries.items()]
    else:
        return False
    return all(
        _same_but(left, right, path[1:]) if key == path[0] else _said(left) == _said(right)
        for key, left, right in pairs
    )


def _said(node: Node) -> object:
    if isinstance(node, Leaf):
        return node.text
    if isinstance(node, Items):
        return [_said(each) for each in node.nodes]
    return {key: _said(each) for key, each in node.entries.items()}
