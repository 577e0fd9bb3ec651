"""Cutting a drawing into pieces that fit a page, with crosses at which the pieces are put together again.

Everything is in points, y up. A piece shows its own core and, where it meets a neighbour, a flap of the
neighbour's; the two crosses of a joint stand on both pieces.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING

from firmpedal.report.marks import ARM, LETTERS, MILLIMETRE, cross, label_box, mark_box, text
from firmpedal.report.placing import Box
from firmpedal.report.sheet import Label, Mark, Stroke

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.report.views import Flat

FLAP = 7 * MILLIMETRE  # of a neighbour that a piece shows beyond a joint
LEAST = 1e-9  # a part of a line shorter than this share of it is none


@dataclass(frozen=True, slots=True)
class Joint:
    """The line at which two pieces meet, from one cross to the other."""

    name: str
    crosses: tuple[Flat, Flat]

    @property
    def upright(self) -> bool:
        return self.crosses[0][0] == self.crosses[1][0]


@dataclass(frozen=True, slots=True)
class Tile:
    """One piece: what belongs to it, what it shows, and its joints to other pieces."""

    core: Box
    shown: Box
    joints: tuple[Joint, ...] = ()


def clip_line(points: tuple[Flat, ...], box: Box) -> tuple[tuple[Flat, ...], ...]:
    """The parts of a polyline that lie in a box, each a polyline again."""
    found: list[list[Flat]] = []
    for start, stop in pairwise(points):
        part = _clip_segment(start, stop, box)
        if part is None:
            continue
        if found and found[-1][-1] == part[0]:
            found[-1].append(part[1])
        else:
            found.append(list(part))
    return tuple(tuple(part) for part in found)


def _clip_segment(start: Flat, stop: Flat, box: Box) -> tuple[Flat, Flat] | None:
    """The part of a straight piece in a box, after Liang and Barsky."""
    first, last = 0.0, 1.0
    edges = ((box.left, box.right), (box.low, box.high))
    for here, there, (low, high) in zip(start, stop, edges, strict=True):
        step = there - here
        if step == 0:
            if not low <= here <= high:
                return None
            continue
        enter, leave = sorted(((low - here) / step, (high - here) / step))
        first, last = max(first, enter), min(last, leave)
    if last - first < LEAST:
        return None
    return _along(start, stop, first), _along(start, stop, last)


def _along(start: Flat, stop: Flat, share: float) -> Flat:
    """A point on a straight piece; its ends come back as they are."""
    if share in (0.0, 1.0):
        return stop if share else start
    return (start[0] + share * (stop[0] - start[0]), start[1] + share * (stop[1] - start[1]))


def clipped(marks: Iterable[Mark], box: Box) -> tuple[Mark, ...]:
    """What a box shows: lines cut at its edges; dots and words only where all of them is in it."""
    found: list[Mark] = []
    for mark in marks:
        if isinstance(mark, Stroke):
            found += [replace(mark, points=part) for part in clip_line(mark.points, box)]
        elif mark_box(mark).inside(box):
            found.append(mark)
    return tuple(found)


def tiles(whole: Box, room: Flat, flap: float) -> tuple[Tile, ...]:
    """Cut a box into as few equal pieces as fit a room, flaps included, row by row from below."""
    columns = _parts(whole.left, whole.right, room[0], flap)
    rows = _parts(whole.low, whole.high, room[1], flap)
    cores = [
        [Box(left, low, right, high) for left, right in pairwise(columns)] for low, high in pairwise(rows)
    ]
    return tuple(
        _tile(cores, row, column, flap) for row in range(len(cores)) for column in range(len(cores[0]))
    )


def _parts(low: float, high: float, room: float, flap: float) -> list[float]:
    if high - low <= room:
        return [low, high]
    count = math.ceil((high - low) / (room - 2 * flap))
    return [low + (high - low) * n / count for n in range(count + 1)]


def _tile(cores: list[list[Box]], row: int, column: int, flap: float) -> Tile:
    core, last_row, last_column = cores[row][column], len(cores) - 1, len(cores[0]) - 1
    shown = Box(
        core.left - (flap if column else 0),
        core.low - (flap if row else 0),
        core.right + (flap if column < last_column else 0),
        core.high + (flap if row < last_row else 0),
    )
    names = {edge: f"J{number}" for number, edge in enumerate(_edges(len(cores), len(cores[0])), 1)}
    joints = []
    for edge, name in names.items():
        if (row, column) in edge:
            first = cores[edge[0][0]][edge[0][1]]
            joints.append(Joint(name, _crosses(first, upright=edge[0][0] == edge[1][0])))
    return Tile(core, shown, tuple(joints))


def _edges(rows: int, columns: int) -> Iterator[tuple[tuple[int, int], tuple[int, int]]]:
    """Pairs of neighbours, by row and column."""
    for row in range(rows):
        for column in range(columns):
            if column + 1 < columns:
                yield (row, column), (row, column + 1)
            if row + 1 < rows:
                yield (row, column), (row + 1, column)


def _crosses(core: Box, *, upright: bool) -> tuple[Flat, Flat]:
    """Two crosses on the right or the upper edge of a piece."""
    if upright:
        return (core.right, core.low + (core.high - core.low) / 4), (
            core.right,
            core.high - (core.high - core.low) / 4,
        )
    return (core.left + (core.right - core.left) / 4, core.high), (
        core.right - (core.right - core.left) / 4,
        core.high,
    )


def inked(cut: tuple[Tile, ...], marks: tuple[Mark, ...]) -> tuple[Tile, ...]:
    """Leave out pieces on which nothing stands, and joints to them; the rest is numbered again."""
    kept = [tile for tile in cut if clipped(marks, tile.core)]
    names = [joint.name for tile in kept for joint in tile.joints]
    shared = dict.fromkeys(name for name in names if names.count(name) == 2)
    again = {name: f"J{number}" for number, name in enumerate(shared, 1)}
    return tuple(
        replace(
            tile,
            joints=tuple(
                replace(joint, name=again[joint.name]) for joint in tile.joints if joint.name in again
            ),
        )
        for tile in kept
    )


def piece(marks: Iterable[Mark], tile: Tile) -> tuple[Mark, ...]:
    """One piece of a drawing: what it shows, its frame, and its joints with their crosses."""
    shown = tile.shown
    frame = (
        (shown.left, shown.low),
        (shown.right, shown.low),
        (shown.right, shown.high),
        (shown.left, shown.high),
    )
    found: list[Mark] = [*clipped(marks, shown), Stroke((*frame, frame[0]), 0.3)]
    for joint in tile.joints:
        found += _drawn(joint, tile)
    return tuple(found)


def _drawn(joint: Joint, tile: Tile) -> Iterator[Mark]:
    """The line to cut along, the crosses on it, and the name of the joint beside the first."""
    (x, y), (x1, y1) = joint.crosses
    box = tile.shown
    line = ((x, box.low), (x, box.high)) if joint.upright else ((box.left, y), (box.right, y))
    yield Stroke(line, 0.8, dashed=True)
    yield from cross((x, y))
    yield from cross((x1, y1))
    beside = (x + 4, y + (ARM + 6 if joint.upright else -ARM - 6))
    yield text(joint.name, beside, LETTERS, "start", bold=True)


def words_inside(marks: Iterable[Mark], pieces: tuple[Tile, ...]) -> tuple[Mark, ...]:
    """Shift words that no piece would show as a whole into the piece that they begin in."""
    return tuple(_shifted(mark, pieces) if isinstance(mark, Label) else mark for mark in marks)


def _shifted(label: Label, pieces: tuple[Tile, ...]) -> Label:
    box = label_box(label)
    if any(box.inside(tile.shown) for tile in pieces):
        return label
    at = Box(*label.at, *label.at)
    shown = next((tile.shown for tile in pieces if at.inside(tile.core)), pieces[0].shown)
    across = min(shown.right - box.right, 0.0) or max(shown.left - box.left, 0.0)
    upward = min(shown.high - box.high, 0.0) or max(shown.low - box.low, 0.0)
    return replace(label, at=(label.at[0] + across, label.at[1] + upward))
