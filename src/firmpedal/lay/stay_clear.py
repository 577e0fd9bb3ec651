"""How near each line comes to what it has to stay clear of, over all states of movement.

Both may move. The line is looked at from the other thing, so that this keeps its shape: the points of a
line between its two ends follow the end that they are nearer to, in the share of their distance along it.
A hose lies along its declared path here; how it bows between is another question.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.lay.crossing import path_of
from firmpedal.lay.looks import FELT, Scene, between
from firmpedal.lay.movement import Carried, unmeasured
from firmpedal.lay.moves import movers
from firmpedal.lay.placed import with_shares
from firmpedal.lay.rows import lengths
from firmpedal.lay.solids import body_off, corners_of, half_range, point_off, sizes_of, solid_of
from firmpedal.lay.states import missing_of, settings_of
from firmpedal.model.shapes import UnknownShape
from firmpedal.model.stock import LineKind
from firmpedal.model.surroundings import Swing
from firmpedal.quantity import Mark, Step, Value
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from firmpedal.lay.line_run import LineRun
    from firmpedal.lay.solids import KnownBody
    from firmpedal.lay.states import Setting
    from firmpedal.model.space import Point
    from firmpedal.model.surroundings import KeepClear, Motion, Moving, State
    from firmpedal.quantity import Missing

    Array = NDArray[np.float64]


# No wheel, pedal or control of a light aircraft moves further: our estimate. It only decides whether an
# unmeasured movement is asked for, so that nobody has to jack the aircraft up for a line in the cabin.
FAR = from_unit(12, "in")
# Between two ends that move differently a straight bends, by the square of a step over its length: a few
# ten-thousandths of an inch for this one.
STRAIGHTS = from_unit(0.5, "in")


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
    line: LineRun,
    ends: tuple[Carried, Carried],
    thing: KeepClear,
    carriers: tuple[Moving, ...],
    states: tuple[State, ...],
) -> Gap:
    """Find how near a line comes to a thing that `carriers` carry, innermost first."""
    body, course = thing.where, path_of(line, STRAIGHTS)
    missing = [item for point in line.points for item in point.missing]
    missing += () if line.outside_diameter.known else line.outside_diameter.missing
    if isinstance(body, UnknownShape) or course is None or missing:
        missing += body.missing if isinstance(body, UnknownShape) else ()
        return Gap(line.name, thing, _unknown(line, thing, tuple(dict.fromkeys(missing))))
    own = _own((*ends, Carried(corners_of(body)[0], carriers, thing.measured_in)))
    names = {motion.variable for carried in own for motion in carried.motions}
    used = tuple(state for state in states if state.name in names)
    settings = settings_of(used)
    unclear = [item for carried in own for item in unmeasured(carried, used, settings)]
    scene = Scene(with_shares(*course), own, used, solid_of(body))
    lacking = (*missing_of(used), *dict.fromkeys(unclear))
    measured, *looks = scene.look((), *(settings if used and not lacking else ()))
    if lacking:
        value = _distance(line, thing, own, body, course[0], measured.distance, 1)
        point = _at(course[0], scene.nearest(measured).share)
        if measured.distance < FAR:
            return Gap(line.name, thing, _unknown(line, thing, lacking), point, as_measured=value)
        return Gap(line.name, thing, _after_any_movement(value), point)
    nearest = min([measured, *looks], key=lambda look: round(look.distance / FELT))
    best, off = between(scene, looks, nearest)
    value = _distance(line, thing, own, body, course[0], best.distance, len(settings))
    value = replace(value, span=(max(value.low - off, 0.0), value.high)) if off > FELT else value
    return Gap(line.name, thing, value, _at(course[0], scene.nearest(best).share), best.setting)


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


def _at(points: Array, share: float) -> Point:
    """The point of a path after a share of its segments."""
    number = share * (len(points) - 1)
    x, y, z = (float(np.interp(number, np.arange(len(points)), points[:, axis])) for axis in range(3))
    return (x, y, z)


def _distance(
    line: LineRun,
    thing: KeepClear,
    own: tuple[Carried, Carried, Carried],
    body: KnownBody,
    points: Array,
    between: float,
    settings: int,
) -> Value:
    """The distance of the surfaces with its range: no distance changes by more than what is moved."""
    outside = line.outside_diameter
    points_told = (*line.points, *corners_of(body))
    values = [value for point in points_told for value in point.coordinates]
    values += [*sizes_of(body), *(value for carried in own for value in movers(carried.motions)), outside]
    off = max(point_off(point) for point in line.points) + body_off(body)
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


def _motion_off(motion: Motion, points: Array) -> float:
    """How much further or less far the range of a movement can take a point of the line."""
    if isinstance(motion, Swing):
        reach = float(lengths(points - np.array(motion.about.point)).max())
        return 2 * point_off(motion.about) + reach * half_range(motion.angle)
    return sum(half_range(value) for value in movers((motion,)))


def _unknown(line: LineRun, thing: KeepClear, missing: tuple[Missing, ...]) -> Value:
    place = f"{line.place}.distance from {thing.name}"
    return Value(_label(line, thing), Dimension.LENGTH, None, Mark.MEASURED, place, missing=missing)


def _label(line: LineRun, thing: KeepClear) -> str:
    return f"distance of {line.name} from {thing.name}"
