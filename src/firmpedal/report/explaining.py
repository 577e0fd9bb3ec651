"""How a figure comes about, sum behind sum, and the sums on which a finding rests."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.report.story import sum_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.finding import Finding
    from firmpedal.model.display import Display
    from firmpedal.quantity import Value
    from firmpedal.report.sheet import Sum

DEEPEST = 6  # sums behind sums: what lies deeper is asked for by its own name


def sums_behind(value: Value, display: Display, depth: int = 0) -> Iterator[tuple[int, Sum]]:
    """The sum of a value and those of the figures in it, each with how deep it lies, from 0 on."""
    own = sum_of(value, display)
    yield depth, replace(own, figures="") if own.figures == own.equation else own
    if value.step is not None and depth < DEEPEST:
        for _, inner in value.step.inputs:
            if inner.step is not None and inner.step.inputs:
                yield from sums_behind(inner, display, depth + 1)


def sums_of_finding(finding: Finding, display: Display) -> tuple[tuple[int, Sum], ...]:
    """What was found and what is allowed, each with its sum; nothing where a finding has no figures."""
    values = (value for value in (finding.measured, finding.allowed) if value is not None)
    return tuple(each for value in values for each in sums_behind(value, display))


def limit_words(finding: Finding, display: Display) -> str:
    """The limit of a finding in words; empty where it has none."""
    return f"limit: {finding.relation} {display.value(finding.allowed)}" if finding.allowed else ""
