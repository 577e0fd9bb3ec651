"""The sum behind a value, in words and figures: equation, figures put in, result, source."""

from __future__ import annotations

import re
from dataclasses import fields, is_dataclass
from typing import TYPE_CHECKING

from pydantic import BaseModel

from firmpedal.analysis.bleeding import bleeding
from firmpedal.analysis.cold import cold_of
from firmpedal.analysis.pressure import FEET
from firmpedal.analysis.shut_in import every_shut_in
from firmpedal.analysis.together_travel import pressed_together_all
from firmpedal.checks.rules import asked_by
from firmpedal.formulas.references import entry
from firmpedal.quantity import Mark, Value
from firmpedal.report.sheet import Sum
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.finding import Finding
    from firmpedal.model.display import Display
    from firmpedal.pipeline import Evaluation

MARK_WORDS = {
    Mark.READ: "",
    Mark.MEASURED: "",
    Mark.DERIVED: "",
    Mark.MEMORY: "not verified against the source",
    Mark.ESTIMATE: "an estimate: measure it",
    Mark.ASSUMED: "assumed: measure it",
}


def sum_of(value: Value, display: Display) -> Sum:
    """Write out one value: its equation, the figures in it, the result and where it comes from."""
    display = display.decimals
    result = f"{value.label} = {display.value(value)}"
    if value.step is None:
        return Sum(value.label, "", "", result, _asked(value), _source(value))
    figures = {symbol: display.value(inner) for symbol, inner in value.step.inputs}
    where = tuple(
        f"{symbol} = {display.value(inner)}: {inner.label}{_remark(inner)}"
        for symbol, inner in value.step.inputs
    )
    filled = substituted(value.step.equation, figures).rpartition(
        value.step.equation.split(" = ")[0] + " = "
    )[2]
    source = entry(value.source).title if value.source else ""
    notes = (*where, *cautions(value), *_asked(value))
    return Sum(value.label, value.step.equation, filled, result, notes, source)


def cautions(value: Value) -> tuple[str, ...]:
    """What to keep in mind of the equations in a value's story, each once."""
    if value.step is None:
        return ()
    inner = [words for _, part in value.step.inputs for words in cautions(part)]
    return tuple(dict.fromkeys([*([value.step.caution] if value.step.caution else []), *inner]))


def _asked(value: Value) -> tuple[str, ...]:
    return tuple(f"unknown: {missing.what}" for missing in value.missing)


def substituted(equation: str, figures: dict[str, str]) -> str:
    """Put figures in the place of symbols; whole symbols only, so that p in `pi` stays."""
    if not figures:
        return ""
    names = sorted(figures, key=len, reverse=True)
    pattern = re.compile(r"(?<![A-Za-z0-9_])(" + "|".join(map(re.escape, names)) + r")(?![A-Za-z0-9_])")
    return pattern.sub(lambda found: f"({figures[found.group(1)]})", equation)


def _remark(value: Value) -> str:
    words = MARK_WORDS[value.mark]
    return f" ({words})" if words and value.step is None else ""


def source_text(key: str, mark: Mark) -> str:
    """A source as it is printed, with a word of warning where its figure was not verified."""
    reference = entry(key)
    words = "" if key == "common-practice" else MARK_WORDS[mark]
    return f"{reference.title}{' (' + words + ')' if words else ''}"


def _source(value: Value) -> str:
    return source_text(value.source, value.mark) if value.source else ""


def every_value(evaluation: Evaluation) -> dict[str, list[Value]]:
    """All values of an evaluation by the place they can be asked for, inputs included."""
    found: dict[str, list[Value]] = {}
    filling = bleeding(evaluation.aircraft, evaluation.laid, evaluation.results)
    unit = evaluation.display.unit(Dimension.TEMPERATURE) or "degC"
    shut = every_shut_in(evaluation.aircraft, evaluation.laid, evaluation.results, unit)
    cold = cold_of(evaluation.aircraft, evaluation.laid, evaluation.results)
    both = pressed_together_all(evaluation.aircraft, evaluation.results, FEET[1])
    roots = (evaluation.results, evaluation.laid, evaluation.aircraft, filling, shut, cold, both)
    for value in _values_in(roots, set()):
        known = found.setdefault(value.place, [])
        if value not in known:
            known.append(value)
    return found


def _values_in(thing: object, seen: set[int]) -> Iterator[Value]:
    if id(thing) in seen:
        return
    seen.add(id(thing))
    if isinstance(thing, Value):
        yield thing
        for _, inner in thing.step.inputs if thing.step else ():
            yield from _values_in(inner, seen)
    elif isinstance(thing, tuple | list | frozenset):
        for item in thing:
            yield from _values_in(item, seen)
    elif isinstance(thing, BaseModel):
        for name in type(thing).model_fields:
            yield from _values_in(getattr(thing, name), seen)
    elif is_dataclass(thing) and not isinstance(thing, type):
        for part in fields(thing):
            yield from _values_in(getattr(thing, part.name), seen)


def reason_of(finding: Finding) -> str:
    """Why a finding is one: what its rule asks for, and the sources it rests on."""
    asked = asked_by(finding.rule)
    sources = [source_text(source.key, source.mark) for source in finding.sources]
    if [source.key for source in finding.sources] == ["common-practice"]:
        return f"{asked} {sources[0]}."
    return f"{asked} Sources: {'; '.join(sources)}." if sources else asked
