"""What moves a thing, as builders write it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.model.fields import Reads
from firmpedal.model.space import AXIS_NAMES, Position
from firmpedal.model.surroundings import Shift, Swing, UnknownMotion
from firmpedal.project.directions import direction
from firmpedal.project.measures import measure
from firmpedal.project.names import label_of, quoted, suggest
from firmpedal.project.position import COORDINATE
from firmpedal.project.tree import UNKNOWN, Absent, Branch, Items, Leaf, Node, at, is_empty
from firmpedal.project.words import known_setting, known_state
from firmpedal.quantity import Missing
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.model.surroundings import Motion
    from firmpedal.project.context import Context
    from firmpedal.quantity import Value

_ANGLE = Reads("measure", Dimension.ANGLE)
_SWING = ("about", "axis", "swing")
_HOW = "write a vector [-1.5, 0, 0], or {about: [15, -7.5, 1], axis: right, swing: +/- 17 deg}, or unknown"


def motions(context: Context, node: Node) -> tuple[Motion, ...]:
    """Read what moves a thing: one entry a state, each a vector, a swing, or unknown.

    A state with named positions has one entry a position: `pads: {worn: [0, 0.2, 0]}`.
    """
    if not isinstance(node, Branch):
        return ()
    found: list[Motion] = []
    for state, entry in node.entries.items():
        if known_state(context, node, state):
            found += _of_state(context, state, entry)
    return tuple(found)


def _of_state(context: Context, state: str, node: Node) -> list[Motion]:
    positions = at(context.tree, "states", state, "values")
    if isinstance(node, Branch) and not node.entries.keys() & set(_SWING):
        if positions is None:
            first = next(iter(node.entries), "")
            advice = f"write the movement at the end of {state}: " + _HOW.removeprefix("write ")
            context.notes.note(_key_leaf(node, first), f"{state} has no position {quoted(first)}", advice)
            return []
        for setting in node.entries:
            known_setting(context, _key_leaf(node, setting), state, setting)
        return [_motion(context, state, setting, item) for setting, item in node.entries.items()]
    if positions is not None and not (isinstance(node, Leaf) and node.text == UNKNOWN):
        message = f"{label_of(node.path)} should say at which position of {state} it is moved"
        names = (
            [leaf.text for leaf in positions.nodes if isinstance(leaf, Leaf)]
            if isinstance(positions, Items)
            else []
        )
        last = names[-1] if names else "down"
        context.notes.note(node, message, f"write `{state}: {{{last}: [0, 0.2, 0]}}`")
        return []
    return [_motion(context, state, "", node)]


def _key_leaf(node: Branch, key: str) -> Leaf:
    return Leaf(key, node.key_span(key), node.path, node.via)


def _motion(context: Context, state: str, setting: str, node: Node) -> Motion:
    if isinstance(node, Branch) and node.entries.keys() & set(_SWING):
        return _swing(context, state, setting, node)
    if isinstance(node, Items) and len(node.nodes) == 3:
        return _shift(context, state, setting, node)
    if is_empty(node):
        context.nothing(node, _HOW)
    elif not isinstance(node, Absent) and (not isinstance(node, Leaf) or node.text != UNKNOWN):
        context.notes.note(node, f"{label_of(node.path)} should be a movement", _HOW)
    how = f"how far {node.path.split('.')[1]} moves with {state}" + (f", when {setting}" if setting else "")
    return UnknownMotion(state, setting, (Missing(node.path, how),))


def _shift(context: Context, state: str, setting: str, node: Items) -> Motion:
    pairs = zip(node.nodes, AXIS_NAMES, strict=True)
    by = [measure(context, leaf, COORDINATE, f"{label_of(node.path)} {axis}") for leaf, axis in pairs]
    if all(value.known for value in by):
        return Shift(state, setting, Position(by[0], by[1], by[2], node.path))
    return UnknownMotion(state, setting, tuple(item for value in by for item in value.missing))


def _swing(context: Context, state: str, setting: str, node: Branch) -> Motion:
    lacking = [word for word in _SWING if word not in node.entries]
    for key in node.entries:
        if key not in _SWING:
            message = f"`{key}` is not a key that a swing can have"
            context.notes.note(_key_leaf(node, key), message, suggest(key, lacking or _SWING))
            return UnknownMotion(state, setting, ())
    if lacking:
        message = f"the swing {label_of(node.path)} has no `{lacking[0]}`"
        context.notes.note(node, message, _HOW)
        return UnknownMotion(state, setting, ())
    about = context.position(node.entries["about"])
    axis = direction(context, node.entries["axis"])
    angle = _angle(context, node.entries["swing"])
    missing = (*about.missing, *axis.missing, *angle.missing)
    if missing or not angle.known:
        return UnknownMotion(state, setting, missing)
    return Swing(state, setting, about, axis, angle)


def _angle(context: Context, node: Node) -> Value:
    """The angle at the end of the state: +/- 17 is 17 one way and, by itself, 17 the other way back."""
    angle = measure(context, node, _ANGLE)
    if angle.span is None or angle.exact:
        return angle
    low, high = angle.span
    if low == -high:
        return replace(angle, span=(high, high))
    if low < 0.0 < high:
        message = f"{label_of(node.path)} should be one angle, the one at the end of the movement"
        context.notes.note(node, message, "write +/- 17 deg; for uneven ways give the state named positions")
    return angle
