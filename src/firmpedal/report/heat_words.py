"""Sentences about the heat of a brake: the hottest case, plastic, its share of a stop, what can burn."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.heating.limits import PLASTIC
from firmpedal.analysis.heating.situations import IN_A_ROW
from firmpedal.analysis.heating.whole import hottest_case
from firmpedal.model.display import count_of
from firmpedal.quantity import Answer, largest

if TYPE_CHECKING:
    from firmpedal.analysis.heating import BrakeHeat, Heating, HeatLimit, Peak
    from firmpedal.model.display import Display
    from firmpedal.pipeline import Evaluation


def answer_of(heat: Heating, brake: BrakeHeat, names: str, display: Display) -> str:
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
    return f"{count_of(brake.stops or 0, 'stop')} in a row"


def plastic_words(limits: list[HeatLimit], display: Display) -> list[str]:
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


def share_words(brake: BrakeHeat, names: str) -> list[str]:
    """What part of a stop a brake does, where not all do the same."""
    if brake.sharing.step is None or brake.sharing.span is None:
        return []
    low, high = (f"{100 / bound:.0f}" for bound in reversed(brake.sharing.span))
    part = f"{low} %" if low == high else f"{low} to {high} %"
    takes = "takes" if names == brake.caliper else "each take"
    return [f"The brakes differ: pressed alike, {names} {takes} {part} of the braking, and of its heat."]


def flash_words(evaluation: Evaluation, brake: BrakeHeat, display: Display) -> list[str]:
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
