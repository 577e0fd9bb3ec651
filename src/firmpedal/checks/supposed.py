"""What comes to a thread that nobody has looked at yet: whether it fits is not shown."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.finding import NotShown
from firmpedal.quantity import Missing

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.checks.view import Outcome, View
    from firmpedal.fit.assembly import Assembly
    from firmpedal.fit.joint import Joint
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.circuit import Port


def supposed_joints(aircraft: Aircraft, assembly: Assembly) -> Iterator[tuple[Joint, Port]]:
    """The joints at ports whose thread is only supposed and that something is screwed to."""
    ports = aircraft.supposed_ports
    return ((each, ports[each.name]) for each in assembly.joints if each.name in ports and each.matings)


def supposed_threads(view: View) -> Iterator[Outcome]:
    """One for each such joint."""
    for joint, port in supposed_joints(view.aircraft, view.assembly):
        missing = Missing(f"{port.place}.thread", f"which thread {joint.name} has")
        message = f"whether what comes to {joint.name} fits its thread"
        yield NotShown("joint-does-not-close", port.place, message, (missing,))
