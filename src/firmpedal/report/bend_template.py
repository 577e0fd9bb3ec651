"""One bend at full size in its own plane: a template to lay the bent tube on. In points, y up.

The top of the arc's centre line is the origin; the legs run down from it on both sides, the one that
comes from end A on the left.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.report.marks import LETTERS, MILLIMETRE, row
from firmpedal.report.sheet import Dot, Mark, Stroke

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.report.views import Flat

BEYOND = 3 * MILLIMETRE  # by which the ticks at the tangent points stand out on both sides
ARC_STEP = math.radians(1)
HEAD = 15.0
LINE = 13.5


@dataclass(frozen=True, slots=True)
class FlatBend:
    """A bend in its plane, lengths in points.

    `before` and `after` are the lengths of leg that are drawn; `mark` is the share of the arc at which the
    tube is marked for the bender.
    """

    angle: float
    radius: float
    before: float
    after: float
    outside_diameter: float
    mark: float


@dataclass(frozen=True, slots=True)
class BendWords:
    """What is written over the bend, and under its legs."""

    title: str
    lines: tuple[str, ...]
    before: tuple[str, ...]
    after: tuple[str, ...]


def path(bend: FlatBend, outward: float) -> tuple[Flat, ...]:
    """A line along the tube: the centre line, or one that lies `outward` of it."""
    half = bend.angle / 2
    steps = max(2, math.ceil(bend.angle / ARC_STEP))
    arc = [_at(bend, -half + bend.angle * n / steps, outward) for n in range(steps + 1)]
    (x, y), (x1, y1) = arc[0], arc[-1]
    first = (x - bend.before * math.cos(half), y - bend.before * math.sin(half))
    last = (x1 + bend.after * math.cos(half), y1 - bend.after * math.sin(half))
    return (*([first] if bend.before else []), *arc, *([last] if bend.after else []))


def _at(bend: FlatBend, turn: float, outward: float) -> Flat:
    """A point by its turn from the top of the arc."""
    reach = bend.radius + outward
    return (reach * math.sin(turn), reach * math.cos(turn) - bend.radius)


def bend_template(bend: FlatBend, words: BendWords) -> tuple[Mark, ...]:
    """Draw the tube's edges and centre line, where the bend begins and ends, the mark, and the words."""
    radius = bend.outside_diameter / 2
    edges = [path(bend, side) for side in (radius, -radius) if bend.radius + side > 0]
    ends = [(path(bend, radius)[n], path(bend, -radius)[n]) for n in (0, -1)] if len(edges) == 2 else []
    return (
        *(Stroke(edge, 1.0) for edge in edges),
        *(Stroke(end, 1.0) for end in ends),
        Stroke(path(bend, 0.0), 0.5, dashed=True),
        *_ticks(bend),
        *_heading(words, radius),
        *_leg_words(bend, words),
    )


def _ticks(bend: FlatBend) -> Iterator[Mark]:
    """Lines across the tube at the tangent points, and a heavy one with a dot at the builder's mark."""
    half, reach = bend.angle / 2, bend.outside_diameter / 2 + BEYOND
    for turn in (-half, half):
        yield Stroke((_at(bend, turn, -min(reach, bend.radius)), _at(bend, turn, reach)), 0.5)
    turn = bend.angle * bend.mark - half
    inner = min(bend.outside_diameter / 2, bend.radius)
    yield Stroke((_at(bend, turn, -inner), _at(bend, turn, inner)), 2.0)
    yield Dot(_at(bend, turn, reach + 2.5), 2.5)


def _heading(words: BendWords, radius: float) -> Iterator[Mark]:
    foot = radius + BEYOND + 9.0
    rows = (words.title, *words.lines)
    for number, line in enumerate(reversed(rows)):
        head = number == len(rows) - 1
        at = (0.0, foot + number * LINE + (3 if head else 0))
        yield from row(line, at, HEAD if head else LETTERS, bold=head)


def _leg_words(bend: FlatBend, words: BendWords) -> Iterator[Mark]:
    """Words under the end of each leg, away from the other one."""
    radius, line = bend.outside_diameter / 2, path(bend, 0.0)
    for (x, y), rows, anchor, way in (
        (line[0], words.before, "start", -1),
        (line[-1], words.after, "end", 1),
    ):
        wide = max((len(each) for each in rows), default=0) * LETTERS * 0.6
        near = x + way * min(radius, 6.0)
        edge = near if abs(near) > wide else near + way * (wide - abs(near))
        top = y - radius * math.cos(bend.angle / 2) - 10.0
        for number, each in enumerate(rows):
            yield from row(each, (edge, top - number * LINE), LETTERS, anchor)
