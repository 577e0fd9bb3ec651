"""What a heat trial showed that the figures do not agree with, and how one trial narrows the bands."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.heating.whole import how_to_try
from firmpedal.model.aircraft import find
from firmpedal.model.display import listed
from firmpedal.quantity import Mark
from firmpedal.report.findings import where_of
from firmpedal.report.sheet import Bullets, Group, Heading, Paragraph, Tone

if TYPE_CHECKING:
    from firmpedal.analysis.heating import BrakeHeat
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block


def trials_that_disagree(evaluation: Evaluation, brakes: list[BrakeHeat]) -> list[Block]:
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


def how_to_know_better(evaluation: Evaluation, brake: BrakeHeat) -> list[Block]:
    """How to know better: one trial, and the ranges that were reckoned with."""
    display = evaluation.display
    ranges = [
        f"{value.label}: {display.value(value)}"
        for _, value in brake.figures.values()
        if value.mark in (Mark.ESTIMATE, Mark.MEMORY) and not value.exact and value.step is None
    ]
    blocks: list[Block] = []
    if brake.trial is None and brake.measured is None:
        words = f"One trial narrows these bands: {how_to_try(evaluation.aircraft, brake.caliper)}"
        where = where_of(evaluation, f"components.{brake.caliper}.heat trial")
        blocks.append(Paragraph(f"{words} ({where})."))
    elif brake.agrees:
        blocks.append(Paragraph("The bands are narrowed by the trial that stands in the file."))
    heading = Heading("Ranges reckoned with, estimates that nobody has measured on this brake")
    return [*blocks, Group((heading, Bullets(tuple(ranges))))]
