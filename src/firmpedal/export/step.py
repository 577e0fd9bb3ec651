"""Tubes, hoses and the room of their fittings as solids, in a STEP file for a CAD program.

Needs the extra `cad`. Everything is modelled and written in millimetres, in the file's own axes: aft,
right, up. Each solid has the name of its line or joint.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING, Any

from firmpedal.fit.chain import chain_at
from firmpedal.lay.centreline import point_at
from firmpedal.model.part import CORNERS_OVER_FLATS, Category
from firmpedal.model.stock import Tube

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.shape import Centreline, Point
    from firmpedal.pipeline import Evaluation

MILLI = 1000.0
# The same file gives the same bytes: a STEP file carries a time, and ours is always this one.
TIMESTAMP = dt.datetime(2000, 1, 1, tzinfo=dt.UTC)


class MissingCadError(Exception):
    """The CAD library is not installed."""

    def __init__(self) -> None:
        super().__init__("STEP files need the CAD library: pip install 'firmpedal[cad]'")


@dataclass(frozen=True, slots=True)
class Written:
    """What went into the file, and which lines did not, with why."""

    names: tuple[str, ...]
    left_out: tuple[str, ...]


def write(evaluation: Evaluation, path: Path) -> Written:
    """Write every line whose place is known.

    Raises:
        MissingCadError: The CAD library is not there.
        OSError: The file cannot be written.
    """
    cad = _kernel()
    shapes: list[Any] = []
    left_out: list[str] = []
    for line in evaluation.laid:
        made = _line(cad, line)
        if made is None:
            left_out.append(f"{line.name}: its points are not all known")
            continue
        shapes += [made, *_envelopes(cad, evaluation, line)]
    whole = cad.Compound(label=evaluation.aircraft.aircraft.name, children=shapes)
    if not cad.export_step(whole, str(path), unit=cad.Unit.MM, timestamp=TIMESTAMP):
        raise OSError(None, "the STEP file was not written", str(path))
    return Written(tuple(shape.label for shape in shapes), tuple(left_out))


def _kernel() -> Any:
    try:
        import build123d  # noqa: PLC0415  takes seconds, and not everybody has it
    except ImportError:
        raise MissingCadError from None
    return build123d


def _line(cad: Any, line: LaidLine) -> Any | None:
    """A bent tube as it is, hollow; a hose or plastic line along its declared path, full."""
    outside = line.stock.outside_diameter.middle * MILLI
    if line.tube and line.tube.centreline and isinstance(line.stock, Tube):
        bore = outside - 2 * line.stock.wall.middle * MILLI
        solid = _swept(cad, line.tube.centreline, outside, bore)
    elif line.tube or line.path is None:
        return None
    else:
        solid = cad.Compound(list(_rods(cad, line.path, outside)))
    solid.label = line.name
    return solid


def _swept(cad: Any, shape: Centreline, outside: float, bore: float) -> Any:
    edges = list(_edges(cad, shape))
    path = cad.Wire(edges)
    plane = cad.Plane(origin=path @ 0, z_dir=path % 0)
    section = plane * (cad.Circle(outside / 2) - cad.Circle(bore / 2))
    return cad.sweep(section, path=path).solid()


def _edges(cad: Any, shape: Centreline) -> Iterator[Any]:
    """Straights and arcs between tangent points; a straight of no length is none."""
    stations = shape.tangent_stations
    for number, (one, other) in enumerate(pairwise(shape.tangent_points)):
        if stations[number + 1] - stations[number] <= 0:
            continue
        ends = _in_millimetres(one), _in_millimetres(other)
        if number % 2 == 0:
            yield cad.Edge.make_line(*ends)
            continue
        middle = point_at(shape, (stations[number] + stations[number + 1]) / 2)
        yield cad.Edge.make_three_point_arc(ends[0], _in_millimetres(middle), ends[1])


def _rods(cad: Any, path: tuple[Point, ...], outside: float) -> Iterator[Any]:
    """A straight rod for each length of a path, and a ball at each corner between."""
    corners = [_in_millimetres(point) for point in path]
    for one, other in pairwise(corners):
        axis = cad.Vector(*other) - cad.Vector(*one)
        if axis.length > 0:
            yield cad.Solid.make_cylinder(outside / 2, axis.length, cad.Plane(origin=one, z_dir=axis))
    for corner in corners[1:-1]:
        yield cad.Solid.make_sphere(outside / 2, cad.Plane(origin=corner))


def _envelopes(cad: Any, evaluation: Evaluation, line: LaidLine) -> Iterator[Any]:
    """The room of nut and sleeve at each end: a cylinder over the corners of the nut, along the line."""
    if line.path is None:
        return
    for end, (seat, beyond) in (("from", line.path[:2]), ("to", line.path[:-3:-1])):
        joint = evaluation.assembly.joint_of(line.name, end)
        own = chain_at(joint, line.name, end) if joint else ()
        nuts = [part for part in own if part.category is Category.COUPLING_NUT]
        sizes = [(part.dimension("hex_across_flats"), part.dimension("overall_length")) for part in nuts]
        for flats, length in sizes[:1]:
            if flats is None or length is None or not (flats.known and length.known):
                continue
            along = cad.Vector(*beyond) - cad.Vector(*seat)
            plane = cad.Plane(origin=_in_millimetres(seat), z_dir=along)
            radius = flats.high * CORNERS_OVER_FLATS * MILLI / 2
            room = cad.Solid.make_cylinder(radius, length.high * MILLI, plane)
            room.label = f"room_of_nut_{line.name}_{end}"
            yield room


def _in_millimetres(point: Point) -> tuple[float, float, float]:
    return (point[0] * MILLI, point[1] * MILLI, point[2] * MILLI)
