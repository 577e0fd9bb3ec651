"""Whether the pedal's travel lasts for the foot that stopping goes by: where it ends, no foot makes more."""

from __future__ import annotations

from dataclasses import dataclass
from math import inf
from typing import TYPE_CHECKING

from firmpedal.model.display import listed
from firmpedal.quantity import Answer, Value
from firmpedal.report.feel_pedals import Felt, felt_pedals
from firmpedal.report.feel_words import NEVER, case_words, ending, force_words
from firmpedal.report.sheet import Paragraph, Tone

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.stopping import Stopping
    from firmpedal.pipeline import Evaluation

Span = tuple[float, float]
BEFORE = (
    "{names}: {what} ({case}) at {force}, and the hard foot is {hard}: from there on a harder foot makes no "
    "more pressure. The figures on this page do not count that; see the travel of the pedal."
)


@dataclass(frozen=True, slots=True)
class Ending:
    """Where the travel of some pedals ends first: what ends it, and the foot with which it does [N]."""

    felt: Felt
    what: str
    force: Span


def endings(evaluation: Evaluation) -> tuple[Ending, ...]:
    """Where every pedal ends that can be worked out."""
    felt = [each for each in felt_pedals(evaluation) if isinstance(each, Felt)]
    return tuple(Ending(each, *ending(each, each.softest)) for each in felt)


def first_end(found: tuple[Ending, ...]) -> Span:
    """The least and the greatest foot at which the first pedal comes to its end [N]; infinite without one."""
    low, high = (min((each.force[n] for each in found), default=inf) for n in (0, 1))
    return low, high


def does_it(needed: Value, foot: Value, end: Span) -> Answer:
    """Whether a foot does what needs another one, where beyond the end of the travel nothing comes on top."""
    answer = needed.at_most(foot)
    if answer is Answer.NO or not needed.known:
        return answer
    if needed.low > end[1]:
        return Answer.NO
    return Answer.UNKNOWN if needed.high > end[0] else answer


def goes_so_far(foot: Value, end: Span) -> str:
    """What to say of a foot that a pedal may come to its end before; empty where it goes so far."""
    return "if the pedal goes so far" if foot.known and foot.high > end[0] else ""


def met(stop: Stopping, end: Span) -> tuple[tuple[Answer, Answer], tuple[Answer, Answer]]:
    """Of the wanted stop, and of holding full throttle: whether hard foot and ground do it.

    `end` is where the travel of the first pedal ends, as `first_end` gives it.
    """
    hard = stop.feet[1].force
    return (
        (does_it(stop.wanted.foot, hard, end), stop.stance.wanted.at_most(stop.limits.usable)),
        (does_it(stop.hold.foot, hard, end), stop.run_up.held),
    )


def travel_cautions(evaluation: Evaluation, found: tuple[Ending, ...]) -> Iterator[Paragraph]:
    """A word for each pedal that may come to its end before the hard foot is there."""
    hard, display = evaluation.results.stopping.feet[1].force, evaluation.display
    for each in found:
        felt, force = each.felt, force_words(each.felt, each.force, display)
        if hard.known and each.force[0] <= hard.high and force != NEVER:
            names, case = listed(felt.names), case_words(felt, felt.softest)
            said = {"names": names, "what": each.what, "case": case, "force": force}
            yield Paragraph(BEFORE.format(**said, hard=display.value(hard)), Tone.CAUTION)
