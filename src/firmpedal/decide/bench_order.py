"""Which fitting of a component goes in before which, by what has room to be turned in beside what."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.elbow_room import turns_in_beside
from firmpedal.lay.port_fittings import port_fittings
from firmpedal.model.aircraft import find
from firmpedal.quantity import Answer

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.fit.joint import Joint
    from firmpedal.lay.port_fittings import PortFitting
    from firmpedal.pipeline import Evaluation

EASE = {Answer.NO: 0, Answer.UNKNOWN: 1, Answer.YES: 2}


def goes_before(evaluation: Evaluation, component: str) -> dict[str, tuple[str, ...]]:
    """Give for each joint of a component the joints that have to wait for it.

    A fitting goes in first if it has less sure a room beside the other than the other beside it. Where
    that is the same both ways round, nothing is said.
    """
    found = find(evaluation.aircraft.components, component)
    fittings = port_fittings(found, evaluation.assembly, evaluation.laid) if found else ()
    ease = {
        (one.name, other.name): EASE[turns_in_beside(one, other)]
        for one in fittings
        for other in fittings
        if one is not other
    }
    return {one.name: _waiting(one, fittings, ease) for one in fittings}


def _waiting(
    one: PortFitting, fittings: Iterable[PortFitting], ease: dict[tuple[str, str], int]
) -> tuple[str, ...]:
    others = [other.name for other in fittings if other is not one]
    return tuple(name for name in others if ease[one.name, name] < ease[name, one.name])


def in_order(joints: Iterable[Joint], before: dict[str, tuple[str, ...]]) -> list[Joint]:
    """Put joints in an order in which each can be made, otherwise as they come.

    Where some wait for each other in a circle, the first of them goes first.
    """
    waiting, ordered = list(joints), []
    while waiting:
        free = [
            joint for joint in waiting if not any(joint.name in before.get(one.name, ()) for one in waiting)
        ]
        ordered.append((free or waiting)[0])
        waiting.remove(ordered[-1])
    return ordered
