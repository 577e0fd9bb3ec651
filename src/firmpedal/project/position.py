"""Points and directions: coordinates, chains from a named place, and mirror images of both."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from firmpedal.model.fields import Reads
from firmpedal.model.space import AXIS_NAMES, Position
from firmpedal.project.measures import marked, measure
from firmpedal.project.names import label_of, quoted, suggest
from firmpedal.project.points import AXES, MIRROR_OF
from firmpedal.project.tree import (
    UNKNOWN,
    Absent,
    Branch,
    Items,
    Leaf,
    Node,
    at,
    branch_at,
    is_empty,
    with_path,
)
from firmpedal.quantity import Mark, Missing, Value, total
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.project.context import Context

COORDINATE = Reads("measure", Dimension.LENGTH)

LONGEST_CHAIN = 60  # pieces, two for each place that hangs on another

_NAME = re.compile(r"[^\W\d]")

_HOW = "write [aft, right, up] such as [7.0, -9.0, -3.2], or {from: a_place, aft: 2, down: 3-1/4}, or unknown"


@dataclass
class Places:
    """Works out the points of one file, each once; chains may hang on each other.

    `starts` are the named places that chains were begun from, one after the other, each with where it is.
    """

    context: Context
    busy: list[str] = field(default_factory=list)
    done: dict[str, tuple[Position, list[tuple[str, Position]]]] = field(default_factory=dict)
    starts: list[tuple[str, Position]] = field(default_factory=list)

    def position(self, node: Node) -> Position:
        """Read [aft, right, up], a chain, a name, the mirror image of a place, or unknown."""
        if node.path in self.done:
            found, starts = self.done[node.path]
            self.starts += starts
            return found
        before = len(self.starts)
        self.busy.append(node.path)
        found = self._read(node)
        self.busy.pop()
        self.done[node.path] = found, self.starts[before:]
        return found

    def start(self, name: str) -> Position | None:
        """Where a named place is; None where there is no such place."""
        node = self._anchor(name)
        return None if node is None else self.position(node)

    def positions(self, node: Node) -> tuple[Position, ...]:
        """Read a list of points; one point without brackets of its own is told from several."""
        advice = "write the points as [[7.0, -9.0, -3.2], [9.0, -11.6, -5.2]]"
        words = (
            [item.text for item in node.nodes if isinstance(item, Leaf)] if isinstance(node, Items) else []
        )
        if (
            isinstance(node, Items)
            and words
            and len(words) == len(node.nodes)
            and not any(map(_NAME.search, words))
        ):
            self.context.notes.note(node, f"{label_of(node.path)} should be a list of points", advice)
            return ()
        return tuple(self.position(item) for item in self.context.listed(node, advice))

    def _read(self, node: Node) -> Position:
        label = label_of(node.path)
        if isinstance(node, Items):
            return self._coordinates(node)
        if isinstance(node, Branch):
            return self._written_with_keys(node)
        if is_empty(node):
            self.context.nothing(node, _HOW)
        elif isinstance(node, Leaf) and node.text != UNKNOWN:
            if _NAME.search(node.text):
                return replace(self._from_anchor(node), place=node.path)
            self.context.notes.note(node, f"{label} should be a point", _HOW)
        return unknown_position(node)

    def _coordinates(self, node: Items) -> Position:
        label = label_of(node.path)
        if len(node.nodes) != 3:
            message = f"{label} should be three numbers, and there are {len(node.nodes)}"
            self.context.notes.note(node, message, _HOW)
            return unknown_position(node)
        pairs = zip(node.nodes, AXIS_NAMES, strict=True)
        values = [measure(self.context, leaf, COORDINATE, f"{label} {axis}") for leaf, axis in pairs]
        return Position(values[0], values[1], values[2], node.path)

    def _written_with_keys(self, node: Branch) -> Position:
        if "value" in node.entries:
            return self._marked(node)
        if MIRROR_OF in node.entries:
            return self._mirror_image(node)
        if "from" in node.entries:
            return self._chain(node)
        message = f"{label_of(node.path)} should say where it starts from"
        self.context.notes.note(node, message, _HOW)
        return unknown_position(node)

    def _marked(self, node: Branch) -> Position:
        """Read {value: [1, 2, 3], mark: assumed}: the mark goes to each coordinate."""
        inner = self._read(with_path(node.entries["value"], node.path))
        worst = marked(self.context, node, Mark.READ)
        values = [
            value.named(f"{label_of(node.path)} {axis}", mark=max(value.mark, worst))
            for value, axis in zip(inner.coordinates, AXIS_NAMES, strict=True)
        ]
        return Position(values[0], values[1], values[2], node.path)

    def _mirror_image(self, node: Branch) -> Position:
        for key in node.entries:
            if key != MIRROR_OF:
                self._not_a_way(node, key, [MIRROR_OF])
        found = self.position(node.entries[MIRROR_OF])
        return replace(found, right=negative(found.right), place=node.path)

    def _chain(self, node: Branch) -> Position:
        coordinates = list(self.position(node.entries["from"]).coordinates)
        for key, leaf in node.entries.items():
            if key in AXES:
                axis, sign = AXES[key]
                label = f"{label_of(node.path)} {AXIS_NAMES[axis]}"
                step = measure(self.context, leaf, COORDINATE)
                parts = (coordinates[axis], step if sign > 0 else negative(step))
                coordinates[axis] = total(label, parts, node.path)
            elif key != "from":
                self._not_a_way(node, key, list(AXES))
        return Position(coordinates[0], coordinates[1], coordinates[2], node.path)

    def _not_a_way(self, node: Branch, key: str, ways: list[str]) -> None:
        message = f"{quoted(key)} is not a way to go"
        self.context.notes.note_at(node.key_span(key), message, key, suggest(key, ways), via=node.via)

    def _from_anchor(self, leaf: Leaf) -> Position:
        node = self._anchor(leaf.text)
        if node is None:
            return self._without_anchor(leaf)
        if node.path in self.busy:
            round_trip = self.busy[self.busy.index(node.path) :]
            circle = [label_of(path) for path in round_trip if not path.endswith(".from")]
            message = f"{quoted(leaf.text)} hangs on itself, round in a circle"
            advice = f"give one of them in numbers: {', '.join(dict.fromkeys(circle))}"
            self.context.notes.note(leaf, message, advice)
            return unknown_position(leaf)
        if len(self.busy) > LONGEST_CHAIN:
            message = "this place hangs on a place that hangs on a place, and so on, too often"
            self.context.notes.note(leaf, message, "give it in numbers")
            return unknown_position(leaf)
        found = self.position(node)
        self.starts.append((leaf.text, found))
        return found

    def _anchor(self, name: str) -> Node | None:
        """Find a named point, a bulkhead, a side of one, or a port, by its name."""
        tree = self.context.tree
        head, _, tail = name.partition(".")
        if not tail:
            wall = at(tree, "bulkheads", head)
            return at(tree, "points", head) or at(wall, "at") or _nowhere(wall, "at")
        port = at(tree, "components", head, "ports", tail)
        side = at(tree, "bulkheads", head, "sides", tail)
        return at(port, "seat") or at(port, "at") or at(side, "seat") or _nowhere(port or side, "seat")

    def _without_anchor(self, leaf: Leaf) -> Position:
        tree, notes, head = self.context.tree, self.context.notes, leaf.text.partition(".")[0]
        paths = [f"{section}.{head}" for section in ("components", "bulkheads")]
        inner = [f"{path}.{word}" for path in paths for word in ("ports", "sides")]
        if not notes.doubtful("", "points", "components", "bulkheads", *paths, *inner):
            message = f"there is no place called {quoted(leaf.text)}"
            notes.note(leaf, message, suggest(leaf.text, place_names(tree)))
        return unknown_position(leaf)


def place_names(tree: Branch) -> list[str]:
    """Everything that a chain can start from."""
    names = [*branch_at(tree, "points"), *branch_at(tree, "bulkheads")]
    for section, inner in (("components", "ports"), ("bulkheads", "sides")):
        for thing in branch_at(tree, section):
            names += [f"{thing}.{port}" for port in branch_at(tree, section, thing, inner)]
    return names


def _nowhere(thing: Node | None, key: str) -> Node | None:
    """A thing that is there and does not say where: its place is unknown, not wrong."""
    if not isinstance(thing, Branch):
        return None
    return Absent(thing.span, f"{thing.path}.{key}", thing.via)


def negative(value: Value) -> Value:
    """The same value the other way."""
    if value.span is None:
        return value
    return replace(value, span=(0.0 - value.span[1], 0.0 - value.span[0]))


def unknown_position(node: Node) -> Position:
    """A point that somebody still has to measure."""
    label = label_of(node.path)
    missing = (Missing(node.path, f"{label} (aft, right, up)"),)
    values = [
        Value(f"{label} {axis}", Dimension.LENGTH, None, Mark.MEASURED, node.path, missing=missing)
        for axis in AXIS_NAMES
    ]
    return Position(values[0], values[1], values[2], node.path)
