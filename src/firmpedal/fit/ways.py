"""The search: from a line end back to every interface from which parts lead to it.

Exposed interfaces are the nodes, parts taken from one flow end to another are the edges. One table
per line end answers every port: for each interface, the best chain for each turn and each number of
passes worth having. The table is built in layers by number of passes, so the bound on them is exact.
A part brings what it cannot do without: its washers, O-ring or jam nut are counted with it.
A layer keeps one best chain per interface and turn: what comes before it adds the same cost to
either of two, so the better one stays the better.
"""

from __future__ import annotations

from collections import defaultdict
from functools import lru_cache
from typing import TYPE_CHECKING, NamedTuple

from firmpedal.fit.companions import companions_of, dry_seals
from firmpedal.fit.shop import turn_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from firmpedal.fit.mating import Pass
    from firmpedal.fit.shop import Shelf, Shop
    from firmpedal.fit.wishes import Wishes
    from firmpedal.model.part import Interface

MOST_PARTS = 6
"""Longest chain looked for: nut and sleeve, two bodies, nut and sleeve between two flared tubes.

Washers, O-rings and jam nuts are not counted: no fluid flows through them.
"""

_State = tuple["Interface", float]


class Way(NamedTuple):
    """What a chain costs, and its passes by number; of two ways with the same turn the lower is better."""

    unlike_metals: int
    leak_paths: int
    parts: int
    unknown_masses: int
    micrograms: int
    passes: tuple[int, ...]


class Aim(NamedTuple):
    """Where a chain should point, in degrees; a declared turn must be met exactly."""

    angle: float = 0.0
    declared: bool = False


STRAIGHT = Aim()


class Cost(NamedTuple):
    """What a joint costs, first things first; the lower tuple is the better joint."""

    open_lines: int = 0  # line ends that stay without anything
    bare_threads: int = 0  # bulkhead threads without a jam nut
    unlike_metals: int = 0
    leak_paths: int = 0
    parts: int = 0
    odd_ends: int = 0  # ends with no line to join that are not like the joined one
    off_angle: float = 0.0  # degrees between where the joint points and where the line leaves
    turn: float = 0.0  # degrees: the straighter wins a tie
    unknown_masses: int = 0
    micrograms: int = 0
    passes: tuple[int, ...] = ()  # by number in canonical order: neither a name nor a place in a list decides


class _Toll(NamedTuple):
    """What one pass adds to a way."""

    before: Interface
    turn: float
    unlike_metals: int
    leak_paths: int
    parts: int
    unknown_masses: int
    micrograms: int


@lru_cache(maxsize=1024)
def ways_to(goal: Interface, wishes: Wishes, shop: Shop) -> Mapping[Interface, tuple[tuple[float, Way], ...]]:
    """Find the best ways to an end from every interface, each with its turn in degrees.

    An interface from which no chain of at most `MOST_PARTS` parts leads to the end is not in the table.
    """
    tolls = _tolls(wishes, shop)
    layer: dict[_State, Way] = {(goal.complement, 0.0): Way(0, int(goal.seals), 0, 0, 0, ())}
    table: dict[Interface, list[tuple[float, Way]]] = defaultdict(list)
    least: dict[_State, Way] = {}
    for _ in range(MOST_PARTS + 1):
        # A way of more passes is worth having only where it costs less.
        layer = {state: way for state, way in layer.items() if state not in least or way < least[state]}
        least |= layer
        for (interface, turn), way in layer.items():
            table[interface].append((turn, way))
        layer = _one_part_more(layer, shop, tolls)
    return {interface: tuple(ways) for interface, ways in table.items()}


@lru_cache(maxsize=64)
def _tolls(wishes: Wishes, shop: Shop) -> tuple[_Toll | None, ...]:
    """Say what each pass adds, None where its part must not stand in the joint."""
    return tuple(
        _toll(step, shelf, wishes, shop) for step, shelf in zip(shop.passes, shop.shelf_of, strict=True)
    )


def _toll(step: Pass, shelf: Shelf, wishes: Wishes, shop: Shop) -> _Toll | None:
    """Add up a pass and what goes on the dry ends of its part; None if something of that is not to be had."""
    if wishes.objection(step.part):
        return None
    brought = companions_of(step.part, wishes, shop)
    placed = [shelf, *(other for other in brought if other is not None)]
    if len(placed) <= len(brought):
        return None
    return _Toll(
        step.before,
        turn_of(step.part),
        sum(wishes.unlike(one.part) for one in placed),
        step.before.seals + dry_seals(step.part),
        len(placed),
        sum(one.unknown_masses for one in placed),
        sum(one.micrograms for one in placed),
    )


def _one_part_more(
    layer: Mapping[_State, Way], shop: Shop, tolls: tuple[_Toll | None, ...]
) -> dict[_State, Way]:
    """Put one part before every way of a layer, and keep the best for each interface and turn."""
    longer: dict[_State, Way] = {}
    for (interface, turn), way in layer.items():
        for number in shop.by_after.get(interface, ()):
            toll = tolls[number]
            if toll is None or (turn and toll.turn):
                continue  # two elbows in series do not settle where the line points
            state = (toll.before, turn + toll.turn)
            candidate = _with_toll(toll, number, way)
            if state not in longer or candidate < longer[state]:
                longer[state] = candidate
    return longer


def _with_toll(toll: _Toll, number: int, way: Way) -> Way:
    return Way(
        way.unlike_metals + toll.unlike_metals,
        way.leak_paths + toll.leak_paths,
        way.parts + toll.parts,
        way.unknown_masses + toll.unknown_masses,
        way.micrograms + toll.micrograms,
        (number, *way.passes),
    )


def cost_of(turn: float, way: Way, aim: Aim) -> Cost:
    """Say what a way costs where it should point as aimed."""
    return Cost(
        unlike_metals=way.unlike_metals,
        leak_paths=way.leak_paths,
        parts=way.parts,
        off_angle=round(abs(turn - aim.angle), 6),
        turn=turn,
        unknown_masses=way.unknown_masses,
        micrograms=way.micrograms,
        passes=way.passes,
    )


def best_cost(
    start: Interface, goal: Interface, wishes: Wishes, shop: Shop, aim: Aim = STRAIGHT
) -> Cost | None:
    """Find the cheapest chain from an exposed interface to an end, or None if there is none."""
    ways = ways_to(goal, wishes, shop).get(start, ())
    return _cheapest((cost_of(turn, way, aim) for turn, way in ways), aim)


def best_cost_through(
    number: int, goal: Interface, wishes: Wishes, shop: Shop, aim: Aim = STRAIGHT
) -> Cost | None:
    """Find the cheapest chain to an end that begins with a given pass, or None if there is none."""
    toll = _tolls(wishes, shop)[number]
    ways = ways_to(goal, wishes, shop).get(shop.passes[number].after, ())
    if toll is None:
        return None
    return _cheapest(
        (
            cost_of(turn + toll.turn, _with_toll(toll, number, way), aim)
            for turn, way in ways
            if not (turn and toll.turn)
        ),
        aim,
    )


def _cheapest(costs: Iterable[Cost], aim: Aim) -> Cost | None:
    return min((cost for cost in costs if not (aim.declared and cost.off_angle)), default=None)


def passes_in(cost: Cost, shop: Shop) -> tuple[Pass, ...]:
    """Give the passes of a chain found by `best_cost`."""
    return tuple(shop.passes[number] for number in cost.passes)
