"""What stands the heat, and what does not: fluid, seals, and plastic line at the caliper."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.analysis.pressure import FEET
from firmpedal.formulas.margin import kept
from firmpedal.formulas.temperature import interpolate
from firmpedal.model.component import Seals
from firmpedal.model.stock import LineKind, Tube
from firmpedal.quantity import Answer, Mark, Step, Value, apply, exactly, unknown
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from firmpedal.analysis.pressure import LinePressure
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.circuit import Line
    from firmpedal.model.kinds import Caliper
    from firmpedal.model.stock import Fluid

FLUID, SEALS, PLASTIC = "fluid", "seals", "plastic"
# Highest temperatures of rubber, by catalogue pages; of ethylene propylene, common practice.
SEAL_LIMITS: dict[Seals, tuple[float, str, Mark]] = {
    Seals.NITRILE: (250.0, "o-ring-temperatures", Mark.READ),
    Seals.FLUOROCARBON: (440.0, "o-ring-temperatures", Mark.READ),
    Seals.ETHYLENE_PROPYLENE: (300.0, "common-practice", Mark.MEMORY),
}


@dataclass(frozen=True, slots=True)
class HeatLimit:
    """One thing that must stand the heat: what is found, what is allowed, and which way round is good."""

    kind: str
    words: str
    place: str
    found: Value
    allowed: Value
    relation: str
    at_least: bool = False  # it gets as hot as what is found, and nobody knows how much hotter

    def answer(self) -> Answer:
        """Whether it surely holds, surely not, or neither."""
        if self.relation == "at least":
            kept = self.found.at_least(self.allowed)
        else:
            kept = self.found.at_most(self.allowed)
        return Answer.UNKNOWN if self.at_least and kept is Answer.YES else kept


def limits(
    aircraft: Aircraft,
    caliper: Caliper,
    hottest: tuple[Value, Value, Value],
    pressures: Mapping[str, LinePressure],
    *,
    at_least: bool,
) -> tuple[HeatLimit, ...]:
    """Hold the greatest temperatures of caliper, fluid and line against what is there.

    Args:
        aircraft: The aircraft.
        caliper: The caliper.
        hottest: Greatest temperatures of caliper, fluid and the end of the line.
        pressures: Of each line by name.
        at_least: Whether the temperatures are no bounds upwards, as a trial contradicts the reckoning.
    """
    body, fluid, line = hottest
    found = [
        HeatLimit(
            FLUID, f"fluid in {caliper.name}", caliper.place, fluid, fluid_limit(aircraft.fluid), "at most"
        ),
        HeatLimit(SEALS, f"seals of {caliper.name}", caliper.place, body, seal_limit(caliper), "at most"),
        *_plastics(aircraft, caliper, line, pressures),
    ]
    return tuple(replace(each, at_least=at_least) for each in found)


def fluid_limit(fluid: Fluid | None) -> Value:
    """Where the fluid boils when it has taken up water; for fluids that do not boil so, its service limit."""
    label = "what the fluid stands"
    if fluid is None:
        return unknown(label, Dimension.TEMPERATURE, "fluid", "which brake fluid is used")
    if fluid.boiling_point.known:
        return fluid.boiling_point.named(f"boiling point of {fluid.name}, wet")
    service = fluid.service_temperature
    if service.span is None:
        return unknown(label, Dimension.TEMPERATURE, "fluid", f"up to what temperature {fluid.name} is used")
    named = f"service limit of {fluid.name}"
    return exactly(named, Dimension.TEMPERATURE, service.high, service.mark, source=service.source)


def seal_limit(caliper: Caliper) -> Value:
    """The greatest temperature of its seals' rubber."""
    label = f"what the seals of {caliper.name} stand"
    if caliper.seals is None:
        what = f"what the seals of {caliper.name} are made of: its leaflet or its maker"
        return unknown(label, Dimension.TEMPERATURE, f"{caliper.place}.seals", what)
    degrees, source, mark = SEAL_LIMITS[caliper.seals]
    label = f"limit of {caliper.seals.value} seals"
    return exactly(label, Dimension.TEMPERATURE, from_unit(degrees, "degF"), mark, source=source)


def _plastics(
    aircraft: Aircraft, caliper: Caliper, warmth: Value, pressures: Mapping[str, LinePressure]
) -> Iterator[HeatLimit]:
    for line in aircraft.lines:
        heads = {end.partition(".")[0] for end in (line.start, line.finish)}
        stock = line.stock
        if isinstance(stock, Tube) and stock.kind is LineKind.PLASTIC and caliper.name in heads:
            holds = plastic_strength(line, stock, warmth)
            pressure = _that_decides(line, holds, pressures.get(line.name))
            yield HeatLimit(
                PLASTIC, f"{line.name} at {caliper.name}", line.place, holds, pressure, "at least"
            )


def _that_decides(line: Line, holds: Value, pressure: LinePressure | None) -> Value:
    """The pressure of the lightest foot that it surely does not hold, else that of the panic foot.

    As the strength of a cold line is held against every foot, so is that of a hot one.
    """
    if pressure is None:
        words = f"which master cylinder presses on {line.name}"
        return unknown("pressure at the panic foot", Dimension.PRESSURE, line.place, words)
    feet = {foot: pressure.at(foot).named(f"pressure at the {foot} foot") for foot in FEET}
    broken = (value for value in feet.values() if holds.at_least(value) is Answer.NO)
    return next(broken, feet[FEET[-1]])


def plastic_strength(line: Line, stock: Tube, warmth: Value) -> Value:
    """What a plastic line is good for at a temperature; beyond its table, it may hold nothing."""
    label, place = f"rating of {line.name} where it is hottest", f"{line.place}.heat rating"
    share = _share(stock, warmth, place)
    return apply(kept, label, place=place, strength=stock.rated_pressure, share=share)


def _share(stock: Tube, warmth: Value, place: str) -> Value:
    """The published share of strength kept; nothing is known beyond the table, so nothing is promised."""
    label, table = "share of strength kept", stock.material.strength_kept
    if not table:
        return unknown(label, Dimension.NUMBER, place, f"strength of {stock.phrase} when it is hot")
    if warmth.span is None:
        return Value(label, Dimension.NUMBER, None, Mark.MEASURED, place, missing=warmth.missing)
    first, last = table[0][0], table[-1][0]
    ends = [
        0.0 if bound > last else interpolate(max(bound, first), table) for bound in (warmth.high, warmth.low)
    ]
    words = "between the published points; beyond the last one nothing is promised"
    mark, source = max(Mark.DERIVED, warmth.mark), stock.material.strength_kept_source
    step = Step(words, (("T", warmth),))
    return Value(label, Dimension.NUMBER, (min(ends), max(ends)), mark, place, source, step)
