"""The sums behind the main results, each with its figures and its source."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.analysis.pressure import FEET
from firmpedal.formulas.references import entry
from firmpedal.quantity import Mark
from firmpedal.report.filling_sums import filling_sums
from firmpedal.report.lengths import fine
from firmpedal.report.sheet import Group, Heading, Paragraph, Sheet, Sum
from firmpedal.report.stopping import sums_of_stopping
from firmpedal.report.story import sum_of

if TYPE_CHECKING:
    from firmpedal.analysis.heating import Heating
    from firmpedal.analysis.pressure import CylinderPressure
    from firmpedal.analysis.results import Results
    from firmpedal.analysis.strength import TubeStrength
    from firmpedal.analysis.stroke import StrokeBudget
    from firmpedal.lay.hose import HoseLengths
    from firmpedal.model.display import Display
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value
    from firmpedal.report.sheet import Block

RESTS_ON = {
    Mark.MEMORY: "rests on a figure not verified against the source",
    Mark.ESTIMATE: "rests on an estimate",
    Mark.ASSUMED: "rests on an assumed figure",
}
FEW = 3  # a longer sum of like things is printed as a list
Chapter = tuple[str, tuple["Value", ...]]


def chapters(evaluation: Evaluation) -> tuple[Chapter, ...]:
    """The values whose sums are printed, by heading."""
    results, laid = evaluation.results, evaluation.laid
    tubes = [line.tube for line in laid if line.tube is not None]
    hoses = [line.hose for line in laid if line.hose is not None]
    found = (
        ("Pressure", [value for made in results.cylinders for value in _made(made)]),
        ("Pressure with more feet than one", _together(results)),
        ("Strength of the tubes", [value for each in results.strengths for value in _strengths(each)]),
        ("Plastic and hose where they run hot", [each.hot for each in results.ratings if each.hot.step]),
        ("Stroke", [value for budget in results.budgets for value in _strokes(budget)]),
        ("Stopping", list(sums_of_stopping(results.stopping)) if results.stopping.asked else []),
        ("Heat of one stop", _discs(results.heating)),
        ("Fluid in the lines", list(results.volumes)),
        ("Fluid that follows the pads", [each.volume for each in results.wear]),
        (
            "Length of the tubes",
            [value for each in tubes for value in (each.developed_length, each.cut_length)],
        ),
        ("Length of the hoses", [value for hose in hoses for value in _hose_lengths(hose)]),
        *filling_sums(evaluation),
        ("Mass", [*results.masses, results.mass]),
    )
    return tuple((title, tuple(values)) for title, values in found if values)


def _made(made: CylinderPressure) -> tuple[Value, ...]:
    """The ratio at rest and what comes of it, then the greatest where it is another one."""
    greatest = (made.most, *made.greatest) if made.most != made.ratio else ()
    return (made.ratio, *made.pressures, *greatest)


def _together(results: Results) -> list[Value]:
    """What feet that may add up make in each line."""
    return [value for each in results.pressures if each.adding for value in each.pressures if value.step]


def _discs(heat: Heating) -> list[Value]:
    """What can be checked with a pencil: a disc that loses nothing."""
    return [each.disc_alone for each in heat.brakes] if heat.asked else []


def _strengths(tube: TubeStrength) -> tuple[Value, ...]:
    """Yield with the trade's figure beside it, burst, and the factors."""
    yields = (tube.yield_pressure, tube.trade_yield_pressure)
    return (*yields, tube.burst_pressure, tube.yield_factor, tube.burst_factor)


def _strokes(budget: StrokeBudget) -> tuple[Value, ...]:
    """The stroke at one foot, cold and hot, each after the fluid behind it; the pad gap once."""
    gap = (budget.gap,) if budget.foot == FEET[0] else ()
    both = ((*_pushed_out(budget, stroke), stroke) for stroke in (budget.cold, budget.hot))
    pads = (value for value in budget.pads if value.known)
    return (*gap, *budget.gives, *(value for values in both for value in values), *pads)


def _pushed_out(budget: StrokeBudget, stroke: Value) -> tuple[Value, ...]:
    """The fluid behind a stroke, named by its cylinder and foot."""
    volumes = [inner for symbol, inner in stroke.step.inputs if symbol == "V"] if stroke.step else []
    words = f"of {budget.cylinder} at the {budget.foot} foot"
    return tuple(inner.named(f"{inner.label} {words}") for inner in volumes)


def _hose_lengths(hose: HoseLengths) -> tuple[Value, ...]:
    return (hose.path_length, hose.least_length, hose.order_length)


def main_values(evaluation: Evaluation) -> tuple[Value, ...]:
    """Every value whose sum is printed."""
    return tuple(value for _, values in chapters(evaluation) for value in values)


def sums_sheet(evaluation: Evaluation) -> Sheet:
    """All sums; what comes out alike for several lines is printed once."""
    blocks: list[Block] = [
        Paragraph(
            "Figures are rounded for print, the program reckons with all digits: a last digit can differ."
        )
    ]
    for title, values in chapters(evaluation):
        printed = _merged(values, fine(evaluation.display))
        blocks.append(Group((Heading(title), printed[0])))
        blocks += printed[1:]
    return Sheet("Sums", tuple(blocks))


def _merged(values: tuple[Value, ...], display: Display) -> list[Block]:
    """One sum for all values that have the same figures, under all their names."""
    groups: dict[tuple[object, ...], list[Value]] = {}
    for value in values:
        groups.setdefault(_figures(value, display) if value.known else value.missing, []).append(value)
    return [_printed(group, display) for group in groups.values()]


def _figures(value: Value, display: Display) -> tuple[object, ...]:
    inputs = [(symbol, display.value(inner)) for symbol, inner in value.step.inputs] if value.step else []
    equation = value.step.equation if value.step else ""
    alone = () if value.step else (value.label,)
    return (equation, display.value(value), *inputs, *alone)


def _printed(group: list[Value], display: Display) -> Block:
    value = group[0]
    if not value.known:
        return _not_known(group)
    also = tuple(dict.fromkeys(other.label for other in group[1:] if other.label != value.label))
    same = (f"the same: {'; '.join(also)}",) if also else ()
    if value.step and len(value.step.inputs) > FEW and value.step.equation.startswith("x1 + "):
        return _list_of_parts(value, display, same)
    whole = sum_of(value, display)
    where = (*whole.where, *_remark(value), *same)
    source = entry(value.source).title if value.source and value.step else whole.source
    figures = "" if whole.figures == whole.equation else whole.figures
    return replace(whole, where=where, figures=figures, source=source)


def _not_known(group: list[Value]) -> Sum:
    """What cannot be worked out before the same things are measured, together."""
    labels = tuple(dict.fromkeys(value.label for value in group))
    missing = "; ".join(dict.fromkeys(missing.what for missing in group[0].missing))
    return Sum(group[0].label, "", "", f"Not known before this is: {missing}", labels)


def _remark(value: Value) -> tuple[str, ...]:
    return (RESTS_ON[value.mark],) if value.mark in RESTS_ON and value.step else ()


def _list_of_parts(value: Value, display: Display, same: tuple[str, ...]) -> Sum:
    """A sum of many parts as a list, equal parts counted."""
    assert value.step is not None  # noqa: S101  the caller looked
    counted: dict[tuple[str, str], int] = {}
    for _, inner in value.step.inputs:
        key = (inner.label, display.value(inner))
        counted[key] = counted.get(key, 0) + 1
    parts = tuple(
        f"{f'{count} x ' if count > 1 else ''}{label}: {text}" for (label, text), count in counted.items()
    )
    result = f"{value.label} = {display.value(value)}"
    return Sum(value.label, "", "", result, (*parts, *_remark(value), *same))
