"""Every label of the diagram with the places that would do, and giving all of them a place."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.model.component import SideOf
from firmpedal.report.placing import Box
from firmpedal.report.schematic.areas import line_place, node_place
from firmpedal.report.schematic.figures import box_at
from firmpedal.report.schematic.labels import along_line, beside_node, by_node, by_terminal, written
from firmpedal.report.schematic.plan import EDGE
from firmpedal.report.schematic.room import CLOSE, WORDS, Room
from firmpedal.report.symbols import small
from firmpedal.report.symbols.shape import THIN, stroke

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from firmpedal.report.placing import Flat
    from firmpedal.report.schematic.draft import Drawn
    from firmpedal.report.schematic.nodes import Node, Scheme
    from firmpedal.report.schematic.plan import Plan
    from firmpedal.report.schematic.room import Candidate
    from firmpedal.report.schematic.words import Row
    from firmpedal.report.sheet import Mark

ROUNDS = 16  # of giving all labels their places


@dataclass(frozen=True, eq=False)
class Words:
    """A label that looks for its place; `towards` is what it is about, across, and `place` in the file."""

    rows: tuple[Row, ...]
    candidates: Sequence[Candidate]
    towards: float
    place: str = ""

    def put(self, room: Room) -> tuple[list[Mark], bool]:
        chosen, free = room.choose(self.candidates, WORDS)
        return written(self.rows, chosen, self.towards), free


@dataclass(frozen=True, eq=False)
class Number:
    """The number of a joint that looks for its place."""

    number: int
    candidates: Sequence[Candidate]
    radius: float

    def put(self, room: Room) -> tuple[list[Mark], bool]:
        chosen, free = room.choose(self.candidates, CLOSE)
        box = chosen.box
        leader = [] if chosen.leader is None else [stroke(*chosen.leader, weight=THIN)]
        middle = ((box.left + box.right) / 2, (box.low + box.high) / 2)
        return [*leader, *small.joint_number(self.number, middle, self.radius)], free


def settled(
    figures: list[Mark], inside: list[Box], labels: Sequence[Number | Words], size: Flat
) -> tuple[list[tuple[Number | Words, list[Mark]]], int]:
    """Give every label its marks in a place; the second answer is how many found none that is free.

    `inside` is the inner room of symbols, which belongs to no label. Whatever often found none
    is among the first to choose in the next round.
    """
    best: tuple[list[tuple[Number | Words, list[Mark]]], int] | None = None
    failed = dict.fromkeys(labels, 0)
    for _ in range(ROUNDS):
        room = Room(Box(0, 0, *size), list(inside))
        room.draw(figures)
        queue = sorted(labels, key=lambda label: -failed[label])
        put = [(label, *label.put(room)) for label in queue]
        homeless = [label for label, _, free in put if not free]
        if best is None or len(homeless) < best[1]:
            best = ([(label, marks) for label, marks, _ in put], len(homeless))
        if not homeless:
            break
        failed |= {label: failed[label] + 1 for label in homeless}
    return best or ([], 0)


def number_labels(
    scheme: Scheme, drawn: tuple[Drawn, ...], plan: Plan, numbers: Mapping[str, int]
) -> list[Number]:
    """The numbers of all joints, each where its line comes to the symbol, or beside a whole joint."""
    radius = small.number_radius(max(numbers.values(), default=1))
    found = []
    for spot, each, node in zip(plan.spots, drawn, scheme.nodes, strict=True):
        if node.joint in numbers:
            outer = node.side is not SideOf.RIGHT
            places = by_node(radius, box_at(each, spot), spot, left_first=outer)
            found.append(Number(numbers[node.joint], places, radius))
        found += [
            Number(numbers[joint], _by_terminal(spot, each, node, index, radius), radius)
            for joint, index in _first_terminals(node).items()
            if joint in numbers
        ]
    return found


def _first_terminals(node: Node) -> dict[str, int]:
    found: dict[str, int] = {}
    for index, terminal in enumerate(node.terminals):
        found.setdefault(terminal.joint, index)
    return found


def _by_terminal(spot: Flat, drawn: Drawn, node: Node, index: int, radius: float) -> list[Candidate]:
    """Places at a terminal, on the outer side of the symbol first."""
    x, y = drawn.at[index]
    middle = sum(across for across, _ in drawn.at) / len(drawn.at)
    outer = x < middle if abs(x - middle) > 1 else node.side is not SideOf.RIGHT
    outward = -1.0 if node.terminals[index].below else 1.0
    return by_terminal(radius, (spot[0] + x, spot[1] + y), outward, left_first=outer)


def node_labels(
    scheme: Scheme, drawn: tuple[Drawn, ...], plan: Plan, words: Sequence[tuple[Row, ...]]
) -> list[Words]:
    """What stands beside the symbols, towards the middle of the aircraft first."""
    return [
        Words(
            rows,
            beside_node(rows, box_at(each, spot), left_first=node.side is SideOf.RIGHT),
            spot[0],
            node_place(node),
        )
        for spot, each, node, rows in zip(plan.spots, drawn, scheme.nodes, words, strict=True)
    ]


def line_labels(scheme: Scheme, plan: Plan, words: Sequence[tuple[Row, ...]]) -> list[Words]:
    """What stands beside the lines."""
    found = []
    for number, rows in enumerate(words):
        points = plan.routes.get(number, ())
        if len(points) > 1:
            left = points[0][0] > plan.size[0] / 2 + EDGE
            middle = sum(x for x, _ in points) / len(points)
            place = line_place(scheme.edges[number].line)
            found.append(Words(rows, along_line(rows, points, left_first=left), middle, place))
    return found
