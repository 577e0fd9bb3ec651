"""All that is worked out about the circuit of one aircraft."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.circuit.graph import graph_of
from firmpedal.analysis.circuit.parts import circuits_of
from firmpedal.analysis.circuit.series import feeds_of
from firmpedal.analysis.circuit.sides import crossings_of
from firmpedal.analysis.circuit.verdicts import verdicts

if TYPE_CHECKING:
    from firmpedal.analysis.circuit.graph import Graph
    from firmpedal.analysis.circuit.parts import Circuit
    from firmpedal.analysis.circuit.series import Feeds
    from firmpedal.analysis.circuit.sides import Crossing
    from firmpedal.analysis.circuit.verdicts import Kind, Verdict
    from firmpedal.model.aircraft import Aircraft


@dataclass(frozen=True)
class Judged:
    """One circuit with what is, or may be, wrong in it."""

    circuit: Circuit
    verdicts: tuple[Verdict, ...]

    def of(self, *kinds: Kind) -> tuple[Verdict, ...]:
        return tuple(verdict for verdict in self.verdicts if verdict.fact.kind in kinds)


@dataclass(frozen=True)
class Plumbing:
    """The graph, its circuits with their verdicts, where left is joined to right, and who feeds whom."""

    graph: Graph
    circuits: tuple[Judged, ...]
    crossings: tuple[Crossing, ...]
    feeds: Feeds


def plumbing(aircraft: Aircraft) -> Plumbing:
    """Work out the whole circuit."""
    graph = graph_of(aircraft)
    judged = tuple(Judged(circuit, verdicts(aircraft, circuit)) for circuit in circuits_of(graph))
    return Plumbing(graph, judged, crossings_of(aircraft, graph), feeds_of(graph))
