"""Which way a line leaves each of its ends, by its corners or by the fittings in its ports."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from firmpedal.model.aircraft import find
from firmpedal.model.part import Category

if TYPE_CHECKING:
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.space import Point, Position
    from firmpedal.pipeline import Evaluation

    Ways = tuple[Point | None, Point | None]


def leaving_of(evaluation: Evaluation, line: LaidLine) -> tuple[Ways, bool]:
    """Unit vectors from each end into the line, None where unknown; and whether the ports gave them.

    The corners in the file come first: they are what somebody wanted. Without any the fittings count.
    """
    if len(line.points) > 2:
        towards = _towards(line.points[0], line.points[1]), _towards(line.points[-1], line.points[-2])
        if any(towards):
            return towards, False
    return (_out_of_port(evaluation, line, "from"), _out_of_port(evaluation, line, "to")), True


def _towards(end: Position, other: Position) -> Point | None:
    if not (end.known and other.known):
        return None
    return _unit([b - a for a, b in zip(end.point, other.point, strict=True)])


def _out_of_port(evaluation: Evaluation, line: LaidLine, end: str) -> Point | None:
    """The way out of the one fitting in a port: along the port, turned towards its arm by an elbow."""
    joint = evaluation.assembly.joint_of(line.name, end)
    bodies = [part for part in joint.parts if part.category is Category.FITTING] if joint else []
    declared = find(evaluation.aircraft.lines, line.name)
    if declared is None or len(bodies) != 1 or bodies[0].turn is None:
        return None
    head, _, tail = (declared.start if end == "from" else declared.finish).rpartition(".")
    component = find(evaluation.aircraft.components, head)
    port = find(component.ports, tail) if component else None
    if port is None or port.faces.vector is None:
        return None
    turn = bodies[0].turn
    if turn == 0:
        return _unit(list(port.faces.vector))
    if port.arm_aside.vector is None:
        return None
    both = zip(port.faces.vector, port.arm_aside.vector, strict=True)
    return _unit([math.cos(turn) * along + math.sin(turn) * aside for along, aside in both])


def _unit(vector: list[float]) -> Point | None:
    long = math.hypot(*vector)
    return (vector[0] / long, vector[1] / long, vector[2] / long) if long > 0 else None
