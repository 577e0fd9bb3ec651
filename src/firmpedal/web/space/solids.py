"""Bodies as plain solids for a picture: without a size of their own drawn small, without an end cut off."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.fit.assembly import seat_or_face
from firmpedal.lay.solids import reach_of
from firmpedal.model.shapes import Ball, Bar, Box, Disc, HalfSpace, Stretch, UnknownShape
from firmpedal.units import from_unit

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.model.circuit import Bulkhead, Panel, Port
    from firmpedal.model.component import BaseComponent
    from firmpedal.model.shapes import Body, Shape
    from firmpedal.model.space import Point, Position

# Of bodies whose size nobody declares: our own, for pictures only.
PORT_DEEP, PORT_WIDE = from_unit(0.9, "in"), from_unit(0.3, "in")
PLATE, THIN = from_unit(1, "in"), from_unit(0.03, "in")


@dataclass(frozen=True, slots=True)
class Solid:
    """A solid by its shape: box, bar, disc or sleeve [m].

    `one` and `other` are two opposite corners of a box, the ends of a bar, or the centre and axis of a disc.
    A ball is a bar between one point and itself. A sleeve lies on the line `line` between two stations.
    """

    shape: str
    one: Point = (0.0, 0.0, 0.0)
    other: Point = (0.0, 0.0, 0.0)
    radius: float = 0.0
    thickness: float = 0.0
    line: str = ""
    stretch: tuple[float, float] = (0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Room:
    """Of what is declared without an end so much is drawn: a box round everything else."""

    low: Point
    high: Point


def body_solids(body: Body) -> tuple[Solid, ...]:
    """A body to stay clear of; nothing where it is not known."""
    match body:
        case Box(low, high):
            return (Solid("box", low.point, high.point),) if low.known and high.known else ()
        case Ball(centre, radius):
            known = centre.known and radius.known
            return (Solid("bar", centre.point, centre.point, radius.middle),) if known else ()
        case Bar(start, finish, radius):
            known = start.known and finish.known and radius.known
            return (Solid("bar", start.point, finish.point, radius.middle),) if known else ()
        case Disc(centre, axis, radius, thickness):
            if not (centre.known and axis.vector and radius.known and thickness.known):
                return ()
            return (Solid("disc", centre.point, axis.vector, radius.middle, thickness.middle),)
        case UnknownShape():
            return ()


def zone_solids(shapes: tuple[Shape, ...], room: Room) -> tuple[Solid, ...]:
    """A zone; where it is the common part of boxes and half-spaces, that part."""
    low, high = np.array(room.low), np.array(room.high)
    solids: list[Solid] = []
    boxed = False
    for shape in shapes:
        match shape:
            case HalfSpace(axis, sign, offset) if offset.known:
                side = low if sign > 0 else high
                side[axis] = offset.middle
                boxed = True
            case Box(one, other) if one.known and other.known:
                low = np.maximum(low if boxed else -np.inf, np.minimum(one.point, other.point))
                high = np.minimum(high if boxed else np.inf, np.maximum(one.point, other.point))
                boxed = True
            case Ball():
                solids += body_solids(shape)
            case Stretch(line, start, finish) if start.known and finish.known:
                stretch = (start.middle, finish.middle)
                solids.append(Solid("sleeve", line=f"lines.{line}", stretch=stretch))
            case _:
                return ()
    if boxed and np.all(low < high):
        solids.append(Solid("box", _point(low), _point(high)))
    return tuple(solids)


def panel_solids(panel: Panel, room: Room) -> tuple[Solid, ...]:
    """A panel as a thin sheet."""
    sheet = panel.where
    if isinstance(sheet, UnknownShape) or not sheet.offset.known:
        return ()
    if sheet.within is not None and not (sheet.within.low.known and sheet.within.high.known):
        return ()
    half = (panel.thickness.middle if panel.thickness is not None and panel.thickness.known else THIN) / 2
    pairs = reach_of(sheet, sheet.offset.middle, half)
    cut = [
        pair if axis == sheet.axis else (max(pair[0], room.low[axis]), min(pair[1], room.high[axis]))
        for axis, pair in enumerate(pairs)
    ]
    low, high = zip(*cut, strict=True)
    return (Solid("box", low, high),) if all(one < other for one, other in cut) else ()


def component_solids(component: BaseComponent) -> tuple[Solid, ...]:
    """A component by its ports: a short piece behind each, and what joins them."""
    inner = [end for port in component.ports for end in _behind(port)]
    pieces = [Solid("bar", face, end, PORT_WIDE) for face, end in inner]
    joined = pairwise(inner)
    return (*pieces, *(Solid("bar", one, other, PORT_WIDE / 2) for (_, one), (_, other) in joined))


def _behind(port: Port) -> Iterable[tuple[Point, Point]]:
    face, faces = seat_or_face(port), port.faces.vector
    if face.known:
        at = np.array(face.point)
        yield face.point, _point(at - PORT_DEEP * np.array(faces)) if faces else face.point


def bulkhead_solids(bulkhead: Bulkhead) -> tuple[Solid, ...]:
    """A bulkhead as a small plate round its fitting, and the fitting from seat to seat."""
    seats = [side.seat.point for side in bulkhead.sides if side.seat.known]
    through = [Solid("bar", one, other, PORT_WIDE) for one, other in pairwise(seats)]
    at, normal = _centre(bulkhead.at, seats), bulkhead.normal.vector or _way(seats)
    if at is None or normal is None or bulkhead.through_panel.value == "no":
        return tuple(through)
    return (Solid("disc", at, normal, PLATE, THIN), *through)


def _centre(at: Position | None, seats: list[Point]) -> Point | None:
    if at is not None and at.known:
        return at.point
    return _point(np.mean(seats, axis=0)) if seats else None


def _way(seats: list[Point]) -> Point | None:
    if len(seats) < len("ab"):
        return None
    across = np.array(seats[1]) - np.array(seats[0])
    size = float(np.linalg.norm(across))
    return _point(across / size) if size > 0 else None


def corners_of(solids: Iterable[Solid]) -> list[Point]:
    """Points between which solids lie."""
    found = []
    for solid in solids:
        if solid.shape == "sleeve":
            continue
        ends = [solid.one] if solid.shape == "disc" else [solid.one, solid.other]
        for end in ends:
            found += [_point(np.array(end) - solid.radius), _point(np.array(end) + solid.radius)]
    return found


def _point(array: object) -> Point:
    x, y, z = np.asarray(array, dtype=float)
    return (float(x), float(y), float(z))
