"""Taking off: what comes off with each line, what is left over, and what to look at then."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.decide.pieces import lines_at
from firmpedal.decide.step import Action, Phase, Step, counted, passes
from firmpedal.fit.mating import NUTS_AND_SLEEVES
from firmpedal.model.aircraft import find
from firmpedal.model.circuit import Support
from firmpedal.quantity import Answer

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.decide.pieces import Piece
    from firmpedal.decide.ports import Gauge
    from firmpedal.decide.work import Work
    from firmpedal.pipeline import Evaluation


def taking_off(work: Work) -> Iterator[Step]:
    """Line by line, each with what comes off with it; then what no line took along."""
    told: set[Piece] = set()
    for line in work.before.laid:
        if line.name in work.same.old_lines:
            continue
        joints = {joint.place for joint in work.before.assembly.joints if line.name in lines_at(joint)}
        parts = [
            piece
            for piece in work.off
            if piece not in told and (piece.line == line.name or (piece.place in joints and not piece.line))
        ]
        told |= set(parts)
        stays = glassed_in(work.before, line.name)
        yield Step(
            Phase.REMOVE,
            Action.LEAVE_LINE if stays else Action.TAKE_LINE,
            line.name,
            counted(piece for piece in parts if piece.length is None),
            about=() if stays else _passes_left(work, line.name),
        )
    left: dict[str, list[Piece]] = {}
    for piece in work.off:
        if piece not in told:
            left.setdefault(piece.owner, []).append(piece)
    for owner, pieces in left.items():
        yield Step(Phase.REMOVE, Action.TAKE_PARTS, owner, counted(pieces))
    for component in work.before.aircraft.components:
        if component.name not in work.same.components:
            yield Step(Phase.REMOVE, Action.TAKE_COMPONENT, component.name)
    for bulkhead in _gone_bulkheads(work):
        yield Step(Phase.REMOVE, Action.CLOSE_HOLE, bulkhead)


def glassed_in(evaluation: Evaluation, name: str) -> bool:
    """Whether a line cannot be lifted out, because laminate holds it."""
    line = find(evaluation.aircraft.lines, name)
    return line is not None and line.support is Support.GLASSED_IN


def _gone_bulkheads(work: Work) -> list[str]:
    """Bulkheads that went from a panel and left a hole that nothing uses."""
    return [
        bulkhead.name
        for bulkhead in work.before.aircraft.bulkheads
        if bulkhead.name not in work.same.bulkheads and bulkhead.through_panel is not Answer.NO
    ]


def _passes_left(work: Work, line: str) -> tuple[str, ...]:
    return tuple(passes(work, old=True).get(line, ()))


def looking(work: Work, gauges: tuple[Gauge, ...]) -> Iterator[Step]:
    """What to look at while it is apart: stretched ports, cones that get a new line, what goes on again."""
    for gauge in gauges:
        parts = (gauge.old.designation, gauge.new.designation)
        yield Step(Phase.LOOK, Action.GAUGE, gauge.port, parts, amount=gauge.by_hand)
    for joint in work.after.assembly.joints:
        new = [name for name in lines_at(joint) if name not in work.same.new_lines]
        cones = [
            pair.after for pair in work.kept if pair.after.place == joint.place and _has_cone(pair.after)
        ]
        if new and cones:
            yield Step(Phase.LOOK, Action.LOOK_CONE, joint.name, counted(cones), about=tuple(new))
    looks: dict[tuple[str, str], list[Piece]] = {}
    for pair in work.reuse:
        looks.setdefault((pair.before.designation, pair.look), []).append(pair.before)
    for (_, look), pieces in looks.items():
        yield Step(Phase.LOOK, Action.LOOK_AT, look, counted(pieces))


def _has_cone(piece: Piece) -> bool:
    ends = piece.part.ends if piece.part and piece.category not in NUTS_AND_SLEEVES else ()
    return any("flare" in end.interface.form for end in ends)
