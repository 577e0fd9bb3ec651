"""Who is joined to whom: which lines and wheels each master cylinder presses on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.kinds import MasterCylinder


@dataclass(frozen=True, slots=True)
class Reach:
    """The lines and calipers that a cylinder's outlet presses on."""

    cylinder: str
    lines: tuple[str, ...]
    calipers: tuple[str, ...]


def reaches(aircraft: Aircraft) -> tuple[Reach, ...]:
    """Follow the fluid from each cylinder's outlet, never back through the cylinder itself."""
    return tuple(_reach(aircraft, cylinder) for cylinder in aircraft.cylinders)


def _neighbours(aircraft: Aircraft, without: MasterCylinder) -> dict[str, list[tuple[str, str | None]]]:
    """List for each connection what it is joined to, and by which line if by one."""
    found: dict[str, list[tuple[str, str | None]]] = {}

    def join(one: str, other: str, line: str | None) -> None:
        found.setdefault(one, []).append((other, line))
        found.setdefault(other, []).append((one, line))

    for line in aircraft.lines:
        join(line.start, line.finish, line.name)
        join(f"{line.name}.from", line.start, None)
        join(f"{line.name}.to", line.finish, None)
    for bulkhead in aircraft.bulkheads:
        for side in bulkhead.sides[1:]:
            join(f"{bulkhead.name}.{bulkhead.sides[0].name}", f"{bulkhead.name}.{side.name}", None)
    for component in aircraft.components:
        if component.name != without.name:
            for one, other in component.inner_ways:
                join(f"{component.name}.{one}", f"{component.name}.{other}", None)
    return found


def _outlet(cylinder: MasterCylinder) -> str:
    """The port that a cylinder presses out of: the one named so, or its only one."""
    names = [port.name for port in cylinder.ports]
    return names[0] if len(names) == 1 and "outlet" not in cylinder.written else cylinder.outlet


def _reach(aircraft: Aircraft, cylinder: MasterCylinder) -> Reach:
    neighbours = _neighbours(aircraft, cylinder)
    seen: set[str] = set()
    lines: dict[str, None] = {}
    waiting = [f"{cylinder.name}.{_outlet(cylinder)}"]
    while waiting:
        here = waiting.pop()
        if here in seen:
            continue
        seen.add(here)
        for other, line in neighbours.get(here, []):
            if line is not None:
                lines[line] = None
            waiting.append(other)
    calipers = tuple(
        caliper.name
        for caliper in aircraft.calipers
        if any(f"{caliper.name}.{port.name}" in seen for port in caliper.ports)
    )
    return Reach(cylinder.name, tuple(lines), calipers)
