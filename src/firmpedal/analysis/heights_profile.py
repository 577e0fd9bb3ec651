"""High points of a row of heights, as plain numbers, with their bounds where heights have ranges.

A row runs from the caliper up to the reservoir. A point is a trap if the row has risen to it and goes
down after it: air that gets there stays. Its depth is how far down the row goes after it before it
comes higher than it, or to its end. What has not risen to the point is no trap but the caliper's own end,
where the bleeder is.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence


@dataclass(frozen=True, slots=True)
class Hump:
    """A high point by its place in the row, the lowest point before it and the one after it."""

    peak: int
    before: int
    after: int
    rise: float
    depth: float


@dataclass(frozen=True, slots=True)
class Bounds:
    """A hump with the least and greatest depth it can have."""

    hump: Hump
    low: float
    high: float


def hump_at(row: Sequence[float], peak: int) -> Hump:
    """Say how high a point stands over what is before and after it; of equal ones the first is high."""
    here, count = row[peak], len(row)
    start = next((n for n in range(peak - 1, -1, -1) if row[n] >= here), 0)
    stop = next((n for n in range(peak + 1, count) if row[n] > here), count - 1)
    before = min(range(start, peak + 1), key=row.__getitem__)
    after = min(range(peak, stop + 1), key=row.__getitem__)
    return Hump(peak, before, after, here - row[before], here - row[after])


def humps(row: Sequence[float], least: float) -> list[Hump]:
    """Find the points that rise more than `least` over what is before and over what is after."""
    found = [hump_at(row, n) for n in range(len(row))]
    return [hump for hump in found if hump.rise > least and hump.depth > least]


def bounded(row: Sequence[float], slack: Sequence[float], least: float) -> list[Bounds]:
    """Find the humps of a row each of whose heights may be higher or lower by its slack.

    A hump found in the middle of the ranges lies at least as high as its point at its lowest does over
    the points before and after at their highest. One that shows only with its point raised and all others
    lowered, and is no part of another hump, has a least depth of nothing.
    """
    sure = humps(row, least)
    if not any(slack):
        return [Bounds(hump, hump.depth, hump.depth) for hump in sure]
    lowered = [height - give for height, give in zip(row, slack, strict=True)]
    raised = [hump_at([*lowered[:n], row[n] + slack[n], *lowered[n + 1 :]], n) for n in range(len(row))]
    of_sure: set[int] = set()
    found = []
    for hump in sure:
        same = {n for n in range(len(row)) if n == hump.peak or _same(row, n, hump.peak, least)}
        of_sure |= same
        most = max(raised[n].depth for n in same)
        found.append(Bounds(hump, _least(row, slack, hump, least), most))
    for n, hump in enumerate(raised):
        if n not in of_sure and hump.rise > least and hump.depth > least:
            found.append(Bounds(hump, 0.0, hump.depth))
    return found


def _least(row: Sequence[float], slack: Sequence[float], hump: Hump, least: float) -> float:
    lowest = row[hump.peak] - slack[hump.peak]
    rise = lowest - min(row[n] + slack[n] for n in range(hump.before, hump.peak))
    depth = lowest - min(row[n] + slack[n] for n in range(hump.peak + 1, hump.after + 1))
    return max(0.0, depth) if rise > least else 0.0


def _same(row: Sequence[float], one: int, other: int, least: float) -> bool:
    """Whether two points belong to one hump: the row does not go down between them."""
    low, high = sorted((one, other))
    return min(row[low : high + 1]) > min(row[one], row[other]) - least
