"""Places for labels in the order in which they are tried: beside what they are about, then farther away."""

from __future__ import annotations

import math
from itertools import pairwise, product
from typing import TYPE_CHECKING

from firmpedal.report.placing import LETTER_HEIGHT, Box
from firmpedal.report.schematic.room import Candidate
from firmpedal.report.schematic.words import LETTER, STEP, width_of
from firmpedal.report.sheet import Label, Stroke
from firmpedal.report.symbols import small
from firmpedal.report.symbols.shape import THIN
from firmpedal.report.symbols.small import LETTERS

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.report.placing import Flat
    from firmpedal.report.schematic.words import Row
    from firmpedal.report.sheet import Mark

AWAY = (22.0, 30.0, 40.0, 54.0, 70.0)  # of labels with a leader
ROUND = 16
BESIDE = 6.0
ALONG = 5.0  # steps along a line
BULGE = 10.0  # a hose's arc, and air


def size_of(rows: tuple[Row, ...]) -> Flat:
    return width_of(rows), STEP * (len(rows) - 1) + LETTER_HEIGHT * LETTERS


def written(rows: tuple[Row, ...], candidate: Candidate, towards: float) -> list[Mark]:
    """The letters of a label in its place, flush with the side that is nearer to what it is about."""
    box = candidate.box
    marks: list[Mark] = [] if candidate.leader is None else [Stroke(candidate.leader, THIN)]
    flush_right = (box.left + box.right) / 2 < towards
    for number, row in enumerate(rows):
        y = box.high - LETTER_HEIGHT * LETTERS / 2 - STEP * number
        left = box.right - row.width if flush_right else box.left
        marks += getattr(small, row.mark)(left, y) if row.mark else ()
        middle = left + row.indent + LETTER * len(row.text) / 2
        marks.append(Label(row.text, (middle, y), LETTERS, bold=row.bold))
    return marks


def beside_node(rows: tuple[Row, ...], box: Box, *, left_first: bool) -> list[Candidate]:
    """Beside a symbol, its middle level with it, then higher or lower, then at its corners, then away."""
    wide, tall = size_of(rows)
    middle = (box.low + box.high) / 2
    sides = (-1, 1) if left_first else (1, -1)
    lifts = (0.0, 5.0, -5.0, 10.0, -10.0, 16.0, -16.0, 24.0, -24.0)
    found = [
        Candidate(_box(_next_to(box, side, wide, gap), middle + lift, wide, tall))
        for gap in (BESIDE, BESIDE + 20, BESIDE + 34)
        for side, lift in product(sides, lifts)
    ]
    anchor = {side: (box.right if side > 0 else box.left, middle) for side in sides}
    found += [
        led(anchor[side], _box(_next_to(box, side, wide, gap), middle + lift, wide, tall))
        for gap in (*AWAY, 90.0)
        for side, lift in product(sides, (*lifts, 34.0, -34.0, 46.0, -46.0))
    ]
    return found


def _next_to(box: Box, side: int, wide: float, gap: float) -> float:
    """The middle of a label at one side of a box."""
    return box.right + gap + wide / 2 if side > 0 else box.left - gap - wide / 2


def along_line(rows: tuple[Row, ...], points: tuple[Flat, ...], *, left_first: bool) -> list[Candidate]:
    """Beside the straights of a line, the longest first, from their middles outwards; then away from it."""
    wide, tall = size_of(rows)
    legs = sorted(pairwise(points), key=lambda leg: -round(math.dist(*leg), 2))
    # beside a straight that is shorter than itself a label would seem to be about something else
    legs = legs[:1] + [leg for leg in legs[1:] if math.dist(*leg) > tall]
    sides = (-1, 1) if left_first else (1, -1)
    found: list[tuple[float, Candidate]] = []
    for place, leg in enumerate(legs):
        for away, at in _stops(leg):
            for turn, side in enumerate(sides):
                for gap in (BESIDE, BULGE + BESIDE):
                    centre = _off(leg, at, side, gap, wide, tall)
                    cost = away + 18 * place + 9 * turn + gap
                    found.append((round(cost, 3), Candidate(_box(*centre, wide, tall))))
    found.sort(key=lambda each: each[0])
    far = [
        led(at, _box(*_off(leg, at, side, gap, wide, tall), wide, tall))
        for gap in AWAY
        for leg in legs
        for _, at in sorted(_stops(leg))
        for side in sides
    ]
    return [candidate for _, candidate in found] + far


def _stops(leg: tuple[Flat, Flat]) -> Iterator[tuple[float, Flat]]:
    """Points of a straight, each with how far it is from the middle."""
    length = math.dist(*leg)
    count = max(int(length / 2 / ALONG), 1)
    for n in range(-count, count + 1):
        share = 0.5 + n / (2 * count) * 0.9
        yield (
            abs(share - 0.5) * length,
            (
                leg[0][0] + share * (leg[1][0] - leg[0][0]),
                leg[0][1] + share * (leg[1][1] - leg[0][1]),
            ),
        )


def _off(leg: tuple[Flat, Flat], at: Flat, side: int, gap: float, wide: float, tall: float) -> Flat:
    """The middle of a label beside a point of a straight."""
    if leg[0][0] == leg[1][0]:
        return at[0] + side * (gap + wide / 2), at[1]
    return at[0], at[1] + side * (gap + tall / 2)


def by_terminal(radius: float, at: Flat, outward: float, *, left_first: bool) -> list[Candidate]:
    """For the number of a joint: beside the pipe close to the symbol, `outward` being 1 up or -1 down."""
    sides = (-1, 1) if left_first else (1, -1)
    found = [
        Candidate(
            _box(at[0] + side * (radius + gap), at[1] + outward * (radius + up), 2 * radius, 2 * radius)
        )
        for gap in (3.0, 6.0)
        for up in (2.5, 5.0, 9.0, 14.0)
        for side in sides
    ]
    return found + _rings(at, radius)


def by_node(radius: float, box: Box, at: Flat, *, left_first: bool) -> list[Candidate]:
    """For the number of a joint that is the whole of a node: beside its symbol."""
    sides = (-1, 1) if left_first else (1, -1)
    found = [
        Candidate(_box(_next_to(box, side, 2 * radius, gap), at[1] + lift, 2 * radius, 2 * radius))
        for gap in (3.0, 8.0)
        for lift in (0.0, 6.0, -6.0, 12.0, -12.0)
        for side in sides
    ]
    return found + _rings(at, radius)


def _rings(at: Flat, radius: float) -> list[Candidate]:
    """Farther away in every direction, with a leader."""
    turns = [2 * math.pi * n / ROUND for n in range(ROUND)]
    found = []
    for away, turn in product(AWAY, turns):
        x, y = math.cos(turn), math.sin(turn)
        box = _box(at[0] + away * x, at[1] + away * y, 2 * radius, 2 * radius)
        found.append(Candidate(box, (at, (at[0] + (away - radius) * x, at[1] + (away - radius) * y))))
    return found


def led(at: Flat, box: Box) -> Candidate:
    """A place with a leader from a point to the label's edge."""
    return Candidate(box, (at, box.nearest(at)))


def _box(x: float, y: float, wide: float, tall: float) -> Box:
    return Box(x - wide / 2, y - tall / 2, x + wide / 2, y + tall / 2)
