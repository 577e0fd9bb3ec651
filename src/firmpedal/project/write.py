"""From a reading back to text: the aircraft with its option, copies and mirror images worked out."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from firmpedal import units
from firmpedal.model.fields import Declared, Reads
from firmpedal.model.space import Direction, Position
from firmpedal.model.surroundings import (
    Ball,
    Box,
    HalfSpace,
    Shift,
    Stretch,
    Swing,
)
from firmpedal.project.context import keys_of
from firmpedal.project.edit import EditError, edited
from firmpedal.project.names import UNKNOWN
from firmpedal.project.plain import Piece, text_of
from firmpedal.project.read import worked_out
from firmpedal.project.tree import Branch, Items, Leaf, Node
from firmpedal.quantity import Mark, Value
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.model.surroundings import Motion, Shape
    from firmpedal.project.read import Reading

__all__ = ["EditError", "edited", "written"]

_SI = {Dimension.LENGTH: "m", Dimension.ANGLE: "rad"}
_HALVES = {0: "aft", 1: "right", 2: "up"}
_WAYS = {
    (1.0, 0.0, 0.0): "aft",
    (-1.0, 0.0, 0.0): "forward",
    (0.0, 1.0, 0.0): "right",
    (0.0, -1.0, 0.0): "left",
    (0.0, 0.0, 1.0): "up",
    (0.0, 0.0, -1.0): "down",
}


def written(reading: Reading) -> str:
    """Write the aircraft of a reading as a fresh file that reads back to the same aircraft.

    What the builder wrote stays in the builder's words; what was copied, shifted or mirrored stands
    with its own names and figures. A point that hangs on an unknown place becomes unknown itself.

    Raises:
        ValueError: The reading has no aircraft.
    """
    if reading.aircraft is None:
        raise ValueError(f"{reading.file} cannot be read, so it cannot be written")
    tree = worked_out(reading.text, reading.file, reading.option)
    return text_of(_Writer(reading).thing(reading.aircraft, tree))


class _Writer:
    """Writes what stands in the tree, and takes from the model what was changed on the way."""

    def __init__(self, reading: Reading) -> None:
        aircraft = reading.aircraft
        self.units = {
            dimension: getattr(aircraft.units, dimension.value, "") if aircraft else "" for dimension in _SI
        }

    def thing(self, thing: Declared, node: Node) -> dict[str, Piece]:
        """Write the keys that stand in the file, in their order."""
        keys = keys_of(type(thing))
        found: dict[str, Piece] = {}
        for key, inner in node.entries.items() if isinstance(node, Branch) else ():
            name = keys.get(key, "")
            if not name or name == thing.free_keys:
                continue
            found[key] = self.field(getattr(thing, name), _method(thing, name), inner)
        if thing.free_keys and isinstance(node, Branch):
            free = {
                key: each
                for key, each in node.entries.items()
                if key not in keys or keys[key] == thing.free_keys
            }
            found |= self.motions(getattr(thing, thing.free_keys), free)
        return found

    def field(self, value: Any, method: str, node: Node) -> Piece:
        if isinstance(value, Declared):
            return self.thing(value, node)
        if isinstance(node, Branch) and isinstance(value, tuple) and value and isinstance(value[0], Declared):
            return {
                key: self.thing(each, inner)
                for each, (key, inner) in zip(value, node.entries.items(), strict=True)
            }
        if not _is_changed(node):
            return _verbatim(node)
        return self.changed(value, method, node)

    def changed(self, value: Any, method: str, node: Node) -> Piece:
        if method in ("side", "reference", "connection"):
            return str(value)
        if method == "shape" and isinstance(node, Branch):
            return self.shapes(value, node)
        if method == "named_points" and isinstance(node, Branch):
            return {
                each.name: self.position(each.position) if _is_changed(inner) else _verbatim(inner)
                for each, inner in zip(value, node.entries.values(), strict=True)
            }
        if method == "positions":
            return [self.position(each) for each in value]
        return self.place(value, node)

    def place(self, value: object, node: Node) -> Piece:
        if isinstance(value, Position):
            return self.position(value)
        return self.direction(value) if isinstance(value, Direction) else _verbatim(node)

    # -- values -----------------------------------------------------------------------------------

    def value(self, value: Value) -> Piece:
        if value.span is None:
            return UNKNOWN
        low, high = value.span
        text = self._number(low, value.dimension)
        if high != low:
            text = f"{text} to {self._number(high, value.dimension)}"
        return _marked(text, value.mark)

    def _number(self, number: float, dimension: Dimension) -> str:
        """The shortest figure in the file's own unit that reads back exactly; else the SI figure."""
        unit = self.units[dimension]
        for digits in range(4, 18) if unit else ():
            text = f"{units.to_unit(number, unit):.{digits}g}"
            if units.read(text, dimension, unit).span == (number, number):
                return text
        return f"{number!r} {_SI[dimension]}"

    def position(self, found: Position) -> Piece:
        if not any(value.known for value in found.coordinates):
            return UNKNOWN
        return [self.value(value) for value in found.coordinates]

    def direction(self, found: Direction) -> Piece:
        if found.vector is None:
            return UNKNOWN
        vector = (found.vector[0] + 0.0, found.vector[1] + 0.0, found.vector[2] + 0.0)
        words: Piece = _WAYS.get(vector) or [repr(number) for number in vector]
        return _marked(words, found.mark)

    # -- movements and shapes ---------------------------------------------------------------------

    def motions(self, motions: Iterable[Motion], nodes: dict[str, Node]) -> dict[str, Piece]:
        found = {key: {} if _is_changed(node) else _verbatim(node) for key, node in nodes.items()}
        for motion in motions:
            inner = found[motion.variable]
            if not _is_changed(nodes[motion.variable]):
                continue
            if motion.setting and isinstance(inner, dict):
                inner[motion.setting] = self.motion(motion)
            else:
                found[motion.variable] = self.motion(motion)
        return found

    def motion(self, motion: Motion) -> Piece:
        if isinstance(motion, Shift):
            return self.position(motion.by)
        if isinstance(motion, Swing):
            about, axis = self.position(motion.about), self.direction(motion.axis)
            return {"about": about, "axis": axis, "swing": self.value(motion.angle)}
        return UNKNOWN

    def shapes(self, shapes: tuple[Shape, ...], node: Branch) -> Piece:
        keys = [key for key in node.entries if key != "radius"]
        first = shapes[0]
        if isinstance(first, Stretch):
            return {**_entries(node), "line": first.line}
        if "line" in keys:
            return UNKNOWN
        found: dict[str, Piece] = {}
        for key, shape in zip(keys, shapes, strict=True):
            if isinstance(shape, Box):
                found[key] = [self.position(shape.low), self.position(shape.high)]
            elif isinstance(shape, Ball):
                found |= {"ball": self.position(shape.centre), "radius": self.value(shape.radius)}
            elif isinstance(shape, HalfSpace):
                side = "above" if shape.sign > 0 else "below"
                found[f"{_HALVES[shape.axis]} {side}"] = self.value(shape.offset)
            else:
                return UNKNOWN
        return found


def _method(thing: Declared, name: str) -> str:
    info = type(thing).model_fields[name]
    marker = next((item for item in info.metadata if isinstance(item, Reads)), None)
    return marker.method if marker is not None else ""


def _is_changed(node: Node) -> bool:
    if node.changes:
        return True
    inner: Iterable[Node] = ()
    if isinstance(node, Branch):
        inner = node.entries.values()
    elif isinstance(node, Items):
        inner = node.nodes
    return any(_is_changed(each) for each in inner)


def _verbatim(node: Node) -> Piece:
    if isinstance(node, Leaf):
        return node.text
    return _entries(node) if isinstance(node, Branch) else [_verbatim(each) for each in node.nodes]


def _entries(node: Branch) -> dict[str, Piece]:
    return {key: _verbatim(each) for key, each in node.entries.items()}


def _marked(piece: Piece, mark: Mark) -> Piece:
    return piece if mark is Mark.MEASURED else {"value": piece, "mark": mark.word}
