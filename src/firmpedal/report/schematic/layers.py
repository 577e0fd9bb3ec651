"""Which row each node stands in: below all that feeds it, by the longest way from the top."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from firmpedal.model.component import SideOf
from firmpedal.report.schematic.nodes import Kind

if TYPE_CHECKING:
    from firmpedal.report.schematic.nodes import Edge, Scheme


@dataclass(frozen=True, slots=True)
class Item:
    """What takes a place in a row: a node, or a line that passes by."""

    layer: int
    side: SideOf
    right: float
    node: int = -1
    edge: int = -1


@dataclass(frozen=True, slots=True)
class Span:
    """A line on its way down: the items it goes through, with the terminals at its two ends."""

    edge: int
    path: tuple[int, ...]
    top: tuple[int, int]
    bottom: tuple[int, int]


@dataclass(frozen=True, slots=True)
class Rows:
    """Items by number, the first ones being the nodes, and the lines between them; loops stay in one."""

    items: tuple[Item, ...]
    spans: tuple[Span, ...]
    loops: tuple[int, ...]

    @property
    def count(self) -> int:
        return 1 + max((item.layer for item in self.items), default=-1)

    def links(self) -> list[tuple[int, int]]:
        """Neighbours in neighbouring rows, the upper one first."""
        return [pair for span in self.spans for pair in pairwise(span.path)]


def rows_of(scheme: Scheme) -> Rows:
    """Put nodes in rows, and make room for lines that pass rows."""
    loops = tuple(n for n, edge in enumerate(scheme.edges) if edge.upper[0] == edge.lower[0])
    ends = _downward(scheme)
    layers = _longest(scheme, [(top[0], bottom[0]) for top, bottom in ends.values()])
    items = [
        Item(layers[number], node.side, node.right, node=number) for number, node in enumerate(scheme.nodes)
    ]
    spans = []
    for number, (top, bottom) in ends.items():
        first, last = items[top[0]], items[bottom[0]]
        between = range(first.layer + 1, last.layer)
        path = (top[0], *range(len(items), len(items) + len(between)), bottom[0])
        side = next((each.side for each in (last, first) if each.side is not SideOf.CENTRE), SideOf.CENTRE)
        items += [Item(layer, side, last.right, edge=number) for layer in between]
        spans.append(Span(number, path, top, bottom))
    return Rows(tuple(items), tuple(spans), loops)


def _downward(scheme: Scheme) -> dict[int, tuple[tuple[int, int], tuple[int, int]]]:
    """The two ends of each line, the upper first; a line that would close a circle is turned over."""
    below: dict[int, set[int]] = {}
    found = {}
    order = sorted(range(len(scheme.edges)), key=lambda n: (_met(scheme, scheme.edges[n]), n))
    for number in order:
        edge = scheme.edges[number]
        upper, lower = edge.upper, edge.lower
        if upper[0] == lower[0]:
            continue
        if _leads(below, lower[0], upper[0]):
            upper, lower = lower, upper
        below.setdefault(upper[0], set()).add(lower[0])
        found[number] = (upper, lower)
    return dict(sorted(found.items()))


def _met(scheme: Scheme, edge: Edge) -> int:
    return scheme.nodes[edge.upper[0]].met


def _leads(below: dict[int, set[int]], start: int, goal: int) -> bool:
    waiting, seen = [start], {start}
    while waiting:
        here = waiting.pop()
        if here == goal:
            return True
        fresh = below.get(here, set()) - seen
        seen |= fresh
        waiting += fresh
    return False


def _longest(scheme: Scheme, pairs: list[tuple[int, int]]) -> list[int]:
    """Rows by the longest way down; what nothing feeds stands just above what it feeds."""
    layers = [0] * len(scheme.nodes)
    for _ in scheme.nodes:
        for upper, lower in pairs:
            layers[lower] = max(layers[lower], layers[upper] + 1)
    fed = {lower for _, lower in pairs}
    for number, node in enumerate(scheme.nodes):
        below = [layers[lower] for upper, lower in pairs if upper == number]
        if number not in fed and below and node.kind is not Kind.RESERVOIR:
            layers[number] = min(below) - 1
    return layers
