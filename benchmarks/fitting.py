"""The fitting search beside networkx's Dijkstra on a graph of the same parts."""

from __future__ import annotations

from dataclasses import replace
from itertools import permutations
from typing import TYPE_CHECKING

import networkx as nx

from benchmarks.timing import Race, best_time
from firmpedal.catalog import catalogue
from firmpedal.fit.joint import LineEnd, Port
from firmpedal.fit.search import fit_port
from firmpedal.model.part import Form, Gender, Interface

if TYPE_CHECKING:
    from firmpedal.fit.joint import Joint
    from firmpedal.model.part import Part

PIPES = ("1/8-27", "1/4-18")
DASHES = ("-3", "-4", "-6")
LEAK, PART = 1000, 1  # a leak path outweighs any number of parts


def _requests() -> list[tuple[Port, LineEnd]]:
    ports = [
        Port(f"p{n}", f"p{n}", Interface(Form.PIPE, size, Gender.FEMALE)) for n, size in enumerate(PIPES)
    ]
    ends = [
        LineEnd(f"l{n}{form.name}", "from", Interface(form, dash, gender), group, leaves=0.0)
        for n, dash in enumerate(DASHES)
        for form, gender, group in (
            (Form.FLARE_37, Gender.FEMALE, "hose"),
            (Form.TUBE_FLARE_37, Gender.MALE, "aluminium"),
        )
    ]
    return [(port, end) for port in ports for end in ends]


def _graph(parts: tuple[Part, ...]) -> nx.DiGraph:
    """Interfaces that show, joined by the parts that lead from one to the next."""
    graph = nx.DiGraph()
    for part in parts:
        if part.brake_pressure and len(part.flow_ends) == len(part.ends) == 2:
            for before, after in permutations(part.ends):
                weight = LEAK * before.interface.seals + PART
                graph.add_edge(before.interface.complement, after.interface, weight=weight)
    return graph


def _independent(graph: nx.DiGraph, port: Port, end: LineEnd) -> tuple[int, int] | None:
    goal = end.interface.complement
    try:
        cost = nx.dijkstra_path_length(graph, port.interface, goal)
    except (nx.NetworkXNoPath, nx.NodeNotFound):
        return None
    leaks, parts = divmod(cost, LEAK)
    return leaks + goal.seals, parts


def _ours(joint: Joint) -> tuple[int, int] | None:
    return None if joint.mismatches else (joint.leak_paths, len(joint.parts))


def race() -> Race:
    """Joints between common ports and line ends both ways; ours also weighs angle, metal and mass."""
    shelf, requests = catalogue(), _requests()
    graph = _graph(shelf.parts)
    count = iter(range(10**9))

    def fresh(port: Port) -> Port:  # a name of its own, so that the search does not answer from memory
        return replace(port, name=f"{port.name} {next(count)}")

    def ours() -> list[tuple[int, int] | None]:
        return [_ours(fit_port(fresh(port), end, shelf)) for port, end in requests]

    def other() -> list[tuple[int, int] | None]:
        return [_independent(graph, port, end) for port, end in requests]

    differing = sum(one != two for one, two in zip(ours(), other(), strict=True))
    words = f"{len(requests)} joints, {differing} with another count of leak paths or parts"
    return Race("fitting a line end to a port", best_time(ours), best_time(other), "networkx", words)
