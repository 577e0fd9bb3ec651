"""The circuit: who is joined to whom, who presses what, and what comes free again."""

from __future__ import annotations

from firmpedal.analysis.circuit.graph import Graph, Joint, Way, graph_of
from firmpedal.analysis.circuit.parts import Circuit, circuits_of
from firmpedal.analysis.circuit.reach import Reach, reaches
from firmpedal.analysis.circuit.series import Feeds, feeds_of
from firmpedal.analysis.circuit.sides import Crossing, crossings_of, side_of
from firmpedal.analysis.circuit.states import Machine
from firmpedal.analysis.circuit.verdicts import (
    Fact,
    Kind,
    Verdict,
    machines,
    seal_question,
    stands_between,
    verdicts,
)
from firmpedal.analysis.circuit.whole import Judged, Plumbing, plumbing

__all__ = [
    "Circuit",
    "Crossing",
    "Fact",
    "Feeds",
    "Graph",
    "Joint",
    "Judged",
    "Kind",
    "Machine",
    "Plumbing",
    "Reach",
    "Verdict",
    "Way",
    "circuits_of",
    "crossings_of",
    "feeds_of",
    "graph_of",
    "machines",
    "plumbing",
    "reaches",
    "seal_question",
    "side_of",
    "stands_between",
    "verdicts",
]
