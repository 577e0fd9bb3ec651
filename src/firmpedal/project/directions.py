"""Directions: which way a port faces, a hole is drilled, a thing turns."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.model.fields import Reads
from firmpedal.model.space import Direction
from firmpedal.project.measures import marked, measure
from firmpedal.project.names import label_of, quoted
from firmpedal.project.points import AXES, suggest_way
from firmpedal.project.tree import UNKNOWN, Branch, Items, Leaf, Node, is_empty
from firmpedal.quantity import Mark, Missing, Value
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.model.space import Point
    from firmpedal.project.context import Context

_NUMBER = Reads("measure", Dimension.NUMBER)
_WAYS = "write a word such as forward, `aft and down`, or a vector [1, 0, -1], or unknown"


def direction(context: Context, node: Node) -> Direction:
    """Read `forward`, `aft and down`, [1, 0, -1], {value: forward, mark: assumed} or unknown."""
    if isinstance(node, Branch) and "value" in node.entries:
        inner = direction(context, replace(node.entries["value"], path=node.path))
        mark = max(inner.mark, marked(context, node, Mark.READ))
        return Direction(inner.vector, node.path, mark, inner.missing)
    vector, mark = _vector(context, node)
    if vector is None or (length := math.hypot(*vector)) == 0.0:
        missing = Missing(node.path, f"the direction of {label_of(node.path)}")
        return Direction(None, node.path, missing=(missing,))
    return Direction((vector[0] / length, vector[1] / length, vector[2] / length), node.path, mark)


def _vector(context: Context, node: Node) -> tuple[Point | None, Mark]:
    if isinstance(node, Leaf):
        return _from_words(context, node), Mark.MEASURED
    if isinstance(node, Items) and len(node.nodes) == 3:
        values = [measure(context, leaf, _NUMBER) for leaf in node.nodes]
        return _from_numbers(context, node, values), max(value.mark for value in values)
    if isinstance(node, Items | Branch):
        context.notes.note(node, f"{label_of(node.path)} should be a direction", _WAYS)
    return None, Mark.MEASURED


def _from_numbers(context: Context, node: Items, values: list[Value]) -> Point | None:
    if not all(value.known for value in values):
        return None
    vector = (values[0].middle, values[1].middle, values[2].middle)
    if not any(vector):
        context.notes.note(node, f"{label_of(node.path)} points nowhere: all three are nothing", _WAYS)
    return vector


def _from_words(context: Context, node: Leaf) -> Point | None:
    if is_empty(node):
        context.nothing(node, _WAYS)
    if node.text in (UNKNOWN, ""):
        return None
    vector = [0.0, 0.0, 0.0]
    for word in node.text.replace(",", " ").split():
        if word == "and":
            continue
        if word not in AXES:
            context.notes.note(node, f"{quoted(word)} is not a direction", suggest_way(word))
            return None
        axis, sign = AXES[word]
        vector[axis] += sign
    if not any(vector):
        context.notes.note(node, f"{quoted(node.text)} points nowhere", _WAYS)
    return (vector[0], vector[1], vector[2])
