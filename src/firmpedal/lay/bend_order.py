"""In which order the bends of a tube can be made, so that no part of it hits bender or bench.

A bend needs a straight in the hook, as long as the bender grips: up to the nearest bend that is made, or
the tube's end. Then the half-bent tube is swept through the whole turn of the lever, past all but what
holds it. The search takes the order that a builder would try first, from one end to the other with the
same end held; where something is in the way it tries the other side in the hook, then another order.
"""

from __future__ import annotations

import heapq
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.lay import near
from firmpedal.lay.bender_hold import held_lengths, next_to_bend
from firmpedal.lay.half_bent import AXIS, bend_data, half_bent
from firmpedal.lay.moves import turned

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from numpy.typing import NDArray

    from firmpedal.lay.half_bent import BendData, HalfBent
    from firmpedal.lay.shape import Centreline

    Array = NDArray[np.float64]
    Held = str  # "from" or "to": which end's side stays in the hook

FINEST = np.radians(0.25)  # the lever is never looked at in smaller steps
NEARBY = 0.01  # metres: further off than this only a least distance is worked out
PIECE, MOST_PIECES = 0.02, 2000  # metres; longer pieces only take longer to be told from a body far off
LEAST_ROOM = 1e-4  # metres: nearer than this is a touch


@dataclass(frozen=True, slots=True)
class BenderBody:
    """A part of bender or bench in the bender's own axes; `turns` where it goes round with the lever."""

    name: str
    solid: near.Solid
    turns: bool = False


@dataclass(frozen=True, slots=True)
class BenderSpace:
    """What is in the way of a tube: bodies, and the straight that the hook needs before a bend [m]."""

    bodies: tuple[BenderBody, ...]
    grip: float


@dataclass(frozen=True, slots=True)
class BendStep:
    """One bend in the order of work, by its number from 0, and which end's side is held in the hook."""

    bend: int
    held: Held


@dataclass(frozen=True, slots=True)
class Hit:
    """What the tube hits in one bend, and how far the lever has got by then [rad].

    Where the tube cannot even be held, `straight` is what there is to hold [m], and `body` is empty.
    """

    bend: int
    held: Held
    body: str
    angle: float
    straight: float | None = None


@dataclass(frozen=True, slots=True)
class BendOrder:
    """The order to bend in; `steps` is empty where there is none, and `hits` says what is in the way.

    `hits` are those of the usual order, from the first end with that end held.
    """

    steps: tuple[BendStep, ...]
    hits: tuple[Hit, ...]

    @property
    def possible(self) -> bool:
        return bool(self.steps) or not self.hits


def bend_order(line: Centreline, outside_diameter: float, space: BenderSpace) -> BendOrder:
    """Find the first order of bends that can be made.

    Fewest changes of the end that is held come first, then fewest bends out of order.

    Args:
        line: The finished tube.
        outside_diameter: Of the tube [m].
        space: Bender and bench.
    """
    forth = bend_data(line)
    sides = {"from": forth, "to": forth.backwards}
    count = len(line.bends)

    @cache
    def hit(bend: int, held: Held, made: frozenset[int]) -> Hit | None:
        number = bend if held == "from" else count - 1 - bend
        done = made if held == "from" else frozenset(count - 1 - other for other in made)
        straight = _straight_before(sides[held], number, done)
        if straight + LEAST_ROOM < space.grip:
            return Hit(bend, held, "", 0.0, straight)
        found = _first_hit(sides[held], number, done, outside_diameter / 2, space)
        return Hit(bend, held, *found) if found else None

    usual = [hit(bend, "from", frozenset(range(bend))) for bend in range(count)]
    hits = tuple(each for each in usual if each)
    steps = _search(count, hit) if hits else tuple(BendStep(bend, "from") for bend in range(count))
    return BendOrder(steps, hits)


def _straight_before(tube: BendData, number: int, made: frozenset[int]) -> float:
    """How much is straight before a bend: bends on the way that are not made yet are straight still."""
    length = tube.straights[number]
    for other in range(number - 1, -1, -1):
        if other in made:
            break
        length += tube.bends[other].arc + tube.straights[other]
    return length


def _straight_after(tube: BendData, number: int, made: frozenset[int]) -> float:
    last = len(tube.bends) - 1
    return _straight_before(tube.backwards, last - number, frozenset(last - other for other in made))


def _search(count: int, hit: Callable[[int, Held, frozenset[int]], Hit | None]) -> tuple[BendStep, ...]:
    """Dijkstra over which bends are made: the cost is changes of the held end, then steps out of order."""
    waiting: list[tuple[tuple[int, int], int, frozenset[int], tuple[BendStep, ...]]] = [
        ((0, 0), 0, frozenset(), ())
    ]
    seen: set[tuple[frozenset[int], Held, int]] = set()
    ticket = 0
    while waiting:
        cost, _, made, steps = heapq.heappop(waiting)
        if len(made) == count:
            return steps
        last = steps[-1] if steps else BendStep(-1, "from")
        if (made, last.held, last.bend) in seen:
            continue
        seen.add((made, last.held, last.bend))
        for step in _next_steps(count, made):
            if hit(step.bend, step.held, made) is None:
                ticket += 1
                dearer = (cost[0] + (step.held != last.held), cost[1] + (step.bend != last.bend + 1))
                heapq.heappush(waiting, (dearer, ticket, made | {step.bend}, (*steps, step)))
    return ()


def _next_steps(count: int, made: frozenset[int]) -> Iterator[BendStep]:
    for held in ("from", "to"):
        yield from (BendStep(bend, held) for bend in range(count) if bend not in made)


def _first_hit(
    tube: BendData, number: int, made: frozenset[int], reach: float, space: BenderSpace
) -> tuple[str, float] | None:
    """Turn the lever from nothing to the whole bend; say what the tube comes to first, and when.

    The lever moves on by as much as the least distance allows: no point of the tube can go further than
    its own distance from the centre times the turn.
    """
    bend = tube.bends[number]
    before, after = _straight_before(tube, number, made), _straight_after(tube, number, made)
    holds = _holds(space, bend.radius, reach, before, after + bend.arc)
    centre = np.array([0.0, bend.radius, 0.0])
    angle = 0.0
    while True:
        shape = half_bent(tube, number, angle, made)
        straights = before, after + bend.radius * (bend.angle - angle)
        room, body = _least_room(shape, straights, holds, angle, centre)
        if room < LEAST_ROOM:
            return body, angle
        if angle >= bend.angle:
            return None
        arm = max(
            np.linalg.norm(shape.moving - centre, axis=1).max(),
            np.linalg.norm(shape.held - centre, axis=1).max(),
        )
        angle = min(bend.angle, angle + max(FINEST, room / float(arm)))


@dataclass(frozen=True, slots=True)
class _Hold:
    """A body, how near the tube's axis may come, and how far it holds the held and the moving side [m]."""

    body: BenderBody
    reach: float
    nearby: float
    lengths: tuple[float, float]

    def bare(self, path: Array, side: int, straight: float) -> Array:
        """What a path can hit the body with: all beyond what the body holds, which has to be straight."""
        held = self.lengths[side]
        return _beyond(path, max(self.nearby, min(held, straight)) if held else 0.0)


def _holds(space: BenderSpace, radius: float, reach: float, before: float, after: float) -> tuple[_Hold, ...]:
    """What each body holds of the straight tube, laid in. A touch is taken wider, so that it stays one."""
    touch = reach + 2 * LEAST_ROOM
    nearby = next_to_bend(radius, reach, touch)
    found = []
    for body in space.bodies:
        held = held_lengths(body.solid, nearby, (before, after), touch, turns=body.turns)
        found.append(_Hold(body, reach, nearby, held))
    return tuple(found)


def _least_room(
    shape: HalfBent, straights: tuple[float, float], holds: tuple[_Hold, ...], angle: float, centre: Array
) -> tuple[float, str]:
    """The least room between the tube's surface and any body, and which body that is."""
    found = [(np.inf, "")]
    for hold in holds:
        for side, path in enumerate((shape.held, shape.moving)):
            bare = hold.bare(path, side, straights[side])
            if not len(bare):
                continue
            seen = centre + turned(bare - centre, AXIS, -angle) if hold.body.turns else bare
            off = near.segments_under(seen[None], hold.body.solid, hold.reach + NEARBY).min()
            found.append((float(off) - hold.reach, hold.body.name))
    return min(found)


def _beyond(path: Array, length: float) -> Array:
    """What is left of a path after a length from its start, in short pieces; nothing if that is next to none.

    A tool that is longer than the tube holds it to its end, which is a sum of lengths and so a hair off.
    """
    steps = np.linalg.norm(np.diff(path, axis=0), axis=1)
    stations = np.concatenate([[0.0], np.cumsum(steps)])
    if stations[-1] <= length + LEAST_ROOM:
        return path[:0]
    pieces = np.arange(length, stations[-1], max(PIECE, float(stations[-1]) / MOST_PIECES))
    wanted = np.unique(np.concatenate([pieces, stations[stations > length]]))
    return np.stack([np.interp(wanted, stations, path[:, axis]) for axis in range(3)], axis=1)
