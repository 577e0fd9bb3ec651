"""From the model to joints: every port, bulkhead and line end is fitted, each by its own request."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Protocol

from firmpedal.fit.hub import fit_hub, fit_meeting
from firmpedal.fit.joint import EndRef, Hub, Joint, LineEnd, Port, meeting_name
from firmpedal.fit.search import fit_port
from firmpedal.model.circuit import BodyForm, Flare
from firmpedal.model.part import Form, Gender, Interface
from firmpedal.model.stock import Hose, LineKind
from firmpedal.quantity import Answer
from firmpedal.units import Dimension, UnitError, read

if TYPE_CHECKING:
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.circuit import Bulkhead, Line
    from firmpedal.model.circuit import Port as DeclaredPort
    from firmpedal.model.part import Part
    from firmpedal.model.space import Direction, Position

TURNS = {BodyForm.STRAIGHT: 0.0, BodyForm.ELBOW_45: math.pi / 4, BodyForm.ELBOW_90: math.pi / 2}


class HasParts(Protocol):
    """Anything that holds the parts one can buy."""

    @property
    def parts(self) -> tuple[Part, ...]: ...


@dataclass(frozen=True)
class Assembly:
    """All joints of an aircraft, and which joint holds each line end."""

    joints: tuple[Joint, ...]
    by_end: tuple[tuple[str, str, int], ...]  # line, from or to, number of the joint

    def joint_of(self, line: str, end: str) -> Joint | None:
        number = next((n for name, where, n in self.by_end if (name, where) == (line, end)), None)
        return None if number is None else self.joints[number]


def assemble(aircraft: Aircraft, catalogue: HasParts) -> Assembly:
    """Fit every joint of an aircraft; unchanged joints come from the memory of the search."""
    work = _Assembler(aircraft, catalogue)
    for component in aircraft.components:
        for port in component.ports:
            work.fit_component_port(component.name, port)
    for bulkhead in aircraft.bulkheads:
        work.fit_bulkhead(bulkhead)
    work.fit_meetings()
    return Assembly(tuple(work.joints), tuple(work.by_end))


class _Assembler:
    def __init__(self, aircraft: Aircraft, catalogue: HasParts) -> None:
        self.aircraft = aircraft
        self.catalogue = catalogue
        self.joints: list[Joint] = []
        self.by_end: list[tuple[str, str, int]] = []
        self.ends = {
            target: (line, end)
            for line in aircraft.lines
            for end, target in (("from", line.start), ("to", line.finish))
        }

    def add(self, joint: Joint, *ends: LineEnd | None) -> None:
        self.by_end += [(end.line, end.end, len(self.joints)) for end in ends if end is not None]
        self.joints.append(joint)

    def fit_component_port(self, component: str, port: DeclaredPort) -> None:
        name = f"{component}.{port.name}"
        asked = Port(port.place, name, port.thread.interface, closed=port.closed is Answer.YES)
        line, end = self.ends.get(name, (None, ""))
        if line is None and not asked.closed:
            if not port.open:
                self.add(_open_port(asked))
            return
        line_end = None if line is None else self._aimed(self.line_end(line, end, port), port)
        self.add(fit_port(asked, line_end, self.catalogue), line_end)

    def _aimed(self, end: LineEnd, port: DeclaredPort) -> LineEnd:
        """Where the port's direction is not known, take the body that the builder measured with."""
        settled = (end.turn, end.leaves, end.points)
        name = port.seat_measured_with
        if not name or end.fittings or any(way is not None for way in settled):
            return end
        measured = next((part for part in self.catalogue.parts if name in part.names), None)
        return end if measured is None else replace(end, turn=measured.turn)

    def fit_bulkhead(self, bulkhead: Bulkhead) -> None:
        sides = tuple(side.name for side in bulkhead.sides)
        panel = bulkhead.through_panel is not Answer.NO
        turn = TURNS[bulkhead.form]
        hub = Hub(bulkhead.place, bulkhead.name, turn, panel, sides, bulkhead.fittings, bulkhead.fitting)
        ends = []
        for side in sides:
            line, end = self.ends.get(f"{bulkhead.name}.{side}", (None, ""))
            ends.append(None if line is None else self.line_end(line, end))
        self.add(fit_hub(hub, tuple(ends), self.catalogue), *ends)

    def fit_meetings(self) -> None:
        """Fit the places where a line's end is another line's end, with nothing declared between.

        Each of the two may name the other: it stays one meeting.
        """
        lines = {line.name: line for line in self.aircraft.lines}
        met: set[frozenset[str]] = set()
        for line in self.aircraft.lines:
            for end, target in (("from", line.start), ("to", line.finish)):
                name, _, where = target.rpartition(".")
                pair = frozenset({f"{line.name}.{end}", target})
                if name in lines and where in ("from", "to") and pair not in met:
                    met.add(pair)
                    one, two = self.line_end(line, end), self.line_end(lines[name], where)
                    self.add(self._named_apart(fit_meeting(one, two, self.catalogue), one, two), one, two)

    def _named_apart(self, joint: Joint, one: LineEnd, two: LineEnd) -> Joint:
        """Two lines that meet twice need names that say at which of their ends."""
        if all(other.name != joint.name for other in self.joints):
            return joint
        name = meeting_name(f"{one.line} {one.end}", f"{two.line} {two.end}")
        return replace(joint, name=name)

    def line_end(self, line: Line, end: str, port: DeclaredPort | None = None) -> LineEnd:
        """What a line brings to a joint, and which way it leaves a port."""
        declared = line.from_fitting if end == "from" else line.to_fitting
        turn, fittings = _declared(declared)
        leaves = None if port is None else self._leaves(line, end, port.faces, seat_or_face(port))
        group = group_of(line)
        points = None if port is None else port.arm_angle
        ways = (leaves, turn, fittings, line.fittings, points)
        return LineEnd(line.name, end, interface_of(line), group, *ways)

    def _leaves(self, line: Line, end: str, faces: Direction, seat: Position) -> float | None:
        """Angle between the way a port faces and the line's first length from its seat."""
        if faces.vector is None or not seat.known:
            return None
        path = (
            [*line.via, self._seat_of(line.finish)]
            if end == "from"
            else [*line.via[::-1], self._seat_of(line.start)]
        )
        first = next(iter(path))
        if first is None or not first.known:
            return None
        away = [b - a for a, b in zip(seat.point, first.point, strict=True)]
        length = math.hypot(*away)
        if length == 0:
            return None
        along = sum(a * b for a, b in zip(away, faces.vector, strict=True))
        across = math.sqrt(max(length**2 - along**2, 0.0))
        return math.atan2(across, along)

    def _seat_of(self, target: str) -> Position | None:
        head, _, tail = target.rpartition(".")
        for component in self.aircraft.components:
            if component.name == head:
                return next((seat_or_face(port) for port in component.ports if port.name == tail), None)
        for bulkhead in self.aircraft.bulkheads:
            if bulkhead.name == head:
                return next((side.seat for side in bulkhead.sides if side.name == tail), None)
        return None


def seat_or_face(port: DeclaredPort) -> Position:
    """Where a line's end sits at a port, or at least where the port is."""
    return port.seat if port.seat.known else port.at


def outer_ends(aircraft: Aircraft) -> tuple[EndRef, ...]:
    """Every port and line end there is, straight from the model: the closing law is checked on these."""
    ports = [
        EndRef(f"port {component.name}.{port.name}", 0, port.thread.interface)
        for component in aircraft.components
        for port in component.ports
    ]
    ends = [
        EndRef(f"line {line.name} {end}", 0, interface_of(line))
        for line in aircraft.lines
        for end in ("from", "to")
    ]
    return (*ports, *ends)


def named_open(aircraft: Aircraft) -> frozenset[tuple[str, EndRef]]:
    """The ports that the builder names open, with a reason in the file."""
    return frozenset(
        ("", EndRef(f"port {component.name}.{port.name}", 0, port.thread.interface))
        for component in aircraft.components
        for port in component.ports
        if port.open
    )


def _open_port(port: Port) -> Joint:
    return Joint(port.name, port.place, (), (), (), (), (EndRef(f"port {port.name}", 0, port.interface),))


def interface_of(line: Line) -> Interface:
    """The interface at both ends of a line: hoses swivel on, tubes are flared, plastic is plain."""
    stock = line.made_of
    if isinstance(stock, Hose):
        return Interface(Form.FLARE_37, stock.dash, Gender.FEMALE)
    if stock.kind is LineKind.PLASTIC:
        return Interface(Form.PLAIN_TUBE, stock.nominal_size, Gender.MALE)
    form = Form.TUBE_FLARE_45 if line.flare is Flare.SINGLE_45 else Form.TUBE_FLARE_37
    return Interface(form, stock.dash or stock.nominal_size, Gender.MALE)


def group_of(line: Line) -> str:
    stock = line.made_of
    if isinstance(stock, Hose):
        return "hose"
    return "plastic" if stock.kind is LineKind.PLASTIC else stock.material.group


def _declared(words: tuple[str, ...]) -> tuple[float | None, tuple[str, ...]]:
    """Tell a declared angle (`90 degrees`, `straight`) from declared designations."""
    if words in (("straight",), ()):
        return (0.0 if words else None), ()
    if len(words) == 1:
        try:
            return read(words[0], Dimension.ANGLE, None).span[0], ()
        except UnitError:
            pass
    return None, words
