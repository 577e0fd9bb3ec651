"""Lines by what they are made of: tube solid, hose with an arc, plastic in dashes."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING

from firmpedal.report.sheet import Dot, Stroke
from firmpedal.report.symbols.shape import PIPE, bounds

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from firmpedal.report.placing import Box, Flat, Segment
    from firmpedal.report.sheet import Mark

LONGEST_ARC, SHORTEST_ARC, ROUND_IT = 38.0, 12.0, 7.0
SAG = 0.24  # of the length of an arc
PIECES = 10
SHARES = (0.0, -0.3, 0.3, -0.6, 0.6, -1.0, 1.0)  # of the room to either side of the middle


def tube(points: tuple[Flat, ...]) -> tuple[Mark, ...]:
    """Draw metal tube: a working line, solid."""
    return (Stroke(points, PIPE),)


def plastic(points: tuple[Flat, ...]) -> tuple[Mark, ...]:
    """Draw plastic line in dashes; the key on the drawing says so."""
    return (Stroke(points, PIPE, dashed=True),)


def hose(
    points: tuple[Flat, ...], *, bulges: float = 1.0, free: Callable[[Box], bool] = lambda _: True
) -> tuple[Mark, ...]:
    """Draw a flexible line: an arc between two dots, on its longest straight that has a free place for it.

    The arc bulges to the right (1) or to the left (-1) of an upright straight; from a level one it hangs.
    """
    places = list(_arc_places(points))
    number, start, stop = next(
        (place for place in places if free(bounds((Stroke(_arc(*place[1:], bulges), PIPE),)))), places[0]
    )
    return (
        Stroke((*points[: number + 1], start), PIPE),
        Stroke(_arc(start, stop, bulges), PIPE),
        Stroke((stop, *points[number + 1 :]), PIPE),
        Dot(start, 2.1),
        Dot(stop, 2.1),
    )


def _arc_places(points: tuple[Flat, ...]) -> Iterator[tuple[int, Flat, Flat]]:
    """Where an arc could be: the number of the straight, and the arc's two ends; the best first."""
    legs = list(pairwise(points))
    order = sorted(range(len(legs)), key=lambda n: (-round(math.dist(*legs[n]), 2), not _upright(legs[n]), n))
    for number in order:
        (x, y), stop = legs[number]
        length = math.dist(*legs[number]) or 1.0
        along = ((stop[0] - x) / length, (stop[1] - y) / length)
        chord = min(LONGEST_ARC, max(length - 2 * ROUND_IT, SHORTEST_ARC))
        loose = max((length - chord) / 2 - ROUND_IT, 0.0)
        for share in SHARES:
            first = (length - chord) / 2 + share * loose
            yield number, *((x + at * along[0], y + at * along[1]) for at in (first, first + chord))  # type: ignore[misc]


def _upright(leg: Segment) -> bool:
    return leg[0][0] == leg[1][0]


def _arc(start: Flat, stop: Flat, bulges: float) -> tuple[Flat, ...]:
    """A flat arc, to one side of an upright chord or below a level one."""
    reach = SAG * math.dist(start, stop)
    across = (bulges, 0.0) if abs(start[0] - stop[0]) < abs(start[1] - stop[1]) else (0.0, -1.0)
    found = []
    for n in range(PIECES + 1):
        share = n / PIECES
        out = reach * 4 * share * (1 - share)
        found.append(
            (
                start[0] + share * (stop[0] - start[0]) + out * across[0],
                start[1] + share * (stop[1] - start[1]) + out * across[1],
            )
        )
    return tuple(found)
