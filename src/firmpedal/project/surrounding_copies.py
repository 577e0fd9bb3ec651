"""Movements and zones as text, mirrored and shifted."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.project.points import (
    AXES,
    copied_point,
    inside_value,
    mirrored_axis,
    mirrored_direction,
    mirrored_plane,
    negated_at,
)
from firmpedal.project.signs import negated_swing
from firmpedal.project.tree import UNKNOWN, Branch, Items, Leaf, Node

if TYPE_CHECKING:
    from firmpedal.project.copying import Copying

_BEYOND = {"right above": "right below", "right below": "right above"}


def copied_motion(node: Node, state: str, how: Copying) -> Node:
    """Copy what a state does to a thing: a vector, a swing, or one of them for each named position."""
    if isinstance(node, Branch) and "about" in node.entries:
        return _swing(node, how, opposite=how.mirror and state in how.opposite)
    if isinstance(node, Branch):
        entries = {key: copied_motion(item, state, how) for key, item in node.entries.items()}
        return replace(node, entries=entries)
    if isinstance(node, Items) and how.mirror:
        # Mirrored, right turns round; and where the movement is opposite, everything turns round again.
        return negated_at(node, (0, 2) if state in how.opposite else (1,))
    return node


def _swing(node: Branch, how: Copying, *, opposite: bool) -> Node:
    entries = dict(node.entries)
    entries["about"] = copied_point(entries["about"], how)
    if how.mirror and "axis" in entries:
        entries["axis"] = mirrored_axis(entries["axis"])
    if opposite and "swing" in entries:
        entries["swing"] = _negated_swing(entries["swing"])
    return replace(node, entries=entries)


def _negated_swing(node: Node) -> Node:
    if isinstance(node, Leaf):
        return replace(node, text=negated_swing(node.text))
    return inside_value(node, _negated_swing)


def copied_shape(node: Node, how: Copying) -> Node:
    """Copy where a zone is."""
    if not isinstance(node, Branch):
        return node
    entries: dict[str, Node] = {}
    keys = dict(node.keys)
    for key, item in node.entries.items():
        name = _BEYOND.get(key, key) if how.mirror else key
        entries[name] = _one_shape(key, item, how)
        keys[name] = node.key_span(key)
    return replace(node, entries=entries, keys=keys)


def _one_shape(key: str, node: Node, how: Copying) -> Node:
    if key in ("ball", "disc"):
        return copied_point(node, how)
    if key == "axis":
        return mirrored_direction(node) if how.mirror else node
    if key in ("box", "bar", "within") and isinstance(node, Items):
        return replace(node, nodes=tuple(copied_point(item, how) for item in node.nodes))
    if key == "line" and isinstance(node, Leaf):
        return replace(node, text=how.rename(node.text))
    way, _, side = key.partition(" ")
    if way in AXES and side in ("above", "below", ""):
        plane = mirrored_plane(node) if how.mirror and way == "right" else node
        return _shifted_plane(plane, AXES[way][0], how)
    return node


def _shifted_plane(node: Node, axis: int, how: Copying) -> Node:
    """Move a plane across itself: {from: -5, up: 3}."""
    ways = how.shift.entries if how.shift is not None else {}
    steps = {way: item for way, item in ways.items() if AXES[way][0] == axis}
    if not steps or (isinstance(node, Leaf) and node.text == UNKNOWN):
        return node
    return Branch({"from": node, **steps}, dict.fromkeys(("from", *steps), node.span), node.span)
