"""What is the same in two evaluations of one file, by what things are and not by their names."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.model.aircraft import find
from firmpedal.model.fields import Declared
from firmpedal.model.stock import Hose
from firmpedal.quantity import Value

if TYPE_CHECKING:
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.circuit import Bulkhead
    from firmpedal.model.component import BaseComponent
    from firmpedal.model.space import Position
    from firmpedal.model.stock import Stock
    from firmpedal.pipeline import Evaluation

# What makes a component another one to buy. What was measured on it, and where, does not.
IDENTITY = ("kind", "bore", "stroke", "pistons", "capacity")
ROUNDING = 7  # decimals of a metre: far below any tape


@dataclass(frozen=True, slots=True)
class Sameness:
    """Names before and after of what is unchanged: lines in pairs, components and bulkheads by name."""

    lines: tuple[tuple[str, str], ...]
    components: frozenset[str]
    bulkheads: frozenset[str]

    @property
    def old_lines(self) -> frozenset[str]:
        return frozenset(old for old, _ in self.lines)

    @property
    def new_lines(self) -> frozenset[str]:
        return frozenset(new for _, new in self.lines)


def sameness(before: Evaluation, after: Evaluation) -> Sameness:
    """Find what may stay as it is on the way from one evaluation to another."""
    old, new = before.aircraft, after.aircraft
    components = frozenset(
        one.name
        for one in old.components
        if (other := find(new.components, one.name)) and same_component(one, other)
    )
    bulkheads = frozenset(
        stood.name
        for stood in old.bulkheads
        if (stands := find(new.bulkheads, stood.name)) and _same_bulkhead(stood, stands)
    )
    return Sameness(_same_lines(before, after), components, bulkheads)


def _same_lines(before: Evaluation, after: Evaluation) -> tuple[tuple[str, str], ...]:
    """Pair lines that are the same thing in the same place, those of one name first."""
    waiting: dict[object, list[str]] = {}
    for line in before.laid:
        waiting.setdefault(_line_key(before, line), []).append(line.name)
    pairs = []
    for line in after.laid:
        names = waiting.get(_line_key(after, line), [])
        if names:
            name = line.name if line.name in names else names[0]
            names.remove(name)
            pairs.append((name, line.name))
    return tuple(pairs)


def _line_key(evaluation: Evaluation, line: LaidLine) -> tuple[object, ...]:
    declared = find(evaluation.aircraft.lines, line.name)
    assert declared is not None  # noqa: S101  what is laid was declared
    made = (declared.flare, line.tube.radius.span if line.tube else None, span_of(line.order_length))
    points = tuple(_point_key(point) for point in line.points)
    return (declared.start, declared.finish, stock_key(line.stock), *made, points)


def stock_key(stock: Stock) -> tuple[object, ...]:
    """What a line is made of, however the builder spells it."""
    if isinstance(stock, Hose):
        return (stock.kind, stock.specification, stock.dash)
    return (stock.kind, stock.material.name, stock.outside_diameter.span, stock.wall.span)


def _point_key(point: Position) -> tuple[object, ...]:
    return tuple(span_of(value) for value in point.coordinates)


def span_of(value: Value) -> tuple[float, ...] | None:
    """A value's range without the last digits of a float."""
    return None if value.span is None else tuple(round(bound, ROUNDING) for bound in value.span)


def same_component(one: BaseComponent, other: BaseComponent) -> bool:
    """Whether two declarations of one name are the same component, with ports of the same threads."""
    if any(_differ(getattr(one, name, None), getattr(other, name, None)) for name in IDENTITY):
        return False
    threads = {port.name: port.thread.interface for port in one.ports}
    return all(threads.get(port.name) in (None, port.thread.interface) for port in other.ports)


def _differ(one: object, other: object) -> bool:
    """Whether two figures surely differ: one that nobody measured is taken for the same."""
    if isinstance(one, Value) and isinstance(other, Value):
        return one.known and other.known and span_of(one) != span_of(other)
    if isinstance(one, Declared) and isinstance(other, Declared):
        names = type(one).model_fields
        return any(_differ(getattr(one, name), getattr(other, name, None)) for name in names)
    return isinstance(one, str) and one != other


def _same_bulkhead(one: Bulkhead, other: Bulkhead) -> bool:
    """Whether a bulkhead stands where it stood, with the same body through the same thing."""
    if (one.form, one.through_panel) != (other.form, other.through_panel):
        return False
    sides = {side.name: _point_key(side.seat) for side in one.sides}
    return _point_key(one.at) == _point_key(other.at) and sides == {
        side.name: _point_key(side.seat) for side in other.sides
    }
