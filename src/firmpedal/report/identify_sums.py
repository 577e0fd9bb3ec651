"""Where the figures come from that measurements of a thread or a tube are held against."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.lengths import fine
from firmpedal.report.sheet import Heading, Paragraph, Tone
from firmpedal.report.sources import cited_in
from firmpedal.report.story import source_text, sum_of

if TYPE_CHECKING:
    from firmpedal.decide.identify import Question
    from firmpedal.model.display import Display
    from firmpedal.quantity import Mark
    from firmpedal.report.sheet import Block

TITLE = "Where these figures come from"


def figures_of(question: Question, display: Display) -> list[Block]:
    """The sum of each figure that what fits was held against, and the sources; nothing where much fits."""
    if not question.paired:
        return []
    expected = [fit.expected for judged in question.remaining for fit in judged.fits if fit.expected]
    values = list(dict.fromkeys(expected))
    if not values:
        return []
    worst: dict[str, Mark] = {}
    for each in (found for value in values for found in cited_in(value)):
        worst[each.key] = max(each.mark, worst.get(each.key, each.mark))
    sources = "; ".join(source_text(key, mark) for key, mark in worst.items())
    sums = [sum_of(value, fine(display)) for value in values]
    return [Heading(f"{TITLE} ({question.subject})"), *sums, Paragraph(f"Sources: {sources}.", Tone.SMALL)]
