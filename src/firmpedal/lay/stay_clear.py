"""How near each line comes to what it has to stay clear of, over all states of movement.

Both may move. The line is looked at from the other thing, so that this keeps its shape: the points of a
line between its two ends follow the end that they are nearer to, in the share of their distance along it.
A hose lies along its declared path here; how it bows between is another question.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise
from math import dist, hypot
from typing import TYPE_CHECKING, assert_never

import numpy as np

from firmpedal.lay import near
from firmpedal.lay.crossing import path_of
from firmpedal.lay.movement import Carried, moved, movers, unmeasured
from firmpedal.lay.solids import solid_of
from firmpedal.lay.states import measured_in, missing_of, settings_of
from firmpedal.model.shapes import Ball, Bar, Box, Disc, UnknownShape
from firmpedal.model.stock import LineKind
from firmpedal.model.surroundings import Swing
from firmpedal.quantity import Mark, Step, Value
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from numpy.typing import NDArray

    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.states import Setting
    from firmpedal.model.space import Point, Position
    from firmpedal.model.surroundings import KeepClear, Motion, Moving, State
    from firmpedal.quantity import Missing

    Array = NDArray[np.float64]
    KnownBody = Box | Ball | Bar | Disc


# No wheel, pedal or control of a light aircraft moves further: our estimate. It only decides whether an
# unmeasured movement is asked for, so that nobody has to jack the aircraft up for a line in the cabin.
FAR = from_unit(12, "in")
FELT = from_unit(0.001, "in")  # of two states, one that is nearer by less is not nearer


CLOSE = 0.0005  # metres: the line is never moved on by less between two places of a range
ARC = 1.02  # a way along an arc of a few degrees is at most so much longer than straight


@dataclass(frozen=True, slots=True)
class Gap:
    """The least distance between the surfaces of a line and a thing, 0 where they meet.

    `point` is where on the line that is, as it was measured; `setting` is the state in which it happens,
    empty where nothing moves them against each other. Where a movement is not known, `as_measured` is the
    distance at which they stood: the least one is no more than that.
    """

    line: str
    thing: KeepClear
    distance: Value
    point: Point | None = None
    setting: Setting = ()
    as_measured: Value | None = None


@lru_cache(maxsize=4096)
def least_gap(
    line: LaidLine,
    ends: tuple[Carried, Carried],
    thing: KeepClear,
    carriers: tuple[Moving, ...],
    states: tuple[State, ...],
) -> Gap:
    """Find how near a line comes to a thing that `carriers` carry, innermost first."""
    body, course = thing.where, path_of(line)
    missing = [item for point in line.points for item in point.missing]
    if isinstance(body, UnknownShape) or course is None or missing:
        missing += body.missing if isinstance(body, UnknownShape) else ()
        return Gap(line.name, thing, _unknown(line, thing, tuple(dict.fromkeys(missing))))
    own = _own((*ends, Carried(_middle(body), carriers, thing.measured_in)))
    names = {motion.variable for carried in own for motion in carried.motions}
    used = tuple(state for state in states if state.name in names)
    settings = settings_of(used)
    unclear = [item for carried in own for item in unmeasured(carried, used, settings)]
    measured = _nearest(course, own, used, (), body)
    if lacking := (*missing_of(used), *dict.fromkeys(unclear)):
        value = _distance(line, thing, own, body, course[0], measured.distance, 1)
        point = _at(course[0], measured.share)
        if measured.distance < FAR:
            return Gap(line.name, thing, _unknown(line, thing, lacking), point, as_measured=value)
        return Gap(line.name, thing, _after_any_movement(value), point)
    found = [(measured, ()), *((_nearest(course, own, used, each, body), each) for each in settings)]
    best, setting = min(found, key=lambda item: round(item[0].distance / FELT))
    best, setting, off = _between(found, (best, setting), (course, own, used, body))
    value = _distance(line, thing, own, body, course[0], best.distance, len(settings))
    value = replace(value, span=(max(value.low - off, 0.0), value.high)) if off > FELT else value
    return Gap(line.name, thing, value, _at(course[0], best.share), setting)


Scene = tuple[tuple["Array", "Array"], tuple[Carried, Carried, Carried], "tuple[State, ...]", "KnownBody"]


def _between(
    found: list[tuple[near.Nearest, Setting]], best: tuple[near.Nearest, Setting], scene: Scene
) -> tuple[near.Nearest, Setting, float]:
    """Look between neighbouring places of each range; say what the distance may still be less by.

    No distance changes by more than the line is moved. So from any place the range is gone on with by as
    far as nothing nearer can lie, and not at all where both neighbours are too far off. Where several
    ranges move at once, what lies between them stays an allowance.
    """
    course, own, used, body = scene
    solid, off = solid_of(body), 0.0
    ranged = [state for state in used if not state.values]
    known = {setting: nearest.distance for nearest, setting in found if setting}
    seen = {setting: _seen(course, own, used, setting) for setting in known} if ranged else {}
    for state in ranged:
        ways = [0.0]
        for one, other in _neighbours(state.name, tuple(known)):
            way = float(np.linalg.norm(seen[other] - seen[one], axis=1).max()) * ARC
            ways.append(way)
            share = 0.0 if known[one] + known[other] - way < 2 * best[0].distance else 1.0
            while share < 1:
                setting = _mixed(one, other, state.name, share)
                line = _seen(course, own, used, setting)
                distance = near.distance_under(line, solid, best[0].distance)
                if distance < best[0].distance - FELT:
                    best = (near.nearest(line, solid), setting)
                share += max(distance - best[0].distance, CLOSE) / way
        off += max(ways) / 2 if len(ranged) > 1 else 0.0
    return best[0], best[1], off


def _neighbours(name: str, settings: tuple[Setting, ...]) -> Iterator[tuple[Setting, Setting]]:
    """Pairs of settings that differ in one range alone, by one step of it."""
    rows: dict[tuple[tuple[str, float | str], ...], list[tuple[float, Setting]]] = {}
    for setting in settings:
        others = tuple(item for item in setting if item[0] != name)
        rows.setdefault(others, []).append((float(dict(setting)[name]), setting))
    for row in rows.values():
        yield from ((one, other) for (_, one), (_, other) in pairwise(sorted(row)))


def _mixed(one: Setting, other: Setting, name: str, share: float) -> Setting:
    """A setting between two, after a share of the way."""
    start, stop = (float(dict(each)[name]) for each in (one, other))
    return tuple((key, start + share * (stop - start) if key == name else value) for key, value in one)


def _after_any_movement(value: Value) -> Value:
    """What is left of a distance when things move that nobody has measured yet."""
    low = max(value.low - FAR, 0.0)
    return replace(value, span=(low, value.high), mark=Mark.ESTIMATE)


def _own(all_three: tuple[Carried, Carried, Carried]) -> tuple[Carried, Carried, Carried]:
    """Leave out what carries the whole line and the thing too: it moves nothing against anything."""
    start, finish, body = (
        Carried(
            one.position,
            tuple(each for each in one.carriers if not all(each in other.carriers for other in all_three)),
            one.measured,
        )
        for one in all_three
    )
    return start, finish, body


def _nearest(
    course: tuple[Array, Array],
    own: tuple[Carried, Carried, Carried],
    states: tuple[State, ...],
    setting: Setting,
    body: KnownBody,
) -> near.Nearest:
    """Bring the line to where it is in a setting, and from there to where the thing was measured."""
    return near.nearest(_seen(course, own, states, setting), solid_of(body))


def _seen(
    course: tuple[Array, Array],
    own: tuple[Carried, Carried, Carried],
    states: tuple[State, ...],
    setting: Setting,
) -> Array:
    """The line in a setting as it is seen from the thing, which stays where it was measured."""
    points, stations = course
    share = (stations / stations[-1])[:, None] if stations[-1] > 0 else np.zeros((len(stations), 1))
    rests = [{state.name: measured_in(state, carried.measured) for state in states} for carried in own]
    from_start, from_finish = (
        moved(carried.motions, points, rest, setting)
        for carried, rest in zip(own[:2], rests[:2], strict=True)
    )
    there = (1 - share) * from_start + share * from_finish
    return moved(own[2].motions, there, {**rests[2], **dict(setting)}, tuple(rests[2].items()))


def _at(points: Array, share: float) -> Point:
    """The point of a path after a share of its segments."""
    number = share * (len(points) - 1)
    x, y, z = (float(np.interp(number, np.arange(len(points)), points[:, axis])) for axis in range(3))
    return (x, y, z)


def _point(array: Array) -> Point:
    return (float(array[0]), float(array[1]), float(array[2]))


def _middle(body: KnownBody) -> Position:
    match body:
        case Box(low, _):
            return low
        case Ball(centre, _) | Disc(centre, _, _, _):
            return centre
        case Bar(start, _, _):
            return start
        case _:
            assert_never(body)


def _distance(
    line: LaidLine,
    thing: KeepClear,
    own: tuple[Carried, Carried, Carried],
    body: KnownBody,
    points: Array,
    between: float,
    settings: int,
) -> Value:
    """The distance of the surfaces with its range: no distance changes by more than what is moved."""
    outside = line.stock.outside_diameter
    values = [value for point in line.points for value in point.coordinates]
    values += [*_figures(body), *(value for carried in own for value in movers(carried.motions)), outside]
    off = max(_off(point) for point in line.points) + _body_off(body)
    off += sum(_motion_off(motion, points) for carried in own for motion in carried.motions)
    low, high = between - off - outside.high / 2, between + off - outside.low / 2
    marks = [Mark.DERIVED, *(value.mark for value in values)]
    if line.kind is LineKind.HOSE:
        marks.append(Mark.ESTIMATE)
    note = f"over {settings} states" if settings > 1 else ""
    step = Step(
        "least distance between axis and thing, less half the outside diameter", (("D", outside),), note
    )
    place = f"{line.place}.distance from {thing.name}"
    return Value(
        _label(line, thing), Dimension.LENGTH, (max(low, 0.0), max(high, 0.0)), max(marks), place, step=step
    )


def _figures(body: KnownBody) -> Iterator[Value]:
    match body:
        case Box(low, high):
            yield from (*low.coordinates, *high.coordinates)
        case Ball(centre, radius):
            yield from (*centre.coordinates, radius)
        case Bar(start, finish, radius):
            yield from (*start.coordinates, *finish.coordinates, radius)
        case Disc(centre, _, radius, thickness):
            yield from (*centre.coordinates, radius, thickness)
        case _:
            assert_never(body)


def _off(position: Position) -> float:
    """How far a point with ranges can be from its middle."""
    return hypot(*((value.high - value.low) / 2 for value in position.coordinates))


def _body_off(body: KnownBody) -> float:
    match body:
        case Box(low, high):
            return max(_off(low), _off(high))
        case Ball(centre, radius):
            return _off(centre) + _half(radius)
        case Bar(start, finish, radius):
            return max(_off(start), _off(finish)) + _half(radius)
        case Disc(centre, _, radius, thickness):
            return _off(centre) + hypot(_half(radius), _half(thickness) / 2)
        case _:
            assert_never(body)


def _half(value: Value) -> float:
    return (value.high - value.low) / 2


def _motion_off(motion: Motion, points: Array) -> float:
    """How much further or less far the range of a movement can take a point of the line."""
    if isinstance(motion, Swing):
        reach = max(dist(motion.about.point, _point(point)) for point in points)
        return 2 * _off(motion.about) + reach * _half(motion.angle)
    return sum(_half(value) for value in movers((motion,)))


def _unknown(line: LaidLine, thing: KeepClear, missing: tuple[Missing, ...]) -> Value:
    place = f"{line.place}.distance from {thing.name}"
    return Value(_label(line, thing), Dimension.LENGTH, None, Mark.MEASURED, place, missing=missing)


def _label(line: LaidLine, thing: KeepClear) -> str:
    return f"distance of {line.name} from {thing.name}"
