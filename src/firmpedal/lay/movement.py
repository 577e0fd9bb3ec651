"""Where things are in each state, and how far the two ends of a line move against each other."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import product
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.model.surroundings import Moving, Shift, State, Swing, UnknownMotion
from firmpedal.quantity import Mark, Missing, Step, Value
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterable

    from numpy.typing import NDArray

    from firmpedal.model.space import Position

    Array = NDArray[np.float64]

LABELS = (
    "movement of the ends against each other",
    "least distance between the ends",
    "greatest distance between the ends",
)

Setting = tuple[tuple[str, float | str], ...]  # the value of each state that matters

# A swing is looked at in this many equal parts between its ends, so that a bow shows.
PARTS = 8


@dataclass(frozen=True, slots=True)
class Carried:
    """A point with what carries it, innermost first; `measured` is the state it was measured in."""

    position: Position
    carriers: tuple[Moving, ...]
    measured: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Travel:
    """How two points move against each other over all states.

    `play` is the greatest change of the vector between them, `nearest` and `farthest` the least
    and greatest distance. All are unknown when a movement that matters is.
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
    shared = [thing for thing in one.carriers if thing in other.carriers]
    own = [_without(one, shared), _without(other, shared)]
    motions = [motion for carried in own for thing in carried.carriers for motion in thing.motions]
    used = [state for state in states if any(motion.variable == state.name for motion in motions)]
    settings = tuple(_settings(used))
    missing = _missing(own, settings, states)
    if missing or not (one.position.known and other.position.known):
        return _unknown_travel(place, (*missing, *one.position.missing, *other.position.missing))
    gaps = np.array(
        [_point(own[1], setting, states) - _point(own[0], setting, states) for setting in settings]
    )
    still = np.array(other.position.point) - np.array(one.position.point)
    distances = np.linalg.norm(gaps, axis=1)
    play = float(np.max(np.linalg.norm(gaps - still, axis=1)))
    mark = _mark(own)
    note = f"over {len(settings)} states of {', '.join(state.name for state in used) or 'nothing that moves'}"
    return Travel(
        _value(LABELS[0], play, mark, f"{place}.movement", note),
        _value(LABELS[1], float(distances.min()), mark, f"{place}.least distance", note),
        _value(LABELS[2], float(distances.max()), mark, f"{place}.greatest distance", note),
        settings,
    )


def _without(carried: Carried, shared: list[Moving]) -> Carried:
    return Carried(
        carried.position, tuple(thing for thing in carried.carriers if thing not in shared), carried.measured
    )


def _value(label: str, number: float, mark: Mark, place: str, note: str) -> Value:
    step = Step("largest |(B - A) - (B0 - A0)|" if "movement" in label else "|B - A|", (), note)
    return Value(label, Dimension.LENGTH, (number, number), max(mark, Mark.DERIVED), place, step=step)


def _unknown_travel(place: str, missing: tuple[Missing, ...]) -> Travel:
    missing = tuple(dict.fromkeys(missing))
    play, nearest, farthest = (
        Value(label, Dimension.LENGTH, None, Mark.MEASURED, f"{place}.{name}", missing=missing)
        for label, name in zip(LABELS, ("movement", "least distance", "greatest distance"), strict=True)
    )
    return Travel(play, nearest, farthest, ())


def _mark(carried: list[Carried]) -> Mark:
    marks = [value.mark for item in carried for value in item.position.coordinates]
    for item in carried:
        for thing in item.carriers:
            for motion in thing.motions:
                if isinstance(motion, Shift):
                    marks += [value.mark for value in motion.by.coordinates]
                elif isinstance(motion, Swing):
                    marks += [motion.angle.mark, motion.axis.mark]
    return max(marks)


def measured_setting(state: State) -> float | str:
    """The position of a state in which the builder measured, unless a thing says otherwise."""
    if state.values:
        return state.measured_at or state.values[0]
    return _number(state.measured_at)


def _number(text: str) -> float:
    try:
        return float(text or 0)
    except ValueError:
        return 0.0


def _settings(states: Iterable[State]) -> list[Setting]:
    choices: list[list[tuple[str, float | str]]] = []
    for state in states:
        if state.values:
            choices.append([(state.name, value) for value in state.values])
        elif state.lowest.known and state.highest.known:
            samples = np.linspace(state.lowest.low, state.highest.high, PARTS + 1)
            choices.append([(state.name, float(sample)) for sample in samples])
    return [tuple(combination) for combination in product(*choices)]


def _at(
    setting: Setting, carried: Carried, states: tuple[State, ...], variable: str
) -> tuple[float | str, float | str]:
    """Give a state's value in a setting, and the value in which this thing was measured."""
    state = next(item for item in states if item.name == variable)
    own = dict(carried.measured).get(variable)
    measured = measured_setting(state) if own is None else (own if state.values else _number(own))
    return dict(setting).get(variable, measured), measured


def _missing(
    own: list[Carried], settings: tuple[Setting, ...], states: tuple[State, ...]
) -> tuple[Missing, ...]:
    found: list[Missing] = []
    for carried in own:
        for thing in carried.carriers:
            for motion in thing.motions:
                if isinstance(motion, UnknownMotion) and _acts(motion, carried, settings, states):
                    found += motion.missing
    return tuple(found)


def _acts(
    motion: UnknownMotion, carried: Carried, settings: tuple[Setting, ...], states: tuple[State, ...]
) -> bool:
    """Say whether an unknown movement takes the thing away from where it was measured."""
    for setting in settings:
        now, measured = _at(setting, carried, states, motion.variable)
        if now != measured and (not motion.setting or motion.setting in (now, measured)):
            return True
    return False


def _point(carried: Carried, setting: Setting, states: tuple[State, ...]) -> Array:
    """Move a point from where it was measured to where it is in a setting."""
    point = np.array(carried.position.point)
    motions = [motion for thing in carried.carriers for motion in thing.motions]
    for motion in reversed(motions):
        _, measured = _at(setting, carried, states, motion.variable)
        point = _moved(point, motion, measured, back=True)
    for motion in motions:
        now, _ = _at(setting, carried, states, motion.variable)
        point = _moved(point, motion, now, back=False)
    return point


def _moved(point: Array, motion: Shift | Swing | UnknownMotion, now: float | str, *, back: bool) -> Array:
    share = (float(now == motion.setting) if motion.setting else float(now)) * (-1.0 if back else 1.0)
    if isinstance(motion, Shift):
        return point + share * np.array(motion.by.point)
    if isinstance(motion, Swing) and motion.axis.vector is not None:
        about = np.array(motion.about.point)
        return about + turned(point - about, np.array(motion.axis.vector), share * motion.angle.middle)
    return point


def turned(vector: Array, axis: Array, angle: float) -> Array:
    """Turn a vector about a unit axis by the right hand (Rodrigues)."""
    cross, along = np.cross(axis, vector), axis * np.dot(axis, vector)
    moved: Array = along + (vector - along) * np.cos(angle) + cross * np.sin(angle)
    return moved
