"""Words and figures for what was measured and what a candidate has."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.decide.thread_ends import Quantity
from firmpedal.quantity import Answer, Mark
from firmpedal.units import Dimension, from_unit, show, show_span, to_unit

if TYPE_CHECKING:
    from firmpedal.decide.identify import Fit
    from firmpedal.decide.tell_apart import Difference, Trial
    from firmpedal.model.display import Display
    from firmpedal.quantity import Value

DECIMALS = {"in": 3, "mm": 2}
FINER = {"in": 4, "mm": 3}
ROUNDING = 0.02  # of what is allowed: less is nothing that somebody could measure
UNVERIFIED = (Mark.MEMORY, Mark.ESTIMATE)
ADVICE = {
    Quantity.OUTSIDE: "the outside diameter, over the crests at the small end, with callipers",
    Quantity.INSIDE: "the inside diameter, over the crests just inside the mouth, with callipers",
    Quantity.PITCH: "the pitch, over as many threads as there are, or with a thread gauge",
    Quantity.TAPER: "the taper: the diameter at both ends of the thread",
    Quantity.SEAT: "the seat angle, from the axis to the cone's side, with a template",
    Quantity.TUBE: "the tube's outside diameter, away from bends and scratches, in two directions",
}


def advice_of(quantity: Quantity) -> str:
    """How a quantity is measured."""
    return ADVICE[quantity]


def lengths(value: Value, display: Display) -> str:
    """A length or a range of lengths in thousandths of an inch or hundredths of a millimetre."""
    unit = display.unit(Dimension.LENGTH) or "in"
    return show_span((value.low, value.high), unit, decimals=DECIMALS.get(unit))


def coarse(value: Value, display: Display) -> str:
    """A small length."""
    unit = display.unit(Dimension.LENGTH) or "in"
    return show(value.middle, unit, decimals=FINER.get(unit))


def figure(value: Value) -> str:
    """A plain number as people write it: 1-1/2."""
    quarters = value.middle * 4
    return show(value.middle, "-", fraction=4) if quarters == round(quarters) else f"{value.middle:g}"


def pitch(value: Value, display: Display) -> str:
    """A pitch both ways: as threads per inch and as a length."""
    unit = display.unit(Dimension.LENGTH) or "in"
    per_inch = from_unit(1, "in") / value.middle
    length = f"{to_unit(value.middle, unit):.{FINER.get(unit, 4)}f} {unit}"
    return f"{per_inch:.4g} per inch ({length})"


def shown(quantity: Quantity, value: Value, display: Display) -> str:
    """A figure of a quantity."""
    if quantity is Quantity.PITCH:
        return pitch(value, display)
    if quantity is Quantity.TAPER:
        return "taper" if value.high > 0 else "no taper"
    return lengths(value, display) if value.dimension is Dimension.LENGTH else display.value(value)


def measured_words(fit: Fit, display: Display) -> str:
    """What was found."""
    if fit.measured is not None:
        return shown(fit.quantity, fit.measured, display)
    has = fit.expected is not None and fit.expected.high > 0
    return "taper" if has is (fit.answer is Answer.YES) else "no taper"


def expected_words(fit: Fit, display: Display) -> str:
    """What the candidate has, with a word on figures that nobody verified."""
    if fit.expected is None:
        return "not in the catalogue"
    return shown(fit.quantity, fit.expected, display) + (" *" if fit.expected.mark in UNVERIFIED else "")


def fit_words(fit: Fit, display: Display) -> str:
    """How well it fits: inside, or how far off against what is allowed."""
    if fit.answer is Answer.UNKNOWN:
        return "cannot say"
    if fit.off is None or fit.allowed is None:
        return str(fit.answer.value)
    if fit.strain <= ROUNDING:
        return "yes"
    off, allowed = (
        coarse(each, display) if each.dimension is Dimension.LENGTH else display.value(each)
        for each in (fit.off, fit.allowed)
    )
    return f"{fit.answer.value}, {off} off where {allowed} is allowed"


def test_words(pair: Difference, display: Display) -> str:
    """The test between two candidates, and whether it can decide with this accuracy."""
    trial = pair.test
    if trial is None:
        return "they measure the same; look at their form, or for the part's papers."
    if trial.decides:
        also = [other for other in pair.others if other.decides]
        more = f" Or {trial_words(also[0], display)}." if also else ""
        return f"{trial_words(trial, display)}.{more}"
    differ, told = (_small(each, display) for each in (trial.difference, trial.needed))
    needed = f"they differ by {differ} and this accuracy tells {told}"
    return f"{trial_words(trial, display)}. Measure more finely for that: {needed}."


def trial_words(trial: Trial, display: Display) -> str:
    """One measurement and what it gives for each."""
    first, second = (
        shown(trial.quantity, each, display)
        if trial.quantity not in (Quantity.PITCH, Quantity.TAPER)
        else lengths(each, display)
        for each in (trial.first, trial.second)
    )
    against = f"{first} against {second}"
    if trial.quantity is Quantity.PITCH:
        return f"measure over {trial.over} pitches, crest to crest: {against}"
    if trial.quantity is Quantity.TAPER and trial.length is not None:
        apart = lengths(trial.length, display)
        return f"measure the diameter at both ends, {apart} apart: it grows by {against}"
    if trial.quantity is Quantity.SEAT:
        return f"lay a template on the cone: {against}{_under(trial, display)}"
    return f"measure the {trial.quantity.value}: {against}"


def _under(trial: Trial, display: Display) -> str:
    if trial.gap is None:
        return "; on the wrong one the template rocks or shows light"
    gap = coarse(trial.gap, display)
    return f"; the blunter template rocks on the sharper cone and leaves {gap} at the wide end"


def _small(value: Value, display: Display) -> str:
    return coarse(value, display) if value.dimension is Dimension.LENGTH else display.value(value)
