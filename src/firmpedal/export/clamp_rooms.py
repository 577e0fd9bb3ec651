"""The room that clamps take: a round block about the line at each of its clamps.

As wide as cushion and band can be round the line, and as long as the band; where a clamp's place is a range
the block is that much longer. All of it is an estimate, as no standard was read, so the largest is drawn.
The foot and its bolt have no room: which way they stand is not in the file.
"""

from __future__ import annotations

from functools import cache
from itertools import pairwise
from math import dist
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.catalog import catalogue
from firmpedal.decide.clamp_sizes import clamp_size
from firmpedal.export.room import ESTIMATE, Room, Rooms
from firmpedal.lay.along import point_at
from firmpedal.lay.clip import point_on
from firmpedal.model.aircraft import find
from firmpedal.model.circuit import Support
from firmpedal.model.part import Category

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.shape import Point
    from firmpedal.model.part import Part
    from firmpedal.pipeline import Evaluation

FEET = "the foot and bolt of each clamp: which way they stand is not in the file. Look at the place itself"


def clamp_rooms(evaluation: Evaluation, line: LaidLine) -> Rooms:
    """The clamps of one line where they sit, and in words which have no room and why."""
    declared, stations = find(evaluation.aircraft.lines, line.name), line.supports.stations
    if declared is None or declared.support is not Support.CUSHIONED_CLAMPS or not stations:
        return (), ()
    on_line = _on(line)
    if on_line is None:
        return (), (f"clamps of {line.name}: where it runs is not known. Measure its points",)
    clamp, catalogued = clamp_size(evaluation, line), _clamps()
    across = clamp.across
    if not across.known:
        what = "what they go round is not known. Measure it across, sleeve and all"
        return (), (f"clamps of {line.name}: {what}",)
    point, length = on_line
    outside, width = catalogued.get(clamp.size) or _round_anything(across.high)
    rooms, left_out = [], []
    for number, station in enumerate(stations, 1):
        low, high = max(0.0, station.low - width / 2), min(length, station.high + width / 2)
        if low >= high:
            left_out.append(f"clamp {number} of {line.name}: it sits beyond the end of the line as declared")
            continue
        path = tuple(point(each) for each in (low, (low + high) / 2, high))
        name = f"room_of_clamp_{number}_of_{line.name}{ESTIMATE}"
        rooms.append(Room(name, path, outside / 2))
    return tuple(rooms), tuple(left_out)


@cache
def _clamps() -> dict[str, tuple[float, float]]:
    """The most that a clamp is across and that its band is wide [m], by its dash number."""
    found = {}
    for part in _catalogued():
        outside, band = part.dimension("outside_diameter"), part.dimension("band_width")
        if outside is not None and band is not None:
            found[part.designation.removeprefix("CLAMP-")] = (outside.high, band.high)
    return found


def _round_anything(across: float) -> tuple[float, float]:
    """The same for a clamp of no dash number: as thick as the thickest, and as wide as the widest."""
    around = max(
        outside.high - holds.high
        for part in _catalogued()
        if (outside := part.dimension("outside_diameter")) and (holds := part.dimension("holds_diameter"))
    )
    return across + around, max(width for _, width in _clamps().values())


def _catalogued() -> list[Part]:
    return [part for part in catalogue().parts if part.category is Category.CLAMP]


def _on(line: LaidLine) -> tuple[Callable[[float], Point], float] | None:
    """Where a station of a line is, and how long it is: along a bent tube, else along the declared path."""
    if line.tube is not None:
        bent = line.tube.centreline
        return (lambda station: point_at(bent, station), bent.developed_length) if bent else None
    if line.path is None:
        return None
    points = np.array(line.path)
    stations = np.concatenate([[0.0], np.cumsum([dist(a, b) for a, b in pairwise(line.path)])])
    return lambda station: point_on(points, stations, station), float(stations[-1])
