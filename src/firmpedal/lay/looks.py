"""A line as it is seen from a thing, in every state and between the states."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from firmpedal.lay import near
from firmpedal.lay.moves import moved
from firmpedal.lay.placed import at_rest, course_in
from firmpedal.lay.rows import lengths
from firmpedal.units import from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from numpy.typing import NDArray

    from firmpedal.lay.movement import Carried
    from firmpedal.lay.states import Setting
    from firmpedal.model.surroundings import State

    Array = NDArray[np.float64]
    Numbers = NDArray[np.intp]

FELT = from_unit(0.001, "in")  # of two states, one that is nearer by less is not nearer
ARC = 1.02  # a way along an arc of a few degrees is at most so much longer than straight
# Between two places of a range the line may come nearer unseen by so much in metres, or by such a share.
CLOSE, SHARE = 0.00025, 0.01
# Between two places of a range: many times what a real aircraft needs. A slip of the pen, a pedal that moves
# a mile, would need millions; what is left unseen then is an allowance.
MOST_LOOKS = 256


class Look(NamedTuple):
    """The line in one setting, and how near it comes to the thing then.

    `at_least`, `offs` and `shares` are those of its segments, see `near.Segments`: all that are near enough
    to be the nearest were looked at closely.
    """

    setting: Setting
    line: Array
    distance: float
    at_least: Array
    offs: Array
    shares: Array

    def glance(self, enough: float) -> Array:
        """How far off a glance would have shown each segment, with a limit no further than the line is."""
        return np.where(self.at_least <= enough, self.offs, self.at_least)


class Scene(NamedTuple):
    """A line and a thing with what carries them; all is seen from the thing, where it was measured.

    `course` is the line's points and after what share of its length each of them lies.
    """

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

    def look(self, *settings: Setting) -> list[Look]:
        """Look in several settings at once, closely at what may be the nearest of the line."""
        lines = self.lines_in(settings)
        seen = near.segments(lines, self.solid, None, FELT)
        return list(map(Look, settings, lines, map(float, seen.offs.min(axis=1)), *seen))

    def glance(self, settings: Sequence[Setting], enough: float) -> tuple[Array, Array]:
        """The line in k settings, and how far each segment is off: that under a limit, or at least that.

        Returns:
            Shapes (k, n, 3) and (k, n - 1) [m].
        """
        lines = self.lines_in(settings)
        return lines, near.segments_under(lines, self.solid, enough)

    def of(self, segments: slice) -> Scene:
        """The same with some of the line's segments alone."""
        points, shares = self.course
        corners = corners_of(segments)
        return self._replace(course=(points[corners], shares[corners]))

    def nearest(self, look: Look) -> near.Nearest:
        """Where the line is nearest to the thing."""
        return near.nearest_seen(look.line, look.offs, look.shares, self.solid)


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
        if pairs := list(_neighbours(state.name, looks)):
            stretches = _between(pairs, best)
            best, unseen = _nearest_between(scene, state.name, stretches, best)
            off += unseen + (float(stretches.ways().max()) / 2 if len(ranged) > 1 else 0.0)
    return best, off


class Stretches(NamedTuple):
    """What lies between two settings each, m times: the line in both, and how far its segments are off.

    `lines` has shape (2, m, n, 3), and `offs`, that far or at least that far, shape (2, m, n - 1) [m].
    """

    settings: list[tuple[Setting, Setting]]
    lines: Array
    offs: Array

    def ways(self) -> Array:
        """How far each corner of the line is moved at most, shape (m, n) [m]."""
        steps = self.lines[1] - self.lines[0]
        return lengths(steps.reshape(-1, 3)).reshape(steps.shape[:2]) * ARC

    def least(self) -> Array:
        """How near each segment comes to the thing at least, shape (m, n - 1) [m]."""
        ways = self.ways()
        found: Array = (self.offs[0] + self.offs[1] - np.maximum(ways[:, :-1], ways[:, 1:])) / 2
        return found

    def of(self, chosen: Numbers, segments: slice) -> Stretches:
        """Some of the stretches, and some of their segments."""
        settings = [self.settings[each] for each in chosen]
        return Stretches(
            settings, self.lines[:, chosen, corners_of(segments)], self.offs[:, chosen, segments]
        )

    def halved(self, middles: list[Setting], lines: Array, offs: Array) -> Stretches:
        """Both halves of each, with what was seen in their middles."""
        settings = [(one, middle) for (one, _), middle in zip(self.settings, middles, strict=True)]
        settings += [(middle, other) for (_, other), middle in zip(self.settings, middles, strict=True)]
        return Stretches(settings, _halved(self.lines, lines), _halved(self.offs, offs))


def _halved(ends: Array, middles: Array) -> Array:
    """Rows of first ends and middles, and then of middles and second ends."""
    return np.stack([np.concatenate([ends[0], middles]), np.concatenate([middles, ends[1]])])


def corners_of(segments: slice) -> slice:
    """The corners between which some segments of a line lie."""
    return slice(segments.start, segments.stop + 1)


def _between(pairs: list[tuple[Look, Look]], best: Look) -> Stretches:
    """What lies between looks; what is no nearer than the best is told as roughly as it may be."""
    return Stretches(
        [(one.setting, other.setting) for one, other in pairs],
        np.array([[pair[end].line for pair in pairs] for end in (0, 1)]),
        np.array([[pair[end].glance(best.distance) for pair in pairs] for end in (0, 1)]),
    )


def _nearest_between(scene: Scene, name: str, stretches: Stretches, best: Look) -> tuple[Look, float]:
    """Halve the stretches of one range on which something nearer can lie, all of them at once.

    What of the line is nearer on none of them is left out from then on. The last looks that there are go
    where something nearer can lie most of all.

    Returns:
        The nearest look, and by how much something unseen can still be nearer.
    """
    seen, looks_left, unseen = scene, MOST_LOOKS * len(stretches.settings), best.distance
    while True:
        least, enough = stretches.least(), _enough(best)
        of_each = least.min(axis=1)
        wanted = np.argsort(of_each, kind="stable")[: np.count_nonzero(of_each < enough)]
        if len(wanted) > looks_left:
            unseen = min(unseen, float(of_each[wanted[looks_left]]))
        wanted = wanted[:looks_left]
        if not len(wanted):
            return best, best.distance - unseen if unseen < enough else 0.0
        looks_left -= len(wanted)
        matters = np.flatnonzero((least[wanted] < enough).any(axis=0))
        segments = slice(int(matters[0]), int(matters[-1]) + 1)
        seen, stretches = seen.of(segments), stretches.of(wanted, segments)
        middles = [_middle(*ends, name) for ends in stretches.settings]
        lines, offs = seen.glance(middles, best.distance)
        nearest = offs.min(axis=1)
        if nearest.min() < best.distance - FELT:
            (best,) = scene.look(middles[int(nearest.argmin())])
        stretches = stretches.halved(middles, lines, offs)


def _enough(best: Look) -> float:
    """What is off by so much is no nearer than the nearest, as closely as it is looked for."""
    return best.distance - max(CLOSE, SHARE * best.distance)


def _neighbours(name: str, looks: list[Look]) -> Iterator[tuple[Look, Look]]:
    """Pairs of looks that differ in one range alone, by one step of it."""
    rows: dict[Setting, list[Look]] = {}
    for look in looks:
        others = tuple(item for item in look.setting if item[0] != name)
        rows.setdefault(others, []).append(look)
    for row in rows.values():
        yield from pairwise(sorted(row, key=lambda look: float(dict(look.setting)[name])))


def _middle(one: Setting, other: Setting, name: str) -> Setting:
    """The setting half way between two."""
    start, stop = (float(dict(each)[name]) for each in (one, other))
    return tuple((key, (start + stop) / 2 if key == name else value) for key, value in one)
