"""What the diagram shows: each component and meeting place with its connections, and the lines between."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import Enum, auto
from typing import TYPE_CHECKING

from firmpedal.model.component import SideOf
from firmpedal.model.kinds import Caliper, MasterCylinder, ParkingValve, Reservoir
from firmpedal.quantity import Answer
from firmpedal.report.flow import flow_of
from firmpedal.report.flow_sides import rights_of, sides_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.circuit import Bulkhead, Line, Port
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.flow import Flow

    Component = Caliper | MasterCylinder | ParkingValve | Reservoir


class Kind(Enum):
    """What a node is drawn as."""

    RESERVOIR = auto()
    CYLINDER = auto()
    VALVE = auto()
    CALIPER = auto()
    PLATE = auto()
    UNION = auto()
    TEE = auto()
    MEETING = auto()


COMPONENTS = {
    Reservoir: Kind.RESERVOIR,
    MasterCylinder: Kind.CYLINDER,
    ParkingValve: Kind.VALVE,
    Caliper: Kind.CALIPER,
}


@dataclass(frozen=True, slots=True)
class Terminal:
    """Where a line comes to a node, or a port without one; `below` if it leaves the symbol's foot.

    `joint` is empty where the whole node is one joint. Ways of a valve are counted from 0.
    """

    below: bool
    line: str = ""
    end: str = ""
    joint: str = ""
    way: int = 0
    plugged: bool = False


@dataclass(frozen=True, slots=True)
class Node:
    """Something with a symbol of its own."""

    kind: Kind
    name: str
    side: SideOf
    right: float
    met: int
    terminals: tuple[Terminal, ...]
    joint: str = ""


@dataclass(frozen=True, slots=True)
class Edge:
    """A line between two terminals, each by the numbers of its node and of itself; fluid runs down."""

    line: str
    upper: tuple[int, int]
    lower: tuple[int, int]


@dataclass(frozen=True, slots=True)
class Scheme:
    """All that the diagram shows."""

    nodes: tuple[Node, ...]
    edges: tuple[Edge, ...]


def scheme_of(evaluation: Evaluation) -> Scheme:
    """Gather the nodes and lines of an evaluation."""
    work = _Gathering(evaluation)
    nodes = tuple(sorted(work.nodes(), key=lambda node: node.met))
    at = {
        (terminal.line, terminal.end): (number, index)
        for number, node in enumerate(nodes)
        for index, terminal in enumerate(node.terminals)
        if terminal.line
    }
    edges = []
    for line in evaluation.aircraft.lines:
        first, last = at.get((line.name, "from")), at.get((line.name, "to"))
        if first is not None and last is not None:
            pair = (first, last) if work.flow.runs_down(line) else (last, first)
            edges.append(Edge(line.name, *pair))
    return Scheme(nodes, tuple(edges))


class _Gathering:
    def __init__(self, evaluation: Evaluation) -> None:
        self.aircraft: Aircraft = evaluation.aircraft
        self.assembly = evaluation.assembly
        self.joints = {joint.name for joint in evaluation.assembly.joints}
        self.flow: Flow = flow_of(self.aircraft)
        self.sides = sides_of(self.aircraft, self.flow.graph)
        self.rights = rights_of(self.aircraft)
        self.ends: dict[str, list[tuple[Line, str]]] = {}
        for line in self.aircraft.lines:
            self.ends.setdefault(line.start, []).append((line, "from"))
            self.ends.setdefault(line.finish, []).append((line, "to"))

    def nodes(self) -> Iterator[Node]:
        for part in self.aircraft.components:
            yield self._component(part)
        for bulkhead in self.aircraft.bulkheads:
            yield self._bulkhead(bulkhead)
        yield from self._meetings()

    def _component(self, part: Component) -> Node:
        terminals = tuple(each for port in part.ports for each in self._port(part, port))
        places = [f"{part.name}.{port.name}" for port in part.ports]
        return self._node(COMPONENTS[type(part)], part.name, places, terminals)

    def _port(self, part: Component, port: Port) -> Iterator[Terminal]:
        """A terminal for each line at a port; one without a line where the port is a joint all the same."""
        place = f"{part.name}.{port.name}"
        lines = self.ends.get(place, [])
        for line, end in lines:
            terminal = Terminal(self._leads_down(line, end), line.name, end, place)
            yield self._fixed(part, port, terminal)
        if not lines and place in self.joints:
            plugged = port.closed is Answer.YES
            below = not isinstance(part, MasterCylinder) or place in self.flow.outlets
            yield self._fixed(part, port, Terminal(below, joint=place, plugged=plugged))

    def _leads_down(self, line: Line, end: str) -> bool:
        return self.flow.runs_down(line) is (end == "from")

    def _fixed(self, part: Component, port: Port, terminal: Terminal) -> Terminal:
        """Inlets are on top of a cylinder and outlets below it; a way of a valve has one end at each."""
        place = f"{part.name}.{port.name}"
        if isinstance(part, Reservoir):
            return replace(terminal, below=True)
        if place in self.flow.outlets | self.flow.inlets:
            return replace(terminal, below=place in self.flow.outlets)
        if isinstance(part, ParkingValve):
            for number, way in enumerate(part.ways):
                if port.name in way:
                    return replace(terminal, below=self._lower_end(part, way) == port.name, way=number)
            return replace(terminal, way=len(part.ways) + [each.name for each in part.ports].index(port.name))
        return terminal

    def _lower_end(self, part: ParkingValve, way: tuple[str, str]) -> str:
        return max(way, key=lambda name: self.flow.met.get(f"{part.name}.{name}", 0))

    def _bulkhead(self, bulkhead: Bulkhead) -> Node:
        places = [f"{bulkhead.name}.{side.name}" for side in bulkhead.sides]
        terminals = [
            Terminal(self._leads_down(line, end), line.name, end)
            for place in places
            for line, end in self.ends.get(place, [])
        ]
        for _ in range(2 - len(terminals)):
            terminals.append(Terminal(below=all(not each.below for each in terminals)))
        through = bulkhead.through_panel is not Answer.NO
        kind = Kind.TEE if len(terminals) > 2 else Kind.PLATE if through else Kind.UNION
        return self._node(kind, bulkhead.name, places, _one_up_one_down(terminals), bulkhead.name)

    def _meetings(self) -> Iterator[Node]:
        """Places where the end of a line is the end of another."""
        found: dict[frozenset[str], tuple[tuple[Line, str], ...]] = {}
        lines = {line.name: line for line in self.aircraft.lines}
        for target, ends in self.ends.items():
            name, _, where = target.rpartition(".")
            if name in lines and where in ("from", "to"):
                for line, end in ends:
                    found[frozenset((target, f"{line.name}.{end}"))] = ((line, end), (lines[name], where))
        for pair, both in found.items():
            (one, end), (other, where) = both
            joint = self.assembly.joint_of(one.name, end)
            terminals = [Terminal(self._leads_down(line, at), line.name, at) for line, at in both]
            name = f"{one.name} {end}, {other.name} {where}"
            yield self._node(
                Kind.MEETING, name, sorted(pair), _one_up_one_down(terminals), joint.name if joint else ""
            )

    def _node(
        self, kind: Kind, name: str, places: list[str], terminals: tuple[Terminal, ...], joint: str = ""
    ) -> Node:
        sides = {self.sides.get(place, SideOf.CENTRE) for place in places}
        side = sides.pop() if len(sides) == 1 else SideOf.CENTRE
        rights = [self.rights[place] for place in places if place in self.rights]
        met = min((self.flow.met.get(place, len(self.flow.met)) for place in places), default=0)
        right = sum(rights) / len(rights) if rights else 0.0
        return Node(kind, name, side, right, met, terminals, joint)


def _one_up_one_down(terminals: list[Terminal]) -> tuple[Terminal, ...]:
    """What joins two lines has one above and one below, whichever way fluid runs in them."""
    if len(terminals) != 2 or terminals[0].below is not terminals[1].below:
        return tuple(terminals)
    return (replace(terminals[0], below=False), replace(terminals[1], below=True))
