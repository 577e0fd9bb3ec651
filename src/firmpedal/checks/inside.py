"""Which joints lie inside which zones: each joint once, whichever of its line ends is inside."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from firmpedal.checks.view import View
    from firmpedal.fit.joint import Joint
    from firmpedal.model.surroundings import Zone
    from firmpedal.quantity import Missing


@dataclass(frozen=True)
class JointInside:
    """A joint with an end in a zone; `unsure` says what to measure before that is certain."""

    joint: Joint
    zone: Zone
    unsure: tuple[Missing, ...] = ()


def joints_inside(view: View, wanted: Callable[[Zone], bool]) -> Iterator[JointInside]:
    """Yield every joint that lies in a wanted zone, or may lie there."""
    found: dict[tuple[str, str], JointInside] = {}
    for crossing in view.crossings:
        if not wanted(crossing.zone):
            continue
        ends = ("from", "to") if crossing.unsure_ends else crossing.ends_inside
        for end in ends:
            joint = view.assembly.joint_of(crossing.line, end)
            if joint is None:
                continue
            key, one = (
                (joint.place, crossing.zone.name),
                JointInside(joint, crossing.zone, crossing.unsure_ends),
            )
            if key not in found or (found[key].unsure and not one.unsure):
                found[key] = one
    yield from found.values()
