"""Where everything is on the paper: nodes, and the way of every line."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.model.component import SideOf
from firmpedal.report.placing import Box
from firmpedal.report.schematic.channels import CLEAR, track_count, tracked
from firmpedal.report.schematic.columns import across, closer

if TYPE_CHECKING:
    from firmpedal.report.placing import Flat
    from firmpedal.report.schematic.channels import Jog
    from firmpedal.report.schematic.columns import Reach
    from firmpedal.report.schematic.draft import Drawn
    from firmpedal.report.schematic.layers import Rows, Span
    from firmpedal.report.schematic.nodes import Scheme

EDGE = 6.0  # white around the diagram
TRACK = 12.0
STUB = 11.0  # a pipe that leads nowhere, and how far a line goes on before it turns round
LANE = 13.0
NUMBER = 24.0  # room for a number between a symbol and a line across
BESIDE = 8.0


@dataclass(frozen=True)
class Sizes:
    """How much room there is: the width of the paper, and the gap between rows apart from its tracks."""

    width: float
    gap: float


@dataclass(frozen=True)
class Plan:
    """The middle of every node, the way of every line by its number in the scheme, and the paper."""

    spots: tuple[Flat, ...]
    routes: dict[int, tuple[Flat, ...]]
    size: Flat


def planned(
    scheme: Scheme,
    rows: Rows,
    order: list[list[int]],
    drawn: tuple[Drawn, ...],
    words: list[float],
    sizes: Sizes,
) -> Plan:
    """Place rows and columns and find the way of every line; `words` is the width of each node's label."""
    return _Planning(scheme, rows, order, drawn, sizes).plan(words)


class _Planning:
    def __init__(
        self, scheme: Scheme, rows: Rows, order: list[list[int]], drawn: tuple[Drawn, ...], sizes: Sizes
    ) -> None:
        self.scheme, self.rows, self.order, self.drawn, self.sizes = scheme, rows, order, drawn, sizes
        self.rooms = [self._room(number) for number in range(len(scheme.nodes))]

    def plan(self, words: list[float]) -> Plan:
        self.xs, width = self._columns(words)
        self.steps = [self._steps(layer) for layer in range(self.rows.count - 1)]
        self._heights()
        spots = tuple(
            (self.xs[number], self.middles[self.rows.items[number].layer])
            for number in range(len(self.scheme.nodes))
        )
        self.spots = spots
        routes = {span.edge: _plain(self._route(span)) for span in self.rows.spans}
        routes |= {number: _plain(self._loop(number)) for number in self.rows.loops}
        return Plan(spots, routes, (width, self.height))

    def _room(self, number: int) -> Box:
        """What a node takes: its symbol, stubs, and lanes for lines that must go round it."""
        drawn, node = self.drawn[number], self.scheme.nodes[number]
        box = drawn.symbol.box
        used = {terminal for span in self.rows.spans for terminal in (span.top, span.bottom)}
        loose = [n for n in range(len(node.terminals)) if (number, n) not in used or n in drawn.odd]
        sides = {node.terminals[n].below for n in loose}
        up, down = (STUB + 4 if below in sides else 0.0 for below in (False, True))
        lanes = LANE * len(drawn.odd) + (LANE if loose and len(sides) > 1 else 0.0)
        return Box(box.left - BESIDE, box.low - down, box.right + BESIDE + lanes, box.high + up)

    def _columns(self, words: list[float]) -> tuple[list[float], float]:
        """The place of each item across, on paper that is as wide as it must be."""
        reaches = []
        for number, item in enumerate(self.rows.items):
            if item.node < 0:
                reaches.append((CLEAR, CLEAR))
                continue
            room, more = self.rooms[number], words[number] + BESIDE
            left = item.side is SideOf.RIGHT
            reaches.append((-room.left + more * left, room.right + more * (not left)))
        xs = across(self.rows, self.order, reaches, self.sizes.width)
        low, high = _ends_of(xs, reaches)
        if high - low > self.sizes.width:
            xs = closer(self.rows, self.order, xs, reaches, high - low - self.sizes.width)
            low, high = _ends_of(xs, reaches)
        shift = max(-low, 0.0) or -max(min(high - self.sizes.width, low), 0.0)
        return [round(x + shift, 2) for x in xs], round(max(self.sizes.width, high + shift), 2)

    def _leaves(self, item: int, terminal: tuple[int, int] | None) -> float:
        """Where a line comes out of the room of an item, across."""
        if terminal is None:
            return self.xs[item]
        drawn, index = self.drawn[item], terminal[1]
        if index in drawn.odd:
            return self.xs[item] + drawn.symbol.box.right + BESIDE + LANE * drawn.odd.index(index)
        return self.xs[item] + drawn.at[index][0]

    def _ends(self, span: Span, layer: int) -> tuple[float, float]:
        index = layer - self.rows.items[span.path[0]].layer
        top = span.top if index == 0 else None
        bottom = span.bottom if index == len(span.path) - 2 else None
        return self._leaves(span.path[index], top), self._leaves(span.path[index + 1], bottom)

    def _steps(self, layer: int) -> dict[int, list[Jog]]:
        """The steps across that each line takes below a row."""
        passing = [
            span for span in self.rows.spans
            if self.rows.items[span.path[0]].layer <= layer < self.rows.items[span.path[-1]].layer
        ]  # fmt: skip
        jogs = tracked([self._ends(span, layer) for span in passing])
        return {span.edge: steps for span, steps in zip(passing, jogs, strict=True)}

    def _heights(self) -> None:
        """The height of the middle of each row, and of the tracks between, from the lower edge up."""
        layers = [[n for n in range(len(self.rooms)) if self.rows.items[n].layer == layer]
                  for layer in range(self.rows.count)]  # fmt: skip
        ups = [max((self.rooms[n].high for n in row), default=0.0) for row in layers]
        downs = [max((-self.rooms[n].low for n in row), default=0.0) for row in layers]
        gaps = [self.sizes.gap + TRACK * track_count(list(steps.values())) for steps in self.steps]
        self.height = round(sum(ups) + sum(downs) + sum(gaps) + 2 * EDGE, 2)
        y = self.height - EDGE
        self.middles, self.tracks, self.tops = [], [], []
        for layer, (up, down) in enumerate(zip(ups, downs, strict=True)):
            self.middles.append(round(y - up, 2))
            self.tops.append(y)
            y -= up + down
            if layer < len(gaps):
                self.tracks.append(self._first_track(layer, y, gaps[layer]))
                y -= gaps[layer]

    def _first_track(self, layer: int, high: float, gap: float) -> float:
        """The height of the first track: next to the row in whose middle the lines meet."""
        count = track_count(list(self.steps[layer].values()))
        lean = 0.5 + 0.28 * (self._middle(layer + 1) - self._middle(layer))
        room = gap - TRACK * max(count - 1, 0)
        return round(high - min(max(room * lean, NUMBER), max(room - NUMBER, room / 2)), 2)

    def _middle(self, layer: int) -> bool:
        """Whether all nodes of a row stand in the middle."""
        nodes = [item for item in self.rows.items if item.layer == layer and item.node >= 0]
        return all(item.side is SideOf.CENTRE for item in nodes)

    def _route(self, span: Span) -> list[Flat]:
        points = self._leaving(span.path[0], span.top, down=True)
        layer = self.rows.items[span.path[0]].layer
        for index in range(len(span.path) - 1):
            for jog in self.steps[layer + index][span.edge]:
                y = self.tracks[layer + index] - TRACK * jog.track
                points += [(jog.start, y), (jog.stop, y)]
        return points + self._leaving(span.path[-1], span.bottom, down=False)[::-1]

    def _leaving(self, number: int, terminal: tuple[int, int], *, down: bool) -> list[Flat]:
        """From a terminal out of the room of its node; round the symbol where it is turned away."""
        drawn, (x, y) = self.drawn[number], self.spots[number]
        at = (x + drawn.at[terminal[1]][0], y + drawn.at[terminal[1]][1])
        if terminal[1] not in drawn.odd:
            return [at]
        room, lane = self.rooms[number], self._leaves(number, terminal)
        turn, out = (y + room.high - 4, y + room.low) if down else (y + room.low + 4, y + room.high)
        return [at, (at[0], turn), (lane, turn), (lane, out)]

    def _loop(self, number: int) -> list[Flat]:
        """A line from a node back to itself."""
        edge = self.scheme.edges[number]
        node = edge.upper[0]
        drawn, (x, y), room = self.drawn[node], self.spots[node], self.rooms[node]
        ends = []
        for _, index in (edge.upper, edge.lower):
            below = self.scheme.nodes[node].terminals[index].below
            at = (x + drawn.at[index][0], y + drawn.at[index][1])
            ends.append([at, (at[0], y + (room.low + 4 if below else room.high - 4))])
        lane = x + room.right - BESIDE
        between = [] if ends[0][1][1] == ends[1][1][1] else [(lane, ends[0][1][1]), (lane, ends[1][1][1])]
        return [*ends[0], *between, *ends[1][::-1]]


def _ends_of(places: list[float], reaches: list[Reach]) -> tuple[float, float]:
    """How far the diagram reaches to the left and to the right."""
    pairs = list(zip(places, reaches, strict=True))
    low = min((x - left for x, (left, _) in pairs), default=0.0)
    return low - EDGE, max((x + right for x, (_, right) in pairs), default=0.0) + EDGE


def _plain(points: list[Flat]) -> tuple[Flat, ...]:
    """Corners only: no point twice, none in the middle of a straight."""
    found: list[Flat] = []
    for point in ((round(x, 2), round(y, 2)) for x, y in points):
        if found and found[-1] == point:
            continue
        if len(found) > 1 and (
            found[-2][0] == found[-1][0] == point[0] or found[-2][1] == found[-1][1] == point[1]
        ):
            found.pop()
        found.append(point)
    return tuple(found)
