"""Where air stays in the lines in each ground attitude, and which lines stand above their reservoir."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import ceil, cos, radians, sin
from typing import TYPE_CHECKING

from firmpedal.analysis.heights_profile import Bounds, bounded
from firmpedal.analysis.heights_ways import Spot, Way, ways
from firmpedal.formulas.attitude import height, height_above
from firmpedal.quantity import Mark, Value, apply, exactly
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.circuit import Graph
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.quantity import Missing

# A dip that is less is not looked at: a tape on either end of it may be out by an eighth, the fluid's way
# inside the fittings is known to half an inch, and hose and clamps give as much.
LEAST_DEPTH = from_unit(1, "in")
# A ranged attitude is looked at in steps of this angle: between two of them a height changes by less than a
# hundred-thousandth of the aircraft's length from what is seen.
STEP = radians(0.5)


@dataclass(frozen=True, slots=True)
class Stance:
    """One ground attitude; without any declared, as the aircraft was measured."""

    name: str
    nose_up: Value


@dataclass(frozen=True, slots=True)
class Trap:
    """A high point from which air cannot rise on to the top, with its depth in each attitude that has it."""

    spot: Spot
    top: str
    calipers: tuple[str, ...]
    depths: tuple[tuple[str, Value], ...]

    @property
    def deepest(self) -> Value:
        return max((value for _, value in self.depths), key=lambda value: (value.low, value.high))


@dataclass(frozen=True, slots=True)
class Column:
    """How far the highest point of a line stands above its reservoir's fill cap; unknown with the cap."""

    line: str
    place: str
    top: str
    caliper: str
    attitude: str
    above: Value


@dataclass(frozen=True, slots=True)
class Heights:
    """All that heights tell: the attitudes and ways looked at, the traps, the columns, angles not known."""

    attitudes: tuple[str, ...]
    ways: tuple[Way, ...]
    traps: tuple[Trap, ...]
    columns: tuple[Column, ...]
    missing: tuple[Missing, ...]

    def without(self, trap: Trap) -> tuple[str, ...]:
        """The attitudes in which a high point is none."""
        kept = {name for name, depth in trap.depths if depth.high > LEAST_DEPTH}
        return tuple(name for name in self.attitudes if name not in kept)


def heights(aircraft: Aircraft, laid: tuple[LaidLine, ...], graph: Graph) -> Heights:
    """Look along every way from a caliper up to its reservoir, in every attitude."""
    found = ways(aircraft, laid, graph)
    stances = stances_of(aircraft)
    known = [stance for stance in stances if stance.nose_up.known]
    traps: dict[str, Trap] = {}
    for way in found:
        for stance in known:
            for trap in _traps(way, stance):
                key = trap.spot.near
                traps[key] = _merged(traps[key], trap) if key in traps else trap
    places = {line.name: line.place for line in laid}
    columns = [column for way in found for stance in known for column in _columns(way, stance, places)]
    missing = [item for stance in stances for item in stance.nose_up.missing]
    return Heights(
        tuple(stance.name for stance in known),
        found,
        tuple(traps.values()),
        tuple(columns),
        tuple(missing) if found else (),
    )


def stances_of(aircraft: Aircraft) -> list[Stance]:
    """The attitudes to look in; as it was measured where none is declared."""
    if aircraft.attitudes:
        return [Stance(each.name, each.nose_up) for each in aircraft.attitudes]
    return [Stance("level", exactly("nose up, as measured", Dimension.ANGLE, 0.0, Mark.MEASURED))]


def angles_of(nose_up: Value) -> list[float]:
    """The angles at which an attitude is looked at, through its range."""
    low, high = nose_up.low, nose_up.high
    steps = ceil((high - low) / STEP)
    return [low + (high - low) * n / steps for n in range(steps + 1)] if steps else [low]


def row_at(spots: tuple[Spot, ...], angle: float) -> tuple[list[float], list[float]]:
    """The heights of some spots, and by how much each can be off because of where the spot can be."""
    up, aft = cos(angle), sin(angle)
    row = [spot.up.middle * up - spot.aft.middle * aft for spot in spots]
    slack = [
        ((spot.up.high - spot.up.low) * abs(up) + (spot.aft.high - spot.aft.low) * abs(aft)) / 2
        for spot in spots
    ]
    return row, slack


def with_cap(way: Way) -> tuple[Spot, ...]:
    """The points of a way with the fill cap above them, where it is known."""
    if way.cap is None or not way.cap.known:
        return way.spots
    return (*way.spots, Spot(way.cap.aft, way.cap.up, f"the fill cap of {way.top}", "", way.cap.place))


def _traps(way: Way, stance: Stance) -> Iterator[Trap]:
    spots, angles = with_cap(way), angles_of(stance.nose_up)
    looks = [_by_place(spots, bounded(*row_at(spots, angle), LEAST_DEPTH)) for angle in angles]
    for near in dict.fromkeys(key for look in looks for key in look):
        here = [look[near] for look in looks if near in look]
        deepest = max(here, key=lambda bounds: bounds.high)
        low = min(bounds.low for bounds in here) if len(here) == len(looks) else 0.0
        spot, lowest = spots[deepest.hump.peak], spots[deepest.hump.after]
        label = f"depth of the air trap at {near} when {stance.name}"
        depth = difference(label, spot, lowest, stance, (low, deepest.high))
        yield Trap(spot, way.top, (way.caliper,), ((stance.name, depth),))


def _by_place(spots: tuple[Spot, ...], found: list[Bounds]) -> dict[str, Bounds]:
    """The deepest hump at each place that has a name."""
    kept: dict[str, Bounds] = {}
    for bounds in sorted(found, key=lambda each: (each.low, each.high)):
        kept[spots[bounds.hump.peak].near] = bounds
    return kept


def difference(label: str, upper: Spot, lower: Spot, stance: Stance, span: tuple[float, float]) -> Value:
    """Subtract two heights; the bounds are those found, because both stand in the same attitude."""
    both = {name: _height(spot, stance) for name, spot in (("upper", upper), ("lower", lower))}
    value = apply(height_above, label, place=f"{upper.place}.{label}", **both)
    return replace(value, span=span)


def _height(spot: Spot, stance: Stance) -> Value:
    label = f"height of {spot.near} when {stance.name}"
    return apply(
        height,
        label,
        place=f"{spot.place}.{label}",
        aft=spot.aft,
        up=spot.up,
        nose_up_angle=stance.nose_up,
    )


def _merged(one: Trap, other: Trap) -> Trap:
    """Put together what two ways or attitudes tell of one high point."""
    depths = dict(one.depths)
    for name, value in other.depths:
        before = depths.get(name)
        depths[name] = value if before is None or value.high > before.high else before
    calipers = tuple(dict.fromkeys((*one.calipers, *other.calipers)))
    return replace(one, calipers=calipers, depths=tuple(depths.items()))


def _columns(way: Way, stance: Stance, places: dict[str, str]) -> Iterator[Column]:
    if way.cap is None or way.closed_at or not way.spots:
        return
    angles = angles_of(stance.nose_up)
    cap = Spot(way.cap.aft, way.cap.up, f"the fill cap of {way.top}", "", way.cap.place)
    foot = cap if way.cap.known else way.spots[-1]
    for name in dict.fromkeys(spot.line for spot in way.spots):
        spots = tuple(spot for spot in way.spots if spot.line == name)
        looks = [_above(spots, foot, angle) for angle in angles]
        span = min(low for low, _, _ in looks), max(high for _, high, _ in looks)
        if not way.cap.known and span[1] <= LEAST_DEPTH:
            continue  # it does not come near any cap
        top = max(looks, key=lambda look: look[1])[2]
        above = _over_cap(top, cap, stance, span)
        yield Column(name, places[name], way.top, way.caliper, stance.name, above)


def _above(spots: tuple[Spot, ...], foot: Spot, angle: float) -> tuple[float, float, Spot]:
    """How far the highest of some spots stands over one, at least and at most, and which it is."""
    row, slack = row_at((*spots, foot), angle)
    base, give = row.pop(), slack.pop()
    n = max(range(len(spots)), key=lambda each: row[each] + slack[each])
    low = max(height - off for height, off in zip(row, slack, strict=True))
    return low - base - give, row[n] + slack[n] - base + give, spots[n]


def _over_cap(top: Spot, cap: Spot, stance: Stance, span: tuple[float, float]) -> Value:
    label = f"height of {top.near} above the fill cap when {stance.name}"
    if cap.aft.known and cap.up.known:
        return difference(label, top, cap, stance, span)
    upper, lower = _height(top, stance), _height(cap, stance)
    return apply(height_above, label, place=f"{top.place}.{label}", upper=upper, lower=lower)
