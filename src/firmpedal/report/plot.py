"""A curve against another figure, in one ink: axes with round steps, curves named at their ends, limits.

What is drawn comes in the units that are shown, already words and numbers; nothing is worked out here.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from firmpedal.report.placing import LETTER_WIDTH, Box
from firmpedal.report.sheet import Drawing, Label, Stroke

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from firmpedal.report.sheet import Mark

Flat = tuple[float, float]

WIDTH, TALL = 490.0, 260.0  # points: the width of the page between its margins
LEFT, BELOW, ABOVE = 46.0, 50.0, 24.0
LETTERS = 10.5  # nothing on paper is smaller
APART = 12.5  # between the names of two curves
NEXT = 22.0  # from the end of the curves to their names: room for a leader
WIDEST_NAME = 26  # letters; longer names take too much of the picture
STEPS = (1, 2, 5, 10)
MARKS = 7  # about so many figures along an axis
HATCH = 5.0


@dataclass(frozen=True, slots=True)
class Axis:
    """What is shown along one side, with its unit, from `low` to `high`."""

    words: str
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Curve:
    """Points of one curve in order of their first coordinate, and its name in a few words."""

    words: str
    points: tuple[Flat, ...]
    dashed: bool = False
    bold: bool = False


@dataclass(frozen=True, slots=True)
class Band:
    """All that lies between two curves with the same first coordinates: a result that is a range."""

    words: str
    low: tuple[Flat, ...]
    high: tuple[Flat, ...]


@dataclass(frozen=True, slots=True)
class Limit:
    """A line across the picture that should not be passed; upright if it limits what is shown along."""

    words: str
    at: float
    upright: bool = False


@dataclass(frozen=True, slots=True)
class Frame:
    """Where the axes stand on the paper, and how far a curve can go."""

    along: Axis
    up: Axis
    right: float

    def at(self, point: Flat) -> Flat:
        """A point of the figures on the paper."""
        x = LEFT + _share(point[0], self.along) * (self.right - LEFT)
        y = BELOW + _share(point[1], self.up) * (TALL - ABOVE - BELOW)
        return round(x, 2), round(y, 2)


def plot(
    along: Axis, up: Axis, shown: Sequence[Curve | Band], limits: Sequence[Limit] = (), caption: str = ""
) -> Drawing:
    """Draw curves and bands over one figure, with limits.

    Args:
        along: The axis from left to right.
        up: The axis from below upwards.
        shown: Curves and bands; what leaves the axes is cut off there.
        limits: Lines that should not be passed.
        caption: What the picture shows, for who cannot see it.

    Raises:
        ValueError: An axis has no length.
    """
    if not (along.low < along.high and up.low < up.high):
        raise ValueError("an axis has to go from a lower to a higher figure")
    names = [name for each in shown for name in _lines_of(each.words)]
    names += [name for each in limits if not each.upright for name in _lines_of(each.words)]
    letters = max(map(len, names), default=0)
    frame = Frame(along, up, WIDTH - NEXT - LETTER_WIDTH * LETTERS * letters)
    marks: list[Mark] = [*_grid(frame), *_titles(frame)]
    ends: list[tuple[str, Flat]] = []
    for each in shown:
        drawn, end = _band(each, frame) if isinstance(each, Band) else _curve(each, frame)
        marks += drawn
        ends += [(each.words, end)] if end else []
    for limit in limits:
        marks += _limit(limit, frame)
        ends += (
            [] if limit.upright or not _within(limit.at, up) else [(limit.words, _right_end(limit, frame))]
        )
    return Drawing((WIDTH, TALL), (*marks, *_names(ends, frame)), caption)


def _share(number: float, axis: Axis) -> float:
    return (number - axis.low) / (axis.high - axis.low)


def _within(number: float, axis: Axis) -> bool:
    return axis.low <= number <= axis.high


def round_steps(axis: Axis) -> list[float]:
    """The figures written along an axis: whole multiples of 1, 2 or 5 times a power of ten."""
    rough = (axis.high - axis.low) / MARKS
    power = 10.0 ** math.floor(math.log10(rough))
    step = next(n * power for n in STEPS if n * power >= rough * (1 - 1e-9))
    first, last = math.ceil(axis.low / step - 1e-9), math.floor(axis.high / step + 1e-9)
    return [n * step for n in range(first, last + 1)]


def _figure(number: float) -> str:
    return f"{number:,.10g}" if abs(number) > 1e-12 else "0"


def _grid(frame: Frame) -> list[Mark]:
    """The frame, thin lines at round figures, and the figures."""
    found: list[Mark] = []
    (left, low), (right, high) = _corners(frame)
    for number in round_steps(frame.along):
        x = frame.at((number, frame.up.low))[0]
        found.append(Stroke(((x, low), (x, high)), 0.25))
        found.append(Label(_figure(number), (x, low - 10), LETTERS))
    for number in round_steps(frame.up):
        y = frame.at((frame.along.low, number))[1]
        found.append(Stroke(((left, y), (right, y)), 0.25))
        found.append(Label(_figure(number), (left - 5, y), LETTERS, "end"))
    found.append(Stroke(((left, high), (left, low), (right, low)), 1.0))
    return found


def _corners(frame: Frame) -> tuple[Flat, Flat]:
    return frame.at((frame.along.low, frame.up.low)), frame.at((frame.along.high, frame.up.high))


def _titles(frame: Frame) -> list[Mark]:
    (left, low), (right, high) = _corners(frame)
    return [
        Label(frame.along.words, ((left + right) / 2, low - 38), LETTERS, bold=True),
        Label(frame.up.words, (4, high + 13), LETTERS, "start", bold=True),
    ]


def _curve(curve: Curve, frame: Frame) -> tuple[list[Mark], Flat | None]:
    pieces = list(_clipped(curve.points, frame))
    weight = 2.2 if curve.bold else 1.3
    strokes: list[Mark] = [Stroke(tuple(map(frame.at, piece)), weight, curve.dashed) for piece in pieces]
    return strokes, frame.at(pieces[-1][-1]) if pieces else None


def _band(band: Band, frame: Frame) -> tuple[list[Mark], Flat | None]:
    """Both edges and thin upright lines between them."""
    edges = [_curve(Curve(band.words, points), frame) for points in (band.low, band.high)]
    found = [mark for marks, _ in edges for mark in marks]
    (left, _), (right, _) = _corners(frame)
    width = frame.along.high - frame.along.low
    for n in range(1, int((right - left) / HATCH)):
        x = frame.along.low + width * n * HATCH / (right - left)
        low, high = (_height(points, x) for points in (band.low, band.high))
        if low is not None and high is not None and high > frame.up.low and low < frame.up.high:
            ends = (max(low, frame.up.low), min(high, frame.up.high))
            found.append(Stroke(tuple(frame.at((x, y)) for y in ends), 0.3))
    tops = [end for _, end in edges if end]
    middle = (max(x for x, _ in tops), sum(y for _, y in tops) / len(tops)) if tops else None
    return found, middle


def _height(points: tuple[Flat, ...], x: float) -> float | None:
    """The second coordinate of a curve at a first one, if it goes there."""
    for (x0, y0), (x1, y1) in pairwise(points):
        if x0 <= x <= x1 and x0 < x1:
            return y0 + (y1 - y0) * (x - x0) / (x1 - x0)
    return None


def _clipped(points: tuple[Flat, ...], frame: Frame) -> Iterable[tuple[Flat, ...]]:
    """The pieces of a curve that lie inside the axes."""
    piece: list[Flat] = []
    for one, other in pairwise(points):
        inside = _inside(one, other, frame)
        if inside is None:
            continue
        start, end = inside
        if piece and piece[-1] != start:
            yield tuple(piece)
            piece = []
        piece += [end] if piece else [start, end]
    if piece:
        yield tuple(piece)


def _inside(one: Flat, other: Flat, frame: Frame) -> tuple[Flat, Flat] | None:
    """The part of a straight piece inside the axes."""
    part = Box(frame.along.low, frame.up.low, frame.along.high, frame.up.high).part_of((one, other))
    return None if part is None else (_between(one, other, part[0]), _between(one, other, part[1]))


def _between(one: Flat, other: Flat, share: float) -> Flat:
    if share in (0.0, 1.0):
        return other if share else one
    return one[0] + share * (other[0] - one[0]), one[1] + share * (other[1] - one[1])


def _limit(limit: Limit, frame: Frame) -> list[Mark]:
    (left, low), (right, high) = _corners(frame)
    if limit.upright:
        if not _within(limit.at, frame.along):
            return []
        x = frame.at((limit.at, frame.up.low))[0]
        return [
            Stroke(((x, low - 16), (x, high)), 1.0, dashed=True),
            Label(limit.words, (x, low - 22), LETTERS, _anchor(limit.words, x)),
        ]
    if not _within(limit.at, frame.up):
        return []
    y = _right_end(limit, frame)[1]
    return [Stroke(((left, y), (right, y)), 1.0, dashed=True)]


def _anchor(words: str, x: float) -> str:
    """Middle, unless the words would leave the paper."""
    return "end" if x + LETTER_WIDTH * LETTERS * len(words) / 2 > WIDTH else "middle"


def _right_end(limit: Limit, frame: Frame) -> Flat:
    return frame.at((frame.along.high, limit.at))


def _lines_of(words: str) -> list[str]:
    """A name in lines that leave most of the width to the picture."""
    lines = [""]
    for word in words.split():
        fits = len(lines[-1]) + 1 + len(word) <= WIDEST_NAME
        lines[-1:] = [f"{lines[-1]} {word}".strip()] if fits or not lines[-1] else [lines[-1], word]
    return lines


def _names(ends: list[tuple[str, Flat]], frame: Frame) -> list[Mark]:
    """Each name to the right of the picture, as near to its curve's end as the others let it."""
    # Of curves that leave the picture at the top, the first to leave is named highest.
    ordered = sorted(ends, key=lambda each: (each[1][1], -each[1][0]))
    rooms = [len(_lines_of(words)) * APART for words, _ in ordered]
    middles = _spread([y for _, (_, y) in ordered], rooms, (0.0, TALL))
    found: list[Mark] = []
    start = frame.right + NEXT - 4
    for (words, end), middle in zip(ordered, middles, strict=True):
        lines = _lines_of(words)
        found.append(Stroke((end, (start - 3, round(middle, 2))), 0.4))
        top = middle + (len(lines) - 1) * APART / 2
        found += [
            Label(line, (start, round(top - n * APART, 2)), LETTERS, "start") for n, line in enumerate(lines)
        ]
    return found


def _spread(wanted: list[float], rooms: list[float], between: tuple[float, float]) -> list[float]:
    """Move names apart, from below upwards, then back down from the top edge."""
    low, high = between
    found: list[float] = []
    edge = low
    for middle, room in zip(wanted, rooms, strict=True):
        found.append(max(middle, edge + room / 2))
        edge = found[-1] + room / 2
    edge = high
    for n in reversed(range(len(found))):
        found[n] = min(found[n], edge - rooms[n] / 2)
        edge = found[n] - rooms[n] / 2
    return found
