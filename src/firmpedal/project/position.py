"""Points and directions: coordinates, chains from a named place, and mirror images of both."""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from firmpedal.model.fields import Reads
from firmpedal.model.space import Direction, Position
from firmpedal.project.names import UNKNOWN, label_of, renamed, suggest
from firmpedal.project.tree import Branch, Change, Items, Leaf, Node, at
from firmpedal.quantity import Mark, Missing, Value, total
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.project.context import Context

LENGTH = Reads("measure", Dimension.LENGTH)
NUMBER = Reads("measure", Dimension.NUMBER)

AXES = {"aft": (0, 1), "forward": (0, -1), "right": (1, 1), "left": (1, -1), "up": (2, 1), "down": (2, -1)}
NAMES = ("aft", "right", "up")


@dataclass
class Places:
    """Works out the points of one file; chains may hang on each other."""

    context: Context
    busy: set[str] = field(default_factory=set)
    circular: set[str] = field(default_factory=set)

    def position(self, node: Node) -> Position:
        """Read [aft, right, up], a chain, or unknown; then apply what this piece went through."""
        found = self._declared(node)
        for change in node.changes:
            found = self._changed(found, change)
        return found

    def _declared(self, node: Node) -> Position:
        if isinstance(node, Items) and len(node.nodes) == 3:
            values = [self.context.signed(leaf, LENGTH) for leaf in node.nodes]
            named = [
                value.named(f"{label_of(node.path)} {axis}")
                for value, axis in zip(values, NAMES, strict=True)
            ]
            return Position(named[0], named[1], named[2], node.path)
        if isinstance(node, Branch):
            return self._marked(node) if "value" in node.entries else self._chain(node)
        if isinstance(node, Leaf) and node.text != UNKNOWN:
            if self._anchor(node.text) is not None:
                return self._from_anchor(node)
            self.context.problem(node, f"{label_of(node.path)} should be a point", _HOW)
        elif isinstance(node, Items):
            self.context.problem(node, f"{label_of(node.path)} should be three numbers", _HOW)
        return _unknown(node)

    def is_bare_point(self, node: Items) -> bool:
        """Say whether a list of points is one point without its own brackets."""
        leaves = [leaf for leaf in node.nodes if isinstance(leaf, Leaf)]
        named = any(leaf.text == UNKNOWN or self._anchor(leaf.text) is not None for leaf in leaves)
        return bool(leaves) and len(leaves) == len(node.nodes) and not named

    def _marked(self, node: Branch) -> Position:
        """Read {value: [1, 2, 3], mark: assumed}: the mark goes to each coordinate."""
        inner = self._declared(replace(node.entries["value"], path=node.path))
        mark = self.context.mark_of(node)
        marked = [replace(value, mark=max(value.mark, mark or value.mark)) for value in inner.coordinates]
        return Position(marked[0], marked[1], marked[2], node.path)

    def _chain(self, node: Branch) -> Position:
        start = at(node, "from")
        if not isinstance(start, Leaf):
            self.context.problem(node, f"{label_of(node.path)} should say where it starts from", _HOW)
            return _unknown(node)
        origin = self._from_anchor(start)
        coordinates = list(origin.coordinates)
        for key, leaf in node.entries.items():
            if key in AXES:
                axis, sign = AXES[key]
                step = self.context.signed(leaf, LENGTH)
                coordinates[axis] = _add(
                    coordinates[axis], step, sign, f"{label_of(node.path)} {NAMES[axis]}"
                )
            elif key != "from":
                self.context.key_problem(node, key, f"`{key}` is not a way to go", AXES)
        return Position(coordinates[0], coordinates[1], coordinates[2], node.path)

    def _from_anchor(self, leaf: Leaf) -> Position:
        # A mirrored chain is worked out on its own side first, so mirroring renames nothing here.
        name = renamed(leaf.text, tuple(change for change in leaf.changes if not change.mirror))
        node = self._anchor(name)
        if node is None:
            self.context.problem(
                leaf, f"there is no place called `{name}`", suggest(name, self._anchor_names())
            )
            return _unknown(leaf)
        if node.path in self.busy:
            if node.path not in self.circular:
                self.context.problem(leaf, f"`{name}` hangs on itself, round in a circle")
            self.circular |= self.busy
            return _unknown(leaf)
        self.busy.add(node.path)
        found = self.position(node)
        self.busy.discard(node.path)
        return found

    def _anchor(self, name: str) -> Node | None:
        """Find a named point, a bulkhead, a side of one, or a port, by its name."""
        head, _, tail = name.partition(".")
        tree = self.context.tree
        if not tail:
            return at(tree, "points", head) or at(tree, "bulkheads", head, "at")
        port = at(tree, "components", head, "ports", tail)
        seat = at(port, "seat") or at(port, "at")
        return seat or at(tree, "bulkheads", head, "sides", tail, "seat")

    def _anchor_names(self) -> list[str]:
        names: list[str] = []
        for section in ("points", "bulkheads"):
            node = at(self.context.tree, section)
            names += list(node.entries) if isinstance(node, Branch) else []
        return names

    def _changed(self, found: Position, change: Change) -> Position:
        if change.mirror:
            found = replace(found, right=_negated(found.right))
        if change.shift is not None:
            found = self._shifted(found, change.shift)
        return found

    def _shifted(self, found: Position, shift: Node) -> Position:
        """Move a point by a shift, whose keys have been looked at where it stands."""
        coordinates = list(found.coordinates)
        for key, leaf in shift.entries.items() if isinstance(shift, Branch) else ():
            axis, sign = AXES[key]
            step = self.context.signed(leaf, LENGTH)
            coordinates[axis] = _add(coordinates[axis], step, sign, coordinates[axis].label)
        return replace(found, aft=coordinates[0], right=coordinates[1], up=coordinates[2])

    def direction(self, node: Node) -> Direction:
        """Read `forward`, `aft and down`, [1, 0, -1] or unknown; mirrored pieces turn left for right."""
        vector = self._vector(node)
        if vector is None:
            missing = Missing(node.path, f"the direction of {label_of(node.path)}")
            return Direction(None, node.path, missing=(missing,))
        if sum(change.mirror for change in node.changes) % 2:
            vector = (vector[0], -vector[1], vector[2])
        length = math.hypot(*vector)
        unit = (vector[0] / length, vector[1] / length, vector[2] / length)
        mark = self.context.mark_of(node) if isinstance(node, Branch) else None
        return Direction(unit, node.path, mark or Mark.MEASURED)

    def _vector(self, node: Node) -> tuple[float, float, float] | None:
        if isinstance(node, Leaf):
            return self._word_vector(node)
        if isinstance(node, Items) and len(node.nodes) == 3:
            values = [self.context.signed(leaf, NUMBER) for leaf in node.nodes]
            if not all(value.known for value in values):
                return None
            return self._pointing(node, [value.middle for value in values])
        if isinstance(node, Branch) and "value" in node.entries:
            return self._vector(replace(node.entries["value"], path=node.path))
        self.context.problem(node, f"{label_of(node.path)} should be a direction", _WAYS)
        return None

    def _word_vector(self, node: Leaf) -> tuple[float, float, float] | None:
        if node.text == UNKNOWN:
            return None
        if not node.text:
            self.context.problem(node, f"nothing is written after {label_of(node.path)}", _WAYS)
            return None
        words = [word for word in node.text.split() if word != "and"]
        vector = [0.0, 0.0, 0.0]
        for word in words:
            if word not in AXES:
                self.context.problem(node, f"`{word}` is not a direction", suggest(word, AXES))
                return None
            axis, sign = AXES[word]
            vector[axis] += sign
        return self._pointing(node, vector)

    def _pointing(self, node: Node, vector: list[float]) -> tuple[float, float, float] | None:
        if any(vector):
            return (vector[0], vector[1], vector[2])
        self.context.problem(node, f"{label_of(node.path)} points nowhere", _WAYS)
        return None


_HOW = "write [aft, right, up] such as [7.0, -9.0, -3.2], or {from: a_place, aft: 2, down: 3-1/4}, or unknown"
_WAYS = "write a word such as forward, `aft and down`, or a vector [1, 0, -1]"


def _negated(value: Value) -> Value:
    if value.span is None:
        return value
    return replace(value, span=(0.0 - value.span[1], 0.0 - value.span[0]))


def _add(value: Value, step: Value, sign: int, label: str) -> Value:
    return total(label, (value, step if sign > 0 else _negated(step)), value.place)


def _unknown(node: Node) -> Position:
    label = label_of(node.path)
    missing = (Missing(node.path, f"{label} (aft, right, up)"),)
    values = [
        Value(f"{label} {axis}", Dimension.LENGTH, None, Mark.MEASURED, node.path, missing=missing)
        for axis in NAMES
    ]
    return Position(values[0], values[1], values[2], node.path)
