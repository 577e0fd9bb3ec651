"""How much stroke closes the pad gap and fills what swells, and what pad wear takes from the reservoir."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from firmpedal.analysis.linkage import pad_travel
from firmpedal.analysis.net_pressure import Push
from firmpedal.formulas.compliance import (
    fluid_compression,
    give_volume,
    growth_closed_ends,
    piston_volume,
    tube_volume,
    wall_growth_volume,
)
from firmpedal.formulas.hose import hose_expansion, hose_volume, measured_swelling
from firmpedal.formulas.levers import cylinder_stroke
from firmpedal.model.stock import Hose
from firmpedal.quantity import Mark, Missing, Value, apply, total
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.analysis.pressure import CylinderPressure
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.kinds import Caliper, MasterCylinder
    from firmpedal.model.stock import Fluid, Material
    from firmpedal.model.surroundings import Pedal

ROUNDING = 1e-6  # K; 176 F is 80 C
ROUNDS = 3  # a spring or a changing ratio and the stroke depend on each other; each round gains two digits

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


@dataclass(frozen=True, slots=True)
class StrokeBudget:
    """The stroke that one cylinder spends at one foot force, with no air counted.

    `gap`, `cold` and `hot` are strokes, `gaps` and `gives` the fluid that each caliper takes, `pads` how
    far the pad of the pedal goes, cold and hot. What the file does not give of free stroke, return
    spring, seal friction and of caliper and pads is left out.
    """

    cylinder: str
    foot: str
    gap: Value
    cold: Value
    hot: Value
    swells: tuple[Swell, ...]
    pressure: Value
    gaps: tuple[Value, ...]
    gives: tuple[Value, ...]
    pads: tuple[Value, Value]


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
        wall = _hose(line, stock, pressure, place)
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


def _hose(line: LaidLine, stock: Hose, pressure: Value, place: str) -> Value:
    """What a hose takes: by what was measured on it, else from nothing up to the limit of its standard."""
    label = f"swelling of {line.name}"
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


def give(caliper: Caliper, pressure: Value, foot: str) -> Value:
    """Fluid that follows caliper and pads as they give at one foot."""
    return apply(
        give_volume,
        f"give of {caliper.name} and its pads",
        place=f"{caliper.place}.give.{foot}",
        bore=caliper.pistons.bore,
        count=caliper.pistons.count_per_side,
        travel=caliper.gives.travel,
        pressure=pressure,
        reference_pressure=caliper.gives.under,
    )


def gives(caliper: Caliper) -> bool:
    """Whether the file tells what a caliper gives."""
    return caliper.gives.travel.known and caliper.gives.under.known


@dataclass(frozen=True)
class Pressing:
    """All that one pedal presses, by itself: what is filled, and how hot each line runs, None if cool.

    `ratio` is the pedal's at rest.
    """

    cylinder: MasterCylinder
    pedal: Pedal | None
    ratio: Value
    calipers: tuple[Caliper, ...]
    lines: tuple[LaidLine, ...]
    hot: dict[str, Value | None]
    fluid: Fluid | None

    def budget(self, force: Value, plain: Value, foot: str) -> StrokeBudget:
        """What is spent under a force.

        Args:
            force: On the pad.
            plain: The pressure, were there neither spring nor friction.
            foot: Its name.
        """
        found = self._at(plain, foot)
        if self.push.plain:
            return found
        for _ in range(ROUNDS):
            found = self._at(self.push.pressure(force, found.cold, foot), foot)
        return found

    def stroke_at(self, pressure: Value, words: str) -> Value:
        """Stroke that it takes to come to a pressure, cold; `words` say what for."""
        return self._at(pressure, words).cold

    @property
    def push(self) -> Push:
        """Foot, lever and cylinder."""
        return Push(self.cylinder, self.pedal, self.ratio)

    @cached_property
    def gaps(self) -> tuple[Value, ...]:
        """Fluid that closes the pad gaps, caliper by caliper."""
        return tuple(gap_volume(caliper) for caliper in self.calipers)

    def _at(self, pressure: Value, foot: str) -> StrokeBudget:
        swells = tuple(
            swell(
                line,
                pressure.named(
                    f"pressure in {line.name} at the {foot} foot", f"{line.place}.pressure.{foot}"
                ),
                foot,
                self.hot.get(line.name),
                self.fluid,
            )
            for line in self.lines
        )
        return self._summed(pressure, foot, swells)

    def _summed(self, pressure: Value, foot: str, swells: tuple[Swell, ...]) -> StrokeBudget:
        """Add up what the cylinder has to push out, cold and hot, and turn it into stroke and travel."""
        gaps = self.gaps
        given = tuple(give(caliper, pressure, foot) for caliper in self.calipers if gives(caliper))
        fluid = [item.fluid for item in swells]
        cold = self._stroke("cold", foot, [*gaps, *given, *fluid, *(item.wall for item in swells)])
        hot = self._stroke("hot", foot, [*gaps, *given, *fluid, *(item.hot_wall for item in swells)])
        pads = tuple(self._pad(stroke, name, foot) for name, stroke in (("cold", cold), ("hot", hot)))
        return StrokeBudget(
            self.cylinder.name,
            foot,
            self._stroke("gap", foot, list(gaps)),
            cold,
            hot,
            swells,
            pressure,
            gaps,
            given,
            (pads[0], pads[1]),
        )

    def _stroke(self, name: str, foot: str, parts: list[Value]) -> Value:
        """Stroke that pushes so much out; but for the gap alone, the free stroke comes on top if known."""
        place = f"{self.cylinder.place}.stroke used.{foot}"
        words = {
            "gap": "to close the pad gap",
            "cold": f"used at the {foot} foot",
            "hot": f"used at the {foot} foot, hot",
        }
        label = f"stroke of {self.cylinder.name} {words[name]}"
        pushed = apply(
            cylinder_stroke,
            label,
            place=f"{place}.{name}",
            volume=total(f"fluid pushed out ({name})", parts, place),
            bore=self.cylinder.bore,
        )
        free = self.cylinder.free_stroke
        if name == "gap" or not free.known:
            return pushed
        return total(label, (free, pushed.named(f"{label}, fluid alone")), f"{place}.{name}")

    def _pad(self, stroke: Value, name: str, foot: str) -> Value:
        where = f"{self.cylinder.place}.pad travel.{foot}.{name}"
        hot = ", hot" if name == "hot" else ""
        return pad_travel(self.pedal, self.ratio, stroke, f"travel of the pad at the {foot} foot{hot}", where)


def budgets(
    pressing: Pressing, made: CylinderPressure, forces: tuple[Value, ...]
) -> tuple[StrokeBudget, ...]:
    """The stroke budgets of one cylinder at each foot force."""
    if not pressing.calipers:
        return ()
    return tuple(
        pressing.budget(force, plain, foot)
        for force, plain, foot in zip(forces, made.pressures, ("normal", "hard", "panic"), strict=True)
    )
