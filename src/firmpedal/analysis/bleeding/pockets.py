"""How much air each high point can hold before it spills over, in every attitude."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from firmpedal.analysis.heights import angles_of, row_at, stances_of, with_cap
from firmpedal.analysis.heights_profile import hump_at
from firmpedal.formulas.bubbles import share_of_volume
from firmpedal.quantity import Mark, Missing, Step, Value, apply, total
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from firmpedal.analysis.heights import Heights, Stance, Trap
    from firmpedal.analysis.heights_ways import Spot, Way
    from firmpedal.model.aircraft import Aircraft

ROUNDING = 1e-9  # m; two points at one height may come out a hair apart
SUM = "length above the level where air spills over, against the whole length"


@dataclass(frozen=True, slots=True)
class Pocket:
    """The air that lines can hold at one high point in one attitude; more can stay inside the parts named."""

    near: str
    calipers: tuple[str, ...]
    top: str
    attitude: str
    depth: Value
    air: Value
    inside: tuple[str, ...]


def pockets_of(aircraft: Aircraft, heights: Heights, volumes: Mapping[str, Value]) -> tuple[Pocket, ...]:
    """Every high point in every attitude in which it is one."""
    stances = {stance.name: stance for stance in stances_of(aircraft)}
    return tuple(
        _pocket(trap, way, stances[name], depth, volumes)
        for trap in heights.traps
        for way in heights.ways
        if way.top == trap.top and way.caliper == trap.calipers[0] and trap.spot in way.spots
        for name, depth in trap.depths
    )


def _pocket(trap: Trap, way: Way, stance: Stance, depth: Value, volumes: Mapping[str, Value]) -> Pocket:
    near, shares, inside = trap.spot.near, dict[str, tuple[float, float]](), dict[str, None]()
    looks = [_look(with_cap(way), near, angle) for angle in angles_of(stance.nose_up)]
    lines = dict.fromkeys(line for look, _ in looks for line in look)
    for line in lines:
        spans = [look.get(line, (0.0, 0.0)) for look, _ in looks]
        shares[line] = min(low for low, _ in spans), max(high for _, high in spans)
    for _, parts in looks:
        inside.update(dict.fromkeys(parts))
    if depth.low <= 0:  # it may be no high point at all
        shares = {line: (0.0, high) for line, (_, high) in shares.items()}
    air = _air(trap.spot, stance.name, shares, volumes, way)
    return Pocket(near, trap.calipers, way.top, stance.name, depth, air, tuple(inside))


def _air(
    spot: Spot,
    attitude: str,
    shares: Mapping[str, tuple[float, float]],
    volumes: Mapping[str, Value],
    way: Way,
) -> Value:
    label = f"air that lines can hold at {spot.near} when {attitude}"
    place = f"{spot.place}.air at {spot.near} when {attitude}"
    unseen = [each for each in way.spots if each.line in shares and each.share is None]
    if unseen or not shares:
        missing = way.missing or (Missing(spot.place, f"the corners of the lines at {spot.near}"),)
        return Value(label, Dimension.VOLUME, None, Mark.MEASURED, place, missing=missing)
    parts = [
        apply(
            share_of_volume,
            f"air in {line} at {spot.near}",
            place=f"{place}.{line}",
            volume=volumes[line],
            share=_share(line, span, way),
        )
        for line, span in shares.items()
    ]
    return total(label, parts, place)


def _share(line: str, span: tuple[float, float], way: Way) -> Value:
    spots = [spot for spot in way.spots if spot.line == line]
    mark = max((value.mark for spot in spots for value in (spot.aft, spot.up)), default=Mark.DERIVED)
    label = f"share of {line} that can hold air"
    return Value(label, Dimension.NUMBER, span, max(mark, Mark.DERIVED), step=Step(SUM, ()))


Look = tuple[dict[str, tuple[float, float]], list[str]]


def _look(spots: tuple[Spot, ...], near: str, angle: float) -> Look:
    """At one angle: the least and most of each line that can hold air there, and the parts passed."""
    row, slack = row_at(spots, angle)
    peak = max((n for n, spot in enumerate(spots) if spot.near == near), key=row.__getitem__)
    hump = hump_at(row, peak)
    spill = row[peak] - min(hump.rise, hump.depth)
    give = slack[peak] + max(slack[hump.before], slack[hump.after])
    least = dict(_above(spots, row, peak, min(spill + give, row[peak])))
    most = dict(_above(spots, row, peak, spill - give))
    return {line: (least.get(line, 0.0), share) for line, share in most.items()}, list(
        dict.fromkeys(_passed(spots, row, peak, spill))
    )


def _above(
    spots: Sequence[Spot], row: Sequence[float], peak: int, level: float
) -> Iterator[tuple[str, float]]:
    """How much of each line, as a share of its length, lies above a level in one piece with the peak."""
    found: dict[str, float] = {}
    for one, other in _steps(row, peak, level):
        line = spots[one].line
        start, stop = spots[one].share, spots[other].share
        if line and line == spots[other].line and start is not None and stop is not None:
            part = abs(stop - start) * _part_above(row[one], row[other], level)
            found[line] = min(1.0, found.get(line, 0.0) + part)
    yield from found.items()


def _passed(spots: Sequence[Spot], row: Sequence[float], peak: int, level: float) -> Iterator[str]:
    """The parts with two ports that the piece above the level goes through."""
    for one, other in _steps(row, peak, level):
        first, last = (spots[n].near.rpartition(".")[0] for n in (one, other))
        if spots[one].line != spots[other].line and first and first == last:
            yield first


def _steps(row: Sequence[float], peak: int, level: float) -> Iterator[tuple[int, int]]:
    """The steps from the peak either way, in the order of the row, until one ends at the level or below."""
    last = len(row) - 1
    level += ROUNDING
    start = next((n for n in range(peak - 1, -1, -1) if row[n] <= level), 0)
    stop = next((n for n in range(peak + 1, last + 1) if row[n] <= level), last)
    yield from pairwise(range(start, stop + 1))


def _part_above(one: float, other: float, level: float) -> float:
    """The part of a straight between two heights that lies above a level."""
    low, high = sorted((one, other))
    if level <= low:
        return 1.0
    return (high - level) / (high - low) if level < high else 0.0
