"""Bodies in a row, followed from the one end of it whose place is known.

Corners are taken in the middle of their ranges; what lies beyond is made longer by all that the lengths
before it leave open, so that a body lies inside whatever its true lengths are along its axis.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import dist
from typing import TYPE_CHECKING

from firmpedal.fit.mating import part_number
from firmpedal.lay.placed_body import Placed, Unplaced
from firmpedal.lay.seats import made_up
from firmpedal.lay.solids import half_range, point_off
from firmpedal.lay.vectors import along, less, unit
from firmpedal.model.part import Form
from firmpedal.quantity import Mark, Value, total
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.catalog import Catalogue
    from firmpedal.fit.joint import Joint
    from firmpedal.lay.placed_body import Standing
    from firmpedal.lay.shape import Point
    from firmpedal.model.part import Part
    from firmpedal.model.space import Position

STEMS = ("leg_centre_to_pipe_end", "leg_centre_to_male_end", "leg_centre_to_bulkhead_flare_end")


@dataclass(frozen=True, slots=True)
class Piece:
    """A body as its lengths, each with the way it points, from the port outwards."""

    part: Part
    ways: tuple[Point, ...]
    lengths: tuple[Value, ...]


def back_from_seat(
    seat: Position, pieces: list[Piece | Unplaced], overlaps: list[Value], found: list[Standing | None]
) -> None:
    """From the line's seat towards the port, as far as every length is known."""
    point, slack, seen = seat.point, point_off(seat), list(seat.coordinates)
    for n in range(len(pieces) - 1, -1, -1):
        piece = pieces[n]
        if isinstance(piece, Unplaced):
            return
        if n < len(overlaps):
            point = along(point, piece.ways[-1], overlaps[n].middle)
            slack += half_range(overlaps[n])
            seen.append(overlaps[n])
        path = [along(point, piece.ways[-1], slack)]
        for way, length in zip(piece.ways[:0:-1], piece.lengths[:0:-1], strict=True):
            point = along(point, way, -length.middle)
            path.append(point)
        point = along(point, piece.ways[0], -piece.lengths[0].middle)
        path.append(along(point, piece.ways[0], -(slack + half_range(piece.lengths[0]))))
        slack += sum(map(half_range, piece.lengths))
        seen += piece.lengths
        found[n] = Placed(piece.part, (tuple(path),), tuple(seen))


def out_from_face(
    at: Position,
    inside: Value,
    pieces: list[Piece | Unplaced],
    overlaps: list[Value],
    found: list[Standing | None],
) -> None:
    """From the face of the port outwards, where the seat did not say it."""
    point, slack = at.point, point_off(at) + half_range(inside)
    seen = [*at.coordinates, inside]
    for n, piece in enumerate(pieces):
        if isinstance(piece, Unplaced):
            return
        entering = inside if n == 0 else overlaps[n - 1]
        slack += half_range(entering) if n else 0.0
        point = along(point, piece.ways[0], -entering.middle)
        path = [along(point, piece.ways[0], -slack)]
        for way, length in zip(piece.ways, piece.lengths, strict=True):
            point = along(point, way, length.middle)
            path.append(point)
        path[-1] = along(point, piece.ways[-1], slack + half_range(piece.lengths[-1]))
        slack += sum(map(half_range, piece.lengths))
        seen += [*piece.lengths, *([entering] if n else [])]
        found[n] = found[n] or Placed(piece.part, (tuple(path[::-1]),), tuple(seen))


def lengths_of(body: Part) -> tuple[Value | None, ...]:
    """The lengths of a body from what it is screwed into outwards: one if straight, two legs of an elbow."""
    if not body.turn:
        return (body.dimension("overall_length"),)
    thick = body.dimension("eye_thickness")  # of a banjo: its bolt's axis goes through the middle of it
    stem = between(thick.low / 2, thick.high / 2) if thick and thick.known else body.dimension(*STEMS)
    return (stem, body.outlet_leg)


def length_over_all(body: Part) -> Value | None:
    """Along the axes of a body from end to end; None while one of its lengths is not known."""
    lengths = [length for length in lengths_of(body) if length is not None]
    return total("length", lengths) if len(lengths) == len(lengths_of(body)) else None


def overlap(joint: Joint, one: int, other: int, catalogue: Catalogue) -> Value:
    """How far two neighbours reach into each other; anything up to the shorter where nothing says it."""
    for mating in joint.matings:
        form, size = mating.one.interface.form, mating.one.interface.size
        if {part_number(mating.one), part_number(mating.other)} == {one, other} and form is Form.PIPE:
            thread = made_up(size, joint.place, catalogue)
            if thread.known:
                return thread
    lengths = [length for n in (one, other) for length in lengths_of(joint.parts[n])]
    return between(0.0, min((length.high for length in lengths if length and length.known), default=0.0))


def between(low: float, high: float) -> Value:
    """A length that may lie anywhere between two."""
    return Value("length", Dimension.LENGTH, (low, high), Mark.ESTIMATE)


def least_beyond(
    path: tuple[Point, ...], before: float, after: float, longest: tuple[float | None, float | None]
) -> tuple[Point, ...]:
    """What is left of a path without its first and last stretch; empty where nothing is.

    Args:
        path: Two points or more [m].
        before: Taken away at its start [m].
        after: Taken away at its finish [m].
        longest: How far from its start, and from its finish, it reaches at most [m]; None if no limit.
    """
    whole = sum(dist(one, other) for one, other in pairwise(path))
    start, stop = before, whole - after
    if longest[0] is not None:
        stop = min(stop, longest[0])
    if longest[1] is not None:
        start = max(start, whole - longest[1])
    if start >= stop:
        return ()
    inner: list[Point] = []
    passed = 0.0
    for one, other in pairwise(path):
        passed += dist(one, other)
        inner += [other] if start < passed < stop else []
    return (_at(path, start), *inner, _at(path, stop))


def _at(path: tuple[Point, ...], station: float) -> Point:
    for one, other in pairwise(path):
        length = dist(one, other)
        if station <= length or other is path[-1]:
            return along(one, unit(less(other, one)), min(station, length))
        station -= length
    return path[-1]
