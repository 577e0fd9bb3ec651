"""What hose to order: the declared path in its worst state, plus slack.

The true shape of a hose is not solved here, so its least bend radius stays unchecked.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from firmpedal.formulas.hose import hose_length_with_slack
from firmpedal.lay.movement import longest_path
from firmpedal.lay.spread import spread
from firmpedal.quantity import Mark, Step, Value, all_missing, apply, exactly
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from firmpedal.lay.movement import Carried
    from firmpedal.model.circuit import Line
    from firmpedal.model.space import Position
    from firmpedal.model.surroundings import State

READY_MADE = (6, 12, 18, 24)  # inches; common practice, no source
CUSTOM_STEP = from_unit(0.5, "in")
ROUNDING = 1e-9  # so that 9.0 in stays 9.0 in
USUAL_SLACK = 0.06  # inside the published 5 to 8 percent
MOST_SLACK = 0.08


@dataclass(frozen=True, slots=True)
class HoseLengths:
    """A hose along its declared path: as measured, at its longest, with slack, and what to order."""

    path_length: Value
    longest_path: Value  # over all states of what moves the ends
    least_length: Value
    slack: Value
    order_length: Value
    ready_made: bool


def hose_lengths(line: Line, start: Carried, finish: Carried, states: tuple[State, ...]) -> HoseLengths:
    """Find the length to order: the next ready-made one if its slack is allowed, else to the half inch."""
    path = _path(line, (start.position, *line.via, finish.position))
    longest = longest_path(start, finish, line.via, states).named(
        f"longest path of {line.name} in any state", f"{line.place}.longest path"
    )
    slack = line.slack if line.slack.known else _published("slack", USUAL_SLACK)
    most = line.most_slack if line.most_slack.known else _published("most slack", MOST_SLACK)
    least = apply(
        hose_length_with_slack,
        f"length of {line.name} with slack",
        place=f"{line.place}.least length",
        path=longest,
        slack=slack,
    )
    if least.known:
        order, ready_made = _to_order(line, longest, least, most)
    else:
        order, ready_made = least.named(f"length to order for {line.name}"), False
    return HoseLengths(path, longest, least, slack, order, ready_made)


def _to_order(line: Line, longest: Value, least: Value, most: Value) -> tuple[Value, bool]:
    made = math.ceil(least.high / CUSTOM_STEP - ROUNDING) * CUSTOM_STEP
    ready = next((length for length in map(_inches, READY_MADE) if made <= length + ROUNDING), math.inf)
    if ready <= max(longest.low * (1 + most.low), made + ROUNDING):
        return _order(line, ready, least, "the next ready-made length, its slack is allowed"), True
    return _order(line, made, least, "made to length, rounded up to the half inch"), False


def _inches(number: int) -> float:
    return from_unit(number, "in")


def _published(label: str, number: float) -> Value:
    return exactly(label, Dimension.NUMBER, number, Mark.READ, source="navedtra-14105")


def _path(line: Line, points: tuple[Position, ...]) -> Value:
    coordinates = [value for point in points for value in point.coordinates]
    label = f"path of {line.name}"
    missing = all_missing(coordinates)
    if missing:
        return Value(label, Dimension.LENGTH, None, Mark.MEASURED, f"{line.place}.path", missing=missing)
    (bounds,) = spread(_polyline, coordinates) or ()
    mark = max(Mark.DERIVED, *(value.mark for value in coordinates))
    step = Step("sum of the distances between the points", bounds.inputs)
    return Value(label, Dimension.LENGTH, bounds.span, mark, f"{line.place}.path", step=step)


def _polyline(flat: tuple[float, ...]) -> tuple[float, ...]:
    points = [flat[n : n + 3] for n in range(0, len(flat), 3)]
    return (sum(math.dist(one, other) for one, other in pairwise(points)),)


def _order(line: Line, length: float, least: Value, note: str) -> Value:
    step = Step("least length, rounded up", (("L", least),), note)
    return Value(
        f"length to order for {line.name}",
        Dimension.LENGTH,
        (length, length),
        least.mark,
        f"{line.place}.order length",
        "common-practice",
        step,
    )
