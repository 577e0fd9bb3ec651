"""Carry ranges of many inputs through a geometric function, worst case."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

Numbers = tuple[float, ...]


def spread(
    function: Callable[[Numbers], Numbers | None], inputs: Sequence[tuple[float, float]]
) -> list[tuple[float, float]] | None:
    """Give the span of each result when every input can lie anywhere in its range.

    Each ranged input is taken to both its ends with the others in the middle, and the deviations
    are added up: the worst case to first order, which is what measuring errors call for. None when
    the function has no answer in the middle or at one of the ends.
    """
    middle = tuple((low + high) / 2 for low, high in inputs)
    base = function(middle)
    if base is None:
        return None
    below, above = list(base), list(base)
    for number, (low, high) in enumerate(inputs):
        if low == high:
            continue
        ends = [function((*middle[:number], end, *middle[number + 1 :])) for end in (low, high)]
        for end in ends:
            if end is None or len(end) != len(base):
                return None
        for n, value in enumerate(base):
            deviations = [end[n] - value for end in ends if end is not None]
            below[n] += min(0.0, *deviations)
            above[n] += max(0.0, *deviations)
    return list(zip(below, above, strict=True))
