"""Whether it stops, in a sentence or two: what cannot be true, what locks first, what the hard foot does."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.display import count_of
from firmpedal.report.sheet import Paragraph, Tone
from firmpedal.report.stopping_travel import goes_so_far
from firmpedal.report.stopping_words import far, slowing

if TYPE_CHECKING:
    from firmpedal.analysis.stopping import Stopping
    from firmpedal.model.display import Display
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value
    from firmpedal.report.sheet import Block
    from firmpedal.report.stopping_travel import Span

TYRES = "From there on the tyres are the limit: a harder foot slides them and stops it no shorter."
EITHER = (
    "From there on tyres or tail are the limit: where the ground is slippery a harder foot slides the "
    "wheels, where it grips the tail comes up."
)
NOSE = "From there on the tail comes up: that is the limit, whatever the foot."
DOUBT = (
    "Whether it stops cannot be told: figures that are given cannot all be true. Put them right first; what "
    "follows goes by them as they stand."
)


def answer(evaluation: Evaluation, asks: int, end: Span) -> list[Block]:
    """The answer first: what locks or tips before the usual foot is there, the hard foot, and what limits it.

    Args:
        evaluation: The aircraft.
        asks: How many things are to be measured before all is known.
        end: Where the travel of the first pedal ends, as `first_end` gives it.
    """
    stop, display = evaluation.results.stopping, evaluation.display
    if stop.contradictions:
        return [Paragraph(DOUBT, Tone.LEAD)]
    hard = stop.feet[1]
    if not hard.reached.known:
        return [Paragraph(_not_yet(stop, display, asks), Tone.LEAD)]
    early = _early(stop, display, end)
    blocks: list[Block] = [Paragraph(early, Tone.LEAD)] if early else []
    force, braking = display.value(hard.force), slowing(hard.reached, display)
    words = (
        f"As hard as brakes and ground let it, it slows by {braking}"
        if early
        else f"The hard foot, {force} on each pedal, slows it by {braking}"
    )
    if not early and goes_so_far(hard.force, end):
        words += f", {goes_so_far(hard.force, end)}"
    if hard.distance.known:
        words += f": from {display.value(stop.stance.speed)} it stops in {far(hard.distance, display)}"
    blocks.append(Paragraph(f"{words}.", Tone.PLAIN if early else Tone.LEAD))
    if hard.by_brakes.low > hard.reached.high:
        alone = f"The brakes alone would make {slowing(hard.by_brakes, display)}."
        if early:
            alone = (
                f"At the hard foot, {force}, the brakes alone would make {slowing(hard.by_brakes, display)}."
            )
        blocks.append(Paragraph(f"{alone} {_limit(stop)}"))
    return blocks


def _early(stop: Stopping, display: Display, end: Span) -> str:
    """What comes before the foot that is pressed: the first of wheels that lock and a tail that comes up."""
    which = stop.first_wheel
    found: list[tuple[Value, str]] = [(stop.lock.foot, f"{which} lock{'s' if which != 'the wheels' else ''}")]
    if stop.nose_over is not None:
        found.append((stop.nose_over.foot, "the tail comes up"))
    known = [each for each in found if each[0].known]
    if not known:
        return ""
    foot, does = min(known, key=lambda each: each[0].middle)
    for name, at in zip(("normal", "hard"), stop.feet, strict=False):
        force = at.force
        if not force.known or foot.low > force.high:
            continue
        above = "may be above that" if foot.high >= force.low else "is above that"
        if name == "normal":
            above = above.replace("be", "already be").replace("is", "is already")
        lasts = goes_so_far(foot, end)
        start = f"From {display.value(foot)} on each pedal {does}{f', {lasts}' if lasts else ''}"
        return f"{start}; your {name} foot, {display.value(force)}, {above}."
    return ""


def _limit(stop: Stopping) -> str:
    """What holds a harder foot back: tyres, tail, or one of the two."""
    over, usual = stop.limits.nose_over, stop.limits.usual
    if over is None or not over.known or usual.high < over.low:
        return TYRES
    return NOSE if usual.low > over.high else EITHER


def _not_yet(stop: Stopping, display: Display, asks: int) -> str:
    hard = stop.feet[1]
    if hard.by_brakes.known:
        brakes = slowing(hard.by_brakes, display)
        return f"The hard foot would slow it by {brakes}; whether the tyres hold that is not shown."
    return f"How it stops cannot be told yet: {count_of(asks, 'figure')} to measure, below."
