"""One card for each line: all that is needed to make it, on the bench, by itself."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.finding import Level
from firmpedal.report.ends import end_groups, from_to
from firmpedal.report.flare_card import flare_card
from firmpedal.report.hose_card import hose_blocks
from firmpedal.report.line_findings import concerns, findings_of, state_of, warnings_first
from firmpedal.report.pictures import picture
from firmpedal.report.plastic_card import plastic_blocks
from firmpedal.report.sheet import Bullets, Facts, Fields, Group, Heading, Paragraph, Sheet
from firmpedal.report.torque import torque_sheet
from firmpedal.report.tube_card import tube_blocks

if TYPE_CHECKING:
    from collections.abc import Collection

    from firmpedal.lay.line import Height, LaidLine
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value
    from firmpedal.report.sheet import Block

SAID_ABOVE = ("hose-bend-radius",)  # a hose's card says it in its own place
KINDS = {"tube": "Tube", "hose": "Hose", "plastic": "Plastic line"}


def card_sheets(evaluation: Evaluation) -> tuple[Sheet, ...]:
    """One card for each line, in the order of the file."""
    return tuple(card(evaluation, line) for line in evaluation.laid)


def bench_sheets(
    evaluation: Evaluation, names: Collection[str] = (), *, only_lines: bool = False
) -> tuple[Sheet, ...]:
    """What lies on the bench: cards, and where there is tube among them torques and how to flare.

    Args:
        evaluation: What was worked out.
        names: The lines wanted; none for all.
        only_lines: The cards alone.
    """
    chosen = [line for line in evaluation.laid if not names or line.name in names]
    sheets: list[Sheet | None] = [card(evaluation, line) for line in chosen]
    if not only_lines and any(line.tube for line in chosen):
        sheets += [torque_sheet(evaluation), flare_card(evaluation)]
    return tuple(sheet for sheet in sheets if sheet is not None)


def card(evaluation: Evaluation, line: LaidLine) -> Sheet:
    """The card of one line: what to make, the drawing, the work, the ends, what to look out for."""
    drawn = picture(line, evaluation.display)
    drawing: list[Block] = [
        drawn or Paragraph("No drawing: too few of its points are known. See what to measure.")
    ]
    if line.tube:
        made = tube_blocks(evaluation, line, line.tube, drawing)
    elif line.hose:
        made = hose_blocks(evaluation, line, line.hose, drawing)
    else:
        made = plastic_blocks(evaluation, line, drawing)
    blocks = [
        *warnings_first(evaluation, line),
        *made,
        *end_groups(evaluation, line),
        *_heights(evaluation, line),
        *_said(evaluation, line),
    ]
    title = f"{KINDS[line.kind.value]} {line.name}"
    return Sheet(title, _signed(blocks), subtitle=from_to(evaluation, line), state=state_of(evaluation, line))


def _heights(evaluation: Evaluation, line: LaidLine) -> list[Block]:
    """Where air would collect in the attitudes in which some point stands higher than both its sides."""
    rows = []
    for attitude in dict.fromkeys(height.attitude for height in line.heights):
        heights = [each for each in line.heights if each.attitude == attitude]
        heights.sort(key=lambda each: each.point)
        if humps := _humps(heights):
            rows.append((attitude, _high_words(evaluation, line, heights, humps)))
    return [Group((Heading("High points, where air collects"), Facts(tuple(rows))))] if rows else []


def _high_words(evaluation: Evaluation, line: LaidLine, heights: list[Height], humps: list[Height]) -> str:
    known = [each for each in heights if each.value.known]
    top = max(known, key=lambda each: each.value.middle)
    traps = ", ".join(_point_words(line, each.point) for each in humps)
    words = (
        f"highest at {_point_words(line, top.point)}, {_height_words(evaluation, top.value)}; "
        f"air stays at {traps} and must be pushed out"
    )
    return words if len(known) == len(heights) else f"{words}; some points unknown"


def _height_words(evaluation: Evaluation, value: Value) -> str:
    """A height in words that need no minus sign."""
    if value.high < 0:
        turned = replace(value, span=(-value.high, -value.low))
        return f"{evaluation.display.value(turned)} below the datum"
    return f"{evaluation.display.value(value)} above the datum"


def _humps(heights: list[Height]) -> list[Height]:
    """Points between the ends that stand higher than what is before and after them."""
    return [
        here
        for before, here, after in zip(heights, heights[1:], heights[2:], strict=False)
        if before.value.known and here.value.known and after.value.known
        and here.value.middle > max(before.value.middle, after.value.middle)
    ]  # fmt: skip


def _point_words(line: LaidLine, number: int) -> str:
    names = {0: "end A", len(line.points) - 1: "end B"}
    if line.tube:
        names |= {bend.corner: f"bend {count}" for count, bend in enumerate(line.tube.bends, 1)}
    return names.get(number, f"point {number + 1}")


def _said(evaluation: Evaluation, line: LaidLine) -> list[Block]:
    """The other findings and the gaps, so that nobody makes a line without having read them."""
    found = [
        f"{finding.level.value}: {finding.message}"
        for level in (Level.CAUTION, Level.NOTE)
        for finding in findings_of(evaluation, line, level)
    ]
    missing = {
        f"TO MEASURE: {each.what}": None
        for unclear in evaluation.not_shown
        if concerns(unclear.place, line) and unclear.rule not in SAID_ABOVE
        for each in unclear.missing
    }
    if not (found or missing):
        return []
    return [Group((Heading("What to know about this line"), Bullets((*found, *missing))))]


def _signed(blocks: list[Block]) -> tuple[Block, ...]:
    """The blocks with a place to sign, held to the last of them: on a page by itself it signs for nothing."""
    place, last = Fields(("made by, date", "checked by, date")), blocks[-1]
    inner = last.blocks if isinstance(last, Group) else (last,)
    return (*blocks[:-1], Group((*inner, place)))
