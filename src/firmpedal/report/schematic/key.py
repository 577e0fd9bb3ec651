"""The key under a diagram: what its lines and small marks mean, as far as they are there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.stock import LineKind
from firmpedal.report.schematic.words import LETTER
from firmpedal.report.sheet import Label
from firmpedal.report.symbols import line_marks, small
from firmpedal.report.symbols.shape import THIN, stroke
from firmpedal.report.symbols.small import LETTERS

if TYPE_CHECKING:
    from firmpedal.report.placing import Flat
    from firmpedal.report.sheet import Mark

SAMPLE, GAP, BETWEEN, LINE = 34.0, 6.0, 20.0, 19.0
ROOM = 8.0  # between the diagram and the key
WORDS = {
    LineKind.TUBE: "tube",
    LineKind.HOSE: "hose",
    LineKind.PLASTIC: "plastic",
    "number": "joint, as on cards",
    "moving": "its ends move",
    "warning": "see What was found",
    "plug": "plugged",
    "open": "nothing joined",
}


def key_marks(used: set[str], width: float) -> tuple[tuple[Mark, ...], float]:
    """The key as marks from the lower edge up, and its height."""
    rows: list[list[tuple[float, str]]] = [[]]
    x = 0.0
    for name, words in WORDS.items():
        if name not in used:
            continue
        wide = SAMPLE + GAP + LETTER * len(words)
        if rows[-1] and x + wide > width:
            rows.append([])
            x = 0.0
        rows[-1].append((x, name))
        x += wide + BETWEEN
    height = LINE * len(rows)
    marks: list[Mark] = [stroke((0, height + 2), (width, height + 2), weight=THIN)]
    for number, row in enumerate(rows):
        y = height - LINE * (number + 0.5) - 2
        for left, name in row:
            marks += _entry(name, left, y)
    return tuple(marks), height + ROOM


def _entry(name: str, left: float, y: float) -> list[Mark]:
    words = WORDS[name]
    middle = left + SAMPLE + GAP + LETTER * len(words) / 2
    return [*_sample(name, (left, y)), Label(words, (middle, y), LETTERS)]


def _sample(name: str, at: Flat) -> tuple[Mark, ...]:
    (x, y), middle = at, at[0] + SAMPLE / 2
    ends = ((x, y), (x + SAMPLE, y))
    if name == "number":
        return small.joint_number(1, (middle, y), small.number_radius(1))
    if name == "moving":
        return small.moving(middle - small.ARROW / 2, y)
    if name == "warning":
        return small.warning(middle - small.TRIANGLE / 2, y)
    if name in ("plug", "open"):
        mark = small.plug((middle, y)) if name == "plug" else small.open_end((middle + 3, y))
        return (stroke((x, y), (middle, y), weight=1.7), *mark)
    if name == LineKind.HOSE:
        return line_marks.hose(((x, y + 3), (x + SAMPLE, y + 3)))
    return line_marks.plastic(ends) if name == LineKind.PLASTIC else line_marks.tube(ends)
