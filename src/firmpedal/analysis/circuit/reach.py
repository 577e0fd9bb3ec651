"""Which lines and wheels each master cylinder can press on, in whatever state."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.circuit.graph import graph_of

if TYPE_CHECKING:
    from firmpedal.analysis.circuit.graph import Graph
    from firmpedal.model.aircraft import Aircraft


@dataclass(frozen=True, slots=True)
class Reach:
    """The lines and calipers that a cylinder's outlet presses on."""

    cylinder: str
    lines: tuple[str, ...]
    calipers: tuple[str, ...]


def reaches(aircraft: Aircraft, graph: Graph | None = None) -> tuple[Reach, ...]:
    """Follow the fluid from each cylinder's outlet, never back through the cylinder itself.

    Every other passage counts as open, so this is the most that a cylinder can ever press on.
    """
    whole = graph_of(aircraft) if graph is None else graph
    return tuple(_reach(whole, cylinder, outlet) for cylinder, outlet in whole.outlets)


def _reach(graph: Graph, cylinder: str, outlet: str) -> Reach:
    seen: set[str] = set()
    lines: dict[str, None] = {}
    waiting = [outlet]
    while waiting:
        here = waiting.pop()
        if here in seen:
            continue
        seen.add(here)
        for other, line in graph.steps(here, cylinder):
            if line:
                lines[line] = None
            waiting.append(other)
    calipers = tuple(name for name, ports in graph.wheels if seen.intersection(ports))
    return Reach(cylinder, tuple(lines), calipers)
