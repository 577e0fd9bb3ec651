"""The circuit as declared, as a graph: what is always joined, and the ways that a pedal or lever shuts."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from firmpedal.model.aircraft import find
from firmpedal.model.kinds import Caliper, MasterCylinder, ParkingValve, Reservoir
from firmpedal.quantity import Answer

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.model.aircraft import Aircraft


@dataclass(frozen=True, slots=True)
class Joint:
    """Two connections that fluid always passes between, and the line if it is one."""

    one: str
    other: str
    line: str = ""


@dataclass(frozen=True, slots=True)
class Way:
    """A passage inside a master cylinder or a parking valve, from the reservoir's side to the wheel's.

    A valve does not care which way round it is; `above` and `below` are then as the file has them.
    """

    part: str
    above: str
    below: str


@dataclass(frozen=True)
class Graph:
    """All connections: `tops` are those at a reservoir, with its name; a reservoir passes no pressure on."""

    joints: tuple[Joint, ...]
    ways: tuple[Way, ...]
    tops: tuple[tuple[str, str], ...]
    outlets: tuple[tuple[str, str], ...]
    wheels: tuple[tuple[str, tuple[str, ...]], ...]

    @cached_property
    def neighbours(self) -> dict[str, tuple[tuple[str, str, str], ...]]:
        """For each connection the others: where to, by which line if by one, inside which part if in one."""
        found: dict[str, list[tuple[str, str, str]]] = {}
        steps = [(joint.one, joint.other, joint.line, "") for joint in self.joints]
        steps += [(way.above, way.below, "", way.part) for way in self.ways]
        for one, other, line, part in steps:
            found.setdefault(one, []).append((other, line, part))
            found.setdefault(other, []).append((one, line, part))
        return {node: tuple(steps) for node, steps in found.items()}

    def steps(self, node: str, *without: str) -> Iterator[tuple[str, str]]:
        """Where fluid can go from a connection and by which line, but never inside some parts."""
        for other, line, part in self.neighbours.get(node, ()):
            if not part or part not in without:
                yield other, line

    def walk(self, start: Iterable[str], *without: str) -> dict[str, tuple[str, str]]:
        """Every connection met from some, with the one before it and the line between; a start has itself."""
        found = {node: (node, "") for node in start}
        waiting = list(found)
        for node in waiting:
            for other, line in self.steps(node, *without):
                if other not in found:
                    found[other] = (node, line)
                    waiting.append(other)
        return found


def graph_of(aircraft: Aircraft) -> Graph:
    """Read the graph off the declared lines, bulkheads and components."""
    ways = [
        Way(part.name, f"{part.name}.{one}", f"{part.name}.{other}")
        for part in aircraft.components
        if isinstance(part, ParkingValve)
        for one, other in part.ways
    ]
    supplies = {each.name: supply_of(aircraft, each) for each in aircraft.cylinders}
    ways += [
        Way(each.name, above, outlet_of(each))
        for each in aircraft.cylinders
        if (above := supplies[each.name]) is not None
    ]
    return Graph(
        tuple(_joints(aircraft)),
        tuple(ways),
        tuple(_tops(aircraft)),
        tuple((each.name, outlet_of(each)) for each in aircraft.cylinders),
        tuple((each.name, _ports(each)) for each in aircraft.calipers),
    )


def outlet_of(cylinder: MasterCylinder) -> str:
    """The port that a cylinder presses out of: the one named so, or its only one."""
    names = [port.name for port in cylinder.ports]
    alone = len(names) == 1 and "outlet" not in cylinder.written
    return f"{cylinder.name}.{names[0] if alone else cylinder.outlet}"


def supply_of(aircraft: Aircraft, cylinder: MasterCylinder) -> str | None:
    """Where a cylinder's relief port leads: into its own reservoir, or to its inlet; None if nowhere.

    A cylinder with no inlet is taken to have its own reservoir where the file says nothing at all of
    where fluid comes from.
    """
    if cylinder.has_reservoir or (not _has_inlet(cylinder) and not _tells_supply(aircraft, cylinder)):
        return own_reservoir(cylinder)
    if _has_inlet(cylinder):
        return f"{cylinder.name}.{cylinder.inlet}"
    named = find(aircraft.components, cylinder.reservoir)
    return own_reservoir(cylinder) if isinstance(named, Reservoir) else None


def own_reservoir(cylinder: MasterCylinder) -> str:
    """A name for the inside of a built-in reservoir; no port can have it."""
    return f"{cylinder.name}.(reservoir)"


def _has_inlet(cylinder: MasterCylinder) -> bool:
    """Whether fluid can come in at its inlet: one that is plugged or named open is as good as none."""
    port = find(cylinder.ports, cylinder.inlet)
    own = f"{cylinder.name}.{cylinder.inlet}" != outlet_of(cylinder)
    return own and port is not None and port.closed is not Answer.YES and not port.open


def _tells_supply(aircraft: Aircraft, cylinder: MasterCylinder) -> bool:
    """Whether the file says anything of where fluid comes from, for this cylinder or for others."""
    if cylinder.reservoir:
        return True
    return any(
        isinstance(part, Reservoir) or (isinstance(part, MasterCylinder) and part.has_reservoir)
        for part in aircraft.components
    )


def _joints(aircraft: Aircraft) -> Iterator[Joint]:
    for line in aircraft.lines:
        yield Joint(line.start, line.finish, line.name)
        yield Joint(f"{line.name}.from", line.start)
        yield Joint(f"{line.name}.to", line.finish)
    for bulkhead in aircraft.bulkheads:
        for side in bulkhead.sides[1:]:
            yield Joint(f"{bulkhead.name}.{bulkhead.sides[0].name}", f"{bulkhead.name}.{side.name}")
    for part in aircraft.components:
        if isinstance(part, Caliper):
            for one, other in part.inner_ways:
                yield Joint(f"{part.name}.{one}", f"{part.name}.{other}")
        elif isinstance(part, MasterCylinder) and part.has_reservoir and _has_inlet(part):
            yield Joint(f"{part.name}.{part.inlet}", own_reservoir(part))


def _tops(aircraft: Aircraft) -> Iterator[tuple[str, str]]:
    for part in aircraft.components:
        if isinstance(part, Reservoir):
            yield from ((port, part.name) for port in _ports(part))
        elif isinstance(part, MasterCylinder) and supply_of(aircraft, part) == own_reservoir(part):
            named = find(aircraft.components, part.reservoir)
            yield own_reservoir(part), named.name if isinstance(named, Reservoir) else part.name


def _ports(part: Caliper | Reservoir) -> tuple[str, ...]:
    return tuple(f"{part.name}.{port.name}" for port in part.ports)
