"""How a figure comes about, sum behind sum, and the sums on which a finding rests."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.report.story import sum_of
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.finding import Finding
    from firmpedal.model.display import Display
    from firmpedal.quantity import Value
    from firmpedal.report.sheet import Sum

AXES = {"1": "aft", "2": "right", "3": "up"}  # the figures of a point, by the end of their places
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


@dataclass(frozen=True, slots=True)
class Figure:
    """A figure in a list: as shown, the name by which its sum can be asked for, and what it is."""

    figure: str
    place: str
    label: str


def figures_at(values: dict[str, list[Value]], display: Display) -> tuple[Figure, ...]:
    """Each figure once, by the place it belongs to; then each point once, with its three figures.

    Args:
        values: The values of each place.
        display: The units to show them in.
    """
    points = _points(values)
    whole = {f"{place}.{axis}" for place in points for axis in AXES}
    figures = [
        Figure(display.value(value), place, value.label)
        for place, own in values.items()
        if place not in whole
        for value in own
    ]
    figures += [_point(place, points[place], display) for place in sorted(points, key=_by_number)]
    return tuple(dict.fromkeys(figures))


def _points(values: dict[str, list[Value]]) -> dict[str, tuple[Value, Value, Value]]:
    """The places whose three figures are aft, right and up of one point."""
    found = {}
    for head in dict.fromkeys(place.rpartition(".")[0] for place in values):
        three = [values.get(f"{head}.{axis}", []) for axis in AXES]
        ways = [own[0].label.rpartition(" ")[2] if len(own) == 1 else "" for own in three]
        if ways == list(AXES.values()):
            found[head] = (three[0][0], three[1][0], three[2][0])
    return found


def _point(place: str, point: tuple[Value, Value, Value], display: Display) -> Figure:
    unit = display.unit(Dimension.LENGTH) or ""
    figures = ", ".join(display.value(value).removesuffix(f" {unit}") for value in point)
    return Figure(
        f"[{figures}] {unit}".rstrip(), place, point[0].label.removesuffix(" aft").removesuffix(",")
    )


def _by_number(place: str) -> list[tuple[int, str]]:
    """`via.10` comes after `via.9`."""
    return [(int(part), "") if part.isdecimal() else (0, part) for part in place.split(".")]


def limit_words(finding: Finding, display: Display) -> str:
    """The limit of a finding in words; empty where it has none."""
    return f"limit: {finding.relation} {display.value(finding.allowed)}" if finding.allowed else ""
