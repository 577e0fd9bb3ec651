"""Where left is joined to right: by the sides that are declared, never by names."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.model.aircraft import find
from firmpedal.model.component import SideOf

if TYPE_CHECKING:
    from collections.abc import Mapping

    from firmpedal.analysis.circuit.graph import Graph
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.kinds import MasterCylinder

    Came = Mapping[str, tuple[str, str]]


@dataclass(frozen=True, slots=True)
class Crossing:
    """A way from a thing of one side to one of the other: the lines on it, and what it makes pedals press."""

    one: str
    other: str
    lines: tuple[str, ...]
    presses: tuple[tuple[str, str], ...]  # cylinder and the caliper of the other side that it presses


def side_of(aircraft: Aircraft, cylinder: MasterCylinder) -> SideOf:
    """The side that a cylinder serves: its own, else its pedal's."""
    pedal = find(aircraft.pedals, cylinder.pedal)
    return cylinder.side if cylinder.side is not SideOf.CENTRE or pedal is None else pedal.side


def crossings_of(aircraft: Aircraft, graph: Graph) -> tuple[Crossing, ...]:
    """Find every way on which a cylinder of one side comes to a thing of the other."""
    sides = {each.name: side_of(aircraft, each) for each in aircraft.cylinders}
    sides |= {part.name: part.side for part in aircraft.components if part.name not in sides}
    found: dict[frozenset[str], Crossing] = {}
    for name, outlet in graph.outlets:
        if sides[name] is SideOf.CENTRE:
            continue
        came = graph.walk([outlet], name)
        wrong = [caliper for caliper, ports in graph.wheels if _meets(sides, name, caliper, ports, came)]
        ends = {
            node
            for node in came
            if (head := node.partition(".")[0]) in sides and _opposed(sides[name], sides[head])
        }
        for end in ends:
            for crossing in _hops(sides, came, end):
                key = frozenset((crossing.one, crossing.other))
                before = found.get(key, crossing)
                also = [(name, caliper) for caliper in wrong]
                presses = tuple(dict.fromkeys([*before.presses, *also]))
                found[key] = Crossing(before.one, before.other, before.lines, presses)
    return tuple(found[key] for key in sorted(found, key=sorted))


def _opposed(one: SideOf, other: SideOf) -> bool:
    return {one, other} == {SideOf.LEFT, SideOf.RIGHT}


def _meets(
    sides: dict[str, SideOf],
    name: str,
    caliper: str,
    ports: tuple[str, ...],
    came: Came,
) -> bool:
    return _opposed(sides[name], sides[caliper]) and any(port in came for port in ports)


def _hops(sides: dict[str, SideOf], came: Came, end: str) -> list[Crossing]:
    """The steps of one way between things of opposed sides, with nothing of a side between them."""
    path: list[tuple[str, str]] = []  # from the end back to the outlet, with the line that led there
    node = end
    while came[node][0] != node:
        path.append((node, came[node][1]))
        node = came[node][0]
    path.append((node, ""))
    hops: list[Crossing] = []
    last, lines = "", []
    for node, line in reversed(path):
        if line:
            lines.append(line)
        head = node.partition(".")[0]
        if sides.get(head, SideOf.CENTRE) is SideOf.CENTRE:
            continue
        if last and _opposed(sides[last], sides[head]):
            hops.append(Crossing(last, head, tuple(lines), ()))
        last, lines = head, []
    return hops
