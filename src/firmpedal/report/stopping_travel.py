"""Whether the pedal's travel lasts for the foot that stopping goes by: where it ends, no foot makes more."""

from __future__ import annotations

from math import inf
from typing import TYPE_CHECKING

from firmpedal.model.display import listed
from firmpedal.quantity import Answer, Value
from firmpedal.report.feel_pedals import Felt, felt_pedals
from firmpedal.report.feel_words import NEVER, case_words, ending, force_words
from firmpedal.report.sheet import Paragraph, Tone

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.pipeline import Evaluation

    Span = tuple[float, float]

BEFORE = (
    "{names}: {what} ({case}) at {force}, and the hard foot is {hard}: from there on a harder foot makes no "
    "more pressure. The figures on this page do not count that; see the travel of the pedal."
)


def first_end(evaluation: Evaluation) -> Span:
    """The least and the greatest foot at which the first pedal comes to its end [N]; infinite without one."""
    ends = [ending(felt, felt.softest)[1] for felt in _felt(evaluation)]
    return (min((low for low, _ in ends), default=inf), min((high for _, high in ends), default=inf))


def does_it(needed: Value, foot: Value, end: Span) -> Answer:
    """Whether a foot does what needs another one, where beyond the end of the travel nothing comes on top."""
    answer = needed.at_most(foot)
    if answer is Answer.NO or not needed.known:
        return answer
    if needed.low > end[1]:
        return Answer.NO
    return Answer.UNKNOWN if needed.high > end[0] else answer


def travel_cautions(evaluation: Evaluation) -> Iterator[Paragraph]:
    """A word for each pedal that may come to its end before the hard foot is there."""
    hard, display = evaluation.results.stopping.feet[1].force, evaluation.display
    for felt in _felt(evaluation):
        what, end = ending(felt, felt.softest)
        force = force_words(felt, end, display)
        if hard.known and end[0] <= hard.high and force != NEVER:
            names, case = listed(felt.names), case_words(felt, felt.softest)
            words = BEFORE.format(names=names, what=what, case=case, force=force, hard=display.value(hard))
            yield Paragraph(words, Tone.CAUTION)


def _felt(evaluation: Evaluation) -> list[Felt]:
    return [felt for felt in felt_pedals(evaluation) if isinstance(felt, Felt)]
