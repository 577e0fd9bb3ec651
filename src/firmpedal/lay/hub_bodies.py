"""Where the bodies between two lines or more stand: in a panel or bracket, or free, and the jam nut there."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise, takewhile
from typing import TYPE_CHECKING

from firmpedal.fit.chain import chain_at
from firmpedal.lay.body_row import Piece, back_from_seat, least_beyond, length_over_all, overlap
from firmpedal.lay.hub_axes import Course, elbow_course, tee_courses
from firmpedal.lay.placed_body import Placed, Unplaced
from firmpedal.lay.vectors import along, dot, less, unit
from firmpedal.model.part import Category

if TYPE_CHECKING:
    from firmpedal.catalog import Catalogue
    from firmpedal.fit.joint import Joint
    from firmpedal.lay.hub_axes import HubEnd
    from firmpedal.lay.placed_body import Standing
    from firmpedal.lay.shape import Point
    from firmpedal.model.circuit import Bulkhead
    from firmpedal.model.part import Part
    from firmpedal.quantity import Value

TWO = 2
EITHER_SIDE = "either_side"


@dataclass(frozen=True)
class HubBodies:
    """A bulkhead, bracket or free union with the ends that come to it, in the order of its sides.

    `bulkhead` is None where two lines meet with nothing declared between them.
    """

    bulkhead: Bulkhead | None
    joint: Joint
    ends: tuple[HubEnd, ...]
    catalogue: Catalogue

    def standing(self) -> tuple[Standing, ...]:
        """Every body and jam nut, in the order of the joint."""
        bodies = [part for part in self.joint.parts if part.category is Category.FITTING]
        placed = iter(self._bodies(bodies))
        return tuple(
            next(placed) if part.category is Category.FITTING else self._nut(part)
            for part in self.joint.parts
            if part.category in (Category.FITTING, Category.JAM_NUT)
        )

    @property
    def _seats(self) -> tuple[Value, ...]:
        return tuple(value for end in self.ends for value in end.position.coordinates)

    @property
    def _numbers(self) -> list[int]:
        """Which parts of the joint the bodies are."""
        return [n for n, part in enumerate(self.joint.parts) if part.category is Category.FITTING]

    def _bodies(self, bodies: list[Part]) -> list[Standing]:
        if self.bulkhead is None:
            measure = (
                "where it is: add it as a bulkhead with through panel set to no, and a seat on each side"
            )
            return [Unplaced(body, "nobody has said where the two lines meet", measure) for body in bodies]
        if len(self.ends) > TWO:
            return self._branched(bodies)
        turning = [body for body in bodies if body.turn != 0]
        if len(turning) > 1 or any(body.turn is None for body in turning):
            measure = "which way its ends point, on the aircraft; the file has no word for it"
            return [Unplaced(body, "which way its ends point is not known", measure) for body in bodies]
        if any(end.seat is None for end in self.ends):
            return self._from_one_seat(bodies, turning)
        course = self._course(self.bulkhead, turning)
        if not isinstance(course, Course):
            return [Unplaced(body, *course) for body in bodies]
        return [self._share(course, bodies, number) for number in range(len(bodies))]

    def _course(self, bulkhead: Bulkhead, turning: list[Part]) -> Course | tuple[str, str]:
        """From seat to seat, straight or round the corner of the one elbow."""
        one, other = (end.seat for end in self.ends)
        if one is None or other is None or one == other:
            return "the seats of its two sides are one place", f"both seats of {bulkhead.name}"
        return elbow_course(bulkhead, self.ends, turning[0]) if turning else Course(((one, other),))

    def _share(self, course: Course, bodies: list[Part], number: int) -> Standing:
        """What one body has of a course that several go along: all that it may reach."""
        body, lengths = bodies[number], tuple(filter(None, map(length_over_all, bodies)))
        if len(bodies) == 1:
            return Placed(body, course.paths, self._seats, course.either)
        before = sum(self._least(bodies, n, n + 1) for n in range(number))
        after = sum(self._least(bodies, n, n - 1) for n in range(number + 1, len(bodies)))
        longest = _longest(bodies, number)
        cut = (least_beyond(path, before, after, longest) for path in course.paths)
        paths = tuple(path for path in cut if path)
        if not paths:
            why = "the fittings beside it leave no room between the seats"
            return Unplaced(body, why, f"both seats of {self.joint.name} with these fittings")
        return Placed(body, paths, (*self._seats, *lengths), course.either)

    def _least(self, bodies: list[Part], number: int, towards: int) -> float:
        """How much of a body at least lies outside its neighbour."""
        length = length_over_all(bodies[number])
        into = overlap(self.joint, self._numbers[number], self._numbers[towards], self.catalogue)
        return max(length.low - into.high, 0.0) if length and length.known else 0.0

    def _from_one_seat(self, bodies: list[Part], turning: list[Part]) -> list[Standing]:
        """Straight bodies go on the way that the line comes, from the one seat that is known."""
        known = [n for n, end in enumerate(self.ends) if end.seat is not None and end.away is not None]
        measure = f"the seats of both sides of {self.joint.name}"
        if turning or not known:
            return [Unplaced(body, "where its ends sit is not known", measure) for body in bodies]
        end = self.ends[known[0]]
        row = bodies if known[0] else bodies[::-1]  # from the far end to the seat
        pieces: list[Piece | Unplaced] = []
        for body in row:
            length = length_over_all(body)
            if length is None or not length.known or end.away is None:
                pieces.append(Unplaced(body, "its length is not known", "its length over all"))
            else:
                pieces.append(Piece(body, (end.away,), (length,)))
        numbers = self._numbers if known[0] else self._numbers[::-1]
        overlaps = [overlap(self.joint, one, other, self.catalogue) for one, other in pairwise(numbers)]
        found: list[Standing | None] = [each if isinstance(each, Unplaced) else None for each in pieces]
        if end.seat is not None:
            back_from_seat(end.position, pieces, overlaps, found)
        standing = [
            each or Unplaced(body, "where it begins is not known", measure)
            for each, body in zip(found, row, strict=True)
        ]
        return standing if known[0] else standing[::-1]

    def _branched(self, bodies: list[Part]) -> list[Standing]:
        """A tee or cross, and on its legs whatever leads to the lines."""
        courses = tee_courses(self.ends)
        if not courses:
            measure = f"the seats of all sides of {self.joint.name}"
            return [Unplaced(body, "where its ends sit is not known", measure) for body in bodies]
        out: list[Standing] = []
        for body in bodies:
            legs = [
                leg
                for leg, end in zip(courses, self.ends, strict=True)
                if body.turn is None or body in self._beside(end)
            ]
            out.append(Placed(body, tuple(legs), self._seats))
        return out

    def _beside(self, end: HubEnd) -> tuple[Part, ...]:
        """The bodies between a line's end and the tee."""
        chain = chain_at(self.joint, end.line, end.end)
        before = takewhile(lambda part: part.turn is not None or part.category is not Category.FITTING, chain)
        return tuple(part for part in before if part.category is Category.FITTING)

    def _nut(self, nut: Part) -> Standing:
        """The jam nut lies on the panel at the long end, which on a straight body may be on either side."""
        thick, bulkhead = nut.dimension("thickness"), self.bulkhead
        if thick is None or not thick.known:
            return Unplaced(nut, "its thickness is not known", "its thickness")
        if bulkhead is None or not bulkhead.at.known:
            measure = f"where the middle of the hole of {self.joint.name} is"
            return Unplaced(nut, "where the panel sits along it is not known", measure)
        if not bulkhead.thickness.known:
            measure = f"the thickness of the panel at {bulkhead.name}, with its doublers"
            return Unplaced(nut, "the thickness of the panel is not known", measure)
        axis, at, half = self._through(bulkhead), bulkhead.at.point, bulkhead.thickness.high / 2
        if axis is None:
            measure = f"which way the panel of {bulkhead.name} looks"
            return Unplaced(nut, "which way its hole goes is not known", measure)
        bodies = [part for part in self.joint.parts if part.needs_panel]
        sides: tuple[float, ...] = (1.0, -1.0)
        if bodies and bodies[0].turn:
            course = elbow_course(bulkhead, self.ends, bodies[0])
            if not isinstance(course, Course) or len(course.paths) != 1:
                measure = f"both seats of {bulkhead.name}"
                return Unplaced(nut, "on which side its elbow turns is not known", measure)
            straight, corner, _ = course.paths[0]
            sides = (1.0,) if dot(less(straight, corner), axis) > 0 else (-1.0,)
        paths = tuple(
            (along(at, axis, side * half), along(at, axis, side * (half + thick.high))) for side in sides
        )
        return Placed(nut, paths, (thick,), EITHER_SIDE if len(sides) == TWO else "")

    def _through(self, bulkhead: Bulkhead) -> Point | None:
        """The way through the hole: as the panel looks, else from seat to seat of a straight body."""
        if bulkhead.normal.vector is not None:
            return bulkhead.normal.vector
        seats = [end.seat for end in self.ends if end.seat is not None]
        straight = all(part.turn == 0 for part in self.joint.parts if part.category is Category.FITTING)
        if not straight or len(seats) != TWO or seats[0] == seats[1]:
            return None
        return unit(less(seats[1], seats[0]))


def _longest(bodies: list[Part], number: int) -> tuple[float | None, float | None]:
    """How far the first body may reach from its seat, and the last; those between may lie anywhere."""
    length: Value | None = length_over_all(bodies[number])
    if length is None or not length.known:
        return None, None
    return (length.high if number == 0 else None, length.high if number == len(bodies) - 1 else None)
