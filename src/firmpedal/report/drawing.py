"""A line drawn to scale in two views, as marks on paper: its path, bends, ends and clamps."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from firmpedal.report.placing import LETTER_WIDTH, Box, Placer, box_of
from firmpedal.report.sheet import Dot, Drawing, Label, Mark, Stroke
from firmpedal.report.views import PAIRS, POINTS_PER_METRE, SCALES, Extent, Placed, extent
from firmpedal.units import from_unit

if TYPE_CHECKING:
    from firmpedal.lay.shape import Point
    from firmpedal.report.views import Flat, Pair, View

WIDTH = 490.0  # points: the width of the page between its margins
TALLEST = 296.0
SHORT = 190.0  # of a drawing that shows a declared path only
AROUND = 30.0  # room for labels around a view
TITLE = 27.0
BELOW = 46.0  # room under the lowest view for its title and the scale bar
RING = 7.6  # radius around a number of one digit
NARROWEST = 118.0
BETWEEN = 8.0
RINGS_ROOM = 4.0  # round a title: a ring is taller than the letters in it
LETTERS = 10.5
THINNEST = 2.2
CLAMP_BAR = 6.5
BAR_LENGTHS = {"in": (0.5, 1, 2, 3, 6, 12, 24, 36, 60), "mm": (10, 20, 50, 100, 200, 500, 1000)}
LONGEST_BAR = 120.0


@dataclass(frozen=True, slots=True)
class Note:
    """Words at a point of a line. They stand in the view that shows `directions` best.

    One direction is shown best where it looks longest, two where they open widest. `short` stands
    in the other view. `outward` is where the words belong; without it they stand square to the line.
    """

    text: str
    at: Point
    directions: tuple[Point, ...]
    short: str = ""
    outward: Point | None = None
    bold: bool = False
    ringed: bool = False


@dataclass(frozen=True, slots=True)
class Subject:
    """What is drawn: pieces of path that hang together, and what is written on them. Lengths in metres."""

    pieces: tuple[tuple[Point, ...], ...]
    ends: tuple[Point, ...]
    clamps: tuple[tuple[Point, Point], ...]  # place, and direction of the line there
    notes: tuple[Note, ...]
    thickness: float
    dashed: bool = False


def draw(subject: Subject, unit: str) -> Drawing:
    """Draw a line to scale in the two views that show most of it."""
    path = tuple(point for piece in subject.pieces for point in piece)
    pair, extents, scale = _chosen(path, SHORT if subject.dashed else TALLEST)
    views, size = _placed(pair, extents, POINTS_PER_METRE / scale)
    marks = [mark for view in views for mark in _outline(subject, view)]
    weight = _weight(subject, POINTS_PER_METRE / scale)
    placer = Placer(Box(0, TITLE, size[0], size[1]), thick=(weight - THINNEST) / 2)
    marks += _titles(views, extents, placer)
    placer.segments += [
        piece for view in views for points in subject.pieces for piece in pairwise(map(view.at, points))
    ]
    for note in subject.notes:
        marks += _written(note, views, placer)
    marks += _scale_bar(unit, scale, max(max(each.width, each.height) for each in extents))
    return Drawing(size, tuple(marks))


def _chosen(path: tuple[Point, ...], tallest: float) -> tuple[Pair, list[Extent], float]:
    """The pair of views, and the scale, that put the longest line on the paper."""
    found = []
    for pair in PAIRS:
        extents = [extent([view.flat(point) for point in path]) for view in pair.views]
        fitting = (n for n in SCALES if _fits(pair, extents, POINTS_PER_METRE / n, tallest))
        scale = next(fitting, SCALES[-1])
        # rounded, so that a mirror image, equal but for the last digit, gets the same views
        shown = round(sum(view.shown_length(path) for view in pair.views) / scale, 6)
        found.append((shown, pair, extents, scale))
    _, pair, extents, scale = max(found, key=lambda each: each[0])
    return pair, extents, scale


def _sizes(pair: Pair, extents: list[Extent], scale: float) -> tuple[list[float], list[float]]:
    """Width and height of the room of each view."""
    widths = [max(each.width * scale + 2 * AROUND, NARROWEST) for each in extents]
    heights = [each.height * scale + 2 * AROUND for each in extents]
    if pair.beside:
        heights = [max(heights)] * 2
    return widths, heights


def _fits(pair: Pair, extents: list[Extent], scale: float, tallest: float) -> bool:
    widths, heights = _sizes(pair, extents, scale)
    wide = sum(widths) + BETWEEN if pair.beside else max(widths)
    tall = heights[0] if pair.beside else sum(heights) + TITLE
    return wide <= WIDTH and tall + BELOW <= tallest


def _placed(pair: Pair, extents: list[Extent], scale: float) -> tuple[list[Placed], Flat]:
    """Give each view its place: side by side, or the first above the second."""
    widths, heights = _sizes(pair, extents, scale)
    if pair.beside:
        gap = (WIDTH - sum(widths)) / 3
        middles = [gap + widths[0] / 2, 2 * gap + widths[0] + widths[1] / 2]
        lows, tall = [BELOW] * 2, heights[0] + BELOW
    else:
        middles = [WIDTH / 2] * 2
        lows, tall = [BELOW + heights[1] + TITLE, BELOW], sum(heights) + BELOW + TITLE
    placed = []
    for view, each, middle, low, height in zip(pair.views, extents, middles, lows, heights, strict=True):
        across = middle - (each.left + each.width / 2) * scale
        upward = low + height / 2 - (each.low + each.height / 2) * scale
        placed.append(Placed(view, (across, upward), scale))
    return placed, (WIDTH, round(tall, 2))


def _outline(subject: Subject, view: Placed) -> list[Mark]:
    """The line itself in one view, with its ends and clamps."""
    weight = _weight(subject, view.scale)
    strokes: list[Mark] = [
        Stroke(tuple(_rounded(view.at(point)) for point in piece), weight, subject.dashed)
        for piece in subject.pieces
    ]
    dots: list[Mark] = [Dot(_rounded(view.at(end)), round(weight / 2 + 2, 2)) for end in subject.ends]
    return strokes + dots + [_bar(view, place, along) for place, along in subject.clamps]


def _weight(subject: Subject, scale: float) -> float:
    """How thick the line is drawn [pt]."""
    return THINNEST if subject.dashed else round(max(subject.thickness * scale, THINNEST), 2)


def _bar(view: Placed, place: Point, along: Point) -> Mark:
    """A clamp: a short bar across the line."""
    (x, y), (u, v) = view.at(place), view.view.flat(along)
    size = math.hypot(u, v) or 1.0
    u, v = (u / size, v / size) if size > 1e-6 else (1.0, 0.0)
    ends = ((x - CLAMP_BAR * v, y + CLAMP_BAR * u), (x + CLAMP_BAR * v, y - CLAMP_BAR * u))
    return Stroke((_rounded(ends[0]), _rounded(ends[1])), 2.0)


def _titles(views: list[Placed], extents: list[Extent], placer: Placer) -> list[Mark]:
    found: list[Mark] = []
    for view, each in zip(views, extents, strict=True):
        middle = view.origin[0] + (each.left + each.width / 2) * view.scale
        low = view.origin[1] + each.low * view.scale - AROUND
        for words, drop, bold in zip(view.view.words, (2.0, 15.0), (True, False), strict=True):
            found.append(
                placer.block(Label(words, _rounded((middle, low - drop)), LETTERS, bold=bold), RINGS_ROOM)
            )
    return found


def _written(note: Note, views: list[Placed], placer: Placer) -> list[Mark]:
    """Write a note in the view that shows it best, and its short form in the other."""
    best = max(views, key=lambda view: round(_shown(note, view.view), 6))
    marks: list[Mark] = []
    for view in views:
        text = note.text if view is best else note.short
        if text:
            towards = _towards(note, view.view)
            placed = placer.place(text, view.at(note.at), towards, LETTERS, bold=note.bold)
            marks += [*placed, *_rings(note, placed)]
    return marks


def _rings(note: Note, placed: list[Mark]) -> list[Mark]:
    """A ring around the number that a note begins with."""
    label = placed[-1]
    if not note.ringed or not isinstance(label, Label):
        return []
    digits = len(label.text.split()[0])
    x, y = box_of(label).left + (1 + digits / 2) * LETTER_WIDTH * label.size, label.at[1]
    radius = RING + (digits - 1) * 1.6
    points = (
        (x + radius * math.cos(n * math.pi / 16), y + radius * math.sin(n * math.pi / 16)) for n in range(33)
    )
    return [Stroke(tuple(_rounded(point) for point in points), 0.9)]


def ringed(number: int, words: str = "") -> str:
    """The text of a note that begins with a number in a ring: blanks leave room for the ring."""
    return f" {number}  {words}" if words else f" {number} "


def _shown(note: Note, view: View) -> float:
    flat = [view.flat(direction) for direction in note.directions]
    if len(flat) == 1:
        return math.hypot(*flat[0])
    (a, b), (c, d) = flat
    return abs(a * d - b * c)


def _towards(note: Note, view: View) -> float:
    x, y = view.flat(note.outward or note.directions[0])
    if math.hypot(x, y) < 1e-6:
        return math.pi / 2
    return math.atan2(y, x) if note.outward else math.atan2(x, -y)


def _scale_bar(unit: str, scale: float, longest: float) -> list[Mark]:
    """A bar of a round length at the drawing's scale, no longer than what is drawn [m] where that can be."""
    sizes = BAR_LENGTHS.get(unit, BAR_LENGTHS["mm"])
    name = unit if unit in BAR_LENGTHS else "mm"
    lengths = [(size, from_unit(size, name) * POINTS_PER_METRE / scale) for size in sizes]
    room = min(LONGEST_BAR, longest * POINTS_PER_METRE / scale)
    size, length = max((each for each in lengths if each[1] <= room), default=lengths[0])
    left, low = 6.0, 8.0
    ticks = (
        Stroke(((x, low - 4), (x, low + 4)), 1.2) for x in (left, left + length / 2, round(left + length, 2))
    )
    bar = Stroke(((left, low), (round(left + length, 2), low)), 1.2)
    words = f"{size:g} {name}, scale 1 : {scale:g}"
    return [bar, *ticks, Label(words, (round(left + length + 8, 2), low), LETTERS, "start")]


def _rounded(point: Flat) -> Flat:
    return (round(point[0], 2), round(point[1], 2))
