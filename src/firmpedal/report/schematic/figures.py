"""What stands still while labels look for room: lines, symbols, and ports that no line comes to."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.stock import LineKind
from firmpedal.report.placing import Box
from firmpedal.report.schematic.plan import STUB
from firmpedal.report.schematic.room import Candidate, Room
from firmpedal.report.sheet import Stroke
from firmpedal.report.symbols import line_marks, small
from firmpedal.report.symbols.shape import PIPE, box_round, moved, stroke

if TYPE_CHECKING:
    from collections.abc import Mapping

    from firmpedal.lay.line import LaidLine
    from firmpedal.report.placing import Flat
    from firmpedal.report.schematic.draft import Drawn
    from firmpedal.report.schematic.nodes import Scheme, Terminal
    from firmpedal.report.schematic.plan import Plan
    from firmpedal.report.sheet import Mark

BODY_CORNERS = 4
ARC_CLEAR = 3.0  # white around the arc of a hose


def figures(scheme: Scheme, drawn: tuple[Drawn, ...], plan: Plan, laid: Mapping[str, LaidLine]) -> list[Mark]:
    """Draw lines, then symbols and stubs."""
    marks: list[Mark] = []
    symbols = [box_at(each, spot) for each, spot in zip(drawn, plan.spots, strict=True)]
    for number, points in sorted(plan.routes.items()):
        others = [way for other, way in plan.routes.items() if other != number]
        taken = Room(Box(0, 0, *plan.size), list(symbols))
        taken.draw(line_marks.tube(way)[0] for way in others)
        marks += _line(laid[scheme.edges[number].line], points, plan.size[0] / 2, taken)
    for spot, each, node in zip(plan.spots, drawn, scheme.nodes, strict=True):
        marks += [moved(mark, spot) for mark in each.symbol.marks]
        for at, terminal in zip(each.at, node.terminals, strict=True):
            if not terminal.line:
                marks += _stub((spot[0] + at[0], spot[1] + at[1]), terminal)
    return marks


def box_at(drawn: Drawn, spot: Flat) -> Box:
    """The room of a symbol in its place."""
    box = drawn.symbol.box
    return Box(box.left + spot[0], box.low + spot[1], box.right + spot[0], box.high + spot[1])


def insides(drawn: tuple[Drawn, ...], plan: Plan) -> list[Box]:
    """The inner room of every body that a symbol has."""
    return [
        box_round(moved(mark, spot))
        for spot, each in zip(plan.spots, drawn, strict=True)
        for mark in each.symbol.marks
        if isinstance(mark, Stroke) and len(mark.points) >= BODY_CORNERS
    ]


def _line(line: LaidLine, points: tuple[Flat, ...], middle: float, taken: Room) -> tuple[Mark, ...]:
    if line.kind is LineKind.TUBE:
        return line_marks.tube(points)
    if line.kind is LineKind.PLASTIC:
        return line_marks.plastic(points)
    bulges = 1.0 if points[0][0] <= middle else -1.0  # inwards: numbers stand outside
    return line_marks.hose(points, bulges=bulges, free=lambda box: taken.free(Candidate(box), ARC_CLEAR))


def _stub(at: Flat, terminal: Terminal) -> tuple[Mark, ...]:
    """A port that no line comes to."""
    end = (at[0], at[1] + (-STUB if terminal.below else STUB))
    pipe = stroke(at, end, weight=PIPE)
    if terminal.plugged:
        return (pipe, *small.plug(end))
    return (pipe, *small.open_end((end[0], end[1] + (-3 if terminal.below else 3))))
