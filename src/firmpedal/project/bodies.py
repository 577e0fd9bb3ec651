"""Panels, and things to stay clear of, as builders write where they are."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.fields import Reads
from firmpedal.model.shapes import Ball, Bar, Box, Disc, Sheet, UnknownShape
from firmpedal.model.space import AXIS_NAMES
from firmpedal.project.measures import measure
from firmpedal.project.names import label_of, quoted, suggest
from firmpedal.project.points import AXES
from firmpedal.project.shapes import plane_offset
from firmpedal.project.tree import UNKNOWN, Absent, Branch, Items, Leaf, Node, is_empty
from firmpedal.quantity import Missing
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.model.shapes import Body
    from firmpedal.project.context import Context

_SIZE = Reads("measure", Dimension.LENGTH, signed=False, positive=True)
_BODIES = (
    "write {box: [[..], [..]]}, {ball: [..], radius: 5}, {bar: [[..], [..]], radius: 1}, "
    "or {disc: [..], axis: right, radius: 3, thickness: 1/4}"
)
_SHEETS = "write {up: 0} for a floor, and {up: 0, within: [[..], [..]]} where it ends somewhere"
_FORMS = {
    "box": ("box",),
    "ball": ("ball", "radius"),
    "bar": ("bar", "radius"),
    "disc": ("disc", "axis", "radius", "thickness"),
}


def body(context: Context, node: Node) -> Body:
    """Read where a thing to stay clear of is."""
    if not isinstance(node, Branch) or not node.entries:
        return _nothing(context, node, _BODIES)
    form = next((key for key in node.entries if key in _FORMS), "")
    keys = _FORMS.get(form, tuple(key for keys in _FORMS.values() for key in keys))
    if _strangers(context, node, keys) or not form:
        return _unknown(node)
    lacking = [key for key in keys if key not in node.entries]
    if lacking:
        message = f"{label_of(node.path)} needs `{lacking[0]}` as well"
        context.notes.note(node, message, _BODIES)
        return _unknown(node)
    return {"box": _box, "ball": _ball, "bar": _bar, "disc": _disc}[form](context, node)


def sheet(context: Context, node: Node) -> Sheet | UnknownShape:
    """Read where a flat panel is: across which axis, how far along it, and within which box."""
    if not isinstance(node, Branch) or not node.entries:
        return _nothing(context, node, _SHEETS)
    planes = [key for key in node.entries if key in AXIS_NAMES]
    if _strangers(context, node, (*AXIS_NAMES, "within")):
        return _unknown(node)
    if len(planes) != 1:
        context.notes.note(node, f"{label_of(node.path)} should lie across one axis", _SHEETS)
        return _unknown(node)
    axis = AXES[planes[0]][0]
    offset = plane_offset(context, axis, node.entries[planes[0]])
    within = _corners(context, node.entries["within"], _SHEETS) if "within" in node.entries else None
    if isinstance(within, UnknownShape) or not offset.known:
        return UnknownShape((*offset.missing, *(within.missing if isinstance(within, UnknownShape) else ())))
    return Sheet(axis, offset, within)


def _nothing(context: Context, node: Node, advice: str) -> UnknownShape:
    if is_empty(node):
        context.nothing(node, advice)
    elif not isinstance(node, Absent) and (not isinstance(node, Leaf) or node.text != UNKNOWN):
        context.notes.note(node, f"{label_of(node.path)} should say where it is", advice)
    return _unknown(node)


def _unknown(node: Node) -> UnknownShape:
    around = node.path.rpartition(".")[0]
    return UnknownShape((Missing(node.path, f"where {label_of(around)} is"),))


def _strangers(context: Context, node: Branch, known: tuple[str, ...]) -> bool:
    strange = [key for key in node.entries if key not in known]
    for key in strange:
        message = f"{quoted(key)} does not belong here"
        context.notes.note_at(node.key_span(key), message, key, suggest(key, known), via=node.via)
    return bool(strange)


def _corners(context: Context, node: Node, advice: str) -> Box | UnknownShape:
    """Two opposite corners."""
    if not isinstance(node, Items) or len(node.nodes) != 2:
        if isinstance(node, Leaf) and node.text == UNKNOWN:
            return _unknown(node)
        context.notes.note(node, f"{label_of(node.path)} should be two points", advice)
        return _unknown(node)
    low, high = (context.position(item) for item in node.nodes)
    missing = (*low.missing, *high.missing)
    return UnknownShape(missing) if missing else Box(low, high)


def _box(context: Context, node: Branch) -> Body:
    return _corners(context, node.entries["box"], _BODIES)


def _ball(context: Context, node: Branch) -> Body:
    centre, radius = context.position(node.entries["ball"]), measure(context, node.entries["radius"], _SIZE)
    missing = (*centre.missing, *radius.missing)
    return UnknownShape(missing) if missing else Ball(centre, radius)


def _bar(context: Context, node: Branch) -> Body:
    ends, radius = (
        _corners(context, node.entries["bar"], _BODIES),
        measure(context, node.entries["radius"], _SIZE),
    )
    if isinstance(ends, UnknownShape) or not radius.known:
        return UnknownShape((*(ends.missing if isinstance(ends, UnknownShape) else ()), *radius.missing))
    return Bar(ends.low, ends.high, radius)


def _disc(context: Context, node: Branch) -> Body:
    centre = context.position(node.entries["disc"])
    axis = context.direction(node.entries["axis"], _SIZE)
    radius, thickness = (measure(context, node.entries[key], _SIZE) for key in ("radius", "thickness"))
    missing = (*centre.missing, *axis.missing, *radius.missing, *thickness.missing)
    return UnknownShape(missing) if missing else Disc(centre, axis, radius, thickness)
