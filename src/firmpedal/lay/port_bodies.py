"""Where the bodies in a port stand, one behind the other, with the jam nut or plug that goes there.

They are followed back from the seat of the line; what is not reached from there, outwards from the face of
the port.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from firmpedal.fit.chain import is_banjo_bolt
from firmpedal.lay.body_row import Piece, back_from_seat, between, lengths_of, out_from_face, overlap
from firmpedal.lay.placed_body import Placed, Unplaced
from firmpedal.lay.port_fittings import arm_of
from firmpedal.lay.seats import made_up
from firmpedal.lay.vectors import along, turned
from firmpedal.model.part import Category, Form

if TYPE_CHECKING:
    from collections.abc import Sequence

    from firmpedal.catalog import Catalogue
    from firmpedal.fit.assembly import Assembly
    from firmpedal.fit.joint import Joint
    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.placed_body import Standing
    from firmpedal.lay.shape import Point
    from firmpedal.model.circuit import Port
    from firmpedal.model.part import Part
    from firmpedal.model.space import Position
    from firmpedal.quantity import Value

NEAR_ENOUGH = math.radians(45)  # a soft line leaves an elbow bent; so far it still shows the arm
BODIES = (Category.FITTING, Category.CAP)


@dataclass(frozen=True)
class PortBodies:
    """A port, its joint, and all that says where its bodies point."""

    port: Port
    joint: Joint
    seat: Position | None  # of the line that comes to it
    assembly: Assembly
    laid: Sequence[LaidLine]
    catalogue: Catalogue

    def standing(self) -> tuple[Standing, ...]:
        """Every body, plug and jam nut, in the order of the joint."""
        stacked = self._stacked()
        in_row = iter(stacked)
        out: list[Standing] = []
        for part in self.joint.parts:
            if part.category is Category.JAM_NUT:
                out.append(self._nut(part))
            elif is_banjo_bolt(part):
                out.append(self._bolt(part, stacked))
            elif part.category in BODIES:
                out.append(next(in_row))
        return tuple(out)

    def _stacked(self) -> list[Standing]:
        """The bodies that stand in a row, from the port outwards."""
        numbers = [
            n
            for n, part in enumerate(self.joint.parts)
            if part.category in BODIES and not is_banjo_bolt(part)
        ]
        pieces = self._pieces([self.joint.parts[n] for n in numbers])
        inner = self._into_port(pieces[0]) if pieces and isinstance(pieces[0], Piece) else None
        overlaps = [overlap(self.joint, one, other, self.catalogue) for one, other in pairwise(numbers)]
        found: list[Standing | None] = [each if isinstance(each, Unplaced) else None for each in pieces]
        if self.seat is not None and self.seat.known:
            back_from_seat(self.seat, pieces, overlaps, found)
        if self.port.at.known and inner is not None:
            out_from_face(self.port.at, inner, pieces, overlaps, found)
        return [
            each or Unplaced(self.joint.parts[n], *self._no_place())
            for n, each in zip(numbers, found, strict=True)
        ]

    def _no_place(self) -> tuple[str, str]:
        return (
            "where it begins is not known",
            f"the seat at {self.joint.name} with these fittings, or the middle of the port's face",
        )

    def _pieces(self, bodies: list[Part]) -> list[Piece | Unplaced]:
        """Each body with its lengths and ways; beyond one of unknown turn nothing has a way."""
        axis = self.port.faces.vector
        several = sum(bool(body.turn) for body in bodies) > 1
        way, found = axis, list[Piece | Unplaced]()
        for body in bodies:
            if axis is None:
                measure = f"which way {self.joint.name} faces"
                found.append(Unplaced(body, "which way the port points is not known", measure))
            elif several and body.turn:
                measure = "which way each elbow points, on the aircraft; the file has a word for one only"
                found.append(Unplaced(body, "more than one fitting turns the line", measure))
                way = None
            elif way is None:
                measure = "which way it points, on the aircraft; the file has no word for it"
                found.append(Unplaced(body, "the fitting before it may point anywhere", measure))
            else:
                out = self._outwards(body, way, axis)
                found.append(self._piece(body, way, out))
                way = out
        return found

    def _outwards(self, body: Part, way: Point, axis: Point) -> Point | None:
        """Which way a body hands on: its own way, or that of its arm."""
        if body.category is Category.CAP or body.turn == 0:
            return way
        if body.turn is None:
            return None
        arm = arm_of(self.port, body.turn, self.joint, self.assembly, self.laid, NEAR_ENOUGH)
        return None if arm is None else turned(axis, arm, body.turn)

    def _piece(self, body: Part, way: Point, out: Point | None) -> Piece | Unplaced:
        if out is None and body.turn is not None:
            measure = f"which way the arm of the elbow in {self.joint.name} leads the line"
            return Unplaced(body, "which way its arm points is not known", measure)
        if out is None:
            measure = "which way its ends point, on the aircraft; the file has no word for it"
            return Unplaced(body, "which way its ends point is not known", measure)
        lengths = lengths_of(body)
        if any(length is None or not length.known for length in lengths):
            measure = "both its legs from their crossing" if body.turn else "its length over all"
            return Unplaced(body, "its length is not known", measure)
        known = tuple(length for length in lengths if length is not None)
        return Piece(body, (way, out) if body.turn else (way,), known)

    def _into_port(self, piece: Piece) -> Value:
        """How far the first body goes into the port; anything up to its length where nothing says it."""
        if _banjo(piece.part):
            return between(0.0, 0.0)
        if self.port.thread.interface.form is Form.PIPE:
            thread = made_up(self.port.thread.interface.size, self.port.place, self.catalogue)
            if thread.known:
                return thread
        return between(0.0, piece.lengths[0].high)

    def _nut(self, nut: Part) -> Standing:
        """The nut that locks a fitting in a boss: it lies on the face of the port."""
        thick, faces = nut.dimension("thickness"), self.port.faces.vector
        if not self.port.at.known or faces is None:
            measure = f"where the middle of the face of {self.joint.name} is, and which way it faces"
            return Unplaced(nut, "the place of the port's face is not known", measure)
        if thick is None or not thick.known:
            return Unplaced(nut, "its thickness is not known", "its thickness")
        start = self.port.at.point
        return Placed(nut, ((start, along(start, faces, thick.high)),), (thick,))

    def _bolt(self, bolt: Part, bodies: list[Standing]) -> Standing:
        """A bolt round which the eye of a banjo lies, somewhere along its length."""
        eye = next((each for each in bodies if isinstance(each, Placed) and _banjo(each.part)), None)
        length, faces = bolt.dimension("overall_length"), self.port.faces.vector
        thick = eye.part.dimension("eye_thickness") if eye else None
        if eye is None or faces is None or thick is None:
            return Unplaced(bolt, "where the banjo lies on it is not known", "where the banjo lies")
        if length is None or not (length.known and thick.known):
            return Unplaced(bolt, "its length is not known", "its length under the head")
        centre, far = eye.paths[0][1], length.high - thick.low / 2
        return Placed(bolt, ((along(centre, faces, far), along(centre, faces, -far)),), (between(0.0, far),))


def _banjo(part: Part) -> bool:
    """Whether a part is the eye that goes round a banjo bolt."""
    return bool(part.turn) and part.dimension("eye_thickness") is not None
