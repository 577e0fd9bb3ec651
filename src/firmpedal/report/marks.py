"""Marks on paper at full size: level words, numbers in rings, crosses, and the room that marks take."""

from __future__ import annotations

import math
import re
from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.report.placing import LETTER_HEIGHT, LETTER_WIDTH, Box
from firmpedal.report.sheet import Dot, Label, Mark, Stroke
from firmpedal.report.views import POINTS_PER_METRE

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.report.views import Flat

MILLIMETRE = POINTS_PER_METRE / 1000  # on paper, in points
ARM = 8.0  # of a cross, from its middle
LETTERS = 10.5  # size of the smallest letters, points
RING = "[\u2460-\u2473]"
RING_WIDTH = 1.1  # of the size


def text(words: str, at: Flat, size: float = LETTERS, anchor: str = "middle", *, bold: bool = False) -> Label:
    """A level label."""
    return Label(words, at, size, anchor, 0.0, bold)


def row(
    words: str, at: Flat, size: float = LETTERS, anchor: str = "middle", *, bold: bool = False
) -> tuple[Mark, ...]:
    """A level row of words in which a number in a ring stands by itself: the type has no such letter."""
    parts = [part for part in re.split(f"({RING})", words) if part]
    widths = [
        RING_WIDTH * size if re.fullmatch(RING, part) else LETTER_WIDTH * size * len(part) for part in parts
    ]
    left = at[0] - {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor] * sum(widths)
    found = []
    for part, width in zip(parts, widths, strict=True):
        ringed = re.fullmatch(RING, part) is not None
        place = (left + (width / 2 if ringed else 0.0), at[1])
        found.append(
            text(part, place, size * (1.1 if ringed else 1), "middle" if ringed else "start", bold=bold)
        )
        left += width
    return tuple(found)


def row_width(words: str, size: float) -> float:
    """How wide a row is."""
    rings = len(re.findall(RING, words))
    return size * (LETTER_WIDTH * (len(words) - rings) + RING_WIDTH * rings)


def cross(at: Flat) -> tuple[Mark, ...]:
    """A cross in a ring: a place that can be found to a tenth of a millimetre."""
    x, y = at
    ring = tuple(
        (x + ARM / 2 * math.cos(n * math.pi / 16), y + ARM / 2 * math.sin(n * math.pi / 16))
        for n in range(33)
    )
    return (
        Stroke(((x - ARM, y), (x + ARM, y)), 0.5),
        Stroke(((x, y - ARM), (x, y + ARM)), 0.5),
        Stroke(ring, 0.5),
    )


def label_box(label: Label) -> Box:
    """The room of a label, wherever it is anchored and however it is turned."""
    wide, tall = LETTER_WIDTH * label.size * len(label.text), LETTER_HEIGHT * label.size
    left = {"start": 0.0, "middle": -wide / 2, "end": -wide}[label.anchor]
    turn = math.radians(label.angle)
    corners = [
        (x * math.cos(turn) - y * math.sin(turn), x * math.sin(turn) + y * math.cos(turn))
        for x in (left, left + wide)
        for y in (-tall / 2, tall / 2)
    ]
    xs, ys = zip(*corners, strict=True)
    x, y = label.at
    return Box(x + min(xs), y + min(ys), x + max(xs), y + max(ys))


def bounds(marks: Iterable[Mark]) -> Box:
    """The least box around marks.

    Raises:
        ValueError: There are no marks.
    """
    boxes = [mark_box(mark) for mark in marks]
    return Box(
        min(box.left for box in boxes),
        min(box.low for box in boxes),
        max(box.right for box in boxes),
        max(box.high for box in boxes),
    )


def mark_box(mark: Mark) -> Box:
    if isinstance(mark, Label):
        return label_box(mark)
    if isinstance(mark, Dot):
        return Box(*mark.at, *mark.at).grown(mark.radius)
    xs, ys = zip(*mark.points, strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys)).grown(mark.weight / 2)


def moved(marks: Iterable[Mark], by: Flat) -> tuple[Mark, ...]:
    """Marks shifted on the paper."""

    def shifted(point: Flat) -> Flat:
        return (point[0] + by[0], point[1] + by[1])

    return tuple(
        replace(mark, points=tuple(map(shifted, mark.points)))
        if isinstance(mark, Stroke)
        else replace(mark, at=shifted(mark.at))
        for mark in marks
    )
