"""A line as it is seen from a thing, in every state and between the states."""

from __future__ import annotations

from heapq import heappop, heappush
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from firmpedal.lay import near
from firmpedal.lay.movement import moved
from firmpedal.lay.placed import at_rest, course_in
from firmpedal.units import from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from numpy.typing import NDArray

    from firmpedal.lay.movement import Carried
    from firmpedal.lay.states import Setting
    from firmpedal.model.surroundings import State

    Array = NDArray[np.float64]

FELT = from_unit(0.001, "in")  # of two states, one that is nearer by less is not nearer
ARC = 1.02  # a way along an arc of a few degrees is at most so much longer than straight
# Between two places of a range the line may come nearer unseen by so much in metres, or by such a share.
CLOSE, SHARE = 0.00025, 0.01
# Between two places of a range: many times what a real aircraft needs. A slip of the pen, a pedal that moves
# a mile, would need millions; what is left unseen then is an allowance.
MOST_LOOKS = 256


class Look(NamedTuple):
    """The line in one setting, and where it is nearest to the thing then."""

    setting: Setting
    line: Array
    nearest: near.Nearest

    @property
    def distance(self) -> float:
        return self.nearest.distance


class Scene(NamedTuple):
    """A line and a thing with what carries them; all is seen from the thing, where it was measured."""

    course: tuple[Array, Array]
    own: tuple[Carried, Carried, Carried]
    states: tuple[State, ...]
    solid: near.Solid

    def line_in(self, setting: Setting) -> Array:
        """Bring the line to where it is in a setting, and from there to where the thing was measured."""
        there = course_in(self.course, self.own[:2], self.states, setting)
        rest = at_rest(self.own[2], self.states)
        return moved(self.own[2].motions, there, {**rest, **dict(setting)}, tuple(rest.items()))

    def look(self, setting: Setting) -> Look:
        line = self.line_in(setting)
        return Look(setting, line, near.nearest(line, self.solid))


def between(scene: Scene, looks: list[Look], best: Look) -> tuple[Look, float]:
    """Look between neighbouring places of each range; say what the distance may still be less by.

    No place of the line comes nearer by more than it is moved. So between two settings no segment is
    nearer than half of what it is off in the two, less half its way; where that leaves room for something
    nearer, the setting in the middle is looked at, and its two halves. Where several ranges move at once,
    what lies between them stays an allowance; so does what is left open after many looks.
    """
    off = 0.0
    ranged = [state for state in scene.states if not state.values]
    for state in ranged:
        ways, unseen = [0.0], 0.0
        for one, other in _neighbours(state.name, looks):
            ways.append(float(_ways(one.line, other.line).max()))
            if one.distance + other.distance - ways[-1] < 2 * best.distance:
                best, left = _nearest_between(scene, state.name, (one.setting, other.setting), best)
                unseen = max(unseen, left)
        off += unseen + (max(ways) / 2 if len(ranged) > 1 else 0.0)
    return best, off


class Glance(NamedTuple):
    """The line in one setting, and how far each of its segments is off: that, or at least that."""

    setting: Setting
    line: Array
    offs: Array


def _nearest_between(
    scene: Scene, name: str, ends: tuple[Setting, Setting], best: Look
) -> tuple[Look, float]:
    """Halve the way between two settings of one range, always where something nearer can lie most of all.

    Returns:
        The nearest look, and by how much something unseen can still be nearer.
    """
    one, other = (_glance(scene, setting, best.distance) for setting in ends)
    waiting = [(_least(one, other), 0, one, other)]
    for count in range(1, MOST_LOOKS):
        least, _, one, other = heappop(waiting)
        if least >= best.distance - max(CLOSE, SHARE * best.distance):
            return best, 0.0
        middle = _glance(scene, _mixed(one.setting, other.setting, name, 0.5), best.distance)
        if middle.offs.min() < best.distance - FELT:
            best = scene.look(middle.setting)
        heappush(waiting, (_least(one, middle), 2 * count, one, middle))
        heappush(waiting, (_least(middle, other), 2 * count + 1, middle, other))
    return best, max(best.distance - waiting[0][0], 0.0)


def _least(one: Glance, other: Glance) -> float:
    """How near the line can come to the thing at least between two settings."""
    way = _ways(one.line, other.line)
    return float((one.offs + other.offs - np.maximum(way[:-1], way[1:])).min()) / 2


def _glance(scene: Scene, setting: Setting, enough: float) -> Glance:
    line = scene.line_in(setting)
    return Glance(setting, line, near.segments_under(line, scene.solid, enough))


def _ways(one: Array, other: Array) -> Array:
    """How far each corner of the line is moved at most from one setting to the other."""
    return near.lengths(other - one) * ARC


def _neighbours(name: str, looks: list[Look]) -> Iterator[tuple[Look, Look]]:
    """Pairs of looks that differ in one range alone, by one step of it."""
    rows: dict[Setting, list[Look]] = {}
    for look in looks:
        others = tuple(item for item in look.setting if item[0] != name)
        rows.setdefault(others, []).append(look)
    for row in rows.values():
        yield from pairwise(sorted(row, key=lambda look: float(dict(look.setting)[name])))


def _mixed(one: Setting, other: Setting, name: str, share: float) -> Setting:
    """A setting between two, after a share of the way."""
    start, stop = (float(dict(each)[name]) for each in (one, other))
    return tuple((key, start + share * (stop - start) if key == name else value) for key, value in one)
