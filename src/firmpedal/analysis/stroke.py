"""How much stroke closes the pad gap and fills what swells, and what pad wear takes from the reservoir."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from firmpedal.analysis.linkage import pad_travel
from firmpedal.analysis.net_pressure import Push
from firmpedal.analysis.swelling import swell
from firmpedal.formulas.compliance import give_volume, piston_volume
from firmpedal.formulas.levers import cylinder_stroke
from firmpedal.quantity import Value, apply, total

if TYPE_CHECKING:
    from firmpedal.analysis.pressure import CylinderPressure
    from firmpedal.analysis.swelling import Swell
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.kinds import Caliper, MasterCylinder
    from firmpedal.model.stock import Fluid
    from firmpedal.model.surroundings import Pedal

ROUNDS = 3  # a spring or a changing ratio and the stroke depend on each other; each round gains two digits


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

    def pushed_on(self, rise: Value, words: str) -> tuple[Value, Value]:
        """Fluid that it takes to raise a pressure that stands there already, cold and hot.

        The gap is closed by then. What gets firmer as it is pressed takes rather less than this.
        """
        found = self._at(rise, words)
        cold, hot = (
            [*found.gives, *(item.fluid for item in found.swells), *walls]
            for walls in ((item.wall for item in found.swells), (item.hot_wall for item in found.swells))
        )
        place = f"{self.cylinder.place}.pushed on.{words}"
        return (
            total("fluid that the rise takes", cold, f"{place}.cold"),
            total("fluid that the rise takes, hot", hot, f"{place}.hot"),
        )

    def strokes_at(self, pressure: Value, words: str) -> tuple[Value, Value]:
        """Strokes that it takes to come to a pressure, cold and hot."""
        found = self._at(pressure, words)
        return found.cold, found.hot

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
