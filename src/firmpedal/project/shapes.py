"""Movements and zones, as builders write them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.fields import Reads
from firmpedal.model.space import Position
from firmpedal.model.surroundings import (
    Ball,
    Box,
    HalfSpace,
    Shift,
    Stretch,
    Swing,
    UnknownMotion,
    UnknownShape,
)
from firmpedal.project.names import UNKNOWN, label_of
from firmpedal.project.position import AXES
from firmpedal.project.tree import Branch, Items, Leaf, Node, at
from firmpedal.quantity import Missing, Value
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.model.space import Direction
    from firmpedal.model.surroundings import Motion, Shape
    from firmpedal.project.context import Context

LENGTH = Reads("measure", Dimension.LENGTH)
ANGLE = Reads("measure", Dimension.ANGLE)


def motions(context: Context, node: Node) -> tuple[Motion, ...]:
    """Read what moves a thing: one entry a state, each a vector, a swing, or unknown.

    A state with named positions has one entry a position: `pads: {worn: [0, 0.2, 0]}`.
    """
    found: list[Motion] = []
    states = at(context.tree, "states")
    known = states.entries if isinstance(states, Branch) else {}
    for variable, entry in node.entries.items() if isinstance(node, Branch) else ():
        if variable not in known:
            if isinstance(node, Branch):
                context.key_problem(node, variable, f"there is no state `{variable}`", known)
            continue
        positions = _positions_of(known[variable])
        if isinstance(entry, Branch) and "about" not in entry.entries:
            found += _by_position(context, variable, entry, positions)
        elif positions and not (isinstance(entry, Leaf) and entry.text == UNKNOWN):
            example = f"{variable}: {{{positions[-1]}: [0, 0.2, 0]}}"
            context.problem(entry, f"say in which position of {variable}", f"write `{example}`")
        else:
            found.append(_motion(context, variable, "", entry))
    return tuple(found)


def _positions_of(state: Node) -> list[str]:
    values = at(state, "values")
    leaves = values.nodes if isinstance(values, Items) else (values,)
    return [leaf.text for leaf in leaves if isinstance(leaf, Leaf)]


def _by_position(context: Context, variable: str, node: Branch, positions: list[str]) -> list[Motion]:
    found = []
    for setting, item in node.entries.items():
        if setting in positions:
            found.append(_motion(context, variable, setting, item))
        else:
            context.key_problem(node, setting, f"{variable} has no position `{setting}`", positions)
    return found


def _motion(context: Context, variable: str, setting: str, node: Node) -> Motion:
    sign = _mirror_sign(context, variable, node)
    if isinstance(node, Branch) and "about" in node.entries:
        return _swing(context, variable, setting, node, sign)
    if isinstance(node, Items) and len(node.nodes) == 3:
        values = [context.signed(leaf, LENGTH) for leaf in node.nodes]
        signs = (sign, sign * (-1 if _mirrored(node) else 1), sign)
        by = [_signed(value, one) for value, one in zip(values, signs, strict=True)]
        if all(value.known for value in by):
            return Shift(variable, setting, Position(by[0], by[1], by[2], node.path))
        return UnknownMotion(variable, setting, tuple(item for value in by for item in value.missing))
    if not isinstance(node, Leaf) or node.text != UNKNOWN:
        context.problem(node, f"{label_of(node.path)} should be a movement", _HOW)
    thing = node.path.split(".")[1]
    how = f"how far {thing} moves with {variable}" + (f", when {setting}" if setting else "")
    return UnknownMotion(variable, setting, (Missing(node.path, how),))


_HOW = "write a vector [-1.5, 0, 0], or {about: [15, -7.5, 1], axis: right, swing: +/- 17 deg}, or unknown"


def _swing(context: Context, variable: str, setting: str, node: Branch, sign: int) -> Motion:
    about = context.position(node.entries["about"])
    axis_node, angle_node = at(node, "axis"), at(node, "swing")
    if axis_node is None or angle_node is None:
        context.problem(node, f"{label_of(node.path)} needs `about`, `axis` and `swing`", _HOW)
        return UnknownMotion(variable, setting, ())
    axis = _axis(context.direction(axis_node), node)
    angle = context.signed(angle_node, ANGLE)
    missing = (*about.missing, *axis.missing, *angle.missing)
    if missing or angle.span is None:
        return UnknownMotion(variable, setting, missing)
    full = max(abs(angle.span[0]), abs(angle.span[1])) if angle.span[0] != angle.span[1] else angle.span[0]
    one = Value(angle.label, angle.dimension, (full, full), angle.mark, angle.place)
    return Swing(variable, setting, about, axis, _signed(one, sign))


def _axis(axis: Direction, node: Node) -> Direction:
    """Mirror a turning axis: unlike a direction it keeps its right part and flips the others."""
    if axis.vector is None or not _mirrored(node):
        return axis
    aft, right, up = axis.vector  # already mirrored as a direction, so right has been flipped
    return type(axis)((-aft, -right, -up), axis.place)


def _mirrored(node: Node) -> bool:
    return bool(sum(change.mirror for change in node.changes) % 2)


def _mirror_sign(context: Context, variable: str, node: Node) -> int:
    """Give -1 where a mirrored thing moves the opposite way, as the other rudder pedal does."""
    leaf = at(context.tree, "states", variable, "opposite when mirrored")
    opposite = isinstance(leaf, Leaf) and leaf.text == "yes"
    return -1 if opposite and _mirrored(node) else 1


def _signed(value: Value, sign: int) -> Value:
    if sign > 0 or value.span is None:
        return value
    low, high = value.span
    return Value(value.label, value.dimension, (0.0 - high, 0.0 - low), value.mark, value.place)


def shape(context: Context, node: Node) -> tuple[Shape, ...]:
    """Read where a zone is; several keys together mean the part of space that meets all of them."""
    if not isinstance(node, Branch):
        if not isinstance(node, Leaf) or node.text != UNKNOWN:
            context.problem(node, f"{label_of(node.path)} should say a shape", _SHAPES)
        return (UnknownShape((Missing(node.path, f"where {label_of(node.path)} is"),)),)
    if "line" in node.entries:
        return (_stretch(context, node),)
    found: list[Shape] = []
    if not node.entries.keys() - {"radius"}:
        raise context.unreadable(node, f"{label_of(node.path)} should say a shape", _SHAPES)
    for key, item in node.entries.items():
        way, _, side = key.partition(" ")
        if key == "box":
            found.append(_box(context, item))
        elif key == "ball":
            found.append(_ball(context, item, at(node, "radius")))
        elif way in ("aft", "right", "up") and side in ("above", "below"):
            found.append(_half_space(context, item, way, side))
        elif key != "radius":
            context.key_problem(node, key, f"`{key}` is not a shape", ["box", "ball", "line", "up below"])
    return tuple(found)


_SHAPES = (
    "write {box: [[..], [..]]}, {ball: [..], radius: 5}, {up below: -5}, or {line: a_line, from: 2, to: 9}"
)


def _box(context: Context, node: Node) -> Shape:
    if not isinstance(node, Items) or len(node.nodes) != 2:
        raise context.unreadable(node, "a box is two opposite corners", _SHAPES)
    low, high = (context.position(corner) for corner in node.nodes)
    missing = (*low.missing, *high.missing)
    return UnknownShape(missing) if missing else Box(low, high)


def _ball(context: Context, node: Node, radius: Node | None) -> Shape:
    centre = context.position(node)
    if radius is None:
        context.problem(node, "a ball needs a radius", _SHAPES)
        return UnknownShape(centre.missing)
    size = context.measure(radius, LENGTH)
    missing = (*centre.missing, *size.missing)
    return UnknownShape(missing) if missing else Ball(centre, size)


def _half_space(context: Context, node: Node, way: str, side: str) -> Shape:
    offset = context.signed(node, LENGTH)
    axis, sign = AXES[way][0], 1 if side == "above" else -1
    if axis == 1 and _mirrored(node):
        offset, sign = _signed(offset, -1), -sign
    return HalfSpace(axis, sign, offset) if offset.known else UnknownShape(offset.missing)


def _stretch(context: Context, node: Branch) -> Shape:
    start, finish = at(node, "from"), at(node, "to")
    if start is None or finish is None:
        context.problem(node, "a stretch of a line needs `from` and `to`", _SHAPES)
        return UnknownShape(())
    line = context.reference(node.entries["line"])
    first, last = context.measure(start, LENGTH), context.measure(finish, LENGTH)
    missing = (*first.missing, *last.missing)
    return UnknownShape(missing) if missing else Stretch(line, first, last)
