"""Whether the pedal's travel lasts for the foot that stopping goes by: where it ends, no foot makes more."""

from __future__ import annotations

from dataclasses import dataclass
from math import inf
from typing import TYPE_CHECKING

from firmpedal.model.display import listed
from firmpedal.quantity import Answer, Value
from firmpedal.report.feel_pedals import Felt, Unfelt, felt_pedals
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


NOT_KNOWN = (
    "How far {names} can go is not known, so neither is whether it goes along with the hard foot. The "
    "figures on this page do not count that. Measure what the travel of the pedal lacks."
)


@dataclass(frozen=True, slots=True)
class Ending:
    """Where the travel of some pedals ends first: what ends it, and the foot with which it does [N].

    Of one of which that is not known the force may be anything; `felt` is None where there is no curve.
    """

    names: tuple[str, ...]
    felt: Felt | None
    what: str
    force: Span

    @property
    def known(self) -> bool:
        return self.felt is not None and self.felt.feel.end_known


def endings(evaluation: Evaluation) -> tuple[Ending, ...]:
    """Where every pedal ends that presses a brake."""
    return tuple(_ending(each) for each in felt_pedals(evaluation))


def _ending(pedal: Felt | Unfelt) -> Ending:
    if isinstance(pedal, Unfelt):
        return Ending((pedal.name,), None, "", (0.0, inf))
    what, (low, high) = ending(pedal, pedal.softest)
    return Ending(pedal.names, pedal, what, (low if pedal.feel.end_known else 0.0, high))


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
    if open_ := [name for each in found if not each.known for name in each.names]:
        yield Paragraph(NOT_KNOWN.format(names=listed(open_)), Tone.CAUTION)
    for each in found:
        felt = each.felt
        if felt is None or not each.known:
            continue
        force = force_words(felt, each.force, display)
        if hard.known and each.force[0] <= hard.high and force != NEVER:
            names, case = listed(felt.names), case_words(felt, felt.softest)
            said = {"names": names, "what": each.what, "case": case, "force": force}
            yield Paragraph(BEFORE.format(**said, hard=display.value(hard)), Tone.CAUTION)
