"""Pedal feel as a sheet: how far each pad goes under a foot, where it goes, what air and heat do."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.feel.cases import MUCH, Case, Warmth
from firmpedal.analysis.feel.filled import HELD_SHARE
from firmpedal.analysis.feel.terms import OUTSIDE
from firmpedal.formulas.air import free_air_taken, modulus_with_air
from firmpedal.model.display import listed
from firmpedal.report.feel_budget import budget_tables
from firmpedal.report.feel_pedals import COLD, HOT, Felt, Unfelt, felt_pedals
from firmpedal.report.feel_plastic import plastic_words
from firmpedal.report.feel_plot import feel_plot
from firmpedal.report.feel_shares import reason
from firmpedal.report.feel_together import together_blocks
from firmpedal.report.feel_words import (
    CYLINDER,
    NEVER,
    STOP,
    at_force,
    case_words,
    end_words,
    ending,
    lead,
    travel_words,
)
from firmpedal.report.measure_sheet import line_of
from firmpedal.report.sheet import Bullets, Heading, Paragraph, Sheet, Table, Tone
from firmpedal.report.to_measure import asked_for
from firmpedal.report.worked import worked
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.model.display import Display
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Missing, Value
    from firmpedal.report.sheet import Block
    from firmpedal.report.to_measure import ToMeasure

CAUTION = (
    "A pedal that sinks under a steady foot, wants pumping or has grown soft is looked into before the next "
    "taxi: a leak first, then air, then seals. The makers' instructions come first."
)
BEST = (
    "Free air cannot be measured before the system is filled, so the rows without air are the best that "
    "there can be. Air counts by its share of the fluid in the lines before the pedal is pressed; air in "
    "cylinder and caliper comes on top."
)
FREE = "Each pedal is pressed by itself, from all the way back."
HELD = (
    "Plastic held under load goes on giving: after an hour {low} to {high} % of its stiffness is taken to be "
    "left, a figure from memory. Half way to hot lies between two rows of its table."
)
FROST = (
    "At -40 degrees plastic is as stiff as its table says there; how much stiffer hoses and fluid get is not "
    "known here, so they take from nothing up to what they take warm. The foot is slow: thick fluid holds a "
    "quick one back."
)
LESS = "Shown is {name}, the softest of them; the firmest goes {percent} % less far."
ALWAYS = "What holds for every pedal"
FAR, SPENT = "{name}: how far it goes", "{name}: what its travel is spent on"
SAME = 0.005  # a smaller difference is not worth a word
SHORT = "Not counted, because the file does not give it"
MORE = (
    "Free stroke, caliper and pads come on top of the travel; spring and friction take from the pressure. "
    "A measured pedal that goes further than this has air in it, or one of these."
)


@worked
def feel_sheet(evaluation: Evaluation, force: Value | None = None, *, asks: bool = True) -> Sheet | None:
    """The sheet of all pedals; None where no pedal presses a brake.

    Args:
        evaluation: The aircraft.
        force: At which the budget is wanted; without it, at the hard foot.
        asks: Whether it lists what is to be measured; a page that has rows to write in does not.
    """
    found = felt_pedals(evaluation, force)
    if not found:
        return None
    blocks: list[Block] = []
    for each in found:
        answer = _answer(each, evaluation.display) if isinstance(each, Felt) else ()
        names = listed(each.names if isinstance(each, Felt) else [each.name])
        blocks += [Heading(names, first=each is found[0]), *answer, *_open(evaluation, each, asks=asks)]
        blocks += _curves_and_budget(each, evaluation.display) if isinstance(each, Felt) else ()
    felt = [each for each in found if isinstance(each, Felt)]
    plastic = [Paragraph(words) for words in plastic_words(felt, evaluation.laid, evaluation.display)]
    always = (*_said_once(felt), *plastic, Paragraph(CAUTION, Tone.NOTE))
    together = together_blocks(evaluation)
    return Sheet("Pedal feel", (*blocks, *together, Heading(ALWAYS, first=True), *always))


def _said_once(felt: list[Felt]) -> Iterator[Block]:
    """What holds for every pedal."""
    if felt:
        yield Paragraph(f"{FREE} {BEST}")
    if any(Case(Warmth.FROST) in each.feel.cases for each in felt):
        yield Paragraph(FROST, Tone.SMALL)
    if any(each.softest == HOT for each in felt):
        low, high = (round(100 * each) for each in HELD_SHARE)
        yield Paragraph(HELD.format(low=low, high=high), Tone.SMALL)


def feel_asks(evaluation: Evaluation) -> tuple[ToMeasure, ...]:
    """What is still to be measured before every pedal is worked out, each thing once."""
    return asked_for(evaluation, (missing for each in felt_pedals(evaluation) for missing in _lacking(each)))


def _lacking(pedal: Felt | Unfelt) -> tuple[Missing, ...]:
    if not isinstance(pedal, Felt):
        return pedal.missing
    return (*pedal.feel.filled.hot_missing, *pedal.feel.pressing.cylinder.stroke.missing)


def _open(evaluation: Evaluation, pedal: Felt | Unfelt, *, asks: bool) -> Iterator[Block]:
    """What is not worked out, and what is wanted for it."""
    lacking = asked_for(evaluation, _lacking(pedal))
    if lacking or isinstance(pedal, Unfelt):
        what = "How far it goes"
        if isinstance(pedal, Felt):
            hot = bool(pedal.feel.filled.hot_missing)
            what = "Hot" if pedal.feel.end_known else "Hot and its end" if hot else "The end of its travel"
        yield Paragraph(
            f"{what} is not worked out: these figures are wanted."
            if asks
            else f"{what} is not worked out yet: measure first, below."
        )
        if asks:
            yield Bullets(tuple(map(line_of, lacking)), boxes=True)


def _answer(felt: Felt, display: Display) -> Iterator[Block]:
    """Whether it goes far enough, and what takes most of it."""
    yield Paragraph(lead(felt, display), Tone.LEAD)
    why = reason(felt, display)
    if why:
        yield Paragraph(why)
    if felt.differ > SAME:
        yield Paragraph(LESS.format(name=felt.names[0], percent=f"{100 * felt.differ:.0f}"))


def _curves_and_budget(felt: Felt, display: Display) -> Iterator[Block]:
    """How far it goes in every case, then where that goes, each under a heading of its own."""
    yield Heading(FAR.format(name=felt.names[0]))
    yield _table(felt, display)
    air = _air_words(felt, display)
    if air:
        yield Paragraph(air)
    yield feel_plot(felt, display)
    yield Heading(SPENT.format(name=felt.names[0]))
    yield from budget_tables(felt, display)
    if felt.feel.filled.frost_missing:
        unknown = listed(each.what for each in felt.feel.filled.frost_missing)
        yield Paragraph(f"At -40 degrees it is not worked out; not known here: {unknown}.")
    if felt.feel.filled.not_counted:
        yield Paragraph(f"{SHORT}: {listed(each.what for each in felt.feel.filled.not_counted)}. {MORE}")


def _table(felt: Felt, display: Display) -> Table:
    forces = felt.feel.forces
    columns = ("", *(display.value(force) for force in forces), "at its end from")
    rows = []
    for case in felt.feel.cases:
        cells = (travel_words(felt, case, number, display) for number in range(len(forces)))
        rows.append((case_words(felt, case), *cells, end_words(felt, case, display)))
    first = any(ending(felt, case)[0] == STOP for case in felt.feel.cases)
    title = f"How far the pad goes; the last column is the force from which {STOP if first else CYLINDER}"
    if any(row[-1] == NEVER for row in rows):
        title += " (never: no force that anybody presses with)"
    right = frozenset(range(1, len(columns)))
    widths = (0.28, *[0.72 / (len(columns) - 1)] * (len(columns) - 1))
    return Table(columns, tuple(rows), right, title, widths)


def _air_words(felt: Felt, display: Display) -> str:
    """How much softer a little air makes fluid, as the pedal begins to move and at the foot."""
    case = Case(air=MUCH)
    fluid = felt.feel.pressing.fluid
    if case not in felt.feel.cases or fluid is None or not felt.budget.pressure.known:
        return ""
    more = felt.feel.travel(case, felt.chosen).middle - felt.feel.travel(COLD, felt.chosen).middle
    bulk, pressure = fluid.bulk_modulus.middle, felt.budget.pressure.middle
    at_first = bulk / modulus_with_air(MUCH, OUTSIDE, bulk, 1.0)
    left = MUCH - free_air_taken(MUCH, pressure, OUTSIDE, 1.0)
    then = bulk / modulus_with_air(left / (left + 1 - MUCH), OUTSIDE + pressure, bulk, 1.0)
    further = display.number(more, Dimension.LENGTH)
    return (
        f"{MUCH:.0%} of air".replace("%", " %") + f" takes {further} more of the pad's travel at "
        f"{at_force(felt.force, display)}. It is felt at first: as the pedal begins to move, fluid with that "
        f"much air is {at_first:.0f} times as soft as without, at the foot {then:.1f} times."
    )
