"""Who wins on one figure: only who surely does. What overlaps or is unknown has no winner."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from firmpedal.checks.closer import vague
from firmpedal.quantity import Mark, Missing, Step, Value, all_missing

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

SAME = 1e-9  # share of a figure by which rounding may part equals


class Outcome(StrEnum):
    """How a contest ends."""

    WON = "won"
    ALIKE = "alike"
    OVERLAP = "ranges overlap"
    UNKNOWN = "unknown"
    NO_CONTEST = "no contest"


@dataclass(frozen=True, slots=True)
class Result:
    """The end of a contest: who won, by number, or what to measure before anybody can say."""

    outcome: Outcome
    winners: tuple[int, ...] = ()
    measure: tuple[Missing, ...] = ()


def contest(values: Sequence[Value | None], standing: Iterable[int], *, least: bool) -> Result:
    """Find who of those standing surely has the least (or the greatest) value.

    Args:
        values: One for each; None takes no part.
        standing: The numbers of those that are in the running.
        least: Whether less is better.
    """
    inside = {n: value for n in standing if (value := values[n]) is not None}
    if len(inside) < 2:
        return Result(Outcome.NO_CONTEST)
    missing = all_missing(value for value in inside.values() if not value.known)
    if missing or not all(value.known for value in inside.values()):
        return Result(Outcome.UNKNOWN, measure=missing)
    spans = {n: _turned(value, least=least) for n, value in inside.items()}
    first = min(spans, key=lambda n: spans[n])
    near = [n for n in spans if not _under(spans[first][1], spans[n][0])]
    if all(_alike(inside[first], inside[n]) for n in near):
        if len(near) == len(inside):
            return Result(Outcome.ALIKE)
        return Result(Outcome.WON, tuple(near))
    vague = dict.fromkeys(item for n in near for item in ranges_behind(inside[n]))
    return Result(Outcome.OVERLAP, measure=tuple(vague))


def _turned(value: Value, *, least: bool) -> tuple[float, float]:
    return (value.low, value.high) if least else (-value.high, -value.low)


def _under(one: float, other: float) -> bool:
    return one < other - SAME * max(abs(one), abs(other))


def _alike(one: Value, other: Value) -> bool:
    """Two figures are alike when they are exact and the same, or ranges that come from the same things."""
    if one.exact and other.exact:
        return not (_under(one.low, other.low) or _under(other.low, one.low))
    return one.span == other.span and _story(one) == _story(other)


def _story(value: Value) -> tuple[object, ...]:
    """What a value comes from, whatever the sums on the way are called."""
    if value.step is None:
        return (value.label, value.place, value.span, value.source)
    return (value.span, *(_story(part) for _, part in value.step.inputs))


def ranges_behind(value: Value) -> Iterator[Missing]:
    """What would have to be known more closely for a value to be one figure."""
    for figure, _ in vague(value):
        yield from figure.missing or (Missing(figure.place, f"{figure.label} more closely"),)


def smallest(label: str, values: Sequence[Value], place: str = "") -> Value:
    """Take the smallest of some values of one dimension; unknown if any is."""
    mark = max(Mark.DERIVED, *(value.mark for value in values))
    step = Step("smallest of the lines", tuple((value.label, value) for value in values))
    spans = [value.span for value in values if value.span is not None]
    if len(spans) < len(values):
        missing = all_missing(values)
        return Value(label, values[0].dimension, None, mark, place, step=step, missing=missing)
    span = (min(low for low, _ in spans), min(high for _, high in spans))
    return Value(label, values[0].dimension, span, mark, place, step=step)
