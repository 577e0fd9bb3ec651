"""A line as it is seen from a thing, in every state and between the states."""

from __future__ import annotations

from heapq import heappop, heappush
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from firmpedal.lay import near
from firmpedal.lay.moves import moved
from firmpedal.lay.placed import at_rest, course_in
from firmpedal.units import from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

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
    """The line in one setting, and how near it comes to the thing then.

    Each of its segments is off by `at_least`; `offs` is the same with the true distance of those that are
    near enough to be the nearest.
    """

    setting: Setting
    line: Array
    distance: float
    at_least: Array
    offs: Array

    def glance(self, enough: float) -> Glance:
        """What a glance at the line in this setting would have shown, with a limit no further than it is."""
        return Glance(self.setting, self.line, np.where(self.at_least <= enough, self.offs, self.at_least))


class Glance(NamedTuple):
    """The line in one setting, and how far each of its segments is off: that, or at least that."""

    setting: Setting
    line: Array
    offs: Array


class Scene(NamedTuple):
    """A line and a thing with what carries them; all is seen from the thing, where it was measured."""

    course: tuple[Array, Array]
    own: tuple[Carried, Carried, Carried]
    states: tuple[State, ...]
    solid: near.Solid

    def lines_in(self, settings: Sequence[Setting]) -> Array:
        """Bring the line to where it is in each setting, and from there to where the thing was measured."""
        there = course_in(self.course, self.own[:2], self.states, settings)
        rest = at_rest(self.own[2], self.states)
        before = [{**rest, **dict(setting)} for setting in settings]
        lines = moved(self.own[2].motions, there, before, [rest])
        return np.broadcast_to(lines, (len(settings), *lines.shape[1:]))

    def look(self, *settings: Setting, enough: float | None = None) -> list[Look]:
        """Look in several settings at once, which is much quicker than one after the other.

        Closely at what may be the nearest of the line; or, with a limit, at what may be under that.
        """
        lines = self.lines_in(settings)
        at_least, offs = near.segments(lines, self.solid, enough, FELT)
        return list(map(Look, settings, lines, map(float, offs.min(axis=1)), at_least, offs))

    def glance(self, settings: Sequence[Setting], enough: float) -> list[Glance]:
        """The same, but closely only at what may be nearer than a limit."""
        lines = self.lines_in(settings)
        return list(map(Glance, settings, lines, near.segments_under(lines, self.solid, enough)))

    def nearest(self, look: Look) -> near.Nearest:
        """Where the line is nearest to the thing."""
        return near.nearest(look.line, self.solid)


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
        pairs = list(_neighbours(state.name, looks))
        middles = _first_middles(scene, state.name, pairs, best)
        for one, other in pairs:
            ways.append(float(_ways(one.line, other.line).max()))
            if one.distance + other.distance - ways[-1] < 2 * best.distance:
                best, left = _nearest_between(scene, state.name, (one, other), best, middles)
                unseen = max(unseen, left)
        off += unseen + (max(ways) / 2 if len(ranged) > 1 else 0.0)
    return best, off


def _first_middles(
    scene: Scene, name: str, pairs: list[tuple[Look, Look]], best: Look
) -> dict[Setting, Look]:
    """Look in the middle of all ways on which something nearer can lie, together."""
    enough = _enough(best)
    settings = [
        _mixed(one.setting, other.setting, name, 0.5)
        for one, other in pairs
        if _least(one.glance(best.distance), other.glance(best.distance)) < enough
    ]
    return {look.setting: look for look in scene.look(*settings, enough=best.distance)} if settings else {}


def _enough(best: Look) -> float:
    """What is off by so much is no nearer than the nearest, as closely as it is looked for."""
    return best.distance - max(CLOSE, SHARE * best.distance)


def _nearest_between(
    scene: Scene, name: str, ends: tuple[Look, Look], best: Look, middles: dict[Setting, Look]
) -> tuple[Look, float]:
    """Halve the way between two settings of one range, always where something nearer can lie most of all.

    The middles of all ways that wait are looked at together, and each is taken when it is its turn;
    `middles` were looked at before.

    Returns:
        The nearest look, and by how much something unseen can still be nearer.
    """
    one, other = (end.glance(best.distance) for end in ends)
    waiting = [(_least(one, other), 0, one, other)]
    first = middles.get(_middle(one, other, name))
    seen = {first.setting: first.glance(best.distance)} if first else {}
    for count in range(1, MOST_LOOKS):
        least, _, one, other = heappop(waiting)
        enough = _enough(best)
        if least >= enough:
            return best, 0.0
        if (setting := _middle(one, other, name)) not in seen:
            others = [_middle(a, b, name) for off, _, a, b in waiting if off < enough]
            more = [each for each in others if each not in seen][: MOST_LOOKS - count - len(seen) - 1]
            settings = [setting, *more]
            seen.update(zip(settings, scene.glance(settings, best.distance), strict=True))
        middle = seen.pop(setting)
        if middle.offs.min() < best.distance - FELT:
            (best,) = scene.look(middle.setting)
        heappush(waiting, (_least(one, middle), 2 * count, one, middle))
        heappush(waiting, (_least(middle, other), 2 * count + 1, middle, other))
    return best, max(best.distance - waiting[0][0], 0.0)


def _middle(one: Glance, other: Glance, name: str) -> Setting:
    return _mixed(one.setting, other.setting, name, 0.5)


def _least(one: Glance, other: Glance) -> float:
    """How near the line can come to the thing at least between two settings."""
    way = _ways(one.line, other.line)
    return float((one.offs + other.offs - np.maximum(way[:-1], way[1:])).min()) / 2


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
