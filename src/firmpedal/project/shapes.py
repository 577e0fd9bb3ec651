"""Where zones are, as builders write it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.fields import Reads
from firmpedal.model.shapes import Ball, Box, HalfSpace, Stretch, UnknownShape
from firmpedal.model.space import AXIS_NAMES
from firmpedal.project.measures import measure
from firmpedal.project.names import label_of, quoted, suggest
from firmpedal.project.points import AXES
from firmpedal.project.position import COORDINATE, negative
from firmpedal.project.tree import UNKNOWN, Absent, Branch, Items, Leaf, Node, at, is_empty
from firmpedal.project.words import text
from firmpedal.quantity import Missing, total
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.model.shapes import Shape
    from firmpedal.project.context import Context
    from firmpedal.quantity import Value

_SIZE = Reads("measure", Dimension.LENGTH, signed=False, positive=True)
_ALONG = Reads("measure", Dimension.LENGTH, signed=False)
_PLANES = tuple(f"{way} {side}" for way in AXIS_NAMES for side in ("above", "below"))
_WITH = {"radius": "ball", "from": "line", "to": "line"}
_SHAPES = (
    "write {box: [[..], [..]]}, {ball: [..], radius: 5}, {up below: -5}, or {line: a_line, from: 2, to: 9}"
)


def shape(context: Context, node: Node) -> tuple[Shape, ...]:
    """Read where a zone is; several keys together mean the part of space that meets all of them."""
    if not isinstance(node, Branch) or not node.entries:
        return (_no_shape(context, node),)
    found: list[Shape] = []
    for key, item in node.entries.items():
        if key == "box":
            found.append(_box(context, item))
        elif key == "ball":
            found.append(_ball(context, node, item))
        elif key == "line":
            found.append(_stretch(context, node, item))
        elif key in _PLANES:
            found.append(_half_space(context, key, item))
        else:
            _other(context, node, key)
    return tuple(found)


def _no_shape(context: Context, node: Node) -> Shape:
    if is_empty(node):
        context.nothing(node, _SHAPES)
    elif not isinstance(node, Absent) and (not isinstance(node, Leaf) or node.text != UNKNOWN):
        context.notes.note(node, f"{label_of(node.path)} should say a shape", _SHAPES)
    return _unknown(node)


def _unknown(node: Node) -> UnknownShape:
    return UnknownShape((Missing(node.path, f"where {label_of(node.path)} is"),))


def _other(context: Context, node: Branch, key: str) -> None:
    """Note a key that is no shape, or belongs to one that is not there."""
    whole = _WITH.get(key, "")
    if whole in node.entries:
        return
    span, via = node.key_span(key), node.via
    if whole:
        context.notes.note_at(
            span, f"`{key}` goes with `{whole}`, and there is none here", key, _SHAPES, via=via
        )
    else:
        message = f"{quoted(key)} is not a shape"
        known = ["box", "ball", "radius", "line", "from", "to", *_PLANES]
        context.notes.note_at(span, message, key, suggest(key, known), via=via)


def _box(context: Context, node: Node) -> Shape:
    if not isinstance(node, Items):
        return _no_shape(context, node)
    if len(node.nodes) != 2:
        context.notes.note(node, "a box is two opposite corners", _SHAPES)
        return _unknown(node)
    low, high = (context.position(item) for item in node.nodes)
    missing = (*low.missing, *high.missing)
    return UnknownShape(missing) if missing else Box(low, high)


def _ball(context: Context, node: Branch, item: Node) -> Shape:
    centre, radius = context.position(item), at(node, "radius")
    if radius is None:
        context.notes.note(item, "a ball needs a radius", _SHAPES)
        return UnknownShape(centre.missing)
    size = measure(context, radius, _SIZE)
    missing = (*centre.missing, *size.missing)
    return UnknownShape(missing) if missing else Ball(centre, size)


def _half_space(context: Context, key: str, node: Node) -> Shape:
    way, _, side = key.partition(" ")
    offset = plane_offset(context, AXES[way][0], node)
    return (
        HalfSpace(AXES[way][0], 1 if side == "above" else -1, offset)
        if offset.known
        else UnknownShape(offset.missing)
    )


def plane_offset(context: Context, axis: int, node: Node) -> Value:
    """Read where a plane is: a number, or one moved by others as in {from: -5, up: 3}."""
    if not isinstance(node, Branch) or "from" not in node.entries:
        return measure(context, node, COORDINATE)
    offset = plane_offset(context, axis, node.entries["from"])
    ways = {way: sign for way, (which, sign) in AXES.items() if which == axis}
    for key, item in node.entries.items():
        if key in ways:
            step = measure(context, item, COORDINATE)
            offset = total(
                label_of(node.path), (offset, step if ways[key] > 0 else negative(step)), node.path
            )
        elif key != "from":
            message = f"{quoted(key)} is not a way this plane can be moved"
            context.notes.note_at(node.key_span(key), message, key, suggest(key, ways), via=node.via)
    return offset


def _stretch(context: Context, node: Branch, item: Node) -> Shape:
    start, finish = at(node, "from"), at(node, "to")
    line = text(context, item)
    if start is None or finish is None:
        context.notes.note(item, "a stretch of a line needs `from` and `to`", _SHAPES)
        return _unknown(node)
    first, last = measure(context, start, _ALONG), measure(context, finish, _ALONG)
    missing = (*first.missing, *last.missing)
    return UnknownShape(missing) if missing else Stretch(line, first, last)
