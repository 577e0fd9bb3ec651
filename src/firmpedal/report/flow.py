"""Which way fluid runs through the circuit as declared: down from the reservoir to the wheels."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.circuit import graph_of
from firmpedal.model.aircraft import find

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from firmpedal.analysis.circuit import Graph
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.circuit import Line
    from firmpedal.model.kinds import MasterCylinder


@dataclass(frozen=True)
class Flow:
    """The order in which connections are met on the way down, and what is fixed by a cylinder's ports.

    `met` holds every connection, counted from 0. `outlets` press, `inlets` are fed from above.
    """

    graph: Graph
    met: Mapping[str, int]
    outlets: frozenset[str]
    inlets: frozenset[str]

    def runs_down(self, line: Line) -> bool:
        """Whether fluid runs down a line from its first end to its last."""
        upper = [self._upper(end) for end in (line.start, line.finish)]
        if upper[0] != upper[1]:
            return upper[0] > upper[1]
        return self.met[line.start] <= self.met[line.finish]

    def _upper(self, connection: str) -> int:
        return (connection in self.outlets) - (connection in self.inlets)


def flow_of(aircraft: Aircraft) -> Flow:
    """Follow the fluid from every reservoir, through each cylinder from its inlet to its outlet only."""
    graph = graph_of(aircraft)
    outlets = frozenset(node for _, node in graph.outlets)
    inlets = frozenset(
        f"{each.name}.{each.inlet}"
        for each in aircraft.cylinders
        if find(each.ports, each.inlet) and f"{each.name}.{each.inlet}" not in outlets
    )
    met: dict[str, int] = {}
    _spread(met, graph, outlets, (node for node, _ in graph.tops))
    for start in (*(node for _, node in graph.outlets), *_connections(aircraft), *graph.neighbours):
        _spread(met, graph, outlets, (start,))
    return Flow(graph, met, outlets, inlets)


def _spread(met: dict[str, int], graph: Graph, outlets: frozenset[str], start: Iterable[str]) -> None:
    """Number what is met, the nearest first; a line never leads into the outlet of a cylinder."""
    waiting = [node for node in dict.fromkeys(start) if node not in met]
    for node in waiting:
        met[node] = len(met)
    for node in waiting:
        for other, _line, part in graph.neighbours.get(node, ()):
            against = part and node in outlets
            if other not in met and not against and (part or other not in outlets):
                met[other] = len(met)
                waiting.append(other)


def _connections(aircraft: Aircraft) -> Iterable[str]:
    for line in aircraft.lines:
        yield from (line.start, line.finish, f"{line.name}.from", f"{line.name}.to")
    for part in aircraft.components:
        yield from (f"{part.name}.{port.name}" for port in part.ports)
    for bulkhead in aircraft.bulkheads:
        yield from (f"{bulkhead.name}.{side.name}" for side in bulkhead.sides)


def supplied(aircraft: Aircraft, cylinder: MasterCylinder) -> bool:
    """Whether a cylinder is drawn with a reservoir of its own."""
    return any(node == f"{cylinder.name}.(reservoir)" for node, _ in graph_of(aircraft).tops)
