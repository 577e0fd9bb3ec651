"""The rule about joints that nobody can get at."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.inside import joints_inside
from firmpedal.checks.view import Outcome, View, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.quantity import Answer, Missing

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.model.surroundings import Zone

RULE = "joint-without-access"


def joint_without_access(view: View) -> Iterator[Outcome]:
    """No joint sits where it can be neither looked at nor reached with a wrench.

    A joint that weeps out of sight takes a brake away before anybody sees it. A tube in one piece may
    run through such a place.
    """
    for item in joints_inside(view, _matters):
        joint, zone = item.joint, item.zone
        message = f"whether {joint.name} can be seen and reached in {zone.name}"
        if missing := (*item.unsure, *_doubts(zone)):
            yield NotShown(RULE, joint.place, message, missing)
            continue
        yield Finding(
            RULE,
            Level.WARNING,
            joint.place,
            f"{joint.name} lies inside {zone.name}, which is closed: nobody can look at it or tighten it",
            (
                f"carry the line through {zone.name} in one piece, with its joints outside",
                "make a hatch there, and set access to yes",
            ),
            sources=practice("common-practice"),
        )


def _matters(zone: Zone) -> bool:
    return zone.hidden is not Answer.NO and zone.access is not Answer.YES


def _doubts(zone: Zone) -> tuple[Missing, ...]:
    found = []
    if zone.hidden is Answer.UNKNOWN:
        found.append(Missing(f"{zone.place}.hidden", f"whether {zone.name} is closed up when finished"))
    if zone.access is Answer.UNKNOWN:
        found.append(Missing(f"{zone.place}.access", f"whether there is a hatch to {zone.name}"))
    return tuple(found)
