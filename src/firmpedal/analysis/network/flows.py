"""How much fluid goes through each line when one pedal is pressed: all that is taken up beyond it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.quantity import Value, total

if TYPE_CHECKING:
    from firmpedal.analysis.circuit import Graph
    from firmpedal.analysis.stroke import StrokeBudget


@dataclass(frozen=True)
class Flow:
    """Fluid that enters a line at one of its ends; `taken` of it stays there, for the line itself."""

    line: str
    enters: str
    leaves: str
    through: Value
    taken: Value


def flows(graph: Graph, budget: StrokeBudget, calipers: tuple[str, ...], *, hot: bool) -> tuple[Flow, ...]:
    """Follow the fluid of a budget from the cylinder's outlet to where it is taken up.

    Where lines make a ring, the fluid is taken to go the way with the fewest joints, and a line that closes
    the ring to come to it from the end that is reached first.

    Args:
        graph: Of the circuit.
        budget: Of the pedal that is pressed.
        calipers: The names of the budget's calipers, in its order.
        hot: Whether plastic is hot.
    """
    start = dict(graph.outlets)[budget.cylinder]
    met = graph.walk([start], budget.cylinder)
    taken = _taken_at(graph, budget, calipers, met)
    lines = {
        each.line: total(f"taken up in {each.line}", [each.hot_wall if hot else each.wall, each.fluid])
        for each in budget.swells
    }
    ends = {each.line: (each.one, each.other) for each in graph.joints if each.line}
    crossed = {line: (before, node) for node, (before, line) in met.items() if line}
    below: dict[str, list[Value]] = {node: list(values) for node, values in taken.items()}
    for line in lines.keys() - crossed.keys():  # it closes a ring: no fluid goes through it
        first = next((node for node in met if node in ends.get(line, ())), start)
        below.setdefault(first, []).append(lines[line])
    found: dict[str, Flow] = {}
    for node, (before, line) in reversed(met.items()):
        if node == before:
            continue
        beyond = below.get(node, [])
        if line and line in lines:
            through = total(f"through {line}", [lines[line], *beyond])
            found[line] = Flow(line, before, node, through, lines[line])
            beyond = [through]
        below.setdefault(before, []).extend(beyond)
    return tuple(found[line] for line in lines if line in found)


def _taken_at(
    graph: Graph, budget: StrokeBudget, calipers: tuple[str, ...], met: dict[str, tuple[str, str]]
) -> dict[str, list[Value]]:
    """What each caliper takes, at the port of it that fluid comes to first."""
    ports = dict(graph.wheels)
    # By its place in the file and not by its label, whose other words may be names of calipers, too.
    gives = {value.place.rpartition(".give.")[0].rpartition(".")[2]: value for value in budget.gives}
    found: dict[str, list[Value]] = {}
    for name, gap in zip(calipers, budget.gaps, strict=True):
        node = next((each for each in met if each in ports[name]), None)
        if node is not None:
            found[node] = [gap, *([gives[name]] if name in gives else [])]
    return found
