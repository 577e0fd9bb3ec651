"""What stands left of what in each row: by side first, then so that few lines cross."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.flow_sides import RANK

if TYPE_CHECKING:
    from firmpedal.report.schematic.layers import Rows

    Order = list[list[int]]

SWEEPS = 6


def ordered(rows: Rows) -> list[list[int]]:
    """The items of each row from left to right: the best of several sweeps down and up."""
    start: Order = [[] for _ in range(rows.count)]
    for number, item in enumerate(rows.items):
        start[item.layer].append(number)
    order = [sorted(row, key=lambda n: _first_key(rows, n)) for row in start]
    best = order
    for sweep in range(SWEEPS):
        order = _swept(rows, order, down=sweep % 2 == 0)
        if crossings(rows, order) < crossings(rows, best):
            best = order
    return best


def _first_key(rows: Rows, number: int) -> tuple[int, float, int]:
    item = rows.items[number]
    return (RANK[item.side], round(item.right, 6), number)


def _swept(rows: Rows, order: Order, *, down: bool) -> Order:
    """Move each item to the middle of its neighbours in the row before; sides stay apart."""
    place = {number: n / (len(row) or 1) for row in order for n, number in enumerate(row)}
    found = [list(row) for row in order]
    for layer in range(len(order)) if down else reversed(range(len(order))):
        keys = {}
        for index, number in enumerate(found[layer]):
            near = [place[other] for other in neighbours(rows, number, above=down)]
            middle = sum(near) / len(near) if near else place[number]
            keys[number] = (RANK[rows.items[number].side], round(middle, 9), index)
        found[layer].sort(key=keys.__getitem__)
        place |= {number: n / len(found[layer]) for n, number in enumerate(found[layer])}
    return found


def neighbours(rows: Rows, number: int, *, above: bool) -> list[int]:
    """What an item is joined to in the row above or below."""
    if above:
        return [upper for upper, lower in rows.links() if lower == number]
    return [lower for upper, lower in rows.links() if upper == number]


def crossings(rows: Rows, order: Order) -> int:
    """How many pairs of lines cross between rows."""
    place = {number: n for row in order for n, number in enumerate(row)}
    count = 0
    links = rows.links()
    for n, (a, b) in enumerate(links):
        for c, d in links[n + 1 :]:
            if rows.items[a].layer == rows.items[c].layer:
                count += (place[a] - place[c]) * (place[b] - place[d]) < 0
    return count
