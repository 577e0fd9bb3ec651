"""The cutting plan as a sheet: which piece comes from which stick, and what the rest is good for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.decide.tube_plan import USUAL_STICKS, TubePlan, practice_out_of, tube_plans
from firmpedal.model.display import listed
from firmpedal.report.practice import practice_words
from firmpedal.report.sheet import BOX, Heading, Paragraph, Sheet, Table, Tone
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.decide.cutting import Cut
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block

AT_BENCH = "At the bench"
ORDER = "Cut the longest piece of a stick first. Name each piece with a felt pen as it comes off."
PRACTICE = "Flare them at both ends, cut one open, and look at it with a lens."
USUAL = "Sticks of {sticks} are taken as what can be had. Say otherwise in the file: bench, longest tube."


def cutplan_sheet(evaluation: Evaluation) -> Sheet | None:
    """The cuts of every kind of tube; None where there is no tube."""
    plans = tube_plans(evaluation)
    if not plans:
        return None
    blocks: list[Block] = [
        block for plan in plans for block in _blocks(evaluation, plan, alone=len(plans) == 1)
    ]
    practice = Paragraph(f"{practice_words(evaluation)} {PRACTICE}")
    return Sheet("Cutting plan", (*blocks, Heading(AT_BENCH, first=True), Paragraph(ORDER), practice))


def _blocks(evaluation: Evaluation, plan: TubePlan, *, alone: bool) -> list[Block]:
    show = evaluation.display.number
    blocks: list[Block] = [Heading(plan.phrase)]
    if plan.plan.cuts:
        words = _to_buy(plan, show(plan.to_buy, Dimension.LENGTH))
        blocks.append(Paragraph(words if alone else f"{plan.phrase}: {words}", Tone.LEAD))
        rows = (*(_row(evaluation, cut) for cut in plan.plan.cuts), *_for_practice(evaluation, plan))
        columns = ("", "stick", "cut from it", "left over", "good for")
        blocks.append(Table(columns, rows, widths=(0.06, 0.25, 0.33, 0.16, 0.2)))
    for piece in plan.plan.without_stick:
        length = show(piece.length, Dimension.LENGTH)
        words = f"{piece.name} is {length} long, and no stick holds it: longer tube, a coil, or a union"
        blocks.append(Paragraph(words, Tone.CAUTION))
    if plan.unknown:
        names = ", ".join(plan.unknown)
        blocks.append(
            Paragraph(f"Not in this plan, because its length is not known yet: {names}.", Tone.NOTE)
        )
    if plan.usual_sticks and any(not cut.stick.in_hand for cut in plan.plan.cuts):
        blocks.append(Paragraph(USUAL.format(sticks=_sticks(evaluation)), Tone.SMALL))
    return blocks


def _sticks(evaluation: Evaluation) -> str:
    return listed(evaluation.display.feet(each / from_unit(1, "ft")) for each in USUAL_STICKS)


def _to_buy(plan: TubePlan, length: str) -> str:
    if plan.plan.bought:
        return f"Buy {length} of it."
    more = f" for the lines. Buy {length} of it to practise on" if plan.to_buy else ""
    return f"What you have is enough{more}."


def _row(evaluation: Evaluation, cut: Cut) -> tuple[str, ...]:
    show = evaluation.display.number
    stick = f"{cut.stick.name}, {show(cut.stick.length, Dimension.LENGTH)}"
    lengths = {line.name: line.order_length for line in evaluation.laid}  # told as on the list of lines
    pieces = "; ".join(
        f"{piece.name} {evaluation.display.value(lengths[piece.name])}" for piece in cut.pieces
    )
    return BOX, stick, pieces, show(cut.left_over, Dimension.LENGTH), _good_for(cut.left_over)


def _for_practice(evaluation: Evaluation, plan: TubePlan) -> Iterator[tuple[str, ...]]:
    """Sticks that are bought because what is left over gives too few practice pieces."""
    for sticks in plan.sticks_to_buy:
        length = evaluation.display.number(sticks.length, Dimension.LENGTH)
        for _ in range(sticks.practice):
            yield BOX, f"to buy, {length}", "none of the lines", length, _good_for(sticks.length)


def _good_for(length: float) -> str:
    count = practice_out_of(length)
    return f"{count} practice pieces" if count > 1 else "1 practice piece" if count else "nothing"
