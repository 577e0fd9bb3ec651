"""Each node's symbol with its connections in the order of what they lead to."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.model.aircraft import find
from firmpedal.model.component import SideOf
from firmpedal.model.kinds import Reservoir
from firmpedal.quantity import Answer
from firmpedal.report.flow import supplied
from firmpedal.report.schematic.nodes import Kind
from firmpedal.report.symbols.caliper import caliper
from firmpedal.report.symbols.master_cylinder import master_cylinder
from firmpedal.report.symbols.parking_valve import parking_valve
from firmpedal.report.symbols.passage import meeting, tee, through_plate, union
from firmpedal.report.symbols.reservoir import reservoir

if TYPE_CHECKING:
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.report.placing import Flat
    from firmpedal.report.schematic.layers import Rows
    from firmpedal.report.schematic.nodes import Node, Scheme
    from firmpedal.report.symbols.shape import Symbol


@dataclass(frozen=True)
class Drawn:
    """A symbol about its own middle, and where each terminal of its node is; `odd` ones are turned away.

    An odd terminal is on the other side of the symbol than the row its line comes from.
    """

    symbol: Symbol
    at: tuple[Flat, ...]
    odd: tuple[int, ...]


def drawn_nodes(aircraft: Aircraft, scheme: Scheme, rows: Rows, order: list[list[int]]) -> tuple[Drawn, ...]:
    """Choose the symbol of every node."""
    leads = _leads(scheme, rows, order)
    odd = _odd(scheme, rows)
    return tuple(
        _drawn(aircraft, node, [leads.get((number, n), 0.0) for n in range(len(node.terminals))],
               tuple(n for n in range(len(node.terminals)) if (number, n) in odd))
        for number, node in enumerate(scheme.nodes)
    )  # fmt: skip


def _leads(scheme: Scheme, rows: Rows, order: list[list[int]]) -> dict[tuple[int, int], float]:
    """For each terminal, how far right its line goes: the share of the row where it leads."""
    place = {number: (n + 0.5) / len(row) for row in order for n, number in enumerate(row)}
    found = {}
    for span in rows.spans:
        found[span.top] = place[span.path[1]]
        found[span.bottom] = place[span.path[-2]]
    for number in rows.loops:
        edge = scheme.edges[number]
        found[edge.upper] = found[edge.lower] = 0.5
    return found


def _odd(scheme: Scheme, rows: Rows) -> set[tuple[int, int]]:
    tops = {span.top for span in rows.spans}
    bottoms = {span.bottom for span in rows.spans}
    return {
        (number, n)
        for number, node in enumerate(scheme.nodes)
        for n, terminal in enumerate(node.terminals)
        if ((number, n) in tops and not terminal.below) or ((number, n) in bottoms and terminal.below)
    }


def _drawn(aircraft: Aircraft, node: Node, leads: list[float], odd: tuple[int, ...]) -> Drawn:
    sides = [
        sorted(
            (n for n, each in enumerate(node.terminals) if each.below is below), key=lambda n: (leads[n], n)
        )
        for below in (False, True)
    ]
    if node.kind is Kind.VALVE:
        return _valve(node, leads, odd)
    symbol = _symbol(aircraft, node, *map(len, sides))
    at: dict[int, Flat] = {}
    for numbers, places in zip(sides, (symbol.uppers, symbol.lowers), strict=True):
        at |= {n: places[min(index, len(places) - 1)] for index, n in enumerate(numbers)}
    return Drawn(symbol, tuple(at[n] for n in range(len(node.terminals))), odd)


def _valve(node: Node, leads: list[float], odd: tuple[int, ...]) -> Drawn:
    """A valve keeps the two ends of a way one above the other."""
    ways = sorted({each.way for each in node.terminals})
    means = {
        way: [leads[n] for n, each in enumerate(node.terminals) if each.way == way] or [0.0] for way in ways
    }
    ways.sort(key=lambda way: (round(sum(means[way]) / len(means[way]), 9), way))
    symbol = parking_valve(max(len(ways), 1))
    at = tuple(
        (symbol.lowers if each.below else symbol.uppers)[ways.index(each.way)] for each in node.terminals
    )
    return Drawn(symbol, at, odd)


def _symbol(aircraft: Aircraft, node: Node, uppers: int, lowers: int) -> Symbol:
    if node.kind is Kind.RESERVOIR:
        tank = find(aircraft.components, node.name)
        vented = not isinstance(tank, Reservoir) or tank.vented is not Answer.NO
        return reservoir(max(lowers, 1), vented=vented)
    if node.kind is Kind.CYLINDER:
        part = next(each for each in aircraft.cylinders if each.name == node.name)
        own = supplied(aircraft, part)
        return master_cylinder(uppers, lowers, own_reservoir=own, pedal_right=node.side is SideOf.RIGHT)
    if node.kind is Kind.CALIPER:
        return caliper(uppers, lowers, disc_left=node.side is SideOf.LEFT)
    if node.kind is Kind.TEE:
        return tee(uppers, lowers)
    return {Kind.PLATE: through_plate, Kind.UNION: union, Kind.MEETING: meeting}[node.kind]()
