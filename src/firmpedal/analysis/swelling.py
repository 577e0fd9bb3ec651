"""What one line takes up under pressure: its wall, cold and hot, and its fluid."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.analysis.expansion import by_curve
from firmpedal.formulas.compliance import (
    fluid_compression,
    growth_closed_ends,
    tube_volume,
    wall_growth_volume,
)
from firmpedal.formulas.hose import hose_expansion, hose_volume, measured_swelling
from firmpedal.model.stock import Hose, LineKind
from firmpedal.quantity import Mark, Missing, Value, apply, unknown
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.lay.line import LaidLine
    from firmpedal.model.stock import Fluid, Material

ROUNDING = 1e-6  # K; 176 F is 80 C
FROST = 233.15  # K, -40 degrees Celsius and Fahrenheit
SMALL_GROWTH = 0.05  # of the bore's volume: strains of 2.5 %, and the wall's load is up by as much again

STIFF = (
    "how hot the line gets, by heat strips: no published table says how stiff {name} is at the heat given. "
    "Lead it where it is cooler, or ask its maker for a sheet at that temperature"
)


@dataclass(frozen=True, slots=True)
class Swell:
    """What one line takes up at a pressure: its wall, cold and hot, and its fluid."""

    line: str
    wall: Value
    hot_wall: Value
    fluid: Value


def line_volume(line: LaidLine) -> Value:
    """Fluid that fills one line."""
    stock, place = line.stock, f"{line.place}.volume"
    label = f"fluid in {line.name}"
    if isinstance(stock, Hose):
        return apply(hose_volume, label, place=place, bore=stock.bore, length=line.order_length)
    return apply(
        tube_volume,
        label,
        place=place,
        outside_diameter=stock.outside_diameter,
        wall_thickness=stock.wall,
        length=line.developed_length or line.path_length,
    )


def swell(line: LaidLine, pressure: Value, foot: str, hot: Value | None, fluid: Fluid | None) -> Swell:
    """What one line takes up at one foot; `hot` is the temperature it meets, None if it stays cool."""
    volume, stock = line_volume(line), line.stock
    place = f"{line.place}.swell.{foot}"
    if isinstance(stock, Hose):
        wall = _hose(line, stock, pressure, place)
        return Swell(
            line.name, wall, wall, _squeezed(line, volume, pressure, fluid, f"{line.place}.squeeze.{foot}")
        )
    walls = [_wall(line, volume, pressure, modulus, place) for modulus in _moduli(line, stock.material, hot)]
    return Swell(
        line.name,
        walls[0],
        walls[1],
        _squeezed(line, volume, pressure, fluid, f"{line.place}.squeeze.{foot}"),
    )


def frost_wall(line: LaidLine, pressure: Value, foot: str) -> Value:
    """What the wall of one line takes in frost, at -40 degrees of either scale.

    Metal is as it was. Plastic is by its row there, unknown without one. A hose gets stiffer, nobody has
    published by how much: from nothing to what it takes warm.
    """
    stock, place = line.stock, f"{line.place}.swell.{foot}.frost"
    if isinstance(stock, Hose):
        warm = _hose(line, stock, pressure, place)
        return warm if warm.span is None else replace(warm, span=(0.0, warm.high))
    modulus = stock.material.elastic_modulus
    if line.kind is LineKind.PLASTIC:
        rows = [value for kelvin, value in stock.material.modulus_at if abs(kelvin - FROST) < ROUNDING]
        what = f"stiffness of {stock.material.name} at -40 degrees"
        modulus = rows[0] if rows else unknown(what, Dimension.PRESSURE, line.place)
        modulus = _within(modulus, line.stiffness.cool, max)
    return _wall(line, line_volume(line), pressure, modulus, place)


def _hose(line: LaidLine, stock: Hose, pressure: Value, place: str) -> Value:
    """What a hose takes: by its curve or what was measured on it, else up to the limit of its standard."""
    label = f"swelling of {line.name}"
    if line.expansion_curve:
        return by_curve(line, pressure, label, place)
    if line.swells.volume.known and line.swells.under.known:
        return apply(
            measured_swelling,
            label,
            place=place,
            taken=line.swells.volume,
            pressure=pressure,
            reference_pressure=line.swells.under,
        )
    return apply(
        hose_expansion,
        label,
        place=place,
        expansion=stock.expansion,
        length=line.order_length,
        pressure=pressure,
        reference_pressure=stock.expansion_pressure,
    )


def _wall(line: LaidLine, volume: Value, pressure: Value, modulus: Value, place: str) -> Value:
    stock = line.stock
    assert not isinstance(stock, Hose)  # noqa: S101  hoses took the other way in swell
    growth = apply(
        growth_closed_ends,
        f"growth of {line.name}",
        place=place,
        pressure=pressure,
        outside_diameter=stock.outside_diameter,
        wall_thickness=stock.wall,
        modulus=modulus,
        poisson_ratio=stock.material.poisson_ratio,
    )
    return apply(
        wall_growth_volume,
        f"swelling of {line.name}",
        place=place,
        volume=volume,
        growth=_with_caution(growth),
    )


def _with_caution(growth: Value) -> Value:
    """A wall that grows so much gets thinner and wider as it goes: the equation leaves that out."""
    if growth.step is None or growth.span is None or growth.high <= SMALL_GROWTH:
        return growth
    share = f"{growth.high:.0%}".replace("%", " %")
    caution = (
        f"{growth.label}: up to {share} is beyond the small growth that the equation holds for; it takes more"
    )
    return replace(growth, step=replace(growth.step, caution=caution))


def _moduli(line: LaidLine, material: Material, hot: Value | None) -> tuple[Value, Value]:
    """How stiff the wall is, cool and where it is hottest: by the file, else by the catalogue."""
    cool, where_hot, own = material.elastic_modulus, _modulus_at(material, hot, line.place), line.stiffness
    if line.kind is not LineKind.PLASTIC:
        return cool, where_hot
    words, place = f"stiffness of the wall of {line.name}", f"{line.place}.stiffness"
    warm = hot is not None
    cool = (own.cool if own.cool.known else cool).named(words, f"{place}.cool")
    if not warm:
        return cool, cool
    hotter = own.hot if own.hot.known else _within(where_hot, cool, min)
    return cool, hotter.named(f"{words}, hot", f"{place}.hot")


def _within(value: Value, cool: Value, which: Callable[[float, float], float]) -> Value:
    """A range of all grades with what the grade's own figure says: hot no stiffer, in frost no softer."""
    if value.span is None or cool.span is None:
        return value
    return replace(value, span=(which(value.low, cool.low), which(value.high, cool.high)))


def _modulus_at(material: Material, hot: Value | None, place: str) -> Value:
    """The modulus at the nearest tabled temperature at or above the one met: softer, so safe."""
    if hot is None or not material.modulus_at:
        return material.elastic_modulus
    label = f"modulus of {material.name} where it runs hot"
    above = (
        [] if hot.span is None else [value for t, value in material.modulus_at if t >= hot.high - ROUNDING]
    )
    if above:
        return above[0]
    missing = hot.missing or (
        Missing(f"{place}.temperature", STIFF.format(name=material.name), Dimension.TEMPERATURE),
    )
    return Value(label, Dimension.PRESSURE, None, Mark.MEASURED, place, missing=missing)


def _squeezed(line: LaidLine, volume: Value, pressure: Value, fluid: Fluid | None, place: str) -> Value:
    label = f"fluid squeezed in {line.name}"
    if fluid is None:
        missing = (Missing("fluid", "which brake fluid is used"),)
        return Value(label, Dimension.VOLUME, None, Mark.MEASURED, place, missing=missing)
    return apply(
        fluid_compression,
        label,
        place=place,
        volume=volume,
        pressure=pressure,
        bulk_modulus=fluid.bulk_modulus,
    )
