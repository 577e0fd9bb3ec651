"""What heat does: how warm the brakes get, what stands it and what does not, and how to know better."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.heating.limits import FLUID, PLASTIC
from firmpedal.model.display import count_of, listed
from firmpedal.quantity import Answer
from firmpedal.report.heat_plot import heat_plot
from firmpedal.report.heat_trials import how_to_know_better, trials_that_disagree
from firmpedal.report.heat_words import answer_of, flash_words, plastic_words, share_words
from firmpedal.report.measure_sheet import line_of
from firmpedal.report.sheet import Bullets, Group, Heading, Paragraph, Sheet, Table, Tone
from firmpedal.report.stopping_words import of_one_wheel, wanted
from firmpedal.report.to_measure import asked_for
from firmpedal.report.worked import worked

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.analysis.heating import BrakeHeat, HeatLimit, Peak
    from firmpedal.model.display import Display
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Missing, Value
    from firmpedal.report.sheet import Block
    from firmpedal.report.to_measure import ToMeasure

TITLE = "Heat of the brakes"
NOT_SHOWN = "not shown: measure"
HOLDS = {Answer.YES: "holds", Answer.NO: "too hot", Answer.UNKNOWN: NOT_SHOWN}
PLASTIC_HOLDS = {Answer.YES: "holds", Answer.NO: "refused", Answer.UNKNOWN: NOT_SHOWN}
CAUTIONS = (
    "Disc and caliper burn the skin for half an hour after a hard stop. Let them cool before you touch them.",
    "A brake that drags is hotter than all of this. If a wheel does not turn freely, stay where you are.",
    "Brake fluid burns on a hot disc. The data of kit maker and brake maker come first.",
)
LEFT_OUT = (
    "Taken is that disc, caliper, fluid and the fitting with an inch of line are each as warm all through.",
    "Fairings that keep the air away: a real brake gets hotter.",
    "Steering with one brake: it gets the heat of a taxi alone. Give twice the taxi drag to see it.",
    "Air drag in the stop, heat that goes into wheel and tyre: a real brake stays cooler.",
)


@worked
def heat_sheet(evaluation: Evaluation, *, asks: bool = True) -> Sheet:
    """Everything about heat, as far as the file goes.

    Args:
        evaluation: The aircraft.
        asks: Whether it lists what is to be measured; a page that has rows to write in does not.
    """
    heat = evaluation.results.heating
    blocks: list[Block] = []
    for brakes in alike(heat.brakes):
        blocks += _of(evaluation, brakes, asks=asks)
    blocks += [Paragraph(words) for words in of_one_wheel(evaluation.results.stopping)]
    if not heat.brakes:
        blocks.append(Paragraph("There is no brake in this file yet.", Tone.LEAD))
    blocks += [Group((Heading("What is left out"), Bullets(LEFT_OUT)))]
    blocks += [Paragraph(words, Tone.CAUTION) for words in CAUTIONS]
    return Sheet(TITLE, tuple(blocks))


def heat_asks(evaluation: Evaluation) -> tuple[ToMeasure, ...]:
    """What is still to be measured before all is shown of the heat of every brake, each thing once."""
    brakes = evaluation.results.heating.brakes
    return asked_for(evaluation, (*_wanted(brakes), *(each for brake in brakes for each in _to_try(brake))))


def _asks(evaluation: Evaluation, brakes: Iterable[BrakeHeat]) -> tuple[ToMeasure, ...]:
    return asked_for(evaluation, _wanted(brakes))


def _wanted(brakes: Iterable[BrakeHeat]) -> tuple[Missing, ...]:
    return wanted(value for each in brakes for value in main_values(each))


def _to_try(brake: BrakeHeat) -> tuple[Missing, ...]:
    """The trial, where a band that is known is too wide for a verdict."""
    wide = (
        limit.found.known and limit.allowed.known and limit.answer() is Answer.UNKNOWN
        for limit in brake.limits
    )
    return brake.to_try if any(wide) else ()


def packet_sheet(evaluation: Evaluation) -> Sheet | None:
    """The same for the packet; nothing where the file says nothing about heat."""
    return heat_sheet(evaluation) if evaluation.results.heating.asked else None


def alike(brakes: tuple[BrakeHeat, ...]) -> list[list[BrakeHeat]]:
    """Brakes that get as warm as each other and have alike limits, together."""
    groups: dict[tuple[object, ...], list[BrakeHeat]] = {}
    for brake in brakes:
        peaks = tuple(value.span for peak in brake.peaks for value in _parts(peak))
        limits = tuple((each.kind, each.found.span, each.allowed.span) for each in brake.limits)
        known = peaks[0] is not None
        trial = (brake.agrees, brake.measured.span if brake.measured is not None else None)
        groups.setdefault((peaks, limits, trial, "" if known else "unknown"), []).append(brake)
    return list(groups.values())


def _parts(peak: Peak) -> tuple[Value, ...]:
    return (peak.disc, peak.caliper, peak.fluid, peak.line)


def _of(evaluation: Evaluation, brakes: list[BrakeHeat], *, asks: bool) -> list[Block]:
    """The answer, the figures, the limits and the picture of one brake, or of several that are alike."""
    heat, display = evaluation.results.heating, evaluation.display
    brake, names = brakes[0], listed(each.caliper for each in brakes)
    get = "gets" if len(brakes) == 1 else "get"
    if not brake.peaks[0].disc.known:
        asked = _asks(evaluation, brakes)
        things = count_of(len(asked), "figure")
        words = f"How warm {names} {get} cannot be told yet: {things} to measure."
        rows = [Bullets(tuple(map(line_of, asked)), boxes=True)] if asks else []
        known = [limit for each in brakes for limit in each.limits if limit.found.known]
        table = [Group((Heading("What stands it"), _limits(known, display)))] if known else []
        return [Paragraph(words, Tone.LEAD), *trials_that_disagree(evaluation, brakes), *table, *rows]
    limits = [limit for each in brakes for limit in each.limits]
    blocks: list[Block] = [Paragraph(answer_of(heat, brake, f"{names} {get}", display), Tone.LEAD)]
    blocks = [*trials_that_disagree(evaluation, brakes), *blocks]
    blocks += [Paragraph(words) for words in (*plastic_words(limits, display), *share_words(brake, names))]
    blocks.append(Group((Heading(f"How warm {names} {get}", first=True), _temperatures(brake, display))))
    alone = display.value(brake.disc_alone)
    blocks.append(
        Paragraph(f"By hand: a disc that takes its share of one stop and loses nothing gets {alone}.")
    )
    drawing = heat_plot(brake, heat.air, display)
    blocks += [drawing] if drawing is not None else []
    blocks.append(Group((Heading("What stands it"), _limits(limits, display))))
    blocks += [Paragraph(words, Tone.NOTE) for words in flash_words(evaluation, brake, display)]
    return [*blocks, *how_to_know_better(evaluation, brake)]


def _temperatures(brake: BrakeHeat, display: Display) -> Table:
    rows = tuple((peak.situation, *(display.value(value) for value in _parts(peak))) for peak in brake.peaks)
    columns = ("after", "disc", "caliper at its port", "fluid", "end of the line")
    return Table(columns, rows, frozenset({1, 2, 3, 4}))


def _limits(limits: list[HeatLimit], display: Display) -> Table:
    """Each limit with its verdict; what is alike at several brakes stands once."""
    rows: dict[tuple[str, ...], list[str]] = {}
    for limit in limits:
        stands = f"{limit.allowed.label}: {display.value(limit.allowed)}"
        if not limit.allowed.known:
            stands = "unknown"
        verdicts = PLASTIC_HOLDS if limit.kind == PLASTIC else HOLDS
        cells = (display.value(limit.found), stands, verdicts[limit.answer()])
        rows.setdefault((limit.kind, *cells), []).append(limit.words)
    found = tuple((listed(words), *cells) for (_, *cells), words in rows.items())
    return Table(("what", "at its hottest", "against", "verdict"), found, widths=(0.28, 0.2, 0.32, 0.2))


def main_values(brake: BrakeHeat) -> tuple[Value, ...]:
    """The figures that count, in the order in which they are read."""
    peaks = [value for peak in brake.peaks for value in _parts(peak)]
    return (*peaks, *(limit.found for limit in brake.limits), *_fluids(brake))


def _fluids(brake: BrakeHeat) -> tuple[Value, ...]:
    return tuple(limit.allowed for limit in brake.limits if limit.kind == FLUID)
