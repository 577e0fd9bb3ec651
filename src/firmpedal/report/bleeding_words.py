"""Sentences about filling: whether a pressure pot is enough, what gravity does, what a foot does."""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING

from firmpedal.analysis.bleeding.rises import POT
from firmpedal.checks.circuit_words import pedal_called
from firmpedal.model.display import count_of
from firmpedal.quantity import Answer
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Collection

    from firmpedal.analysis.bleeding import Bleeding, Gravity, Pumping, Rise
    from firmpedal.model.display import Display
    from firmpedal.pipeline import Evaluation

ROUNDING = 1e-9  # of a stroke


def pot_words(verdicts: Collection[Answer], display: Display) -> str:
    """Whether the usual pressure is enough for all, for none, or nobody knows."""
    usual = f"{display.value(POT)} of a pump bottle or pressure pot"
    if verdicts == {Answer.YES}:
        return f"{usual} are enough to take air along through the lines"
    if Answer.NO in verdicts:
        return f"{usual} are too little to surely take air along: warm the fluid, or pump harder"
    return f"{usual} may be enough; watch in a clear hose whether bubbles come along"


def closed_at(evaluation: Evaluation, rise: Rise) -> str:
    """The cylinder that lets nothing up to the top of a way at rest; empty where there is none."""
    ways = evaluation.results.heights.ways
    return next((way.closed_at for way in ways if way.caliper == rise.caliper), "")


def gravity_words(evaluation: Evaluation, found: Bleeding, rise: Rise) -> str:
    """What comes of pouring in at the top, in every attitude."""
    if closed := closed_at(evaluation, rise):
        return f"Gravity, from {rise.top} down to {rise.caliper}: nothing, {closed} is shut at rest."
    parts = [_in_attitude(evaluation, found, rise, each) for each in rise.gravity]
    return f"Gravity, from {rise.top} down to {rise.caliper}: {'; '.join(parts)}." if parts else ""


def _in_attitude(evaluation: Evaluation, found: Bleeding, rise: Rise, gravity: Gravity) -> str:
    show, when = evaluation.display.value, f"when {gravity.attitude}"
    if gravity.blocked is not None:
        over = show(gravity.blocked.above)
        return f"{when} it cannot fill, {gravity.blocked.line} stands {over} above the fill cap"
    if not gravity.flow.known:
        return f"{when} not known yet"
    if gravity.flow.high == 0:
        return f"{when} it cannot fill, no reservoir is above"
    words = f"{when} it makes {show(gravity.flow)}"
    if gravity.enough is Answer.YES:
        return f"{words}, which takes air along"
    less = f"{words}, and {show(rise.flow)} would surely take air along"
    thin = [line for line in rise.lines if found.bore_of(line).stays is Answer.YES]
    if len(thin) == len(rise.lines):
        return f"{less}; in bores as thin as these air goes along with any flow, however slow"
    return less


def foot_words(evaluation: Evaluation, found: Bleeding, pumping: Pumping) -> str:
    """What a pedal does with the air at one high point, with the bleeder shut and open."""
    show, pedal = evaluation.display.value, pedal_called(evaluation.aircraft, pumping.cylinder)
    if not pumping.stroke.known or not pumping.between.known:
        return f"Pumping {pedal}: not known yet what it does with air at {pumping.near}."
    figures = (
        f"a full stroke of {pumping.cylinder} is {show(pumping.stroke)}, and the lines between hold "
        f"{show(pumping.between)}"
    )
    said = {
        Answer.NO: f"only moves the air at {pumping.near} to and fro: {figures}",
        Answer.YES: f"can draw the air at {pumping.near} up as it comes back: {figures}",
        Answer.UNKNOWN: f"may or may not reach the air at {pumping.near}: {figures}",
    }[pumping.reaches]
    words = f"Pumping {pedal} with the bleeder shut {said}."
    if not pumping.strokes.known:
        return words
    least = ceil(pumping.strokes.low - ROUNDING)
    quick = _quick(evaluation, found, pumping)
    each = f", {'each ' if least > 1 else ''}{quick}," if quick else ""
    return (
        f"{words} With the bleeder open, and shut before each return, it takes at least "
        f"{count_of(least, 'full stroke')}{each} until air from there comes at {pumping.caliper}: so much "
        "the lines hold, and cylinders and pistons on the way hold more. Go on until none comes."
    )


def _quick(evaluation: Evaluation, found: Bleeding, pumping: Pumping) -> str:
    """How quick a stroke has to be to take air along; nothing where it goes along with any flow."""
    rise = next(each for each in found.rises if each.caliper == pumping.caliper)
    if not rise.flow.known or all(found.bore_of(line).stays is Answer.YES for line in rise.lines):
        return ""
    within = evaluation.display.number(pumping.stroke.low / rise.flow.high, Dimension.TIME)
    return f"pressed within {within}"


def pressure_words(evaluation: Evaluation, rise: Rise) -> str:
    """How hard to push at one wheel."""
    show = evaluation.display.value
    if not rise.pressure.known:
        return f"at {show(POT)}"
    wanted = f"it takes {show(rise.pressure)}, of that {show(rise.column)} for the weight of the fluid"
    if rise.enough is Answer.NO:
        return f"at more than {show(POT)}: {wanted}"
    return f"at {show(POT)}: {wanted}"
