"""What is written on the drawing of a line, and the drawing itself."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from itertools import pairwise
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.lay.centreline import point_at, sample
from firmpedal.report.drawing import Note, Subject, draw, ringed
from firmpedal.report.lengths import degrees
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.shape import Centreline, Point
    from firmpedal.lay.tube import TubeShape
    from firmpedal.model.display import Display
    from firmpedal.report.sheet import Drawing

MANY_BENDS = 6  # with more, the angles stand in the table only
NEARBY = 1e-4  # of the length: how far apart two points are taken to find a direction


@lru_cache(maxsize=256)  # placing the words is slow, and a change leaves most lines as they are
def picture(line: LaidLine, display: Display) -> Drawing | None:
    """Draw a line as far as its points are known; None where fewer than two neighbours are."""
    if line.tube and line.tube.centreline:
        subject = _tube_subject(line, line.tube, line.tube.centreline, display)
    else:
        subject = _path_subject(line)
    if not subject.pieces:
        return None
    drawing = draw(subject, display.unit(Dimension.LENGTH) or "mm")
    return replace(drawing, caption=_caption(line))


def _caption(line: LaidLine) -> str:
    if line.tube and line.tube.centreline:
        clamps = " Bars: clamps, c1 and on." if line.supports.stations else ""
        return f"A first end, B last end. Lengths: true, of the straights between bends.{clamps}"
    return "A first end, B last end. Dashed: the declared path. The shape of the line is not worked out."


def _tube_subject(line: LaidLine, tube: TubeShape, shape: Centreline, display: Display) -> Subject:
    points, _ = sample(shape, shape.developed_length)
    path = tuple(_point(point) for point in points)
    clamps = tuple(_clamp(shape, station.middle) for station in line.supports.stations)
    notes = [*_end_notes(shape.corners), *_bend_notes(tube, shape)]
    notes += [*_straight_notes(tube, shape, display), *_clamp_notes(clamps)]
    ends = (shape.corners[0], shape.corners[-1])
    return Subject((path,), ends, clamps, tuple(notes), line.stock.outside_diameter.middle)


def _end_notes(corners: tuple[Point, ...], names: str = "AB") -> list[Note]:
    first, last = _towards(corners[1], corners[0]), _towards(corners[-2], corners[-1])
    ends = zip(names, (corners[0], corners[-1]), (first, last), strict=True)
    return [Note(name, at, (out,), name, out, bold=True) for name, at, out in ends]


def _bend_notes(tube: TubeShape, shape: Centreline) -> list[Note]:
    notes = []
    stations = shape.tangent_stations
    for number, bend in enumerate(tube.bends):
        before = _towards(shape.corners[number], shape.corners[number + 1])
        after = _towards(shape.corners[number + 1], shape.corners[number + 2])
        out = _point(np.array(before) - np.array(after))
        middle = point_at(shape, (stations[2 * number + 1] + stations[2 * number + 2]) / 2)
        short = ringed(number + 1)
        text = short if len(tube.bends) > MANY_BENDS else ringed(number + 1, degrees(bend.angle))
        notes.append(Note(text, middle, (before, after), short, out, bold=True, ringed=True))
    return notes


def _straight_notes(tube: TubeShape, shape: Centreline, display: Display) -> list[Note]:
    notes = []
    for number, straight in enumerate(tube.straights):
        start, stop = (np.array(shape.tangent_points[2 * number + n]) for n in (0, 1))
        along = _towards(shape.corners[number], shape.corners[number + 1])
        notes.append(Note(display.value(straight), _point((start + stop) / 2), (along,)))
    return notes


def _clamp(shape: Centreline, station: float) -> tuple[Point, Point]:
    near = NEARBY * shape.developed_length
    before, after = max(station - near, 0.0), min(station + near, shape.developed_length)
    return point_at(shape, station), _towards(point_at(shape, before), point_at(shape, after))


def _clamp_notes(clamps: tuple[tuple[Point, Point], ...]) -> list[Note]:
    return [Note(f"c{number}", at, (along,)) for number, (at, along) in enumerate(clamps, 1)]


def _path_subject(line: LaidLine) -> Subject:
    """The declared points that are known, joined where neighbours are."""
    points = [position.point if position.known else None for position in line.points]
    joined = [(one, other) for one, other in pairwise(points) if one is not None and other is not None]
    ends = tuple(point for point in (points[0], points[-1]) if point is not None)
    notes = []
    for number, at in enumerate(points):
        if at is not None:
            name = {0: "A", len(points) - 1: "B"}.get(number, str(number + 1))
            out = _away(points, number)
            notes.append(Note(name, at, (out,), name, out, bold=name in "AB"))
    return Subject(tuple(joined), ends, (), tuple(notes), line.drawn_width, dashed=True)


def _away(points: list[Point | None], number: int) -> Point:
    """The direction out of a corner, or out of an end."""
    here = points[number]
    pulls = [
        np.array(_towards(other, here))
        for other in points[max(number - 1, 0) : number + 2]
        if other is not None and other != here and here is not None
    ]
    return _point(sum(pulls)) if pulls else (0.0, 0.0, 1.0)  # type: ignore[arg-type]


def _towards(start: Point, stop: Point) -> Point:
    """The direction from one point to another, of length one."""
    away = np.array(stop) - np.array(start)
    return _point(away / (float(np.linalg.norm(away)) or 1.0))


def _point(array: np.ndarray) -> Point:
    return (float(array[0]), float(array[1]), float(array[2]))
