"""What holds a line between its ends: the builder's clamps or proposed ones, and the lengths left free."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.lay.clamps import Gap, gaps, propose
from firmpedal.model.circuit import ClampPlan
from firmpedal.quantity import Mark, Step, Value, exactly
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from firmpedal.lay.shape import Centreline
    from firmpedal.model.circuit import Line

# Room a cushioned clamp and a made-up nut take along the tube: our estimates, for placing only.
CLAMP_WIDTH = from_unit(0.5, "in")
CLEAR_OF_BENDS = from_unit(0.25, "in")
MADE_UP_NUT = from_unit(1.0, "in")


@dataclass(frozen=True, slots=True)
class Supports:
    """Clamp places from the line's first end, and the longest length between two supports."""

    stations: tuple[Value, ...]
    proposed: bool
    longest_gap: Value | None
    spacing: Value


def supports_of(line: Line, shape: Centreline | None, path: Value) -> Supports:
    """Place or check clamps; a line without a known length has no gaps that could be judged."""
    spacing = line.made_of.support_spacing
    length = shape.developed_length if shape else (path.middle if path.known else None)
    if length is None:
        return Supports((), line.clamps is ClampPlan.PROPOSE, None, spacing)
    proposed = line.clamps is ClampPlan.PROPOSE
    if proposed:
        stations = _proposal(shape, length, spacing)
    elif isinstance(line.clamps, ClampPlan):
        stations = ()
    else:
        known = [value.middle for value in line.clamps if value.known]
        stations = tuple(station for station in known if 0 <= station <= length)
    mark = Mark.DERIVED if proposed else Mark.MEASURED
    values = tuple(_station(line, n, station, mark) for n, station in enumerate(stations, 1))
    return Supports(values, proposed, _longest(line, gaps(stations, length)), spacing)


def _proposal(shape: Centreline | None, length: float, spacing: Value) -> tuple[float, ...]:
    if not spacing.known:
        return ()
    straights = shape.straights if shape else (length,)
    arcs = shape.arcs if shape else ()
    return propose(straights, arcs, spacing.low, CLEAR_OF_BENDS, CLAMP_WIDTH, MADE_UP_NUT)


def _station(line: Line, number: int, station: float, mark: Mark) -> Value:
    place = f"{line.place}.clamp {number}"
    return exactly(f"clamp {number} of {line.name}", Dimension.LENGTH, station, mark, place=place)


def _longest(line: Line, free: tuple[Gap, ...]) -> Value:
    worst = max(free, key=lambda gap: gap.length)
    step = Step("largest distance between neighbouring supports", (), "the fittings at the ends count")
    return Value(
        f"longest unsupported length of {line.name}",
        Dimension.LENGTH,
        (worst.length, worst.length),
        Mark.DERIVED,
        f"{line.place}.longest gap",
        step=step,
    )
