"""The ways of the fluid from each caliper up to its reservoir, as points one after another."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import accumulate, pairwise
from math import dist, inf
from typing import TYPE_CHECKING

from firmpedal.lay.along import sample
from firmpedal.model.aircraft import find
from firmpedal.model.kinds import MasterCylinder, Reservoir
from firmpedal.quantity import Answer, Mark, Step, Value
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.circuit import Graph
    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.shape import Point
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.kinds import Component
    from firmpedal.model.space import Position
    from firmpedal.quantity import Missing


@dataclass(frozen=True, slots=True)
class Spot:
    """A point of a way: `near` is what a builder calls the place, `place` the thing in the file.

    `share` is how far along its line it lies, from nothing to 1; None where a point of the line is unknown.
    """

    aft: Value
    up: Value
    near: str
    line: str
    place: str
    share: float | None = None


@dataclass(frozen=True, slots=True)
class Way:
    """What the fluid passes from a caliper to the top, which has a reservoir or is a bare cylinder.

    `spots` are the points that are known, in order, the last of them at the port under the reservoir.
    `closed_at` is a cylinder on the way that lets nothing back at rest.
    """

    caliper: str
    top: str
    has_reservoir: bool
    spots: tuple[Spot, ...]
    cap: Position | None
    missing: tuple[Missing, ...]
    closed_at: str = ""


def ways(aircraft: Aircraft, laid: tuple[LaidLine, ...], graph: Graph) -> tuple[Way, ...]:
    """Follow the shortest way up from every caliper port that a line comes to.

    The top is the nearest reservoir, built in or not; where none is reached, the nearest cylinder.
    """
    lines, tops = {line.name: line for line in laid}, dict(graph.tops)
    fed, bare = graph.walk(tops), graph.walk(outlet for _, outlet in graph.outlets)
    found = []
    for caliper in aircraft.calipers:
        for port in caliper.ports:
            node = f"{caliper.name}.{port.name}"
            paths = fed if node in fed else bare
            if node in paths and paths[node][1]:
                path = _up(paths, node)
                top = tops.get(path[-1][0], path[-1][0].rpartition(".")[0])
                found.append(_way(aircraft, lines, caliper.name, path, top))
    return tuple(found)


def _up(paths: dict[str, tuple[str, str]], node: str) -> list[tuple[str, str]]:
    """The connections from one up to its top, each with the line that leads on from it."""
    found = []
    while paths[node][0] != node:
        found.append((node, paths[node][1]))
        node = paths[node][0]
    return [*found, (node, "")]


def _way(
    aircraft: Aircraft, lines: dict[str, LaidLine], caliper: str, path: list[tuple[str, str]], top: str
) -> Way:
    spots: list[Spot] = []
    missing: list[Missing] = []
    for node, name in path:
        line, declared = lines.get(name), find(aircraft.lines, name)
        if line is None or declared is None:
            continue
        along = list(_spots(line, _Ends(aircraft, declared.start, declared.finish)))
        spots += along if node == declared.start else along[::-1]
        missing += [item for point in line.points for item in (*point.aft.missing, *point.up.missing)]
    tank = find(aircraft.components, top)
    has_reservoir = isinstance(tank, Reservoir) or (isinstance(tank, MasterCylinder) and tank.has_reservoir)
    heads = {node.rpartition(".")[0] for node, _ in path}
    return Way(
        caliper,
        top,
        has_reservoir,
        tuple(spots),
        _cap(tank) if has_reservoir else None,
        tuple(dict.fromkeys(missing)),
        next((each.name for each in aircraft.cylinders if each.name in heads and _shut(each)), ""),
    )


def _shut(cylinder: MasterCylinder) -> bool:
    return cylinder.opens_at_rest is Answer.NO


def _cap(top: Component | None) -> Position | None:
    return top.fill_cap if isinstance(top, MasterCylinder | Reservoir) else None


@dataclass(frozen=True, slots=True)
class _Ends:
    """What a line's two ends are called: a bulkhead by its name, a component by its port."""

    aircraft: Aircraft
    start: str
    finish: str

    def called(self, end: str, line: LaidLine) -> tuple[str, str]:
        head = end.rpartition(".")[0]
        bulkhead, part = find(self.aircraft.bulkheads, head), find(self.aircraft.components, head)
        if bulkhead is not None:
            return head, bulkhead.place
        return end, part.place if part else line.place


def _spots(line: LaidLine, ends: _Ends) -> Iterator[Spot]:
    """The known points of a line from its first end to its last, with the bends of a tube."""
    last = len(line.points) - 1
    for number, aft, up, share in _course(line):
        near, place = f"point {number + 1} of {line.name}", line.place
        if number in (0, last):
            near, place = ends.called(ends.finish if number else ends.start, line)
        yield Spot(aft, up, near, line.name, place, share)


@lru_cache(maxsize=512)
def _course(line: LaidLine) -> tuple[tuple[int, Value, Value, float | None], ...]:
    return tuple(_along(line))


def _along(line: LaidLine) -> Iterator[tuple[int, Value, Value, float | None]]:
    """Each point with the number of the declared one it lies at, or nearest to on the bend of a tube."""
    path = line.path
    if line.tube is None or line.tube.centreline is None or path is None:
        shares = _shares(path) if path is not None else [None] * len(line.points)
        yield from (
            (n, p.aft, p.up, share)
            for n, (p, share) in enumerate(zip(line.points, shares, strict=True))
            if p.aft.known and p.up.known
        )
        return
    last, points = len(line.points) - 1, line.points
    yield 0, points[0].aft, points[0].up, 0.0
    middle, stations = sample(line.tube.centreline, inf)
    for point, station in zip(middle[1:-1], stations[1:-1], strict=True):
        number = min(range(1, last), key=lambda n: dist(point, path[n]), default=0)
        aft, up = points[number].aft, points[number].up
        share = float(station / stations[-1])
        yield number, _beside(aft, float(point[0])), _beside(up, float(point[2])), share
    yield last, points[last].aft, points[last].up, 1.0


def _shares(path: tuple[Point, ...]) -> list[float | None]:
    """How far along its path each corner lies."""
    along = [0.0, *accumulate(dist(one, other) for one, other in pairwise(path))]
    return [each / along[-1] if along[-1] > 0 else None for each in along]


def _beside(value: Value, number: float) -> Value:
    """A coordinate on a bend: as wide a range as its corner has, about where the bend runs.

    It has no place of its own in the file: who wants it more closely measures the corner.
    """
    shift = number - value.middle
    return Value(
        f"{value.label}, on its bend",
        Dimension.LENGTH,
        (value.low + shift, value.high + shift),
        max(value.mark, Mark.DERIVED),
        source=value.source,
        step=Step("where the bend at the corner runs", ((value.label, value),)),
        missing=value.missing,
    )
