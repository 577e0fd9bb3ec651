"""Which part of the diagram shows which thing of the file, for those who point at it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.report.placing import Box
from firmpedal.report.schematic.nodes import Kind

if TYPE_CHECKING:
    from firmpedal.report.placing import Flat
    from firmpedal.report.schematic.nodes import Node

IN_BULKHEADS = (Kind.PLATE, Kind.UNION, Kind.TEE)


@dataclass(frozen=True, slots=True)
class Area:
    """Where the thing at an object path is drawn: its boxes, symbol and words, or the ways of a line.

    In points, y up, as the marks of the drawing.
    """

    place: str
    what: str
    boxes: tuple[Box, ...] = ()
    ways: tuple[tuple[Flat, ...], ...] = ()


def node_place(node: Node) -> str:
    """The object path of what a symbol stands for; empty for lines that meet, which are no thing."""
    if node.kind is Kind.MEETING:
        return ""
    return f"{'bulkheads' if node.kind in IN_BULKHEADS else 'components'}.{node.name}"


def line_place(line: str) -> str:
    return f"lines.{line}"


def fitted(area: Area, lift: float, scale: float) -> Area:
    """An area where its drawing is lifted, and then made larger or smaller."""

    def at(point: Flat) -> Flat:
        return (round(point[0] * scale, 2), round((point[1] + lift) * scale, 2))

    boxes = (Box(*at((box.left, box.low)), *at((box.right, box.high))) for box in area.boxes)
    return replace(area, boxes=tuple(boxes), ways=tuple(tuple(map(at, way)) for way in area.ways))
