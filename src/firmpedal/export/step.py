"""Tubes, hoses and the room of their fittings as solids, in a STEP file for a CAD program.

Needs the extra `cad`. Everything is modelled and written in millimetres, in the file's own axes: aft,
right, up. Each solid has the name of its line or joint. A length below `SHORTEST` is no length.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from importlib.util import find_spec
from itertools import pairwise
from math import dist
from typing import TYPE_CHECKING, Any

from firmpedal.export.clamp_rooms import FEET, clamp_rooms
from firmpedal.export.room import Room
from firmpedal.export.rooms import fitting_rooms, nut_rooms
from firmpedal.lay.centreline import point_at
from firmpedal.model.display import listed
from firmpedal.model.stock import Tube

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.shape import Centreline, Point
    from firmpedal.pipeline import Evaluation

MILLI = 1000.0
SHORTEST = 1e-9  # m: a length below it is rounding, and nothing that a CAD program could hold
AS_DECLARED = "along_declared_path"  # a hose hangs as it likes: only its points are known
# The same file gives the same bytes: a STEP file carries a time, and ours is always this one.
TIMESTAMP = dt.datetime(2000, 1, 1, tzinfo=dt.UTC)


def available() -> bool:
    """Whether the CAD library is installed; it is not loaded for that."""
    return find_spec("build123d") is not None


class MissingCadError(Exception):
    """The CAD library is not installed."""

    def __init__(self) -> None:
        super().__init__("STEP files need the CAD library: pip install 'firmpedal[cad]'")


@dataclass(frozen=True, slots=True)
class Written:
    """What went into the file, and which lines and fittings did not, with why."""

    names: tuple[str, ...]
    left_out: tuple[str, ...]


def write(evaluation: Evaluation, path: Path) -> Written:
    """Write every line, fitting and nut whose place is known.

    Raises:
        MissingCadError: The CAD library is not there.
        OSError: The file cannot be written.
    """
    cad = _kernel()
    shapes: list[Any] = []
    left_out: list[str] = []
    for line in evaluation.laid:
        made = _line(cad, line)
        if isinstance(made, str):
            left_out.append(f"{line.name}: {made}")
        else:
            shapes.append(made)
        for rooms, without in (nut_rooms(evaluation, line), clamp_rooms(evaluation, line)):
            shapes += [_room(cad, room) for room in rooms]
            left_out += without
    rooms, without = fitting_rooms(evaluation)
    shapes += [_room(cad, room) for room in rooms]
    left_out += without
    left_out += _only_in_part(shapes)
    if not shapes:
        return Written((), tuple(left_out))
    whole = cad.Compound(label=evaluation.aircraft.aircraft.name, children=shapes)
    if not cad.export_step(whole, str(path), unit=cad.Unit.MM, timestamp=TIMESTAMP):
        raise OSError(None, "the STEP file was not written", str(path))
    return Written(tuple(shape.label for shape in shapes), tuple(left_out))


def _only_in_part(shapes: list[Any]) -> Iterator[str]:
    """What is in the file but not all of it, or not as it will be."""
    names = [shape.label for shape in shapes]
    hung = [name.removesuffix(f"_{AS_DECLARED}") for name in names if name.endswith(AS_DECLARED)]
    if hung:
        yield f"the true shape of {listed(hung)}: drawn along the declared path, not as it hangs when fitted"
    if any(name.startswith("room_of_clamp_") for name in names):
        yield FEET


def _kernel() -> Any:
    try:
        import build123d  # noqa: PLC0415  takes seconds, and not everybody has it
    except ImportError:
        raise MissingCadError from None
    return build123d


def _line(cad: Any, line: LaidLine) -> Any | str:
    """A bent tube as it is, hollow; hose or plastic full, along its declared path; or why there is none."""
    outside = line.stock.outside_diameter
    if not outside.known:
        return "its outside diameter is not known"
    if line.tube and line.tube.centreline and isinstance(line.stock, Tube):
        if not line.stock.wall.known:
            return "its wall is not known"
        bore = (outside.middle - 2 * line.stock.wall.middle) * MILLI
        solid = _swept(cad, line.tube.centreline, outside.middle * MILLI, bore)
        solid.label = line.name
        return solid
    if line.tube and line.tube.impossible:
        return f"it cannot be bent: {line.tube.impossible.words}"
    if line.path is None or line.tube:
        return "its points are not all known"
    return (
        _room(cad, Room(f"{line.name}_{AS_DECLARED}", line.path, outside.middle / 2))
        or "its ends are one place"
    )


def _room(cad: Any, room: Room) -> Any | None:
    """Rods along its paths; None where all of it is one place."""
    solids = [solid for path in room.paths for solid in _rods(cad, path, 2 * room.radius * MILLI)]
    if not solids:
        return None
    solid = solids[0] if len(solids) == 1 else cad.Compound(solids)
    solid.label = room.name
    return solid


def _swept(cad: Any, shape: Centreline, outside: float, bore: float) -> Any:
    """A hollow tube along a centreline; in two solids where its ends meet, for no kernel sweeps a ring."""
    edges = list(_edges(cad, shape))
    if dist(shape.corners[0], shape.corners[-1]) * MILLI > outside:
        return _swept_along(cad, edges, outside, bore)
    half = len(edges) // 2
    return cad.Compound([_swept_along(cad, part, outside, bore) for part in (edges[:half], edges[half:])])


def _swept_along(cad: Any, edges: list[Any], outside: float, bore: float) -> Any:
    path = cad.Wire(edges)
    plane = cad.Plane(origin=path @ 0, z_dir=path % 0)
    section = plane * (cad.Circle(outside / 2) - cad.Circle(bore / 2))
    return cad.sweep(section, path=path).solid()


def _edges(cad: Any, shape: Centreline) -> Iterator[Any]:
    """Straights and arcs between tangent points; a straight of no length is none."""
    stations, last = shape.tangent_stations, _in_millimetres(shape.tangent_points[0])
    for number, other in enumerate(shape.tangent_points[1:]):
        if stations[number + 1] - stations[number] <= SHORTEST:
            continue
        start, last = last, _in_millimetres(other)
        if number % 2 == 0:
            yield cad.Edge.make_line(start, last)
            continue
        middle = point_at(shape, (stations[number] + stations[number + 1]) / 2)
        yield cad.Edge.make_three_point_arc(start, _in_millimetres(middle), last)


def _rods(cad: Any, path: tuple[Point, ...], outside: float) -> Iterator[Any]:
    """A straight rod for each length of a path, and a ball at each corner between; no length is no rod."""
    kept = path[:1]
    for point in path[1:]:
        kept = (*kept, point) if dist(kept[-1], point) > SHORTEST else kept
    corners = [_in_millimetres(point) for point in kept]
    for one, other in pairwise(corners):
        axis = cad.Vector(*other) - cad.Vector(*one)
        yield cad.Solid.make_cylinder(outside / 2, axis.length, cad.Plane(origin=one, z_dir=axis))
    for corner in corners[1:-1]:
        yield cad.Solid.make_sphere(outside / 2, cad.Plane(origin=corner))


def _in_millimetres(point: Point) -> tuple[float, float, float]:
    return (point[0] * MILLI, point[1] * MILLI, point[2] * MILLI)
