"""Where things are in each state, and how far the two ends of a line move against each other."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from firmpedal.hashing import HashKept, hash_kept
from firmpedal.lay.moves import movers, moves_of, point_from, take_along
from firmpedal.lay.spread import Bounds, spread
from firmpedal.lay.states import Setting, measured_in, missing_of, settings_of
from firmpedal.model.surroundings import Moving, State, Swing, UnknownMotion
from firmpedal.quantity import Mark, Missing, Step, Value
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from numpy.typing import NDArray

    from firmpedal.model.space import Position
    from firmpedal.model.surroundings import Motion

    Array = NDArray[np.float64]
    Positions = Sequence[Mapping[str, float | str]]  # of every state, in each of several settings

# What is found of two ends, and the name to ask for it.
PLACES = {
    "movement of the ends against each other": "movement",
    "least distance between the ends": "least distance",
    "greatest distance between the ends": "greatest distance",
}


@hash_kept
@dataclass(frozen=True, slots=True)
class Carried(HashKept):
    """A point with what carries it, innermost first; `measured` is the state it was measured in."""

    position: Position
    carriers: tuple[Moving, ...]
    measured: tuple[tuple[str, str], ...] = ()

    @property
    def motions(self) -> tuple[Motion, ...]:
        return tuple(motion for thing in self.carriers for motion in thing.motions)


@dataclass(frozen=True, slots=True)
class Travel:
    """How two points move against each other over all states.

    `play` is how far the one swings as seen from the other, from end to end; `nearest` and `farthest`
    are the least and greatest distance. What hangs on a movement that is unknown is unknown.
    """

    play: Value
    nearest: Value
    farthest: Value
    settings: tuple[Setting, ...]


def carriers_of(name: str, moving: tuple[Moving, ...]) -> tuple[Moving, ...]:
    """Follow a chain of carriers from a thing outwards; a circle ends where it closes."""
    chain: list[Moving] = []
    while name:
        found = next((thing for thing in moving if thing.name == name), None)
        if found is None or found in chain:
            break
        chain.append(found)
        name = found.carried_by
    return tuple(chain)


@lru_cache(maxsize=4096)
def travel(one: Carried, other: Carried, states: tuple[State, ...], place: str) -> Travel:
    """Find how two points move against each other; what carries both does not count."""
    pair = _pair(one, other, states)
    missing = tuple(dict.fromkeys((*pair.missing, *one.position.missing, *other.position.missing)))
    inputs = _inputs(pair.one) + _inputs(pair.other)
    bounds = None if missing else spread(lambda flat: _distances(pair, flat), inputs)
    play, nearest, farthest = (
        _figure(pair, label, found, missing, place)
        for label, found in zip(PLACES, bounds or (None, None, None), strict=True)
    )
    return Travel(play, nearest, farthest, pair.settings)


def _figure(
    pair: _Pair, label: str, bounds: Bounds | None, missing: tuple[Missing, ...], place: str
) -> Value:
    where = f"{place}.{PLACES[label]}"
    if bounds is None:
        return Value(label, Dimension.LENGTH, None, Mark.MEASURED, where, missing=missing)
    names = ", ".join(state.name for state in pair.states) or "nothing that moves"
    step = Step("distance over the states", bounds.inputs, f"over {len(pair.settings)} states of {names}")
    return Value(label, Dimension.LENGTH, bounds.span, pair.mark, where, step=step)


@lru_cache(maxsize=4096)
def longest_path(one: Carried, other: Carried, via: tuple[Position, ...], states: tuple[State, ...]) -> Value:
    """Find the longest way between two points over all states, by points that stay where they are.

    A way that was declared point by point is taken as the builder measured it where a movement is
    unknown; whoever asks `travel` hears of that.
    """
    pair = _pair(one, other, states)
    points = (one.position, *via, other.position)
    missing = tuple(dict.fromkeys(item for point in points for item in point.missing))
    missing += () if via else pair.missing
    label, between = "longest path in any state", [value for point in via for value in point.coordinates]
    mark = max(pair.mark, *(value.mark for value in between)) if between else pair.mark
    if missing:
        return Value(label, Dimension.LENGTH, None, mark, missing=missing)
    inputs = _inputs(pair.one) + _inputs(pair.other) + between
    (bounds,) = spread(lambda flat: _longest(pair, flat), inputs) or ()
    note = f"longest of {len(pair.settings)} states"
    step = Step("sum of the distances between the points", bounds.inputs, note)
    return Value(label, Dimension.LENGTH, bounds.span, mark, step=step)


class _Pair(NamedTuple):
    """Two points without what carries both, and the states that move them against each other."""

    one: Carried
    other: Carried
    states: tuple[State, ...]
    settings: tuple[Setting, ...]
    missing: tuple[Missing, ...]

    @property
    def mark(self) -> Mark:
        both = (self.one, self.other)
        values = [
            value for carried in both for value in carried.position.coordinates + movers(carried.motions)
        ]
        axes = [m.axis.mark for carried in both for m in carried.motions if isinstance(m, Swing)]
        return max([Mark.DERIVED, *(value.mark for value in values), *axes])


def _pair(one: Carried, other: Carried, states: tuple[State, ...]) -> _Pair:
    shared = [thing for thing in one.carriers if thing in other.carriers]
    own = [
        Carried(item.position, tuple(thing for thing in item.carriers if thing not in shared), item.measured)
        for item in (one, other)
    ]
    names = {motion.variable for item in own for motion in item.motions}
    used = tuple(state for state in states if state.name in names)
    settings = settings_of(used)
    unknown = [item for carried in own for item in unmeasured(carried, used, settings)]
    return _Pair(own[0], own[1], used, settings, (*missing_of(used), *unknown))


def unmeasured(
    carried: Carried, states: tuple[State, ...], settings: tuple[Setting, ...]
) -> Iterator[Missing]:
    """Name the unknown movements that take a thing away from where it was measured."""
    known = {state.name: state for state in states}
    for motion in carried.motions:
        if not isinstance(motion, UnknownMotion):
            continue
        measured = measured_in(known[motion.variable], carried.measured)
        positions = {dict(setting).get(motion.variable, measured) for setting in settings}
        if any(now != measured and motion.setting in ("", now, measured) for now in positions):
            yield from motion.missing


def _inputs(carried: Carried) -> list[Value]:
    return [*carried.position.coordinates, *movers(carried.motions)]


def _places(pair: _Pair, numbers: Iterator[float]) -> tuple[Array, Array]:
    """Where both points are in every setting, from the numbers that `_inputs` lists."""
    return _places_of(pair.one, pair, numbers), _places_of(pair.other, pair, numbers)


def _places_of(carried: Carried, pair: _Pair, numbers: Iterator[float]) -> Array:
    """Move a point from where it was measured to where it is in each setting."""
    start = point_from(numbers)[None, None]
    moves = moves_of(carried.motions, numbers)
    at_rest = {state.name: measured_in(state, carried.measured) for state in pair.states}
    places = take_along(moves, start, [at_rest], [at_rest | dict(setting) for setting in pair.settings])
    return np.broadcast_to(places[:, 0], (len(pair.settings), 3))


def _distances(pair: _Pair, flat: tuple[float, ...]) -> tuple[float, ...]:
    ones, others = _places(pair, iter(flat))
    gaps = others - ones
    lengths = np.linalg.norm(gaps, axis=1)
    swing = max(float(np.linalg.norm(gaps - gap, axis=1).max()) for gap in gaps)
    return swing, float(lengths.min()), float(lengths.max())


def _longest(pair: _Pair, flat: tuple[float, ...]) -> tuple[float, ...]:
    numbers = iter(flat)
    ones, others = _places(pair, numbers)
    between = np.array(list(numbers)).reshape(-1, 3)
    fixed = [np.broadcast_to(point, ones.shape) for point in between]
    legs = [np.linalg.norm(b - a, axis=1) for a, b in pairwise([ones, *fixed, others])]
    return (float(np.sum(legs, axis=0).max()),)
