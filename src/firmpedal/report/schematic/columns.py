"""Where across the paper each item stands: sides in columns, lines as straight as they can be."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from firmpedal.model.component import SideOf

if TYPE_CHECKING:
    from firmpedal.report.schematic.layers import Rows

ROUNDS = 30
HOME = 0.02  # how much the middle of its column pulls on an item, against a neighbour's 1
ALMOST = 5.0  # points: what would look like a mistake
SHARES = {SideOf.LEFT: 0.25, SideOf.CENTRE: 0.5, SideOf.RIGHT: 0.75}

MOVES = {SideOf.LEFT: 0.0, SideOf.CENTRE: 0.5, SideOf.RIGHT: 1.0}

Reach = tuple[float, float]  # what an item takes to its left and to its right


def across(rows: Rows, order: list[list[int]], reaches: list[Reach], width: float) -> list[float]:
    """Find the place of every item, so that neighbours in a row stay clear of each other."""
    near = _near(rows)
    homes = _homes(rows, width)
    places = _settled(order, reaches, homes, near)
    if (outer := _outermost(rows, order, places)) is not None:
        homes = [outer.get(item.side, home) for item, home in zip(rows.items, homes, strict=True)]
        places = _settled(order, reaches, homes, near)
    return [round(place, 2) for place in _lined_up(rows, order, places, near)]


def closer(
    rows: Rows, order: list[list[int]], places: list[float], reaches: list[Reach], by: float
) -> list[float]:
    """Move the right side towards the left one, and the middle half as far, as far as there is room."""
    for row in order:
        for one, other in pairwise(row):
            turn = MOVES[rows.items[other].side] - MOVES[rows.items[one].side]
            if turn > 0:
                gap = places[other] - reaches[other][0] - places[one] - reaches[one][1]
                by = min(by, max(gap, 0.0) / turn)
    return [round(place - by * MOVES[item.side], 2) for place, item in zip(places, rows.items, strict=True)]


def _outermost(rows: Rows, order: list[list[int]], places: list[float]) -> dict[SideOf, float] | None:
    """Where to line up the left and the right side, if no row has two items of one side."""
    sides = [[rows.items[n].side for n in row] for row in order]
    if any(row.count(side) > 1 for row in sides for side in (SideOf.LEFT, SideOf.RIGHT)):
        return None
    lefts, rights = (
        [place for place, item in zip(places, rows.items, strict=True) if item.side is side]
        for side in (SideOf.LEFT, SideOf.RIGHT)
    )
    return {SideOf.LEFT: min(lefts), SideOf.RIGHT: max(rights)} if lefts and rights else None


def _settled(
    order: list[list[int]], reaches: list[Reach], homes: list[float], near: list[list[int]]
) -> list[float]:
    """Move every item to the middle of its neighbours, again and again."""
    places = list(homes)
    for turn in range(ROUNDS):
        for row in order if turn % 2 == 0 else reversed(order):
            wanted = []
            for number in row:
                pulls = [places[other] for other in near[number]]
                wanted.append((sum(pulls) + HOME * homes[number]) / (len(pulls) + HOME))
            for number, place in zip(row, _apart(wanted, [reaches[n] for n in row]), strict=True):
                places[number] = place
    return places


def _lined_up(rows: Rows, order: list[list[int]], places: list[float], near: list[list[int]]) -> list[float]:
    """Put what is all but straight below its only neighbour above straight below it."""
    found = list(places)
    for row in order:
        for number in row:
            above = [each for each in near[number] if rows.items[each].layer < rows.items[number].layer]
            if len(above) == 1 and abs(found[above[0]] - found[number]) < ALMOST:
                found[number] = found[above[0]]
    return found


def _homes(rows: Rows, width: float) -> list[float]:
    sides = {item.side for item in rows.items}
    both = {SideOf.LEFT, SideOf.RIGHT} <= sides
    return [width * (SHARES[item.side] if both else 0.5) for item in rows.items]


def _near(rows: Rows) -> list[list[int]]:
    """Neighbours above and below that are of the same side."""
    found: list[list[int]] = [[] for _ in rows.items]
    for upper, lower in rows.links():
        if rows.items[upper].side is rows.items[lower].side:
            found[upper].append(lower)
            found[lower].append(upper)
    return found


def _apart(wanted: list[float], reaches: list[Reach]) -> list[float]:
    """The places nearest to those wanted, by least squares, that keep every two neighbours apart.

    Measured from the room that all before it take, no place may come before its left neighbour's: pools
    of places that want to be the other way round share their mean.
    """
    taken, offsets = 0.0, []
    for index, reach in enumerate(reaches):
        taken += reaches[index - 1][1] + reach[0] if index else 0.0
        offsets.append(taken)
    pools: list[list[float]] = []  # sum, count
    for place, offset in zip(wanted, offsets, strict=True):
        pools.append([place - offset, 1])
        while len(pools) > 1 and pools[-2][0] / pools[-2][1] > pools[-1][0] / pools[-1][1]:
            total, count = pools.pop()
            pools[-1] = [pools[-1][0] + total, pools[-1][1] + count]
    flat = [total / count for total, count in pools for _ in range(int(count))]
    return [place + offset for place, offset in zip(flat, offsets, strict=True)]
