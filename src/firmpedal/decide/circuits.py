"""The circuits that a retrofit opens, and what their lines hold."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.decide.pieces import lines_at
from firmpedal.quantity import Value, total

if TYPE_CHECKING:
    from firmpedal.decide.work import Work
    from firmpedal.pipeline import Evaluation

Circuit = tuple[str, tuple[str, ...], Value]


def reached(evaluation: Evaluation) -> tuple[Circuit, ...]:
    """Each cylinder that has lines, with their names and the fluid they hold together."""
    held = dict(zip((line.name for line in evaluation.laid), evaluation.results.volumes, strict=True))
    found = []
    for reach in evaluation.results.reach:
        volumes = [held[name] for name in reach.lines if name in held]
        if volumes:
            found.append((reach.cylinder, reach.lines, total(f"fluid in {', '.join(reach.lines)}", volumes)))
    return tuple(found)


def drained(work: Work) -> tuple[Circuit, ...]:
    """The old circuits that are opened: something comes off them."""
    off = {piece.place for piece in work.off} | {piece.line for piece in work.off if piece.line}
    open_lines = {
        name for joint in work.before.assembly.joints if joint.place in off for name in lines_at(joint)
    }
    open_lines |= {line.name for line in work.before.laid if line.name in off}
    return tuple(circuit for circuit in reached(work.before) if open_lines & set(circuit[1]))
