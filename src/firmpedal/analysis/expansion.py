"""What a hose takes by its maker's curve: straight from nothing through its points, one after the other."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.model.stock import Hose
from firmpedal.quantity import Mark, Step, Value, all_missing
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    from firmpedal.lay.line import LaidLine
    from firmpedal.model.circuit import Expansion

    Array = NDArray[np.float64]

STRAIGHT = "V = v(p) L, v on straight lines from nothing through the points"
BEYOND = (
    "{name}: its curve ends at a lower pressure; beyond it is taken from nothing more up to as much for each "
    "step of pressure as at its steepest"
)


@dataclass(frozen=True)
class Edge:
    """One edge of a hose's curve, firm or soft: the pressures where it bends, and the slope from each on.

    `knots` [Pa] begin with nothing, `slopes` [m^3/Pa] stand beside them; the last is that beyond the curve.
    """

    knots: tuple[float, ...]
    slopes: tuple[float, ...]

    @property
    def pieces(self) -> tuple[tuple[float, float], ...]:
        """Each knot with what the slope grows by there."""
        return tuple(zip(self.knots, np.diff((0.0, *self.slopes)).tolist(), strict=True))

    def volume(self, pressure: float) -> float:
        """Volume taken at a gauge pressure [m^3]."""
        return float(sum(max(pressure - knot, 0.0) * slope for knot, slope in self.pieces))


def edges(line: LaidLine) -> tuple[Edge, Edge] | None:
    """The firm and the soft edge of a hose's curve, for all of the hose; None where a figure is unknown."""
    points, length = line.expansion_curve, line.order_length
    if length.span is None or any(not (each.under.known and each.per_length.known) for each in points):
        return None
    pressures, taken = _ranges(points)
    _, steepest = _slopes(pressures, taken)
    firm = _edge(pressures[:, 1], taken[:, 0] * length.low, 0.0)
    return firm, _edge(pressures[:, 0], taken[:, 1] * length.high, steepest * length.high)


def _ranges(points: Sequence[Expansion]) -> tuple[Array, Array]:
    """The ranges of pressure [Pa] and of what a length takes [m^2] at nothing and each point, shape (n, 2).

    At more pressure a hose takes no less: what a range tells beyond that of a neighbour is left out.
    """
    pressures, taken = (
        np.array([(0.0, 0.0), *((value.low, value.high) for value in values)])
        for values in ([each.under for each in points], [each.per_length for each in points])
    )
    taken[:, 0] = np.maximum.accumulate(taken[:, 0])
    taken[:, 1] = np.minimum.accumulate(taken[::-1, 1])[::-1]
    return pressures, taken


def _slopes(pressures: Array, taken: Array) -> tuple[float, float]:
    """The least and the greatest slope of any piece, wherever its two ends stand in their ranges [m^2/Pa]."""
    least = np.maximum(taken[1:, 0] - taken[:-1, 1], 0.0) / (pressures[1:, 1] - pressures[:-1, 0])
    most = (taken[1:, 1] - taken[:-1, 0]) / (pressures[1:, 0] - pressures[:-1, 1])
    return float(least.min()), float(most.max())


def _edge(pressures: Array, volumes: Array, beyond: float) -> Edge:
    slopes = np.diff(volumes) / np.diff(pressures)
    return Edge(tuple(map(float, pressures)), (*map(float, slopes), beyond))


def by_curve(line: LaidLine, pressure: Value, label: str, place: str) -> Value:
    """What a hose takes at a pressure by its curve."""
    points, length = line.expansion_curve, line.order_length
    figures = [value for each in points for value in (each.under, each.per_length)]
    inputs = (("p", pressure), ("L", length), *((f"x{n}", value) for n, value in enumerate(figures, 1)))
    values = (pressure, length, *figures)
    mark = max(Mark.DERIVED, *(value.mark for value in values))
    both = edges(line)
    if both is None or pressure.span is None:
        missing = all_missing(values)
        return Value(label, Dimension.VOLUME, None, mark, place, step=Step(STRAIGHT, inputs), missing=missing)
    firm, soft = both
    past = pressure.high > soft.knots[-1]
    caution = BEYOND.format(name=line.name) if past else ""
    step = Step(STRAIGHT, inputs, caution=caution)
    span = (firm.volume(pressure.low), soft.volume(pressure.high))
    return Value(label, Dimension.VOLUME, span, mark, place, "firmpedal-derivation", step)


def by_slope(line: LaidLine, step: Value, label: str, place: str) -> Value:
    """What a hose takes for one more step of pressure, wherever on its curve it stands already.

    From its firmest piece to its steepest one; from nothing where the curve ends below what the hose is
    rated for, as it may stand beyond.
    """
    whole = by_curve(line, step, label, place)
    rated = line.stock.operating_pressure if isinstance(line.stock, Hose) else None
    if whole.span is None:
        return whole
    least, most = _slopes(*_ranges(line.expansion_curve))
    ends = line.expansion_curve[-1].under.low
    told = rated is not None and rated.known and ends >= rated.high
    firmest = least * line.order_length.low if told else 0.0
    note = "for a step of pressure on its firmest and its steepest piece"
    sums = Step(STRAIGHT, whole.step.inputs if whole.step else (), note)
    return replace(whole, span=(firmest * step.low, most * line.order_length.high * step.high), step=sums)
