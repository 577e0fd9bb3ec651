"""The bends of a tube on its card: in the order of work, with marks, turns and angles to set."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING, NamedTuple

from firmpedal.lay.band import Rounding, end_band
from firmpedal.lay.springback import within_trials
from firmpedal.lay.tube import homed
from firmpedal.model.bench import MarkAt
from firmpedal.model.display import listed
from firmpedal.quantity import total
from firmpedal.report.clock import clock_time, faces, ring, turn_words
from firmpedal.report.lengths import decimals, degrees, mark_step, to_mark
from firmpedal.report.sheet import Fields, Group, Paragraph, Table, Tone
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from firmpedal.lay.bend_order import BendStep
    from firmpedal.lay.tube import TubeShape
    from firmpedal.lay.work import TubeWork
    from firmpedal.model.bench import Bender
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value
from firmpedal.report.sheet import Block

PRINTED_ANGLE = math.radians(0.1)
TRIM_OVER = from_unit(1 / 16, "in")

CLOCK_WORDS = (
    "Look along the tube from A to B, the leg before the last bend at 12 o'clock: the next bend goes where "
    "the hand points. In a bender that stays put, turn the tube by as much the other way, then check."
)
MARK_WORDS = {
    None: "where the bend starts",
    MarkAt.START: "where the bend starts",
    MarkAt.MIDDLE: "the middle of the bend",
    MarkAt.END: "where the bend ends",
}


class Turn(NamedTuple):
    """How the plane of a bend stands to one that is made already: `seen` is the end to look from.

    `last` says that this one was made last of all.
    """

    reference: int
    rotation: Value
    seen: str
    last: bool = True

    @property
    def usual(self) -> bool:
        """Whether it is counted from the bend made last, which is its neighbour towards A."""
        return self.last and self.seen == "A"


def bend_blocks(evaluation: Evaluation, tube: TubeShape, work: TubeWork) -> list[Block]:
    """The table of bends, what a mark is, the clock faces, the order, and what rounding can do."""
    if not tube.bends:
        return []
    turns = turns_of(tube, work.steps)
    rows = tuple(_row(evaluation, tube, work, step, turns.get(step.bend)) for step in work.steps)
    columns = ("bend", "mark, from end A", "next bend goes to", "bend", "set tool to")
    table = Table(
        columns,
        rows,
        widths=(0.09, 0.27, 0.28, 0.16, 0.2),
        large=frozenset(range(5)),
        pen=frozenset({4}),
    )
    blocks: list[Block] = [
        table,
        *_order_words(work),
        Paragraph(_mark_words(evaluation, tube), Tone.SMALL),
    ]
    turned = [(bend + 1, turn.rotation) for bend, turn in turns.items()]
    if turned:
        blocks.append(Group((faces(turned), Paragraph(_clock_words(turns), Tone.SMALL))))
    return [*blocks, *_springback(evaluation, tube, work)]


def turns_of(tube: TubeShape, steps: tuple[BendStep, ...]) -> dict[int, Turn]:
    """For each bend after the first in the order of work, its turn from the nearest bend that is made."""
    made: list[int] = []
    found: dict[int, Turn] = {}
    for step in steps:
        if made:
            reference = min(made, key=lambda other: (abs(other - step.bend), other > step.bend))
            low, high = sorted((reference, step.bend))
            between = tuple(bend.rotation for bend in tube.bends[low + 1 : high + 1])
            rotation = between[0] if len(between) == 1 else _together(between)
            found[step.bend] = Turn(
                reference, rotation, "A" if reference < step.bend else "B", last=reference == made[-1]
            )
        made.append(step.bend)
    return found


def _together(rotations: tuple[Value, ...]) -> Value:
    """Turns one after another as one turn, the shorter way round."""
    turn = total("turn", rotations)
    return turn if turn.span is None else replace(turn, span=homed(turn.span))


def _row(
    evaluation: Evaluation, tube: TubeShape, work: TubeWork, step: BendStep, turn: Turn | None
) -> tuple[str, ...]:
    bend, known = tube.bends[step.bend], work.bends[step.bend]
    words = "\u2014\nfirst bend: any way up"
    if turn is not None:
        way = turn_words(turn.rotation)
        words = f"{degrees(turn.rotation, signed=True)}\n{way}, to {clock_time(turn.rotation.middle)}"
        if not turn.usual or turn.reference != step.bend - 1:
            words += f"\nfrom bend {ring(turn.reference + 1)}, seen from {turn.seen}"
    ask = degrees(known.ask) if known.ask.known else ""
    return ring(step.bend + 1), _station(known.mark, evaluation), words, degrees(bend.angle), ask


def _station(mark: Value, evaluation: Evaluation) -> str:
    """A place along the tube, on the tape and beside it as a decimal; in millimetres one figure is enough."""
    tape, plain = to_mark(mark, evaluation.display), decimals(mark, evaluation.display)
    if evaluation.display.unit(Dimension.LENGTH) == "mm":
        return tape
    return tape if tape == plain else f"{tape}\n{plain}"


def _order_words(work: TubeWork) -> list[Block]:
    """Say it where the order is not the usual one, and which end is held where that changes."""
    usual = all(step.bend == n and step.held == "from" for n, step in enumerate(work.steps))
    if usual:
        return []
    ends = {"from": "A", "to": "B"}
    order = ", ".join(f"{ring(step.bend + 1)} with the side of {ends[step.held]} held" for step in work.steps)
    words = f"Bend in this order, or the tube hits the bender: {order}."
    return [Paragraph(words, Tone.NOTE)]


def _mark_words(evaluation: Evaluation, tube: TubeShape) -> str:
    allowance = tube.cut_length.step.inputs[-1][1] if tube.cut_length.step else None
    mark = evaluation.aircraft.bench.bender.mark
    words = f"A mark is {MARK_WORDS[mark]}, from the finished flare at end A."
    if allowance is not None and allowance.known:
        words += f" While A is not flared yet, add {decimals(allowance, evaluation.display)}."
    return words


def _clock_words(turns: dict[int, Turn]) -> str:
    words = CLOCK_WORDS
    if not all(turn.last for turn in turns.values()):
        words += " Where it names a bend, take that one for the last."
    if not all(turn.seen == "A" for turn in turns.values()):
        words += " Where it says seen from B, look from B to A in the same way."
    return words


def _springback(evaluation: Evaluation, tube: TubeShape, work: TubeWork) -> list[Block]:
    """What the angles to set rest on, or a coupon to bend first; and what rounding can do."""
    bender, more = evaluation.aircraft.bench.bender, _rounding(evaluation, tube)
    if all(bend.ask.known for bend in work.bends):
        pairs = ", ".join(f"{degrees(each.asked)} came to {degrees(each.got)}" for each in bender.springback)
        words = f"Angles to set are from your trial bends: {pairs}. {_beyond_trials(tube, bender)}{more}"
        return [Paragraph(words.strip(), Tone.SMALL)]
    words = "Springback: bend a coupon first, a spare piece of the same tube on the same tool."
    fields = ("coupon: tool set to, degrees", "it came to, degrees", "so add, degrees")
    coupon = Group((Paragraph(words), Fields(fields)))
    return [coupon, Paragraph(more, Tone.SMALL)] if more else [coupon]


def _beyond_trials(tube: TubeShape, bender: Bender) -> str:
    """Which bends lie outside the trial bends, where the angle to set is an estimate."""
    beyond = [
        ring(number) for number, bend in enumerate(tube.bends, 1) if not within_trials(bend.angle, bender)
    ]
    if not beyond:
        return ""
    do = "does not lie" if len(beyond) == 1 else "do not lie"
    return f"{listed(beyond)} {do} between two of them: bend a coupon to that angle first. "


def _rounding(evaluation: Evaluation, tube: TubeShape) -> str:
    """What the card's own rounding can do at the far end; the first leg is where it belongs."""
    band = end_band(tube.centreline, rounding_of(evaluation)) if tube.centreline else 0.0
    if band <= TRIM_OVER:
        return ""
    shown = evaluation.display.number(band, tube.radius.dimension)
    return f"Figures here are rounded: by that alone the end flared last can be {shown} off. Trim there."


def rounding_of(evaluation: Evaluation) -> Rounding:
    """Half of the last digit printed on a card."""
    return Rounding(mark_step(evaluation.display) / 2, PRINTED_ANGLE / 2)
