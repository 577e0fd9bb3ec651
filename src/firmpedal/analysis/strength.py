"""What tube, hose and plastic hold, cold and hot, against what comes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.formulas.margin import factor, kept
from firmpedal.formulas.temperature import interpolate
from firmpedal.formulas.tube_strength import barlow_pressure, burst_pressure, yield_pressure
from firmpedal.model.stock import Hose, LineKind
from firmpedal.quantity import Mark, Missing, Step, Value, apply, largest, unknown
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from firmpedal.analysis.pressure import LinePressure
    from firmpedal.lay.crossing import Crossing
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.circuit import Line
    from firmpedal.model.stock import Tube


NO_SHEET = "no published table goes so far. Lead it where it is cooler, or take metal or hose there"
METAL_HOLDS = from_unit(100, "degC")  # metal tube keeps its room-temperature strength: from memory


@dataclass(frozen=True, slots=True)
class TubeStrength:
    """First yield and burst of a metal tube, and how often they cover the panic and the hard foot.

    `temperature` is the hottest it meets, None where that is no more than its figures hold.
    """

    line: str
    yield_pressure: Value
    trade_yield_pressure: Value  # Barlow at the outside diameter: the trade's figure, for comparison
    burst_pressure: Value
    yield_factor: Value
    burst_factor: Value
    temperature: Value | None


@dataclass(frozen=True, slots=True)
class Rating:
    """The pressure a hose or plastic line is good for at the temperature it meets."""

    line: str
    cold: Value
    temperature: Value | None  # the hottest zone it runs through; None where it stays cool
    hot: Value


def tube_strength(
    line: LaidLine, pressure: LinePressure, temperature: Value | None = None
) -> TubeStrength | None:
    """Compute yield and burst of a metal tube; None for what is rated instead of computed."""
    stock = line.stock
    if isinstance(stock, Hose) or stock.kind is not LineKind.TUBE:
        return None
    place = line.place
    size = {"outside_diameter": stock.outside_diameter, "wall_thickness": stock.wall}
    material = stock.material
    first = apply(
        yield_pressure,
        f"first yield of {line.name}",
        place=f"{place}.yield",
        yield_strength=material.yield_strength,
        **size,
    )
    trade = apply(
        barlow_pressure,
        f"yield of {line.name} by the trade's formula",
        place=f"{place}.trade yield",
        strength=material.yield_strength,
        **size,
    )
    burst = apply(
        burst_pressure,
        f"burst of {line.name}",
        place=f"{place}.burst",
        ultimate_strength=material.ultimate_strength,
        **size,
    )
    yields = apply(
        factor,
        f"yield factor of {line.name} at the panic foot",
        place=f"{place}.yield factor",
        strength=first,
        load=pressure.at("panic"),
    )
    bursts = apply(
        factor,
        f"burst factor of {line.name} at the hard foot",
        place=f"{place}.burst factor",
        strength=burst,
        load=pressure.at("hard"),
    )
    return TubeStrength(line.name, first, trade, burst, yields, bursts, temperature)


def hot_for_metal(crossings: tuple[Crossing, ...]) -> tuple[Crossing, ...]:
    """The zones that may be too hot for the room-temperature strength of metal."""
    return tuple(
        item
        for item in crossings
        if item.zone.temperature.span is None or item.zone.temperature.high > METAL_HOLDS
    )


def rating(declared: Line, line: LaidLine, crossings: tuple[Crossing, ...]) -> Rating | None:
    """Find what a hose or plastic line is good for where it runs; None for metal tube."""
    stock = line.stock
    if isinstance(stock, Hose):
        cold = stock.operating_pressure.named(f"operating pressure of {line.name}", f"{line.place}.rating")
        temperature = hottest(declared, crossings)
        return Rating(line.name, cold, temperature, _hose_hot(line, stock, cold, temperature))
    if stock.kind is LineKind.PLASTIC:
        cold = stock.rated_pressure.named(f"rated pressure of {line.name}, cold", f"{line.place}.rating")
        temperature = hottest(declared, crossings)
        return Rating(line.name, cold, temperature, _plastic_hot(line, stock, cold, temperature))
    return None


def hottest(declared: Line, crossings: tuple[Crossing, ...]) -> Value | None:
    """The temperature a line meets: as declared for it, else of the hottest zone it runs through."""
    if declared.temperature.known or "temperature" in declared.written:
        return declared.temperature
    hot = [item for item in crossings if item.zone.heat]
    doubts = tuple(dict.fromkeys(missing for item in hot for missing in item.unsure_inside))
    if doubts:
        label = f"temperature that {declared.name} meets"
        return Value(label, Dimension.TEMPERATURE, None, Mark.MEASURED, declared.place, missing=doubts)
    met = [item.zone.temperature for item in hot if item.inside]
    if not met:
        return None
    return met[0] if len(met) == 1 else largest(f"hottest place of {declared.name}", met, declared.place)


def _hose_hot(line: LaidLine, stock: Hose, cold: Value, temperature: Value | None) -> Value:
    """A hose keeps its rating up to its temperature limit; beyond it nothing is published."""
    if temperature is None or _within(temperature, stock.temperature):
        return cold
    what = f"operating pressure of {line.name} where it runs hot"
    missing = temperature.missing or (
        Missing(f"{line.place}.made of", f"a hose for the heat {line.name} meets, by its maker's sheet"),
    )
    return Value(what, Dimension.PRESSURE, None, Mark.MEASURED, line.place, missing=missing)


def _within(temperature: Value, limits: Value) -> bool:
    if temperature.span is None or limits.span is None:
        return False
    return limits.low <= temperature.low and temperature.high <= limits.high


def _plastic_hot(line: LaidLine, stock: Tube, cold: Value, temperature: Value | None) -> Value:
    if temperature is None:
        return cold
    label = f"rated pressure of {line.name} where it runs hot"
    if temperature.span is None:
        return Value(label, Dimension.PRESSURE, None, Mark.MEASURED, line.place, missing=temperature.missing)
    share = _share_kept(stock, temperature, line.place)
    return apply(kept, label, place=f"{line.place}.hot rating", strength=cold, share=share)


def _share_kept(stock: Tube, temperature: Value, place: str) -> Value:
    """Read the published table of strength kept; outside it nothing is known."""
    label, table = "share of strength kept", stock.material.strength_kept
    if not table or temperature.high > table[-1][0]:
        what = f"strength of {stock.phrase} at that heat: {NO_SHEET}"
        return unknown(label, Dimension.NUMBER, f"{place}.made of", what)
    ends = [interpolate(max(bound, table[0][0]), table) for bound in (temperature.low, temperature.high)]
    step = Step("between the published points", (("T", temperature),))
    return Value(
        label,
        Dimension.NUMBER,
        (min(ends), max(ends)),
        max(Mark.DERIVED, temperature.mark),
        place,
        stock.material.strength_kept_source,
        step,
    )
