"""The bends of a tube as figures at full size: a template of each, and the clock face for its turn."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.report.bend_blocks import turns_of
from firmpedal.report.bend_template import BendWords, FlatBend, bend_template
from firmpedal.report.clock import clock_time, ring, turn_size
from firmpedal.report.clock_face import clock_face
from firmpedal.report.lengths import both, degrees
from firmpedal.report.views import POINTS_PER_METRE
from firmpedal.units import from_unit

if TYPE_CHECKING:
    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.tube import TubeShape
    from firmpedal.lay.work import TubeWork
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.bend_blocks import Turn
    from firmpedal.report.sheet import Mark

LEG = from_unit(3, "in")  # no more of a leg is drawn


@dataclass(frozen=True, slots=True)
class BendFigure:
    """A bend's template, and its clock face; the bend that is made first has none."""

    name: str
    template: tuple[Mark, ...]
    face: tuple[Mark, ...] | None


def bend_figures(evaluation: Evaluation, line: LaidLine) -> tuple[BendFigure, ...]:
    """The figures of all bends in the order in which they are made."""
    tube, work = line.tube, line.work
    if tube is None or work is None:
        return ()
    outside = line.stock.outside_diameter.middle * POINTS_PER_METRE
    turns = turns_of(tube, work.steps)
    found = []
    for step in work.steps:
        flat = flat_bend(tube, work, step.bend, outside)
        template = bend_template(flat, _words(evaluation, line, tube, work, step.bend))
        turn = turns.get(step.bend)
        face = None
        if turn is not None and turn.rotation.known:
            face = clock_face(turn.rotation.middle, outside, _face_words(line.name, step.bend, turn))
        found.append(BendFigure(ring(step.bend + 1), template, face))
    return tuple(found)


def flat_bend(tube: TubeShape, work: TubeWork, number: int, outside_diameter: float) -> FlatBend:
    """A bend in its own plane, with the straights beside it as far as they are drawn."""
    bend = tube.bends[number]
    before, after = (min(tube.straights[n].middle, LEG) * POINTS_PER_METRE for n in (number, number + 1))
    start = sum(value.middle for n in range(number) for value in (tube.straights[n], tube.bends[n].arc))
    start += tube.straights[number].middle
    share = (work.bends[number].mark.middle - start) / bend.arc.middle
    return FlatBend(
        angle=bend.angle.middle,
        radius=bend.radius.middle * POINTS_PER_METRE,
        before=before,
        after=after,
        outside_diameter=outside_diameter,
        mark=min(max(share, 0.0), 1.0),
    )


def _words(evaluation: Evaluation, line: LaidLine, tube: TubeShape, work: TubeWork, number: int) -> BendWords:
    show, bend, ask = evaluation.display, tube.bends[number], work.bends[number].ask
    lines = [f"radius {both(bend.radius, show)} to the centre line"]
    lines.append(f"tube {both(line.stock.outside_diameter, show)} outside")
    if work.steps[0].bend == number:
        lines.append("made first: any way up")
    if ask.known:
        lines.append(f"set tool to {degrees(ask)}")
    return BendWords(
        f"{line.name} {ring(number + 1)} {degrees(bend.angle)}",
        tuple(lines),
        _leg(evaluation, tube, number, "end A" if number == 0 else ring(number)),
        _leg(evaluation, tube, number + 1, "end B" if number + 1 == len(tube.bends) else ring(number + 2)),
    )


def _leg(evaluation: Evaluation, tube: TubeShape, straight: int, towards: str) -> tuple[str, ...]:
    """Where a leg leads, and how much of it is drawn."""
    value = tube.straights[straight]
    length = evaluation.display.value(value)
    if value.middle <= LEG:
        return (towards, length)
    shown = evaluation.display.number(LEG, value.dimension)
    return (f"to {towards}", f"{shown} of {length}")


def _face_words(name: str, number: int, turn: Turn) -> tuple[str, ...]:
    return (
        f"{ring(number + 1)} {clock_time(turn.rotation.middle)}",
        f"{turn_size(turn.rotation)} from {ring(turn.reference + 1)}",
        f"{name}, print to {turn.seen}",
    )
