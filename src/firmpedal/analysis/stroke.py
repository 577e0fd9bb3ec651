"""How much stroke closes the pad gap and fills what swells, and what pad wear takes from the reservoir."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.formulas.compliance import (
    fluid_compression,
    growth_closed_ends,
    piston_volume,
    tube_volume,
    wall_growth_volume,
)
from firmpedal.formulas.hose import hose_expansion, hose_volume
from firmpedal.formulas.levers import cylinder_stroke
from firmpedal.model.stock import Hose
from firmpedal.quantity import Mark, Missing, Value, apply, total
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.analysis.circuit import Reach
    from firmpedal.analysis.pressure import LinePressure
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.kinds import Caliper, MasterCylinder
    from firmpedal.model.stock import Fluid, Material

ROUNDING = 1e-6  # K; 176 F is 80 C


@dataclass(frozen=True, slots=True)
class Swell:
    """What one line takes up at a pressure: its wall, cold and hot, and its fluid."""

    line: str
    wall: Value
    hot_wall: Value
    fluid: Value


@dataclass(frozen=True, slots=True)
class StrokeBudget:
    """The stroke that one cylinder spends at one foot force, with no air counted."""

    cylinder: str
    foot: str
    gap: Value
    cold: Value
    hot: Value
    swells: tuple[Swell, ...]


@dataclass(frozen=True, slots=True)
class WearVolume:
    """Fluid that one caliper takes from the reservoir as its pads wear out."""

    caliper: str
    volume: Value


def gap_volume(caliper: Caliper) -> Value:
    """Fluid that closes the pad gap of one caliper."""
    return apply(
        piston_volume,
        f"fluid to close the gap of {caliper.name}",
        place=f"{caliper.place}.gap volume",
        bore=caliper.pistons.bore,
        count=caliper.pistons.count_per_side,
        travel=caliper.pad_gap,
    )


def wear_volume(caliper: Caliper) -> WearVolume:
    """Fluid that follows the wear of both pads of one caliper."""
    both = total(f"wear of both pads of {caliper.name}", (caliper.pad_wear, caliper.pad_wear), caliper.place)
    volume = apply(
        piston_volume,
        f"fluid that follows the pads of {caliper.name}",
        place=f"{caliper.place}.wear volume",
        bore=caliper.pistons.bore,
        count=caliper.pistons.count_per_side,
        travel=both,
    )
    return WearVolume(caliper.name, volume)


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
        wall = apply(
            hose_expansion,
            f"swelling of {line.name}",
            place=place,
            expansion=stock.expansion,
            length=line.order_length,
            pressure=pressure,
            reference_pressure=stock.expansion_pressure,
        )
        return Swell(
            line.name, wall, wall, _squeezed(line, volume, pressure, fluid, f"{line.place}.squeeze.{foot}")
        )
    walls = [
        _wall(line, volume, pressure, modulus, place)
        for modulus in (stock.material.elastic_modulus, _modulus_at(stock.material, hot, line.place))
    ]
    return Swell(
        line.name,
        walls[0],
        walls[1],
        _squeezed(line, volume, pressure, fluid, f"{line.place}.squeeze.{foot}"),
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
        growth=growth,
    )


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
    missing = hot.missing or (Missing(place, f"stiffness of {material.name} above its table"),)
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


def stroke_budget(
    cylinder: MasterCylinder, foot: str, calipers: tuple[Caliper, ...], swells: tuple[Swell, ...]
) -> StrokeBudget:
    """Add up what one cylinder has to push out, cold and hot, and turn it into stroke."""
    place = f"{cylinder.place}.stroke used.{foot}"
    gaps = [gap_volume(caliper) for caliper in calipers]
    fluid = [item.fluid for item in swells]
    sums = {
        "gap": gaps,
        "cold": [*gaps, *fluid, *(item.wall for item in swells)],
        "hot": [*gaps, *fluid, *(item.hot_wall for item in swells)],
    }
    strokes = {}
    for name, parts in sums.items():
        volume = total(f"fluid pushed out ({name})", parts, place)
        words = {
            "gap": "to close the pad gap",
            "cold": f"used at the {foot} foot",
            "hot": f"used at the {foot} foot, hot",
        }
        strokes[name] = apply(
            cylinder_stroke,
            f"stroke of {cylinder.name} {words[name]}",
            place=f"{place}.{name}",
            volume=volume,
            bore=cylinder.bore,
        )
    return StrokeBudget(cylinder.name, foot, strokes["gap"], strokes["cold"], strokes["hot"], swells)


def budgets(
    cylinder: MasterCylinder,
    reach: Reach,
    lines: dict[str, LaidLine],
    calipers: tuple[Caliper, ...],
    pressures: dict[str, LinePressure],
    hot: dict[str, Value | None],
    fluid: Fluid | None,
) -> tuple[StrokeBudget, ...]:
    """The stroke budgets of one cylinder at each foot force."""
    pressed = tuple(caliper for caliper in calipers if caliper.name in reach.calipers)
    if not pressed:
        return ()
    found = []
    for foot in ("normal", "hard", "panic"):
        swells = tuple(
            swell(lines[name], pressures[name].at(foot), foot, hot.get(name), fluid)
            for name in reach.lines
            if name in lines
        )
        found.append(stroke_budget(cylinder, foot, pressed, swells))
    return tuple(found)
