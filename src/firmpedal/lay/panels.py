"""Where lines pass declared panels: through which point, and what has to be known first."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from firmpedal.lay.crossing import crossing, path_of
from firmpedal.lay.solids import reach_of
from firmpedal.model.shapes import Box, UnknownShape
from firmpedal.model.space import Position
from firmpedal.model.surroundings import Zone
from firmpedal.quantity import Mark, Missing, Value, exactly, unknown
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.crossing import Crossing
    from firmpedal.lay.line_run import LineRun
    from firmpedal.lay.shape import Point
    from firmpedal.model.circuit import Panel
    from firmpedal.model.shapes import Sheet

THIN = from_unit(0.0001, "in")  # half of what a panel is cut as: thin enough to be a plane
ON_THE_SHEET = from_unit(1 / 4, "in")  # nobody measures a fitting's place on a panel more closely


@dataclass(frozen=True, slots=True)
class Passing:
    """One line at one panel: where it goes through, each place with its station along the line.

    `unsure` says what to measure before that holds: a place that is unknown, or a range inside which
    the answer changes.
    """

    line: str
    panel: Panel
    points: tuple[tuple[float, Point], ...]
    length: float | None = None  # of the whole line; None where it is not known
    unsure: tuple[Missing, ...] = ()


@lru_cache(maxsize=4096)
def passing(line: LineRun, panel: Panel) -> Passing:
    """Find where a line goes through a panel, from its one face to the other.

    A line that ends on the panel, or runs along it, does not go through.
    """
    if isinstance(panel.where, UnknownShape):
        return Passing(line.name, panel, (), unsure=panel.where.missing)
    sheet = panel.where
    here, *others = (crossing(line, _slab(panel, sheet, offset)) for offset in _offsets(sheet.offset))
    points = _through(here, sheet)
    moved = any(len(_through(other, sheet)) != len(points) for other in others)
    closer = f"where {panel.name} is, more closely: whether {line.name} passes it hangs on it"
    unsure = (*here.unsure_passes, *((Missing(f"{panel.place}.where", closer),) if moved else ()))
    course = path_of(line)
    return Passing(line.name, panel, points, float(course[1][-1]) if course else None, unsure)


def lies_on(place: Position, sheet: Sheet) -> bool:
    """Whether a known place lies on a sheet, as closely as such places are measured."""
    return place.known and all(
        low - ON_THE_SHEET <= one <= high + ON_THE_SHEET
        for one, (low, high) in zip(place.point, reach_of(sheet, sheet.offset.middle, THIN), strict=True)
    )


def _offsets(offset: Value) -> Iterator[float]:
    yield offset.middle
    if not offset.exact:
        yield from (offset.low, offset.high)


def _slab(panel: Panel, sheet: Sheet, offset: float) -> Zone:
    """A panel as a zone too thin to matter, so that a line is cut against it like against any other."""
    pairs = reach_of(sheet, offset, THIN)
    low, high = (tuple(pair[end] for pair in pairs) for end in (0, 1))
    where = Box(_corner(sheet, low, 0), _corner(sheet, high, 1))
    gap = unknown(f"{panel.name} gap", Dimension.LENGTH, panel.place)
    heat = unknown(f"{panel.name} temperature", Dimension.TEMPERATURE, panel.place)
    return Zone.model_construct(name=panel.name, place=panel.place, where=(where,), gap=gap, temperature=heat)


def _corner(sheet: Sheet, numbers: tuple[float, ...], end: int) -> Position:
    """A corner of the slab; where the sheet's own corner has a range, so has this one."""
    values = [exactly("panel", Dimension.LENGTH, number, Mark.DERIVED) for number in numbers]
    if sheet.within is not None:
        pairs = zip(sheet.within.low.coordinates, sheet.within.high.coordinates, strict=True)
        ordered = [sorted(pair, key=lambda value: value.middle)[end] for pair in pairs]
        values = [
            own if axis == sheet.axis or given.exact else replace(given, place=sheet.within.low.place)
            for axis, (own, given) in enumerate(zip(values, ordered, strict=True))
        ]
    return Position(values[0], values[1], values[2])


def _through(cut: Crossing, sheet: Sheet) -> tuple[tuple[float, Point], ...]:
    """The middles of the stretches that lead from one face of the panel to the other."""
    edges = dict(cut.passes)
    found = []
    for start, stop in cut.stretches:
        one, other = edges.get(start), edges.get(stop)
        if one is None or other is None:  # the line ends in the panel
            continue
        if math.isclose(abs(one[sheet.axis] - other[sheet.axis]), 2 * THIN, rel_tol=1e-3):
            x, y, z = ((a + b) / 2 for a, b in zip(one, other, strict=True))
            found.append(((start + stop) / 2, (x, y, z)))
    return tuple(found)
