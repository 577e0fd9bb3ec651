"""Carry ranges of many inputs through a geometric function, worst case."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from firmpedal.quantity import Value

Numbers = tuple[float, ...]

FELT = 1e-9  # metres or radians: an input that moves a result by less does not move it


class Bounds(NamedTuple):
    """The least and greatest a result can be, and the ranged inputs that move it."""

    low: float
    high: float
    movers: tuple[Value, ...]

    @property
    def span(self) -> tuple[float, float]:
        return self.low, self.high

    @property
    def inputs(self) -> tuple[tuple[str, Value], ...]:
        """The movers as the inputs of a step, by their labels."""
        return tuple((value.label, value) for value in self.movers)


def spread(
    function: Callable[[Numbers], Numbers | None], inputs: Sequence[Value]
) -> tuple[Bounds, ...] | None:
    """Give the bounds of each result when every input can lie anywhere in its range.

    Each ranged input is taken to both its ends with the others in the middle, and the deviations
    are added up: the worst case to first order, which is what measuring errors call for. None when
    the function has no answer in the middle or at one of the ends.
    """
    middle = tuple(value.middle for value in inputs)
    base = function(middle)
    if base is None:
        return None
    below, above = list(base), list(base)
    movers: list[list[Value]] = [[] for _ in base]
    for number, value in enumerate(inputs):
        if value.exact:
            continue
        ends = (value.low, value.high)
        results = [function((*middle[:number], end, *middle[number + 1 :])) for end in ends]
        for result in results:
            if result is None or len(result) != len(base):
                return None
        for n, start in enumerate(base):
            deviations = [0.0, *(result[n] - start for result in results if result is not None)]
            below[n] += min(deviations)
            above[n] += max(deviations)
            if max(deviations) - min(deviations) > FELT:
                movers[n].append(value)
    return tuple(Bounds(*each) for each in zip(below, above, map(tuple, movers), strict=True))
