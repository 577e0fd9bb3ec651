"""The side of the aircraft that each connection belongs to: by what is declared, else by where it is."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.circuit.sides import side_of
from firmpedal.fit.assembly import seat_or_face
from firmpedal.model.component import SideOf
from firmpedal.model.kinds import MasterCylinder

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.circuit import Graph
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.space import Position

RANK = {SideOf.LEFT: 0, SideOf.CENTRE: 1, SideOf.RIGHT: 2}


def rights_of(aircraft: Aircraft) -> dict[str, float]:
    """How far right each connection is, where that is known [m]."""
    found = {name: position.right for name, position in _positions(aircraft)}
    return {name: right.middle for name, right in found.items() if right.known}


def _positions(aircraft: Aircraft) -> Iterator[tuple[str, Position]]:
    for part in aircraft.components:
        yield from ((f"{part.name}.{port.name}", seat_or_face(port)) for port in part.ports)
    for bulkhead in aircraft.bulkheads:
        yield from ((f"{bulkhead.name}.{side.name}", side.seat) for side in bulkhead.sides)


def sides_of(aircraft: Aircraft, graph: Graph) -> dict[str, SideOf]:
    """Give every connection the side of the nearest component that declares one; both or none is centre.

    Where several circuits hang together with nothing that has a side, each takes the side it lies on.
    """
    found = _nearest(graph, _declared(aircraft))
    pieces = _pieces(graph)
    if len(pieces) > 1:
        rights = rights_of(aircraft)
        for piece in pieces:
            known = [rights[node] for node in piece if node in rights]
            if known and not any(node in found for node in piece):
                found |= dict.fromkeys(piece, _lies(sum(known) / len(known)))
    return found


def _lies(right: float) -> SideOf:
    if right == 0:
        return SideOf.CENTRE
    return SideOf.LEFT if right < 0 else SideOf.RIGHT


def _declared(aircraft: Aircraft) -> dict[str, SideOf]:
    sides = {
        part.name: side_of(aircraft, part) if isinstance(part, MasterCylinder) else part.side
        for part in aircraft.components
    }
    return {
        f"{part.name}.{port.name}": sides[part.name]
        for part in aircraft.components
        for port in part.ports
        if sides[part.name] is not SideOf.CENTRE
    }


def _nearest(graph: Graph, declared: dict[str, SideOf]) -> dict[str, SideOf]:
    """Spread declared sides step by step; what two sides reach at the same step is centre."""
    found, edge = dict(declared), dict(declared)
    while edge:
        reached: dict[str, set[SideOf]] = {}
        for node, side in edge.items():
            for other, _ in graph.steps(node):
                if other not in found:
                    reached.setdefault(other, set()).add(side)
        edge = {
            node: next(iter(sides)) if len(sides) == 1 else SideOf.CENTRE for node, sides in reached.items()
        }
        found |= edge
    return found


def _pieces(graph: Graph) -> list[tuple[str, ...]]:
    """What hangs together, by lines and through parts."""
    seen: set[str] = set()
    pieces = []
    for node in graph.neighbours:
        if node not in seen:
            piece = tuple(graph.walk((node,)))
            seen |= set(piece)
            pieces.append(piece)
    return pieces
