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
    """Each cylinder with the lines its outlet presses on and the fluid they hold together.

    Lines that no outlet presses on, such as one from a reservoir, come last, each without a cylinder.
    """
    held = dict(zip((line.name for line in evaluation.laid), evaluation.results.volumes, strict=True))
    pressed = {name for reach in evaluation.results.reach for name in reach.lines}
    groups = [(reach.cylinder, reach.lines) for reach in evaluation.results.reach]
    groups += [("", (name,)) for name in held if name not in pressed]
    return tuple(
        (cylinder, lines, total(f"fluid in {', '.join(lines)}", [held[name] for name in lines]))
        for cylinder, lines in groups
        if lines and set(lines) <= held.keys()
    )


def drained(work: Work) -> tuple[Circuit, ...]:
    """The old circuits that are opened: something comes off them."""
    off = {piece.place for piece in work.off} | {piece.line for piece in work.off if piece.line}
    open_lines = {
        name for joint in work.before.assembly.joints if joint.place in off for name in lines_at(joint)
    }
    open_lines |= {line.name for line in work.before.laid if line.name in off}
    return tuple(circuit for circuit in reached(work.before) if open_lines & set(circuit[1]))
