"""Points and directions as text, mirrored, shifted and hung on other names."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.project.names import suggest
from firmpedal.project.signs import negated
from firmpedal.project.tree import UNKNOWN, Branch, Items, Leaf, Node

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.project.copying import Copying

AXES = {"aft": (0, 1), "forward": (0, -1), "right": (1, 1), "left": (1, -1), "up": (2, 1), "down": (2, -1)}
MIRROR_OF = "mirror of"

# What people write besides, by the word that is meant.
_SAID_ALSO = {
    "forward": ("front", "fore", "ahead", "nose", "frontward"),
    "aft": ("back", "rear", "rearward", "backward", "astern", "tail", "tailward"),
    "right": ("starboard",),
    "left": ("port",),
    "up": ("top", "upward", "above", "over"),
    "down": ("bottom", "downward", "below", "under"),
}
_MEANT = {word: way for way, words in _SAID_ALSO.items() for word in words}
_BY_SIDE = {
    "write `right` for what is on the left side, `left` for what is on the right": (
        "in",
        "inboard",
        "inward",
        "inside",
    ),
    "write `left` for what is on the left side, `right` for what is on the right": (
        "out",
        "outboard",
        "outward",
        "outside",
    ),
}
_HINTS = {word: hint for hint, words in _BY_SIDE.items() for word in words}

_OTHER_SIDE = {"right": "left", "left": "right"}
_TURNING_BACK = {"aft": "forward", "forward": "aft", "up": "down", "down": "up"}


def suggest_way(word: str) -> str:
    """Name the way that is meant by a word that is none of the file's."""
    plain = word.lower()
    plain = plain if plain in AXES or plain in _MEANT or plain in _HINTS else plain.removesuffix("s")
    if plain in _HINTS:
        return _HINTS[plain]
    way = _MEANT.get(plain)
    return f"write `{way}`" if way else suggest(word, AXES)


def copied_point(node: Node, how: Copying) -> Node:
    """Rename what a point hangs on, mirror it, and move it.

    A chain that now hangs on another place moves with that place, which may be shifted itself; so only
    points given in numbers, or hung on the same place as before, are shifted.
    """
    moved = _mirrored(node, how) if how.mirror else _renamed(node, how)
    shift = how.shift
    if shift is None or not shift.entries or not _is_somewhere(moved) or _hangs_elsewhere(node, how):
        return moved
    return Branch({"from": moved, **shift.entries}, {"from": node.span, **shift.keys}, node.span)


def _hangs_elsewhere(node: Node, how: Copying) -> bool:
    """Whether the place that a chain starts from has another name in the copy."""
    for key in ("value", MIRROR_OF, "from"):
        if isinstance(node, Branch) and key in node.entries:
            return _hangs_elsewhere(node.entries[key], how)
    return isinstance(node, Leaf) and how.rename(node.text) != node.text


def _is_somewhere(node: Node) -> bool:
    """A point that is unknown stays unknown wherever it is shifted."""
    return isinstance(node, Items | Branch) or (isinstance(node, Leaf) and node.text not in (UNKNOWN, ""))


def _renamed(node: Node, how: Copying) -> Node:
    if isinstance(node, Leaf):
        return replace(node, text=how.rename(node.text))
    if not isinstance(node, Branch):
        return node
    entries = dict(node.entries)
    for key in ("from", "value", MIRROR_OF):
        if key in entries:
            entries[key] = _renamed(entries[key], how)
    return replace(node, entries=entries)


def _mirrored(node: Node, how: Copying) -> Node:
    if isinstance(node, Items):
        return negated_at(node, (1,))
    if isinstance(node, Branch):
        return _mirrored_branch(node, how)
    if not isinstance(node, Leaf) or not _is_somewhere(node):
        return node
    other = how.rename(node.text)
    if other != node.text:
        return replace(node, text=other)
    return Branch({MIRROR_OF: node}, {MIRROR_OF: node.span}, node.span)


def _mirrored_branch(node: Branch, how: Copying) -> Node:
    if MIRROR_OF in node.entries:
        return node.entries[MIRROR_OF]
    entries: dict[str, Node] = {}
    keys = {_OTHER_SIDE.get(key, key): span for key, span in node.keys.items()}
    for key, item in node.entries.items():
        inner = key in ("from", "value")
        entries[_OTHER_SIDE.get(key, key)] = _mirrored(item, how) if inner else item
    return replace(node, entries=entries, keys=keys)


def negated_at(node: Items, places: tuple[int, ...]) -> Items:
    """Turn the sign of some numbers of a list round."""
    nodes = tuple(negated_number(item) if n in places else item for n, item in enumerate(node.nodes))
    return replace(node, nodes=nodes)


def negated_number(node: Node) -> Node:
    if isinstance(node, Leaf):
        return replace(node, text=negated(node.text))
    return inside_value(node, negated_number)


def mirrored_plane(node: Node) -> Node:
    """A plane seen in the mirror: its number, or {from: -5, right: 3} with left for right."""
    if not isinstance(node, Branch) or "from" not in node.entries:
        return negated_number(node)
    entries = {_OTHER_SIDE.get(key, key): item for key, item in node.entries.items()}
    keys = {_OTHER_SIDE.get(key, key): span for key, span in node.keys.items()}
    return replace(node, entries={**entries, "from": mirrored_plane(entries["from"])}, keys=keys)


def inside_value(node: Node, change: Callable[[Node], Node]) -> Node:
    """Change what stands behind `value` in {value: ..., mark: ...}."""
    if not isinstance(node, Branch) or "value" not in node.entries:
        return node
    return replace(node, entries={**node.entries, "value": change(node.entries["value"])})


def mirrored_direction(node: Node) -> Node:
    """A direction seen in the mirror: left for right."""
    if isinstance(node, Leaf):
        return replace(node, text=_words(node.text, _OTHER_SIDE))
    if isinstance(node, Items):
        return negated_at(node, (1,))
    return inside_value(node, mirrored_direction)


def mirrored_axis(node: Node) -> Node:
    """A turning axis seen in the mirror: unlike a direction it keeps left and right and turns the others."""
    if isinstance(node, Leaf):
        return replace(node, text=_words(node.text, _TURNING_BACK))
    if isinstance(node, Items):
        return negated_at(node, (0, 2))
    return inside_value(node, mirrored_axis)


def _words(text: str, other: dict[str, str]) -> str:
    return " ".join(other.get(word, word) for word in text.split())
