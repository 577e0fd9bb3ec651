"""The figures by which options are compared, each from results that an evaluation holds already."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.analysis.pressure import FEET
from firmpedal.decide.contest import smallest
from firmpedal.decide.lacking import lacking
from firmpedal.decide.pieces import pieces_of
from firmpedal.finding import Level, Verdict
from firmpedal.formulas.margin import factor
from firmpedal.model.aircraft import find
from firmpedal.model.display import count_of
from firmpedal.model.kinds import MasterCylinder
from firmpedal.model.part import Category, Form
from firmpedal.model.stock import LineKind
from firmpedal.quantity import Mark, Step, Value, all_missing, apply, exactly, largest
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.pipeline import Evaluation

PANIC = FEET[-1]
HEAT_RULE = "plastic-in-hot-place"
BADNESS = {Verdict.SOUND: 0, Verdict.NOT_SHOWN: 1, Verdict.NOT_SOUND: 2}


@dataclass(frozen=True, slots=True)
class Cell:
    """One figure of one option: the value that counts, None where there is none, and what belongs to it."""

    value: Value | None
    about: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Measure:
    """One way to compare: its name, how to work it out, which way is better; None for neither.

    `ask` is what to measure where ranges overlap, if that is shorter than what stands behind them.
    """

    name: str
    of: Callable[[Evaluation], Cell]
    least: bool | None
    ask: str = ""


def _count(label: str, number: int) -> Value:
    return exactly(label, Dimension.NUMBER, float(number), Mark.DERIVED)


def verdict(evaluation: Evaluation) -> Cell:
    word = evaluation.verdict
    return Cell(_count("verdict", BADNESS[word]), (word.value,))


def components(evaluation: Evaluation) -> Cell:
    """What the lines join, by kind: options that do not join the same do not do the same job."""
    kinds = Counter(component.kind for component in evaluation.aircraft.components)
    about = tuple(count_of(count, kind) for kind, count in sorted(kinds.items()))
    return Cell(_count("components", sum(kinds.values())), about)


def leak_paths(evaluation: Evaluation) -> Cell:
    """Places where fluid is held, by the form of the joint."""
    forms: dict[Form, int] = {}
    for joint in evaluation.assembly.joints:
        for mating in joint.matings:
            if mating.one.interface.seals:
                form = mating.one.interface.form
                forms[form] = forms.get(form, 0) + 1
    about = tuple(f"{count} {_FORM_WORDS.get(form, form.value)}" for form, count in forms.items())
    return Cell(_count("leak paths", sum(forms.values())), about)


_FORM_WORDS = {
    Form.FLARE_37: "flare",
    Form.FLARE_45: "45-degree flare",
    Form.PIPE: "pipe thread",
    Form.METRIC: "metric thread",
}


def joints(evaluation: Evaluation) -> Cell:
    """Places where parts or lines come together."""
    return Cell(_count("joints", sum(bool(joint.matings) for joint in evaluation.assembly.joints)))


def parts(evaluation: Evaluation) -> Cell:
    """Fittings, nuts, sleeves, plugs: what is screwed together, without lines and clamps."""
    wanted = [piece for piece in pieces_of(evaluation) if piece.part is not None]
    return Cell(_count("parts", len(wanted)))


def lines(evaluation: Evaluation) -> Cell:
    kinds = {kind: sum(line.kind is kind for line in evaluation.laid) for kind in LineKind}
    about = tuple(f"{count} {kind.value}" for kind, count in kinds.items() if count)
    return Cell(_count("lines", len(evaluation.laid)), about)


def clamps(evaluation: Evaluation) -> Cell:
    number = sum(piece.category is Category.CLAMP for piece in pieces_of(evaluation))
    other = tuple(
        dict.fromkeys(line.support.value for line in evaluation.aircraft.lines if "clamp" not in line.support)
    )
    return Cell(_count("clamps", number), other)


def rated(evaluation: Evaluation) -> Cell:
    """How often the rating of the weakest hose or plastic line, as hot as it runs, covers the panic foot."""
    margins = [
        apply(
            factor,
            f"rating of {rating.line} over its pressure at the panic foot",
            place=f"lines.{rating.line}.rating factor",
            strength=rating.hot,
            load=pressure.at(PANIC),
        )
        for rating in evaluation.results.ratings
        if (pressure := evaluation.results.pressure_of(rating.line)) is not None
    ]
    names = [each.line for each in evaluation.results.ratings if evaluation.results.pressure_of(each.line)]
    return _weakest("rating over the panic foot", margins, names)


def yields(evaluation: Evaluation) -> Cell:
    """How often the first yield of the weakest metal tube covers the panic foot."""
    strengths = evaluation.results.strengths
    return _weakest(
        "first yield over the panic foot",
        [each.yield_factor for each in strengths],
        [each.line for each in strengths],
    )


def _weakest(label: str, margins: list[Value], names: list[str]) -> Cell:
    if not margins:
        return Cell(None)
    least = smallest(label, margins)
    if not least.known:
        return Cell(least)
    return Cell(least, (names[min(range(len(margins)), key=lambda n: margins[n].low)],))


def heat(evaluation: Evaluation) -> Cell:
    """How many lines the rule on plastic in hot places speaks against; unknown where it cannot say."""
    count = sum(finding.rule == HEAT_RULE for finding in evaluation.findings)
    unclear = [item for item in evaluation.not_shown if item.rule == HEAT_RULE]
    if unclear and not count:
        missing = tuple(dict.fromkeys(each for item in unclear for each in item.missing))
        return Cell(Value("plastic in hot places", Dimension.NUMBER, None, Mark.MEASURED, missing=missing))
    return Cell(_count("plastic in hot places", count))


def stroke(evaluation: Evaluation) -> Cell:
    """The share of its stroke that the worst cylinder uses at the panic foot, hot, without air."""
    shares = []
    for budget in evaluation.results.budgets:
        cylinder = find(evaluation.aircraft.components, budget.cylinder)
        if budget.foot == PANIC and isinstance(cylinder, MasterCylinder):
            shares.append((budget.cylinder, _share(budget.hot, cylinder.stroke)))
    if not shares:
        return Cell(None)
    most = largest("share of the stroke used at the panic foot, hot", [share for _, share in shares])
    if not most.known:
        return Cell(most)
    return Cell(most, (max(shares, key=lambda pair: pair[1].high)[0],))


def _share(used: Value, stroke: Value) -> Value:
    label, step = f"{used.label}, as a share", Step("used / stroke", (("used", used), ("stroke", stroke)))
    mark = max(Mark.DERIVED, used.mark, stroke.mark)
    if used.span is None or stroke.span is None or stroke.low <= 0:
        missing = all_missing((used, stroke))
        return Value(label, Dimension.NUMBER, None, mark, used.place, step=step, missing=missing)
    span = (used.low / stroke.high, used.high / stroke.low)
    return Value(label, Dimension.NUMBER, span, mark, used.place, step=step)


def mass(evaluation: Evaluation) -> Cell:
    return Cell(evaluation.results.mass)


def mass_change(base: Evaluation, other: Evaluation) -> Value:
    """How much heavier another evaluation is, by what differs: lines and parts of both cancel out."""
    one, two = _masses(base), _masses(other)
    added, gone = list((two - one).elements()), list((one - two).elements())
    label, step = "change of mass", Step("added - taken away", ())
    values = (*added, *gone)
    if any(not value.known for value in values):
        return Value(label, Dimension.MASS, None, Mark.DERIVED, step=step, missing=all_missing(values))
    low = sum(value.low for value in added) - sum(value.high for value in gone)
    high = sum(value.high for value in added) - sum(value.low for value in gone)
    mark = max([Mark.DERIVED, *(value.mark for value in values)])
    return Value(label, Dimension.MASS, (low, high), mark, step=step)


def _masses(evaluation: Evaluation) -> Counter[Value]:
    whole = evaluation.results.mass
    inputs = [value for _, value in whole.step.inputs] if whole.step else []
    return Counter(replace(value, place="", step=None) for value in inputs)


def worst(evaluation: Evaluation) -> Cell:
    """The gravest level found, and how many findings there are of each."""
    levels = list(Level)
    if not evaluation.findings:
        return Cell(_count("worst finding", 0), ("nothing found",))
    counts = [sum(finding.level is level for finding in evaluation.findings) for level in levels]
    first = next(number for number, count in enumerate(counts) if count)
    told = tuple(
        count_of(count, level.value.lower()) for level, count in zip(levels, counts, strict=True) if count
    )
    return Cell(_count("worst finding", len(levels) - first), (levels[first].value, *told))


def unknown(evaluation: Evaluation) -> Cell:
    return Cell(_count("things to measure", len(lacking(evaluation))))


MEASURES = (
    Measure("verdict", verdict, least=True),
    Measure("worst finding", worst, least=True),
    Measure("heat", heat, least=True),
    Measure("components", components, least=None),
    Measure("leak paths", leak_paths, least=True),
    Measure("joints", joints, least=True),
    Measure("parts", parts, least=True),
    Measure("lines", lines, least=None),
    Measure("clamps", clamps, least=None),
    Measure("rating over panic foot", rated, least=False),
    Measure("yield over panic foot", yields, least=False),
    Measure("stroke used", stroke, least=True),
    Measure("mass", mass, least=True, ask="what the hoses and fittings weigh, on a scale"),
    Measure("to measure", unknown, least=None),
)
