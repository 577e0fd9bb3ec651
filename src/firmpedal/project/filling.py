"""From the keys of a piece of the file to the fields of a class of the model."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from firmpedal.finding import Problem
from firmpedal.model.fields import Declared, Named, Reads
from firmpedal.project.names import UNKNOWN, choices_text, label_of
from firmpedal.project.tree import Branch, Items, Leaf, Node

if TYPE_CHECKING:
    from pydantic.fields import FieldInfo

    from firmpedal.project.noted import Noted

LISTS = ("accepted",)  # sections whose members have no names
_MAY_BE_UNKNOWN = ("measure", "position", "direction", "shape", "text")


def filled(notes: Noted, cls: type[Declared], keys: dict[str, str], node: Node) -> dict[str, Any]:
    """Give each field its piece: known keys by name, free keys together, stand-ins for the rest.

    A key that has to be there and is not stays out, so that the model refuses the thing.
    """
    if not isinstance(node, Branch):
        label = label_of(node.path)
        empty = isinstance(node, Leaf) and not node.text
        message = f"nothing is written under {label}" if empty else f"{label} should be keys and values"
        raise notes.unreadable(node, message, "write its keys under it, or take it out" if empty else "")
    found, meant = _by_field(notes, cls, keys, node)
    found["written"] = frozenset(found)
    found["place"] = node.path
    if issubclass(cls, Named):
        found["name"] = node.path.rsplit(".", 1)[-1]
    for key, name in keys.items():
        info = cls.model_fields[name]
        if name in found or not info.is_required():
            continue
        if _has_to_be_there(info):
            if key not in meant:
                _missing(notes, node, key, info)
        else:
            found[name] = _stand_in(info.annotation, node, f"{node.path}.{key}" if node.path else key)
    return found


def _by_field(
    notes: Noted, cls: type[Declared], keys: dict[str, str], node: Branch
) -> tuple[dict[str, Any], set[str]]:
    found: dict[str, Any] = {}
    free: dict[str, Node] = {}
    meant: set[str] = set()
    for key, value in node.entries.items():
        if key in keys and keys[key] != cls.free_keys:
            found[keys[key]] = value
        elif cls.free_keys:
            free[key] = value
        else:
            meant.add(notes.unknown_key(node, key, keys))
    if free:
        found[cls.free_keys] = Branch(free, node.keys, node.span, node.path)
    return found, meant


def _marker(info: FieldInfo) -> Reads | None:
    return next((item for item in info.metadata if isinstance(item, Reads)), None)


def _has_to_be_there(info: FieldInfo) -> bool:
    marker = _marker(info)
    if marker is not None:
        return not marker.optional
    inner = info.annotation
    if isinstance(inner, type) and issubclass(inner, Declared):
        own = [field for name, field in inner.model_fields.items() if name not in ("place", "written")]
        return any(field.is_required() and _has_to_be_there(field) for field in own)
    return True


def _missing(notes: Noted, node: Branch, key: str, info: FieldInfo) -> None:
    message = f"{label_of(node.path) or 'the file'} has no `{key}`"
    marker = _marker(info)
    suggestion = f"add a line `{key}: ...`"
    if marker is not None and marker.method in _MAY_BE_UNKNOWN:
        suggestion += f", or `{key}: {UNKNOWN}`"
    elif marker is not None and marker.choices is not None:
        suggestion += "; " + choices_text(list(marker.choices))
    notes.problems.append(Problem(notes.spans.nearest(node.path), message, suggestion=suggestion))


def _stand_in(annotation: Any, node: Branch, path: str) -> Any:
    """What stands for a field that the builder left out: nothing with keys, or the word unknown."""
    if isinstance(annotation, type) and issubclass(annotation, Declared):
        return Branch({}, {}, node.span, path)
    return Leaf(UNKNOWN, node.span, path)


def children(notes: Noted, node: Node) -> list[Node]:
    """The members of a section: things with names, or in a few sections a plain list."""
    label = label_of(node.path)
    if isinstance(node, Leaf) and not node.text:
        raise notes.unreadable(node, f"nothing is written under {label}", "take the line out, or fill it")
    if node.path in LISTS:
        if isinstance(node, Items):
            return list(node.nodes)
        raise notes.unreadable(node, f"{label} should be a list: each member starts with a dash")
    if not isinstance(node, Branch):
        raise notes.unreadable(node, f"{label} should be things with names, each with its own keys")
    for key in node.entries:
        if "." in key:
            message = f"the name `{key}` has a dot in it; a dot joins a thing and its port"
            notes.problems.append(Problem(node.keys.get(key, node.span), message, key))
    return list(node.entries.values())
