"""What is written beside each symbol and each line, broken to fit."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.finding import Level
from firmpedal.model.aircraft import find
from firmpedal.model.display import count_of
from firmpedal.model.stock import Hose, LineKind
from firmpedal.place import is_within
from firmpedal.report.placing import LETTER_WIDTH
from firmpedal.report.schematic.nodes import Kind
from firmpedal.report.symbols.small import ARROW, LETTERS, TRIANGLE

if TYPE_CHECKING:
    from firmpedal.lay.line import LaidLine
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.schematic.nodes import Node

STEP = 12.0  # from one line of letters to the next
LETTER = LETTER_WIDTH * LETTERS
AFTER_MARK = 4.0
STOCK_LIMIT = 14  # letters: 5052-O 1/4 in stays in one line
MOVES_LIMIT = 9  # a range takes two lines: 1.51 to, 1.67 in
STILL = 1e-5  # of movement: what nobody can measure [m]
KINDS = {
    Kind.RESERVOIR: "reservoir",
    Kind.CYLINDER: "master cylinder",
    Kind.VALVE: "parking valve",
    Kind.CALIPER: "caliper",
    Kind.PLATE: "bulkhead",
    Kind.UNION: "union",
    Kind.TEE: "tee",
    Kind.MEETING: "line ends meet",
}


@dataclass(frozen=True, slots=True)
class Row:
    """One line of letters, with a small mark before it if `mark` names one."""

    text: str
    bold: bool = False
    mark: str = ""  # warning, moving

    @property
    def indent(self) -> float:
        return {"warning": TRIANGLE + AFTER_MARK, "moving": ARROW + AFTER_MARK}.get(self.mark, 0.0)

    @property
    def width(self) -> float:
        return self.indent + LETTER * len(self.text)


def width_of(rows: tuple[Row, ...]) -> float:
    return max((row.width for row in rows), default=0.0)


def node_rows(evaluation: Evaluation, node: Node, limit: int) -> tuple[Row, ...]:
    """The name of a node, what it is, whose seat a pedal belongs to, and how many warnings there are."""
    what = KINDS[node.kind]
    named = node.kind is not Kind.MEETING
    rows = [Row(text, bold=True) for text in broken(node.name, limit)] if named else []
    if node.name.replace("_", " ") != what:
        rows += [Row(text) for text in broken(what, limit)]
    if node.kind is Kind.CYLINDER and (seat := _seat(evaluation, node.name)):
        rows += [Row(text) for text in broken(f"{seat} seat", limit)]
    part = "bulkheads" if find(evaluation.aircraft.bulkheads, node.name) else "components"
    return (*rows, *_warned(evaluation, f"{part}.{node.name}"))


def line_rows(evaluation: Evaluation, line: LaidLine, limit: int) -> tuple[Row, ...]:
    """The name of a line, what it is made of, how far its ends move, and how many warnings there are."""
    rows = [Row(text, bold=True) for text in broken(line.name, limit)]
    rows += [Row(text) for text in broken(stock_words(line), max(limit, STOCK_LIMIT))]
    if (moves := movement_words(evaluation, line)) is not None:
        first, *more = broken(moves, MOVES_LIMIT)
        rows += [Row(first, mark="moving"), *(Row(text) for text in more)]
    return (*rows, *_warned(evaluation, line.place))


def stock_words(line: LaidLine) -> str:
    """What a line is made of, short: its kind and size."""
    stock = line.stock
    if isinstance(stock, Hose):
        return f"hose {stock.dash}"
    metal = line.kind is LineKind.TUBE
    size = stock.nominal_size or stock.dash or ""
    return f"{stock.material.name if metal else stock.material.group} {size}".strip()


def movement_words(evaluation: Evaluation, line: LaidLine) -> str | None:
    """How far the ends of a line move against each other; None where they do not."""
    play = line.travel.play
    if play.known:
        return evaluation.display.value(play) if play.high > STILL else None
    return "unknown" if len(line.travel.settings) > 1 else None


def _seat(evaluation: Evaluation, name: str) -> str:
    cylinder = find(evaluation.aircraft.cylinders, name)
    pedal = find(evaluation.aircraft.pedals, cylinder.pedal) if cylinder else None
    return pedal.seat if pedal else ""


def _warned(evaluation: Evaluation, place: str) -> tuple[Row, ...]:
    count = sum(
        finding.level is Level.WARNING and is_within(finding.place, place) for finding in evaluation.findings
    )
    return (Row(count_of(count, "warning"), mark="warning"),) if count else ()


def broken(text: str, limit: int) -> list[str]:
    """Break a name after its joints, and where there is none anywhere, into pieces that fit."""
    pieces = [
        part[n : n + limit]
        for part in re.findall(r"[^ _.-]*[ _.-]?", text)
        for n in range(0, len(part), limit)
    ]
    found: list[str] = []
    for piece in pieces:
        if found and len((found[-1] + piece).rstrip()) <= limit:
            found[-1] += piece
        else:
            found.append(piece)
    return [line.strip() for line in found if line.strip()]
