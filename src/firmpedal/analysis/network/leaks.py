"""What one leak costs, line by line: at once, and in time."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from firmpedal.analysis.results import Results
    from firmpedal.model.aircraft import Aircraft


@dataclass(frozen=True, slots=True)
class Leak:
    """A line that leaks: pedals that find no pressure, wheels that none brakes, what runs empty in time.

    `emptied` are the reservoirs that lose their fluid through it, `in_time` the further wheels that take
    their fluid from them.
    """

    line: str
    pedals: tuple[str, ...]
    wheels: tuple[str, ...]
    emptied: tuple[str, ...]
    in_time: tuple[str, ...]


def leaks(aircraft: Aircraft, results: Results) -> tuple[Leak, ...]:
    """What a leak of each line costs, by the way fluid can go."""
    return tuple(_leak(results, line.name, line.start) for line in aircraft.lines)


def _leak(results: Results, line: str, node: str) -> Leak:
    losing = tuple(way.cylinder for way in results.reach if line in way.lines)
    pressing: dict[str, set[str]] = {}
    for way in results.reach:
        for caliper in way.calipers:
            pressing.setdefault(caliper, set()).add(way.cylinder)
    wheels = tuple(name for name, pedals in pressing.items() if pedals <= set(losing))
    emptied = _reservoirs(results, node)
    fed = [
        caliper
        for each in results.plumbing.circuits
        if {name for _, name in each.circuit.tops} & set(emptied)
        for caliper in each.circuit.calipers
    ]
    return Leak(line, losing, wheels, emptied, tuple(name for name in fed if name not in wheels))


def _reservoirs(results: Results, node: str) -> tuple[str, ...]:
    """The reservoirs from which fluid can run to a connection; it does not run through a reservoir."""
    graph = results.plumbing.graph
    tops = dict(graph.tops)
    found = graph.walk([node])
    return tuple(dict.fromkeys(tops[each] for each in found if each in tops))
