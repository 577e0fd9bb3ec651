"""Where to clamp a tube: stations along its developed length.

The fittings at both ends of a line support it. Clamps sit on straights only, clear of bends and
fittings. A straight longer than the spacing has one near each of its ends and even ones between.
Elsewhere there are as few as keep every unsupported length within the spacing: near the ends of
the line where that costs no clamp, because lines fail there, and otherwise evenly.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import accumulate, chain, pairwise, zip_longest
from math import ceil

# Lengths that differ by less than this share of the spacing are equal: rounding.
SLACK = 1e-9
# Halvings of the spacing in the search for the evenest places; fifty exhaust the digits of a float.
HALVINGS = 50


@dataclass(frozen=True, slots=True)
class Place:
    """The stretch of one straight on which the middle of a clamp may lie."""

    straight: int
    low: float
    high: float

    def holds(self, station: float, slack: float) -> bool:
        return self.low - slack <= station <= self.high + slack


@dataclass(frozen=True, slots=True)
class Gap:
    """An unsupported length between two neighbouring supports."""

    start: float
    stop: float

    @property
    def length(self) -> float:
        return self.stop - self.start


def places(
    straights: tuple[float, ...],
    arcs: tuple[float, ...],
    end_margin: float,
    clamp_width: float,
    fitting_length: float = 0.0,
) -> tuple[Place, ...]:
    """Give where the middle of a clamp may lie, straight by straight; a short one has no place.

    Args:
        straights: Lengths between tangent points, one more than arcs.
        arcs: Lengths of the bends.
        end_margin: Clear length between the edge of a clamp and either end of its straight.
        clamp_width: Along the tube.
        fitting_length: What nut and sleeve cover at both ends of the line.

    Raises:
        ValueError: The lists do not match, a length is negative, or the clamp has no width.
    """
    if len(straights) != len(arcs) + 1:
        raise ValueError(f"{len(straights)} straights for {len(arcs)} arcs")
    if min(*straights, *arcs, end_margin, fitting_length) < 0 or not clamp_width > 0:
        raise ValueError("a length is negative, or the clamp has no width")
    ends = list(pairwise(_tangents(straights, arcs)))[::2]
    clear, last = end_margin + clamp_width / 2, len(straights) - 1
    found = [
        _place(
            n,
            start + clear + (fitting_length if n == 0 else 0.0),
            stop - clear - (fitting_length if n == last else 0.0),
        )
        for n, (start, stop) in enumerate(ends)
    ]
    return tuple(place for place in found if place is not None)


def _place(straight: int, low: float, high: float) -> Place | None:
    if abs(high - low) <= SLACK * high:  # just long enough, whichever way it rounds
        low = high = (low + high) / 2
    return Place(straight, low, high) if low <= high else None


def propose(  # what `places` takes, and the spacing
    straights: tuple[float, ...],
    arcs: tuple[float, ...],
    spacing: float,
    end_margin: float,
    clamp_width: float,
    fitting_length: float = 0.0,
) -> tuple[float, ...]:
    """Propose clamps for a line.

    Where a bend or a run of bends leaves no place within the spacing, both sides of it are clamped
    and the gap stays: ask `too_long`.

    Args:
        straights: Lengths between tangent points, one more than arcs.
        arcs: Lengths of the bends.
        spacing: Greatest unsupported length.
        end_margin: Clear length between the edge of a clamp and either end of its straight.
        clamp_width: Along the tube.
        fitting_length: What nut and sleeve cover at both ends of the line.

    Returns:
        Stations of the clamps in order, none for a line that is within the spacing.

    Raises:
        ValueError: The lists do not match, a length is negative, or spacing or width are not positive.
    """
    if not spacing > 0:
        raise ValueError("the spacing of clamps must be positive")
    allowed = places(straights, arcs, end_margin, clamp_width, fitting_length=fitting_length)
    total, limit = _tangents(straights, arcs)[-1], spacing * (1 + SLACK)
    if total <= limit or not allowed:
        return ()
    needed = {*_on_long_straights(straights, allowed, limit), *_beside_wide_gaps(allowed, total, spacing)}
    supports = (0.0, *sorted(needed), total)
    last = len(straights) - 1
    between = [_between(start, stop, allowed, limit, last) for start, stop in pairwise(supports)]
    return tuple(sorted(needed.union(*between)))


def gaps(clamps: tuple[float, ...], total: float) -> tuple[Gap, ...]:
    """Give the unsupported lengths of a line that is held by these clamps and its two ends.

    Raises:
        ValueError: A clamp is not on the line.
    """
    if any(not 0 <= clamp <= total * (1 + SLACK) for clamp in clamps):
        raise ValueError("a clamp is not on the line")
    return tuple(Gap(start, stop) for start, stop in pairwise((0.0, *sorted(clamps), total)))


def too_long(clamps: tuple[float, ...], total: float, spacing: float) -> tuple[Gap, ...]:
    """Give the unsupported lengths that are longer than the spacing."""
    return tuple(gap for gap in gaps(clamps, total) if settled(gap.length, spacing) > spacing)


def settled(length: float, spacing: float) -> float:
    """Give a length as the spacing where they differ by rounding alone; placing takes up to 2 slacks."""
    return spacing if abs(length - spacing) <= 4 * SLACK * spacing else length


def misplaced(clamps: tuple[float, ...], allowed: tuple[Place, ...]) -> tuple[float, ...]:
    """Give the clamps that sit on a bend or a fitting, or too near to one."""
    return tuple(clamp for clamp in clamps if not any(place.holds(clamp, SLACK * clamp) for place in allowed))


def _tangents(straights: tuple[float, ...], arcs: tuple[float, ...]) -> tuple[float, ...]:
    """Give the stations where straights and bends begin and end."""
    pieces = chain.from_iterable(zip_longest(straights, arcs))
    return (0.0, *accumulate(piece for piece in pieces if piece is not None))


def _on_long_straights(straights: tuple[float, ...], allowed: tuple[Place, ...], limit: float) -> list[float]:
    stations: list[float] = []
    for place in allowed:
        if straights[place.straight] > limit:
            width = place.high - place.low
            steps = max(1, ceil(width / limit))
            stations += [place.low + n * width / steps for n in range(steps)] + [place.high]
    return stations


def _beside_wide_gaps(allowed: tuple[Place, ...], total: float, spacing: float) -> list[float]:
    """Give the edges of everything that cannot be clamped for longer than the spacing.

    What is as long as the spacing counts: it needs a clamp at both edges too.
    """
    edges = (0.0, *chain.from_iterable((place.low, place.high) for place in allowed), total)
    gaps_between = zip(edges[::2], edges[1::2], strict=True)
    wide = chain.from_iterable(pair for pair in gaps_between if pair[1] - pair[0] > spacing * (1 - SLACK))
    return [edge for edge in wide if 0 < edge < total]


def _between(
    start: float, stop: float, allowed: tuple[Place, ...], limit: float, last: int
) -> tuple[float, ...]:
    """Place the fewest clamps between two supports, beside the line's ends if that costs none."""
    # A support before every place is the start of the line, one after every place is its end.
    ends = [place.low for place in allowed[:1] if place.straight == 0 and start < place.low < stop]
    ends += [place.high for place in allowed[-1:] if place.straight == last and start < place.high < stop]
    inner = (start, *ends, stop)
    count = len(ends) + sum(len(_furthest(one, other, allowed, limit)) for one, other in pairwise(inner))
    if count > len(_furthest(start, stop, allowed, limit)):
        return _evenest(start, stop, allowed, limit)
    return (*ends, *chain.from_iterable(_evenest(*pair, allowed, limit) for pair in pairwise(inner)))


def _furthest(start: float, stop: float, allowed: tuple[Place, ...], limit: float) -> tuple[float, ...]:
    """Clamp as far ahead as the limit allows, again and again: no other choice takes fewer clamps."""
    stations: list[float] = []
    here = start
    while stop - here > limit:
        ahead = max(
            (min(place.high, here + limit) for place in allowed if place.low <= here + limit), default=here
        )
        if ahead <= here:
            break  # nothing within the limit can be clamped
        stations.append(ahead)
        here = ahead
    return tuple(stations)


def _earliest(start: float, stop: float, allowed: tuple[Place, ...], limit: float) -> tuple[float, ...]:
    """Do the same from the other end: every clamp comes as early as the limit allows."""
    turned = tuple(Place(place.straight, -place.high, -place.low) for place in allowed[::-1])
    return tuple(-station for station in reversed(_furthest(-stop, -start, turned, limit)))


def _evenest(start: float, stop: float, allowed: tuple[Place, ...], limit: float) -> tuple[float, ...]:
    """Place the fewest clamps between two supports so that the longest gap is as short as can be."""
    count = len(_furthest(start, stop, allowed, limit))
    if count == 0:
        return ()
    low, high = (stop - start) / (count + 1) * (1 - SLACK), limit
    for _ in range(HALVINGS):
        trial = (low + high) / 2
        low, high = (low, trial) if _holds(start, stop, allowed, trial, count) else (trial, high)
    high *= 1 + SLACK  # the search ended where rounding decides, and the way back rounds otherwise
    late, early = _furthest(start, stop, allowed, high), _earliest(start, stop, allowed, high)
    middle = tuple((one + other) / 2 for one, other in zip(late, early, strict=False))
    # The mean of two good answers is good unless a bend lies between them.
    return late if len(early) != len(late) or misplaced(middle, allowed) else middle


def _holds(start: float, stop: float, allowed: tuple[Place, ...], limit: float, count: int) -> bool:
    stations = _furthest(start, stop, allowed, limit)
    return len(stations) <= count and stop - (start, *stations)[-1] <= limit
