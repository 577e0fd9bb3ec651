"""Both seats pressing one wheel at once, for the pedal sheet: how far each pedal goes then."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.pressure import FEET
from firmpedal.analysis.together_travel import Travel, pressed_together_all
from firmpedal.model.aircraft import find
from firmpedal.model.display import listed
from firmpedal.quantity import Answer, worst
from firmpedal.report.sheet import Heading, Paragraph, Table

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.together_travel import PressedTogether
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block

TITLE = "Both seats pressing one wheel"
FOOT = FEET[1]
ALONE = (
    "With the other seat pressing as well {none} further than by itself: the feet do not add up "
    "there, and what one seat has pushed in the other need not."
)
FURTHER = (
    "What one seat presses in pushes the other's piston on, and that piston draws fluid from behind itself: "
    "so both go further than by themselves. Shown is the most, with the {foot} foot on both pedals, whoever "
    "presses first."
)
UNLESS = (
    "Whether it does is for the maker of the cylinder nearer to the wheel to say; until then it is anything "
    "from no further to the most that is shown."
)
NO_LESS = (
    "A pedal at its end holds what it has: the wheel still gets no less than the foot on the pedal nearer to "
    "it makes by itself."
)
ENDS = {Answer.YES: "no", Answer.NO: "yes", Answer.UNKNOWN: "it may"}


def together_of(evaluation: Evaluation) -> tuple[PressedTogether, ...]:
    """Every cylinder with another seat's on its wheel, at the hard foot."""
    return pressed_together_all(evaluation.aircraft, evaluation.results, FOOT)


def together_blocks(evaluation: Evaluation) -> Iterator[Block]:
    """What becomes of the travel; nothing where no wheel has two seats."""
    found = together_of(evaluation)
    if not found:
        return
    told = [Paragraph(f"{each.cylinder}: not reckoned, for {each.why}.") for each in found if each.why]
    further = [each for each in found if each.travel in (Travel.PUSHED_ON, Travel.DRAWN_ON)]
    if alone := [each for each in found if each.travel is Travel.NO_FURTHER]:
        names = listed(_pedal_name(evaluation, each) for each in alone)
        none = "no pedal goes" if len(alone) == len(found) else f"the pad of {names} goes no"
        told.append(Paragraph(ALONE.format(none=none)))
    if further:
        words = FURTHER.format(foot=FOOT)
        told.append(Paragraph(f"{words} {UNLESS}" if any(each.asked for each in further) else words))
    yield Heading(TITLE)
    yield from told
    if further:
        yield _table(evaluation, further)
        if any(_fits(evaluation, each) is not Answer.YES for each in further):
            yield Paragraph(NO_LESS)


def _fits(evaluation: Evaluation, each: PressedTogether) -> Answer:
    """Whether stroke and travel to the pad's stop are enough, cold or hot, whichever uses more."""
    cylinder = find(evaluation.aircraft.cylinders, each.cylinder)
    if cylinder is None:
        return Answer.UNKNOWN
    n, pedal = _warm(each), find(evaluation.aircraft.pedals, cylinder.pedal)
    enough = [each.strokes[n].at_most(cylinder.stroke)]
    if pedal is not None and pedal.brake.travel_to_stop.known:
        enough.append(each.pads[n].at_most(pedal.brake.travel_to_stop))
    return worst(enough)


def _warm(each: PressedTogether) -> int:
    """Hot where that is known, else cold."""
    return 1 if each.strokes[1].known else 0


def _pedal_name(evaluation: Evaluation, each: PressedTogether) -> str:
    cylinder = find(evaluation.aircraft.cylinders, each.cylinder)
    return cylinder.pedal if cylinder is not None and cylinder.pedal else each.cylinder


def _table(evaluation: Evaluation, further: list[PressedTogether]) -> Table:
    show = evaluation.display.value
    rows = []
    for each in further:
        cylinder = find(evaluation.aircraft.cylinders, each.cylinder)
        n = _warm(each)
        whole = show(cylinder.stroke) if cylinder is not None else "unknown"
        name = _pedal_name(evaluation, each)
        ends = ENDS[_fits(evaluation, each)]
        rows.append((name, show(each.alone[n]), show(each.strokes[n]), whole, show(each.pads[n]), ends))
    columns = ("pedal", "stroke alone", "with both, at most", "stroke there is", "pad, at most", "at its end")
    return Table(columns, tuple(rows), frozenset({1, 2, 3, 4}), widths=(0.24, 0.16, 0.17, 0.14, 0.16, 0.13))
