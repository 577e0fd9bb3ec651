"""The graph cut into circuits that share no pressure, each with its connections gathered into groups."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.analysis.circuit.graph import Graph


@dataclass(frozen=True, slots=True)
class Passage:
    """A way between two groups of connections that are each always one."""

    part: str
    above: int
    below: int


@dataclass(frozen=True)
class Circuit:
    """What can ever share one pressure; groups of connections that are always joined have a number.

    `tops` are the groups at a reservoir with its name, `outlets` the group each cylinder presses in,
    `wheels` the groups of each caliper's ports, `nodes` that of each connection by name.
    """

    groups: int
    cylinders: tuple[str, ...]
    valves: tuple[str, ...]
    calipers: tuple[str, ...]
    passages: tuple[Passage, ...]
    tops: tuple[tuple[int, str], ...]
    outlets: tuple[tuple[str, int], ...]
    wheels: tuple[tuple[str, int], ...]
    nodes: tuple[tuple[str, int], ...]

    def outlet(self, cylinder: str) -> int:
        return dict(self.outlets)[cylinder]

    def wheel(self, caliper: str) -> int:
        return dict(self.wheels)[caliper]

    def of(self, part: str) -> tuple[Passage, ...]:
        """The passages inside one part."""
        return tuple(passage for passage in self.passages if passage.part == part)


def roots(count: int, joined: Iterable[tuple[int, int]]) -> list[int]:
    """For each of so many numbers the one that stands for all that is joined to it."""
    parent = list(range(count))

    def root(item: int) -> int:
        while parent[item] != item:
            parent[item] = parent[parent[item]]
            item = parent[item]
        return item

    for one, other in joined:
        parent[root(one)] = root(other)
    return [root(item) for item in range(count)]


def circuits_of(graph: Graph) -> tuple[Circuit, ...]:
    """Cut a graph into its circuits; those without a cylinder or a caliper are left out."""
    nodes = _nodes(graph)
    number = {node: n for n, node in enumerate(nodes)}
    joints = [(number[each.one], number[each.other]) for each in graph.joints]
    joints += [(number[one], number[each]) for _, ports in graph.wheels for one, each in pairwise(ports)]
    group = roots(len(nodes), joints)
    ways = [(group[number[way.above]], group[number[way.below]]) for way in graph.ways]
    whole = roots(len(nodes), [*joints, *ways])
    found = []
    for key in dict.fromkeys(whole):
        inside = {node: group[number[node]] for node in nodes if whole[number[node]] == key}
        circuit = _circuit(graph, inside)
        if circuit.cylinders and circuit.calipers:
            found.append(circuit)
    return tuple(found)


def _nodes(graph: Graph) -> list[str]:
    found = dict.fromkeys(node for each in graph.joints for node in (each.one, each.other))
    found |= dict.fromkeys(node for way in graph.ways for node in (way.above, way.below))
    found |= dict.fromkeys(node for node, _ in graph.tops)
    found |= dict.fromkeys(node for _, node in graph.outlets)
    return list(found | dict.fromkeys(port for _, ports in graph.wheels for port in ports))


def _circuit(graph: Graph, inside: dict[str, int]) -> Circuit:
    short = {key: n for n, key in enumerate(dict.fromkeys(inside.values()))}
    place = {node: short[key] for node, key in inside.items()}
    passages = tuple(
        Passage(way.part, place[way.above], place[way.below]) for way in graph.ways if way.above in place
    )
    outlets = tuple((name, place[node]) for name, node in graph.outlets if node in place)
    wheels = tuple((name, place[ports[0]]) for name, ports in graph.wheels if ports and ports[0] in place)
    pedals = tuple(name for name, _ in outlets)
    return Circuit(
        len(short),
        pedals,
        tuple(dict.fromkeys(each.part for each in passages if each.part not in dict(graph.outlets))),
        tuple(name for name, _ in wheels),
        passages,
        tuple((place[node], name) for node, name in graph.tops if node in place),
        outlets,
        wheels,
        tuple(place.items()),
    )
