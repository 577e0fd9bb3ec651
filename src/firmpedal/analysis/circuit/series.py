"""Which cylinders take their fluid from where others press."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from firmpedal.analysis.circuit.graph import Graph

Feeds = dict[str, frozenset[str]]
"""For each cylinder, the others whose pressure can come to its inlet."""


def feeds_of(graph: Graph) -> Feeds:
    """Whose pressure can come to whose inlet; a reservoir passes none on.

    Every passage but those of the two cylinders counts as open, so that no pressure is left out.
    """
    air = _always_open_to(graph, {node for node, _ in graph.tops})
    inlets: dict[str, list[str]] = {}
    for way in graph.ways:
        if way.above not in air:
            inlets.setdefault(way.part, []).append(way.above)
    return {
        name: frozenset(
            other
            for other, outlet in graph.outlets
            if other != name and _comes(graph, outlet, inlets.get(name, []), (name, other), air)
        )
        for name, _ in graph.outlets
    }


def _always_open_to(graph: Graph, start: set[str]) -> set[str]:
    """All connections that nothing ever parts from some."""
    found, waiting = set(start), list(start)
    for node in waiting:
        for other, _, part in graph.neighbours.get(node, ()):
            if not part and other not in found:
                found.add(other)
                waiting.append(other)
    return found


def _comes(graph: Graph, start: str, ends: list[str], without: tuple[str, str], air: set[str]) -> bool:
    """Whether fluid can go from a connection to one of some, not inside two parts nor through open air."""
    found, waiting = {start}, [start]
    for node in waiting:
        if node in ends:
            return True
        for other, _ in graph.steps(node, *without):
            if other not in found and other not in air:
                found.add(other)
                waiting.append(other)
    return False
