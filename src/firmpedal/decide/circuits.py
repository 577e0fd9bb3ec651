"""The circuits that a retrofit opens, and what their lines hold."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from firmpedal.analysis.circuit import graph_of
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
        (cylinder, lines, _fluid(lines, held))
        for cylinder, lines in groups
        if lines and set(lines) <= held.keys()
    )


class Filled(NamedTuple):
    """A circuit as it is filled: its calipers, its lines as fluid rises through them, its top."""

    wheels: tuple[str, ...]
    lines: tuple[str, ...]
    top: str  # the reservoir, or the cylinder with its own; empty where the file names none
    amount: Value


def filled(evaluation: Evaluation) -> tuple[Filled, ...]:
    """Each circuit from its wheels up; lines that lead to no wheel come last, each by itself."""
    graph = graph_of(evaluation.aircraft)
    held = dict(zip((line.name for line in evaluation.laid), evaluation.results.volumes, strict=True))
    found: dict[frozenset[str], Filled] = {}
    for _, ports in graph.wheels:
        met = graph.walk(ports)
        wheels = tuple(name for name, at in graph.wheels if met.keys() & set(at))
        rising = graph.walk(port for name, at in graph.wheels if name in wheels for port in at)
        lines = tuple(dict.fromkeys(line for _, line in rising.values() if line in held))
        tops = (name for node, name in graph.tops if node in met)
        if lines:
            found.setdefault(frozenset(lines), Filled(wheels, lines, next(tops, ""), _fluid(lines, held)))
    told = {name for circuit in found.values() for name in circuit.lines}
    alone = (Filled((), (name,), "", _fluid((name,), held)) for name in held if name not in told)
    return (*found.values(), *alone)


def _fluid(lines: tuple[str, ...], held: dict[str, Value]) -> Value:
    return total(f"fluid in {', '.join(lines)}", [held[name] for name in lines])


def drained(work: Work) -> tuple[Circuit, ...]:
    """The old circuits that are opened: something comes off them."""
    off = {piece.place for piece in work.off} | {piece.line for piece in work.off if piece.line}
    open_lines = {
        name for joint in work.before.assembly.joints if joint.place in off for name in lines_at(joint)
    }
    open_lines |= {line.name for line in work.before.laid if line.name in off}
    return tuple(circuit for circuit in reached(work.before) if open_lines & set(circuit[1]))
