"""The fittings in the ports of components as legs in space: which are turned in, and where they point."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import TYPE_CHECKING

from firmpedal.catalog import catalogue
from firmpedal.lay.seats import minus, same_body, screwed_in, stand_of
from firmpedal.lay.solids import half_range, point_off
from firmpedal.lay.turning import Leg
from firmpedal.model.part import Category, Clocking, Form
from firmpedal.model.space import SAME_ANGLE
from firmpedal.model.stock import LineKind
from firmpedal.quantity import Mark, exactly, total, unknown
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from firmpedal.fit.assembly import Assembly
    from firmpedal.fit.joint import Joint
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.circuit import Port
    from firmpedal.model.component import BaseComponent
    from firmpedal.model.part import Part
    from firmpedal.model.space import Point, Position
    from firmpedal.quantity import Value

SAMPLES = 5  # places looked at in a range; what lies between them is allowed for
ENDS = 2  # corners of a line that has none between its ends
STEMS = ("leg_centre_to_pipe_end", "leg_centre_to_male_end")


@dataclass(frozen=True)
class PortFitting:
    """A body in a port, and how its axis is found from the place that the file gives.

    `aside` is how far that place stands beside the axis, along `arm`; where the arm is not known it may
    stand there in any direction. `along` leads from it along the port's axis to the crossing of the
    body's axes, or to the thread face of a straight one (to the port's face, where somebody measured how far
    it stands off that); it is None where that hangs on the leg itself, which leads back from the seat.
    `line` comes to it.
    """

    name: str  # of the joint: component.port
    port: Port
    part: Part
    place: Position
    aside: Value
    along: Value | None
    axis: Point
    arm: Point | None
    line: str

    @property
    def turned_in(self) -> bool:
        """Whether it turns the line and is screwed in as a whole: taper thread, or a boss with its nut."""
        return bool(self.part.turn) and any(
            end.clocking is Clocking.MAKE_UP or end.interface.form is Form.BOSS for end in self.part.ends
        )

    def same_way(self, other: PortFitting) -> bool:
        """Whether two ports face the same way."""
        return sum(a * b for a, b in zip(self.axis, other.axis, strict=True)) > math.cos(SAME_ANGLE)

    @property
    def length(self) -> Value | None:
        """From the crossing, or from the thread face of a straight body, to where the line comes out."""
        if self.part.turn:
            leg = self.port.outlet_leg
            return leg if leg.known else self.part.outlet_leg
        out = self.port.stands_off
        return out if out.known else self.part.dimension("overall_length")

    @property
    def width(self) -> Value | None:
        """Across its widest flats: as measured, else by its part."""
        return self.port.body_width if self.port.body_width.known else self.part.width

    @property
    def figures(self) -> tuple[Value, ...]:
        """All that decides where the body is."""
        found = (*self.place.coordinates, self.aside, self.along, self.length, self.width)
        return tuple(value for value in found if value is not None)

    @cached_property
    def legs(self) -> tuple[Leg, ...]:
        """Every way in which the figures can be read; none while one of them is unknown."""
        length, width = self.length, self.width
        if length is None or width is None or not all(value.known for value in self.figures):
            return ()
        return tuple(self._legs(length, width))

    def _legs(self, length: Value, width: Value) -> Iterator[Leg]:
        turn, radius = self.part.turn or 0.0, (width.low / 2, width.high / 2)
        slack = point_off(self.place)
        if self.arm is None:
            slack += self.aside.high
        elif self.along is not None:
            slack += half_range(self.aside)
        ranged = length if self.along is None else self.along
        step = (ranged.high - ranged.low) / (SAMPLES - 1)
        for number in range(1 if ranged.exact else SAMPLES):
            reading = ranged.low + number * step
            near, far = max(reading - step / 2, ranged.low), min(reading + step / 2, ranged.high)
            lengths = (near, far) if self.along is None else (length.low, length.high)
            along = -reading * math.cos(turn) if self.along is None else reading
            aside = reading * math.sin(turn) if self.along is None else self.aside.middle
            crossing = self._from_place(along, aside if self.arm else 0.0)
            yield Leg(crossing, self.axis, turn, lengths, radius, slack + step / 2, self.arm)

    def _from_place(self, along: float, aside: float) -> Point:
        arm = self.arm or (0.0, 0.0, 0.0)
        ways = zip(self.place.point, self.axis, arm, strict=True)
        x, y, z = (one + along * axis - aside * way for one, axis, way in ways)
        return (x, y, z)


def port_fittings(
    component: BaseComponent, assembly: Assembly, laid: Sequence[LaidLine]
) -> tuple[PortFitting, ...]:
    """Give the first body in each port of a component whose direction is known, in the order of the file."""
    found = []
    for port in component.ports:
        name = f"{component.name}.{port.name}"
        joint = next((one for one in assembly.joints if one.name == name), None)
        bodies = [part for part in joint.parts if part.category is Category.FITTING] if joint else []
        if joint is not None and bodies and bodies[0].turn is not None and port.faces.vector is not None:
            way = _leaving(joint, assembly, laid)
            found.append(_fitting(name, port, bodies[0], port.faces.vector, *way))
    return tuple(found)


@lru_cache(maxsize=1024)
def _fitting(name: str, port: Port, part: Part, axis: Point, line: str, way: Point | None) -> PortFitting:
    arm = port.arm_aside.vector or (_arm(axis, way, part.turn or 0.0, SAME_ANGLE) if way else None)
    on_axis = exactly("beside the axis", Dimension.LENGTH, 0.0, Mark.DERIVED)
    if port.at.known:
        along = _above_face(port, part)
        return PortFitting(name, port, part, port.at, on_axis, along, axis, arm, line)
    measured = catalogue().part(port.seat_measured_with) or part
    stand = stand_of([measured])
    aside = stand.lateral if measured.turn else on_axis
    back = None if same_body(part, measured) else _from_seat(port, part, stand.reach)
    return PortFitting(name, port, part, port.seat, aside, back, axis, arm, line)


def _above_face(port: Port, part: Part) -> Value:
    """From the port's face out to where the leg begins: as measured, else by the part and its thread."""
    if port.stands_off.known:
        return port.stands_off if part.turn else exactly("reach", Dimension.LENGTH, 0.0, Mark.DERIVED)
    return total("reach", (_stem(part), minus(screwed_in(port, catalogue()))))


def _from_seat(port: Port, part: Part, reach: Value) -> Value:
    """From the seat of the fitting that was measured with, which reaches so far, to where the leg begins."""
    if port.stands_off.known:
        middle = (port.stands_off,) if part.turn else ()
        return total("reach", (*middle, screwed_in(port, catalogue()), minus(reach)))
    return total("reach", (_stem(part), minus(reach)))


def _stem(part: Part) -> Value:
    """From the end that is screwed in to where the leg begins: none for a straight body."""
    if not part.turn:
        return exactly("stem", Dimension.LENGTH, 0.0, Mark.DERIVED)
    what = f"the leg of {part.designation} that is screwed in"
    return part.dimension(*STEMS) or unknown("stem", Dimension.LENGTH, "", what)


def _leaving(joint: Joint, assembly: Assembly, laid: Sequence[LaidLine]) -> tuple[str, Point | None]:
    """The line at a joint and the way it leaves; a hose without corners leaves as its fitting lets it."""
    for name, end, number in assembly.by_end:
        line = next((one for one in laid if one.name == name), None)
        if line is None or assembly.joints[number] is not joint:
            continue
        if line.path is None or (line.kind is not LineKind.TUBE and len(line.path) == ENDS):
            return name, None
        seat, beyond = line.path[:2] if end == "from" else line.path[:-3:-1]
        x, y, z = (b - a for a, b in zip(seat, beyond, strict=True))
        return name, (x, y, z)
    return "", None


def arm_of(
    port: Port, turn: float, joint: Joint, assembly: Assembly, laid: Sequence[LaidLine], within: float
) -> Point | None:
    """The arm of an elbow in a port as the file gives it, else as its line leaves.

    None where neither is known, or where the line leaves it by an angle further than `within` [rad] from
    the elbow's own turn.
    """
    if port.arm_aside.vector is not None or port.faces.vector is None:
        return port.arm_aside.vector
    _, way = _leaving(joint, assembly, laid)
    return _arm(port.faces.vector, way, turn, within) if way else None


def _arm(axis: Point, way: Point, turn: float, within: float) -> Point | None:
    """The arm of an elbow whose line leaves some way; None where this body cannot point there."""
    length = math.hypot(*way)
    if not length:
        return None
    along = sum(a * b for a, b in zip(axis, way, strict=True)) / length
    across = [one / length - along * a for a, one in zip(axis, way, strict=True)]
    size = math.hypot(*across)
    if abs(math.acos(max(-1.0, min(1.0, along))) - turn) > within or not size:
        return None
    x, y, z = (one / size for one in across)
    return (x, y, z)
