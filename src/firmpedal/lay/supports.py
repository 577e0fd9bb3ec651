"""What holds a line between its ends: the builder's clamps or proposed ones, and the lengths left free."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING

from firmpedal.lay.clamps import propose, settled
from firmpedal.model.circuit import ClampPlan
from firmpedal.quantity import Mark, Step, Value, all_missing, exactly
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from firmpedal.lay.shape import Centreline
    from firmpedal.model.circuit import Line
    from firmpedal.quantity import Missing

# Room a cushioned clamp and a made-up nut take along the tube: our estimates, for placing only.
CLAMP_WIDTH = from_unit(0.5, "in")
CLEAR_OF_BENDS = from_unit(0.25, "in")
MADE_UP_NUT = from_unit(1.0, "in")


@dataclass(frozen=True, slots=True)
class Supports:
    """Clamp places from the line's first end, and the longest length between two supports.

    `beyond` are clamps that the builder gives for places where there is no line.
    """

    stations: tuple[Value, ...]
    proposed: bool
    longest_gap: Value
    spacing: Value
    beyond: tuple[Value, ...] = ()


def supports_of(line: Line, shape: Centreline | None, length: Value) -> Supports:
    """Place or check the clamps of a line of a length; the fittings at its ends are supports too."""
    spacing, proposed = _spacing(line), line.clamps is ClampPlan.PROPOSE
    if not length.known:
        return Supports((), proposed, _unknown_gap(line, length.missing), spacing)
    given = _proposal(line, shape, length, spacing) if proposed else _declared(line)
    known = [station for station in given if station.known]
    beyond = tuple(station for station in known if station.low > length.high)
    on_it = sorted((one for one in known if one not in beyond), key=lambda station: station.middle)
    named = tuple(
        station.named(f"clamp {n} of {line.name}", f"{line.place}.clamp {n}")
        for n, station in enumerate(on_it, 1)
    )
    missing = all_missing(given)
    gap = _unknown_gap(line, missing) if missing else _longest(line, named, length, spacing)
    return Supports(named, proposed, gap, spacing, beyond)


def _spacing(line: Line) -> Value:
    """How far apart supports may be: by the table, and by its maker where that is less or no table has it."""
    table, told = line.made_of.support_spacing, line.clamp_spacing
    if told.known and (table.span is None or told.high < table.low):
        return told
    if table.known:
        return table
    place = f"{line.place}.clamp spacing"
    return replace(table, missing=tuple(replace(one, place=place) for one in table.missing))


def _declared(line: Line) -> tuple[Value, ...]:
    return () if isinstance(line.clamps, ClampPlan) else line.clamps


def _proposal(line: Line, shape: Centreline | None, length: Value, spacing: Value) -> tuple[Value, ...]:
    if not spacing.known:
        return ()
    straights, arcs = (shape.straights, shape.arcs) if shape else ((length.middle,), ())
    stations = propose(straights, arcs, spacing.low, CLEAR_OF_BENDS, CLAMP_WIDTH, MADE_UP_NUT)
    return tuple(
        exactly(f"clamp of {line.name}", Dimension.LENGTH, station, Mark.DERIVED) for station in stations
    )


def _longest(line: Line, stations: tuple[Value, ...], length: Value, spacing: Value) -> Value:
    start = exactly(f"first end of {line.name}", Dimension.LENGTH, 0.0, Mark.DERIVED)
    free = [
        (max(0.0, other.low - one.high), max(0.0, other.high - one.low))
        for one, other in pairwise((start, *stations, length))
    ]
    low, high = max(low for low, _ in free), max(high for _, high in free)
    for bound in spacing.span or ():  # clamps exactly as far apart as they may be are not too far apart
        low, high = settled(low, bound), settled(high, bound)
    inputs = tuple((f"c{n}", station) for n, station in enumerate(stations, 1))
    note = "the fittings at the ends count"
    step = Step("largest distance between neighbouring supports", (*inputs, ("L", length)), note)
    mark = max(Mark.DERIVED, length.mark, *(station.mark for station in stations))
    label, place = _GAP.format(line.name), f"{line.place}.longest gap"
    return Value(label, Dimension.LENGTH, (low, high), mark, place, step=step)


def _unknown_gap(line: Line, missing: tuple[Missing, ...]) -> Value:
    label, place = _GAP.format(line.name), f"{line.place}.longest gap"
    return Value(label, Dimension.LENGTH, None, Mark.MEASURED, place, missing=missing)


_GAP = "longest unsupported length of {}"
