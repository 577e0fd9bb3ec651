"""The card of a plastic line: how long, where, and what it is good for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.stock import Tube
from firmpedal.report.lengths import both, decimals, on_tape
from firmpedal.report.remarks import length_remark, wanted_for
from firmpedal.report.sheet import Bullets, Facts, Figure, Figures, Group, Heading, Paragraph, Tone

if TYPE_CHECKING:
    from firmpedal.lay.line import LaidLine
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block

WORK = (
    "Cut square with a sharp blade. Leave no burr and no scratch.",
    "Nut on, then sleeve; put the insert in, where the fitting has one.",
    "Lay it in easy curves, away from edges and from heat. Clamp it; tie wraps alone do not hold it.",
    "Pull on every end by hand after tightening.",
)


def plastic_blocks(evaluation: Evaluation, line: LaidLine, drawing: list[Block]) -> list[Block]:
    """Everything on a plastic line's card that other lines do not have."""
    show = evaluation.display
    length = line.path_length
    blocks: list[Block] = []
    if not length.known:
        words = "This line cannot be cut yet. For its length, measure first:"
        blocks += [Paragraph(words, Tone.LEAD), Bullets(wanted_for(length), boxes=True)]
    else:
        plain, tape = decimals(length, show), on_tape(length, show)
        note = "the length of the declared path" if plain == tape else plain
        blocks += [Figures((Figure("cut to", tape, note),)), *length_remark(length, "cut")]
    blocks += drawing
    rows = [("rated", _rating(evaluation, line))]
    if isinstance(line.stock, Tube):
        least = both(line.stock.least_bend_radius, show)
        rows.append(("bends", f"radius NOT CHECKED; the least for this line is {least}"))
    return [*blocks, Facts(tuple(rows)), Group((Heading("Order of work"), Bullets(WORK, boxes=True)))]


def _rating(evaluation: Evaluation, line: LaidLine) -> str:
    show = evaluation.display.value
    found = next((each for each in evaluation.results.ratings if each.line == line.name), None)
    if found is None:
        return "unknown"
    if found.temperature is None:
        return f"{show(found.cold)}, at room temperature"
    hot = f"{show(found.hot)} at {show(found.temperature)} where it runs hot"
    return f"{show(found.cold)} at room temperature, {hot}"
