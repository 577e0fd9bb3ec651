"""What comes to a thread that nobody has looked at yet: whether it fits is not shown."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.finding import NotShown
from firmpedal.quantity import Missing

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.checks.view import Outcome, View


def supposed_threads(view: View) -> Iterator[Outcome]:
    """One for each port whose thread is only supposed and that something is screwed to."""
    ports = view.aircraft.supposed_ports
    for joint in view.assembly.joints:
        if joint.name in ports and joint.matings:
            place = ports[joint.name].place
            missing = Missing(f"{place}.thread", f"which thread {joint.name} has")
            message = f"whether what comes to {joint.name} fits its thread"
            yield NotShown("joint-does-not-close", place, message, (missing,))
