"""Where a value stands in the text, or why it stands nowhere by itself."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from ruamel.yaml.nodes import MappingNode, ScalarNode, SequenceNode

from firmpedal.project.names import near_miss, quoted
from firmpedal.project.read import read_text
from firmpedal.project.tree import Items, Node, at, children

if TYPE_CHECKING:
    from ruamel.yaml.nodes import Node as YamlNode

    from firmpedal.project.tree import Branch


@dataclass(frozen=True, slots=True)
class Located:
    """A value in the text: its node, where the key before it ends, and whether others share it."""

    node: YamlNode
    key_end: int
    shared: bool
    steps: tuple[str, ...]


def locate(root: YamlNode, steps: list[str]) -> Located | None:
    """Walk down by keys and by the numbers of lists; None where nothing is written."""
    node, key_end, shared = root, 0, False
    for step in steps:
        found = _step(node, step)
        if found is None:
            return None
        node, key_end = found
        # What stands before its own key is written elsewhere and only named here.
        shared = shared or node.anchor is not None or node.start_mark.index < key_end
    return Located(node, key_end, shared, tuple(steps))


def _step(node: YamlNode, step: str) -> tuple[YamlNode, int] | None:
    if isinstance(node, MappingNode):
        for key, value in node.value:
            if isinstance(key, ScalarNode) and " ".join(str(key.value).split()) == step:
                return value, key.end_mark.index + 1
        return None
    if isinstance(node, SequenceNode) and step.isdecimal() and 1 <= int(step) <= len(node.value):
        return node.value[int(step) - 1], node.start_mark.index
    return None


def no_place(text: str, root: YamlNode, path: str, option: str | None) -> tuple[str, str]:
    """Say why a value cannot be changed: it is copied, belongs to an option or to all, or is not there."""
    if option is not None and locate(root, path.split(".")) is not None:
        message = f"{path} stands in the aircraft as written, and holds for every option"
        return message, "change it without an option, or write it out under this one"
    tree = read_text(text, "text", option).tree
    node = None if tree is None else walked(tree, path)
    if node is not None and node.via is not None:
        message = f"{path} is not written by itself: it comes from line {node.span.line}"
        return message, "change it there, or write it out for this one"
    for name in _options(root):
        if option is None and locate(root, ["options", name, *path.split(".")]) is not None:
            return f"{path} stands in option {quoted(name)} only", f"change it in option {name}"
    return _not_there(tree, path)


def _not_there(tree: Branch | None, path: str) -> tuple[str, str]:
    steps = path.split(".")
    known: list[str] = []
    for number, step in enumerate(steps):
        around = None if tree is None else walked(tree, ".".join(steps[:number]))
        known = list(getattr(around, "entries", {}))
        if step not in known:
            close = near_miss(step, known)
            where = " ".join(steps[:number]) or "the file"
            advice = f"did you mean `{close}`?" if close else "write it out first"
            return f"{quoted(step)} is not written under {where}", advice
    return f"{path} is not written by itself", "write it out first"


def _options(root: YamlNode) -> list[str]:
    found = locate(root, ["options"])
    pairs = found.node.value if found is not None and isinstance(found.node, MappingNode) else []
    return [str(key.value) for key, _ in pairs if isinstance(key, ScalarNode)]


def walked(tree: Node, path: str) -> Node | None:
    """The piece of a tree at an object path."""
    node: Node | None = tree
    for step in path.split(".") if path else ():
        if isinstance(node, Items):
            inner = children(node)
            node = inner[int(step) - 1] if step.isdecimal() and 0 < int(step) <= len(inner) else None
        else:
            node = at(node, step)
    return node
