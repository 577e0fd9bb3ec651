"""Which end of a finished tube goes through a hole in a panel first, and what is in its way."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise
from math import acos
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.fit.chain import nut_at
from firmpedal.formulas.bends import hole_for_bend, hole_for_lean
from firmpedal.lay.crossing import path_of
from firmpedal.lay.panels import passing
from firmpedal.lay.solids import reach_of
from firmpedal.lay.threading import Opening, goes_through
from firmpedal.model.aircraft import find
from firmpedal.model.shapes import Sheet
from firmpedal.quantity import Answer, Mark, Value, apply, exactly, worst
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from firmpedal.fit.assembly import Assembly
    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.panels import Passing
    from firmpedal.lay.shape import Centreline
    from firmpedal.lay.tube import TubeShape
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.circuit import Panel, Passage

    Array = NDArray[np.float64]

ROUNDING = 1e-9
THICKEST = from_unit(1, "in")  # no floor or wall is taken to be thicker while its thickness is unknown


@dataclass(frozen=True, slots=True)
class BendInHole:
    """One bend that has to go through, numbered from 1, and the hole that it needs."""

    number: int
    needs: Value


@dataclass(frozen=True, slots=True)
class Way:
    """A tube pushed through a hole with one end first, as far as it sits there.

    `nut` is None where no nut is known at that end. `clear` says whether the panel itself leaves room for
    what has gone through and what has not. `apart` says that the hole never holds two bends at once, nor
    one in the end: for these the hole that a bend needs by itself says too little.
    """

    end: str
    hole: Value
    nut: Value | None
    bends: tuple[BendInHole, ...]
    clear: Answer
    apart: Answer

    @property
    def nut_goes(self) -> Answer:
        return Answer.UNKNOWN if self.nut is None else self.hole.at_least(self.nut)

    @property
    def bends_go(self) -> Answer:
        """Whether everything that is bent goes through, the nut apart."""
        return worst((self.clear, self.apart, *(self.hole.at_least(bend.needs) for bend in self.bends)))


@dataclass(frozen=True, slots=True)
class Hole:
    """A hole that a tube sits in, once and surely: what the tube as it sits needs, and both ways through."""

    panel: Panel
    passage: Passage
    needs: Value
    ways: tuple[Way, ...]


@dataclass(frozen=True, slots=True)
class EndFirst:
    """A tube pushed through all its holes with one end first.

    `bends` are those between that end and the hole furthest from it, numbered from 1.
    """

    end: str
    nut_goes: Answer
    bends_go: Answer
    bends: tuple[int, ...]

    @property
    def bare(self) -> bool:
        """Whether this end gets its nut and flare only when it is through."""
        return Answer.NO in (self.nut_goes, self.bends_go)

    @property
    def later(self) -> tuple[int, ...]:
        """The bends that are made only when it is through."""
        return self.bends if self.bends_go is Answer.NO else ()


def unclear_passages(aircraft: Aircraft, line: LaidLine) -> tuple[Passing, ...]:
    """Where a bent tube is said to pass a panel, and nobody can tell where, or it does so more than once."""
    if line.tube is None or line.tube.centreline is None:
        return ()
    cuts = (passing(line.run, panel) for panel in aircraft.panels if find(panel.passes, line.name))
    return tuple(cut for cut in cuts if cut.unsure or len(cut.points) > 1)


def holes_of(aircraft: Aircraft, assembly: Assembly, line: LaidLine) -> tuple[Hole, ...]:
    """Find the declared holes that a bent tube sits in."""
    if line.tube is None or line.tube.centreline is None:
        return ()
    nuts = (_corners(assembly, line.name, "from"), _corners(assembly, line.name, "to"))
    found = []
    for panel in aircraft.panels:
        passage = find(panel.passes, line.name)
        cut = None if passage is None else passing(line.run, panel)
        if passage is not None and cut is not None and len(cut.points) == 1 and not cut.unsure:
            needs = hole_for_line(line, cut, passage.place)
            found.append(Hole(panel, passage, needs, ways_through(line, cut, passage, nuts)))
    return tuple(found)


def _corners(assembly: Assembly, line: str, end: str) -> Value | None:
    joint = assembly.joint_of(line, end)
    nut = None if joint is None else nut_at(joint, line, end)
    return None if nut is None else nut.corners


def best_end(holes: tuple[Hole, ...]) -> EndFirst:
    """Choose the end that goes first: what surely goes, then with its nut on, then with fewer bends."""
    ends = [_end_first(holes, number) for number in (1, 0)]
    order = [Answer.YES, Answer.UNKNOWN, Answer.NO]
    return min(ends, key=lambda one: (order.index(one.bends_go), order.index(one.nut_goes), len(one.bends)))


def _end_first(holes: tuple[Hole, ...], number: int) -> EndFirst:
    ways = [hole.ways[number] for hole in holes]
    furthest = max(ways, key=lambda way: len(way.bends))
    bends_go = worst(_bends_go(hole, number) for hole in holes)
    if len(holes) > 1 and furthest.bends and bends_go is Answer.YES and not all(map(_tried, holes)):
        bends_go = Answer.UNKNOWN  # two holes at once hold it more than each by itself
    bends = tuple(bend.number for bend in furthest.bends)
    return EndFirst(furthest.end, worst(way.nut_goes for way in ways), bends_go, bends)


def _tried(hole: Hole) -> bool:
    return hole.passage.tried is Answer.YES


def _bends_go(hole: Hole, number: int) -> Answer:
    """What somebody has tried counts for more than what was worked out."""
    return hole.ways[number].bends_go if hole.passage.tried is Answer.UNKNOWN else hole.passage.tried


@lru_cache(maxsize=4096)
def ways_through(
    line: LaidLine, cut: Passing, passage: Passage, nuts: tuple[Value | None, Value | None]
) -> tuple[Way, ...]:
    """Work out both ways in which a bent tube can go through its hole.

    Args:
        line: The tube, bent.
        cut: Where it passes the panel, once and surely.
        passage: What the file says of the hole.
        nuts: Across the corners of the nut at its first and at its last end, where known.
    """
    shape = line.tube
    if shape is None or shape.centreline is None or len(cut.points) != 1:
        return ()
    station, _ = cut.points[0]
    thickness = thickness_of(cut.panel)
    middles = _middles(shape.centreline)
    bends = [
        (middle, BendInHole(number, _needs(line, shape, number, thickness, passage.place)))
        for number, middle in enumerate(middles, 1)
    ]
    ahead = {
        "from": tuple(bend for middle, bend in bends if middle < station),
        "to": tuple(bend for middle, bend in bends if middle > station),
    }
    hole = passage.hole.named(f"hole for {line.name} in {cut.panel.name}")
    return tuple(
        Way(
            end,
            hole,
            nut,
            ahead[end],
            _clear(cut, shape.centreline, hole, _widths(line, ahead[end]), end),
            _apart(shape.centreline, end, station, thickness.high + line.stock.outside_diameter.high),
        )
        for end, nut in zip(("from", "to"), nuts, strict=True)
    )


def _apart(line: Centreline, end: str, station: float, room: float) -> Answer:
    """Whether the hole holds one bend at most at a time, and a straight in the end.

    `room` is what the hole holds of the tube: as much as the panel is thick, and the tube's own width.
    """
    edges = line.tangent_stations
    arcs = [(edges[2 * n + 1], edges[2 * n + 2]) for n in range(len(line.bends))]
    if any(start - room / 2 < station < stop + room / 2 for start, stop in arcs):
        return Answer.UNKNOWN
    ahead = [arc for arc in arcs if (arc[1] < station) is (end == "from")]
    close = any(after[0] - before[1] < room for before, after in pairwise(ahead))
    return Answer.UNKNOWN if close else Answer.YES


def _widths(line: LaidLine, bends: tuple[BendInHole, ...]) -> tuple[Value, ...]:
    """How wide what goes through is, from the plain tube to the bend that needs most."""
    return (line.stock.outside_diameter, *(bend.needs for bend in bends))


def thickness_of(panel: Panel) -> Value:
    """A panel's thickness; while it is unknown anything up to an inch."""
    if panel.thickness.known:
        return panel.thickness
    label = f"thickness of {panel.name}, taken as at most {THICKEST / from_unit(1, 'in'):g} in"
    place = f"{panel.place}.thickness"
    return Value(label, Dimension.LENGTH, (0.0, THICKEST), Mark.ESTIMATE, place, "firmpedal-estimate")


def hole_for_line(line: LaidLine, cut: Passing, place: str) -> Value:
    """The hole that a line needs where it passes a panel, by how thick it is and how it leans there."""
    label = f"hole that {line.name} itself needs in {cut.panel.name}"
    lean = exactly(f"lean of {line.name} there", Dimension.ANGLE, _lean(line, cut), Mark.DERIVED, place=place)
    outside = line.stock.outside_diameter.named(f"outside diameter of {line.name}")
    straight = apply(
        hole_for_lean,
        label,
        place=place,
        outside_diameter=outside,
        panel_thickness=thickness_of(cut.panel),
        lean=lean,
    )
    return _bent_there(line, cut, straight)


def _bent_there(line: LaidLine, cut: Passing, straight: Value) -> Value:
    """What a tube needs whose bend sits in the hole: at most the room of balls along its centre line."""
    course = path_of(line.run)
    if not straight.known or course is None or not cut.points or not isinstance(cut.panel.where, Sheet):
        return straight
    points, _ = course
    axis, middle = cut.panel.where.axis, np.array(cut.points[0][1])
    high = points[:, axis] - middle[axis]
    aside = np.delete(points - middle, axis, axis=1)
    outside, thickness = line.stock.outside_diameter.high, thickness_of(cut.panel).high
    near = (abs(high) <= thickness / 2 + outside / 2) & (np.linalg.norm(aside, axis=1) <= straight.high)
    held = aside[near]
    across = float(np.linalg.norm(held[:, None] - held[None], axis=2).max()) if len(held) else 0.0
    # any round hole as wide as the furthest two places and a third more holds all of them (Jung, 1901)
    most = max(straight.high, across * 2 / 3**0.5 + outside)
    return replace(straight, span=(straight.low, most)) if _curved(points[near]) else straight


def _curved(points: Array) -> bool:
    """Whether a path has a bend."""
    steps = np.diff(points, axis=0)
    if len(steps) < 2:
        return False
    ways = steps / np.linalg.norm(steps, axis=1, keepdims=True)
    return float((ways @ ways[0]).min()) < 1 - ROUNDING


def _lean(line: LaidLine, cut: Passing) -> float:
    """The angle between a line and the square to the panel, where it goes through; 0 if unknown."""
    course = path_of(line.run)
    if course is None or not cut.points or not isinstance(cut.panel.where, Sheet):
        return 0.0
    points, stations = course
    number = int(np.clip(np.searchsorted(stations, cut.points[0][0]), 1, len(stations) - 1))
    step = points[number] - points[number - 1]
    share = abs(float(step[cut.panel.where.axis])) / float(np.linalg.norm(step))
    return acos(min(share, 1.0))


def _middles(line: Centreline) -> list[float]:
    """The stations of the middles of the bends."""
    edges = line.tangent_stations
    return [(edges[2 * n + 1] + edges[2 * n + 2]) / 2 for n in range(len(line.bends))]


def _needs(line: LaidLine, shape: TubeShape, number: int, thickness: Value, place: str) -> Value:
    bend = shape.bends[number - 1]
    return apply(
        hole_for_bend,
        f"hole that bend {number} of {line.name} needs",
        place=place,
        centreline_radius=bend.radius,
        outside_diameter=line.stock.outside_diameter,
        panel_thickness=thickness,
        bend_angle=bend.angle,
    )


def _clear(cut: Passing, shape: Centreline, hole: Value, widths: tuple[Value, ...], end: str) -> Answer:
    """Whether the panel leaves the tube room: surely, surely not, or it depends on figures with a range."""
    if not hole.known or not all(value.known for value in widths):
        return Answer.UNKNOWN
    thickness, station = thickness_of(cut.panel), cut.points[0][0]
    reach = _reach(cut)
    wide = Opening(hole.high, thickness.low, reach), min(value.low for value in widths)
    narrow = Opening(hole.low, thickness.high, reach), max(value.high for value in widths)
    return goes_through(shape, end, station, wide, narrow)


def _reach(cut: Passing) -> float:
    """How far the panel surely goes on round the place where the line passes it."""
    sheet = cut.panel.where
    if not isinstance(sheet, Sheet):
        return 0.0
    point, pairs = cut.points[0][1], reach_of(sheet, sheet.offset.middle, 0.0)
    others = [axis for axis in range(3) if axis != sheet.axis]
    return max(0.0, min(min(point[n] - pairs[n][0], pairs[n][1] - point[n]) for n in others))
