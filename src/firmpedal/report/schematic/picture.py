"""The circuit as one drawing that fits the page: symbols, lines, and words that cover nothing."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.report.joint_numbers import joint_numbers
from firmpedal.report.schematic.areas import Area, fitted, line_place, node_place
from firmpedal.report.schematic.draft import drawn_nodes
from firmpedal.report.schematic.figures import box_at, figures, insides
from firmpedal.report.schematic.key import key_marks
from firmpedal.report.schematic.layers import rows_of
from firmpedal.report.schematic.nodes import scheme_of
from firmpedal.report.schematic.order import ordered
from firmpedal.report.schematic.plan import Sizes, planned
from firmpedal.report.schematic.texts import Words, line_labels, node_labels, number_labels, settled
from firmpedal.report.schematic.words import KINDS as NAMES
from firmpedal.report.schematic.words import line_rows, node_rows, width_of
from firmpedal.report.sheet import Drawing
from firmpedal.report.symbols.shape import bounds, moved, scaled

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.pipeline import Evaluation
    from firmpedal.report.placing import Flat
    from firmpedal.report.schematic.draft import Drawn
    from firmpedal.report.schematic.layers import Rows
    from firmpedal.report.schematic.nodes import Scheme
    from firmpedal.report.schematic.plan import Plan
    from firmpedal.report.schematic.texts import Number
    from firmpedal.report.schematic.words import Row
    from firmpedal.report.sheet import Mark

WIDTH, TALLEST = 490.0, 596.0  # points: the page between its margins, less its title and the caption
MOST_SPARE = 56.0  # of height that a gap between rows takes when there is more than it needs
# Tried one after the other until every label has room: least gap between rows, width, letters in a line.
TRIES = (
    (30.0, 490.0, 18), (30.0, 490.0, 13), (30.0, 490.0, 9), (30.0, 380.0, 12), (40.0, 490.0, 18),
    (52.0, 490.0, 15), (52.0, 380.0, 12), (66.0, 490.0, 12), (66.0, 580.0, 15), (84.0, 680.0, 18),
    (110.0, 820.0, 24), (150.0, 1000.0, 24),
)  # fmt: skip
ENOUGH = 0.88  # of the size: names that stay whole are worth letters that are a little smaller
CAPTION = (
    "Symbols after ISO 1219-1. Not to scale: left on the paper is left in the aircraft, fluid runs down. "
    "An arrow with two heads gives how far the ends of a line move against each other."
)


@dataclass(frozen=True)
class _Made:
    """A drawing with its size, and how many labels cover something."""

    marks: tuple[Mark, ...]
    size: Flat
    covered: int
    areas: tuple[Area, ...]

    @property
    def scale(self) -> float:
        return min(1.0, WIDTH / self.size[0], TALLEST / self.size[1])

    @property
    def badness(self) -> tuple[int, float]:
        return self.covered, -self.scale


def circuit_drawing(evaluation: Evaluation) -> Drawing | None:
    """Draw the circuit from the reservoir to the wheels to fit one page; None where there is nothing."""
    found = circuit_picture(evaluation)
    return None if found is None else found[0]


def circuit_picture(evaluation: Evaluation) -> tuple[Drawing, tuple[Area, ...]] | None:
    """Draw the circuit to fit one page, and say where each thing is in it; None where there is nothing."""
    scheme = scheme_of(evaluation)
    if not scheme.nodes:
        return None
    work = _Drawing(evaluation, scheme)
    best = work.made(*TRIES[0])
    for sizes in TRIES[1:]:
        if best.covered == 0 and best.scale >= ENOUGH:
            break
        made = work.made(*sizes)
        if best.covered == 0 and made.scale < best.scale:
            break
        best = min(best, made, key=lambda each: each.badness)
    size = (round(best.size[0] * best.scale, 2), round(best.size[1] * best.scale, 2))
    drawing = Drawing(size, tuple(scaled(mark, best.scale) for mark in best.marks), CAPTION)
    return drawing, tuple(fitted(area, 0.0, best.scale) for area in best.areas)


class _Drawing:
    """The diagram of one evaluation, to be made in one size or another."""

    def __init__(self, evaluation: Evaluation, scheme: Scheme) -> None:
        self.evaluation, self.scheme = evaluation, scheme
        self.laid = {line.name: line for line in evaluation.laid}
        self.numbers = joint_numbers(evaluation)
        self.rows: Rows = rows_of(scheme)
        self.order = ordered(self.rows)
        self.drawn: tuple[Drawn, ...] = drawn_nodes(evaluation.aircraft, scheme, self.rows, self.order)

    def made(self, gap: float, width: float, limit: int) -> _Made:
        """Make it with gaps of a least height on paper of a width, with so many letters in a line."""
        nodes = [node_rows(self.evaluation, node, limit) for node in self.scheme.nodes]
        lines = [line_rows(self.evaluation, self.laid[edge.line], limit) for edge in self.scheme.edges]
        used = self._used([*nodes, *lines])
        plan = self._plan([width_of(rows) for rows in nodes], used, gap, width)
        key, foot = key_marks(used, plan.size[0])
        still = figures(self.scheme, self.drawn, plan, self.laid)
        numbers = number_labels(self.scheme, self.drawn, plan, self.numbers)
        names = node_labels(self.scheme, self.drawn, plan, nodes)
        labels: list[Number | Words] = [*numbers, *names, *line_labels(self.scheme, plan, lines)]
        put, covered = settled(still, insides(self.drawn, plan), labels, plan.size)
        words = [mark for _, each in put for mark in each]
        marks = (*key, *(moved(mark, (0, foot)) for mark in (*still, *words)))
        areas = tuple(fitted(area, foot, 1.0) for area in self._areas(plan, put))
        return _Made(marks, (plan.size[0], plan.size[1] + foot), covered, areas)

    def _areas(self, plan: Plan, put: list[tuple[Number | Words, list[Mark]]]) -> Iterator[Area]:
        """Where each thing is: its symbol or its way, and its words beside it."""
        words = {label.place: bounds(tuple(marks)) for label, marks in put if isinstance(label, Words)}
        for node, each, spot in zip(self.scheme.nodes, self.drawn, plan.spots, strict=True):
            place = node_place(node)
            if place:
                boxes = (box_at(each, spot), *((words[place],) if place in words else ()))
                yield Area(place, NAMES[node.kind], boxes)
        for number, points in sorted(plan.routes.items()):
            line = self.scheme.edges[number].line
            place = line_place(line)
            boxes = (words[place],) if place in words else ()
            yield Area(place, self.laid[line].kind.value, boxes, (points,))

    def _plan(self, words: list[float], used: set[str], gap: float, width: float) -> Plan:
        """Plan with the least gaps, then with as much more as the page has."""
        plan = planned(self.scheme, self.rows, self.order, self.drawn, words, Sizes(width, gap))
        foot = key_marks(used, plan.size[0])[1]
        room = TALLEST * max(plan.size[0] / WIDTH, 1.0) - foot - plan.size[1]
        spare = min(max(room, 0.0) / max(self.rows.count - 1, 1), MOST_SPARE)
        return planned(self.scheme, self.rows, self.order, self.drawn, words, Sizes(width, gap + spare))

    def _used(self, words: list[tuple[Row, ...]]) -> set[str]:
        """What the key has to explain."""
        loose = [each for node in self.scheme.nodes for each in node.terminals if not each.line]
        found = {row.mark for rows in words for row in rows}
        found |= {self.laid[edge.line].kind.value for edge in self.scheme.edges}
        found |= {"number"} if self.numbers else set()
        return found | {"plug" if each.plugged else "open" for each in loose}
