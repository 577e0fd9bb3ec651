"""What heat does: how warm the brakes get, what stands it and what does not, and how to know better."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.heating.limits import FLUID, PLASTIC
from firmpedal.analysis.heating.situations import IN_A_ROW
from firmpedal.analysis.heating.whole import hottest_case, how_to_try
from firmpedal.model.aircraft import find
from firmpedal.model.display import listed
from firmpedal.quantity import Answer, Mark, largest
from firmpedal.report.heat_plot import heat_plot
from firmpedal.report.measure_sheet import line_of
from firmpedal.report.sheet import Bullets, Group, Heading, Paragraph, Sheet, Table, Tone
from firmpedal.report.stopping_words import of_one_wheel, wanted
from firmpedal.report.to_measure import asked_for
from firmpedal.report.worked import worked

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.analysis.heating import BrakeHeat, Heating, HeatLimit, Peak
    from firmpedal.model.display import Display
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value
    from firmpedal.report.sheet import Block
    from firmpedal.report.to_measure import ToMeasure

TITLE = "Heat of the brakes"
HOLDS = {Answer.YES: "holds", Answer.NO: "too hot", Answer.UNKNOWN: "not shown: measure"}
PLASTIC_HOLDS = {Answer.YES: "holds", Answer.NO: "refused", Answer.UNKNOWN: "not shown: measure"}
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
    """What is still to be measured before the heat of every brake is known, each thing once."""
    return _asks(evaluation, evaluation.results.heating.brakes)


def _asks(evaluation: Evaluation, brakes: Iterable[BrakeHeat]) -> tuple[ToMeasure, ...]:
    return asked_for(evaluation, wanted(value for each in brakes for value in main_values(each)))


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
        things = f"{len(asked)} figure{'' if len(asked) == 1 else 's'}"
        words = f"How warm {names} {get} cannot be told yet: {things} to measure."
        rows = [Bullets(tuple(map(line_of, asked)), boxes=True)] if asks else []
        known = [limit for each in brakes for limit in each.limits if limit.found.known]
        table = [Group((Heading("What stands it"), _limits(known, display)))] if known else []
        return [Paragraph(words, Tone.LEAD), *_of_trials(evaluation, brakes), *table, *rows]
    limits = [limit for each in brakes for limit in each.limits]
    blocks: list[Block] = [Paragraph(_answer(heat, brake, f"{names} {get}", display), Tone.LEAD)]
    blocks = [*_of_trials(evaluation, brakes), *blocks]
    blocks += [Paragraph(words) for words in (*_verdicts(limits, display), *_share(brake, names))]
    blocks.append(Group((Heading(f"How warm {names} {get}", first=True), _temperatures(brake, display))))
    alone = display.value(brake.disc_alone)
    blocks.append(
        Paragraph(f"By hand: a disc that takes its share of one stop and loses nothing gets {alone}.")
    )
    drawing = heat_plot(brake, heat.air, display)
    blocks += [drawing] if drawing is not None else []
    blocks.append(Group((Heading("What stands it"), _limits(limits, display))))
    blocks += [Paragraph(words, Tone.NOTE) for words in _flash(evaluation, brake, display)]
    return [*blocks, *_better(evaluation, brake)]


def _answer(heat: Heating, brake: BrakeHeat, names: str, display: Display) -> str:
    """The hottest case by its name; stops in a row, which all know, beside it."""
    hot, disc = (hottest_case(brake.peaks, part) for part in ("caliper", "disc"))
    row = next(peak for peak in brake.peaks if peak.situation == IN_A_ROW)
    after = f"After {_case(brake, hot)} on a day of {display.value(heat.air)}, {names}"
    warm = f"{display.value(hot.caliper)} warm"
    if disc is not hot:
        gets = f"{after} {warm}, the most of all. The disc is hottest after {_case(brake, disc)}"
        return f"{gets}: {display.value(disc.disc)}."
    answer = f"{after} {warm} and the disc {display.value(disc.disc)}"
    if hot is row:
        return f"{answer}."
    less = f"{display.value(row.caliper)}, the disc {display.value(row.disc)}"
    return f"{answer}, the most of all; after {_case(brake, row)} {less}."


def _case(brake: BrakeHeat, peak: Peak) -> str:
    if peak.situation != IN_A_ROW:
        return peak.situation if peak.situation.startswith("one") else f"a {peak.situation}"
    return f"{brake.stops} stop{'' if brake.stops == 1 else 's'} in a row"


def _of_trials(evaluation: Evaluation, brakes: list[BrakeHeat]) -> list[Block]:
    """What a trial that no figures agree with showed; it stands before all that is reckoned."""
    said: dict[str, list[str]] = {}
    for brake in brakes:
        if brake.measured is not None and not brake.agrees:
            said.setdefault(_as_read(evaluation, brake), []).append(brake.caliper)
    found: list[Block] = []
    for read, names in said.items():
        if all(brake.agrees is False for brake in brakes):
            words = (
                f"No set of figures in the ranges reckoned with agrees with the heat trial of "
                f"{listed(names)}. What was measured counts: {read}. Do not rely on what is reckoned below."
            )
        else:
            words = f"The heat trial of {listed(names)} counts, although the rest is open: {read}."
        found.append(Paragraph(words, Tone.CAUTION))
    return found


def _as_read(evaluation: Evaluation, brake: BrakeHeat) -> str:
    """What the labels showed, and what that is on a hot day where the air was cooler."""
    caliper, measured = find(evaluation.aircraft.calipers, brake.caliper), brake.measured
    if caliper is None or measured is None:
        return ""
    show, given = evaluation.display.value, caliper.heat_trial
    read = f"{show(given.port)} at the port"
    if not given.air.known:
        return read
    read += f" in air of {show(given.air)}"
    if measured.span == given.port.span:
        return read
    return f"{read}, which is {show(measured)} on a day of {show(evaluation.results.heating.air)}"


def _verdicts(limits: list[HeatLimit], display: Display) -> list[str]:
    """Plastic in a sentence: with its number, whether it is refused or not."""
    answers = {
        Answer.NO: "plastic is refused",
        Answer.YES: "the plastic holds",
        Answer.UNKNOWN: "whether the plastic holds is not shown",
    }
    return [
        f"{limit.words}: {answers[limit.answer()]}. It is good for {display.value(limit.found)} there, "
        f"when hottest; {limit.allowed.label}: {display.value(limit.allowed)}."
        for limit in limits
        if limit.kind == PLASTIC and limit.found.known
    ]


def _share(brake: BrakeHeat, names: str) -> list[str]:
    """What part of a stop a brake does, where not all do the same."""
    if brake.sharing.step is None or brake.sharing.span is None:
        return []
    low, high = (f"{100 / bound:.0f}" for bound in reversed(brake.sharing.span))
    part = f"{low} %" if low == high else f"{low} to {high} %"
    takes = "takes" if names == brake.caliper else "each take"
    return [f"The brakes differ: pressed alike, {names} {takes} {part} of the braking, and of its heat."]


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


def _flash(evaluation: Evaluation, brake: BrakeHeat, display: Display) -> list[str]:
    """Fresh fluid boils later, and what leaks onto a disc may burn."""
    fluid = evaluation.aircraft.fluid
    if fluid is None:
        return []
    found, name = [], fluid.name
    if fluid.dry_boiling_point.known:
        dry = display.value(fluid.dry_boiling_point)
        found.append(f"Fresh {name} boils at {dry} or more; with water in it sooner, so change it in time.")
    disc = largest("disc at its hottest", (peak.disc for peak in brake.peaks))
    if fluid.flash_point.known and disc.high > fluid.flash_point.low:
        gets, flash = ("gets" if disc.low > fluid.flash_point.high else "may get"), fluid.flash_point
        words = f"The disc {gets} hotter than the flash point of {name}, {display.value(flash)}"
        found.append(f"{words}: a leak there can burn.")
    return found


def _better(evaluation: Evaluation, brake: BrakeHeat) -> list[Block]:
    """How to know better: one trial, and the ranges that were reckoned with."""
    display = evaluation.display
    ranges = [
        f"{value.label}: {display.value(value)}"
        for _, value in brake.figures.values()
        if value.mark in (Mark.ESTIMATE, Mark.MEMORY) and not value.exact and value.step is None
    ]
    blocks: list[Block] = []
    if brake.trial is None and brake.measured is None:
        words = f"One trial narrows these bands: {how_to_try(evaluation.aircraft, brake.caliper)}."
        blocks.append(Paragraph(words))
    elif brake.agrees:
        blocks.append(Paragraph("The bands are narrowed by the trial that stands in the file."))
    heading = Heading("Ranges reckoned with, estimates that nobody has measured on this brake")
    return [*blocks, Group((heading, Bullets(tuple(ranges))))]


def main_values(brake: BrakeHeat) -> tuple[Value, ...]:
    """The figures that count, in the order in which they are read."""
    peaks = [value for peak in brake.peaks for value in _parts(peak)]
    return (*peaks, *(limit.found for limit in brake.limits), *_fluids(brake))


def _fluids(brake: BrakeHeat) -> tuple[Value, ...]:
    return tuple(limit.allowed for limit in brake.limits if limit.kind == FLUID)
