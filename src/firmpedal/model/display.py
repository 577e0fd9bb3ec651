"""The builder's units on the way out: every figure is shown as the builder writes figures."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from firmpedal.hashing import HashKept, hash_kept
from firmpedal.model.space import AXIS_NAMES
from firmpedal.units import Dimension, UnitError, canonical_unit, from_unit, show, to_unit

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.model.aircraft import FileUnits
    from firmpedal.quantity import Value

INCH = {
    Dimension.LENGTH: "in",
    Dimension.ANGLE: "deg",
    Dimension.PRESSURE: "psi",
    Dimension.FORCE: "lbf",
    Dimension.VOLUME: "cu in",
    Dimension.TEMPERATURE: "degF",
    Dimension.MASS: "lb",
    Dimension.TORQUE: "lbf in",
    Dimension.LINEAR_DENSITY: "lb/ft",
    Dimension.DENSITY: "lb/in3",
    Dimension.ENERGY: "ft-lbf",
    Dimension.SPEED: "kt",
    Dimension.TIME: "s",
    Dimension.ACCELERATION: "ft/s^2",
    Dimension.POWER: "W",
    Dimension.SPECIFIC_HEAT: "J/kg K",
    Dimension.HEAT_TRANSFER: "W/m^2 K",
    Dimension.CONDUCTANCE: "W/K",
    Dimension.AREA: "sq in",
    Dimension.KINEMATIC_VISCOSITY: "mm^2/s",
    Dimension.SURFACE_TENSION: "mN/m",
    Dimension.FLOW: "cu in/s",
}
METRIC = {
    Dimension.LENGTH: "mm",
    Dimension.ANGLE: "deg",
    Dimension.PRESSURE: "bar",
    Dimension.FORCE: "N",
    Dimension.VOLUME: "ml",
    Dimension.TEMPERATURE: "degC",
    Dimension.MASS: "kg",
    Dimension.TORQUE: "N m",
    Dimension.LINEAR_DENSITY: "kg/m",
    Dimension.DENSITY: "kg/m3",
    Dimension.ENERGY: "kJ",
    Dimension.SPEED: "kt",
    Dimension.TIME: "s",
    Dimension.ACCELERATION: "m/s^2",
    Dimension.POWER: "W",
    Dimension.SPECIFIC_HEAT: "J/kg K",
    Dimension.HEAT_TRANSFER: "W/m^2 K",
    Dimension.CONDUCTANCE: "W/K",
    Dimension.AREA: "cm^2",
    Dimension.KINEMATIC_VISCOSITY: "mm^2/s",
    Dimension.SURFACE_TENSION: "mN/m",
    Dimension.FLOW: "ml/s",
}
METRIC_LENGTHS = ("mm", "cm", "m")
SMALL, TINY = 0.1, 1e-6
ON_THE_MARK = 1e-6
FASTEST_ON_WHEELS = (
    75.0  # m/s, 146 kt; sound is slower in no line whose bore grows by less than a half at 500 psi
)
FINE = 1e-3  # a range narrower than this share of the figure is shown as one figure


@hash_kept
@dataclass(frozen=True, slots=True)
class Display(HashKept):
    """Shows values in the builder's units; `fraction` is 16 or 32 for lengths in fractions of an inch."""

    units: tuple[tuple[Dimension, str], ...]
    fraction: int | None = None

    def unit(self, dimension: Dimension) -> str | None:
        return next((unit for each, unit in self.units if each is dimension), None)

    def _unit_for(self, number: float, dimension: Dimension) -> str | None:
        """The unit of a figure; a speed that nothing on wheels has is that of sound, and none for knots."""
        unit = self.unit(dimension)
        if dimension is Dimension.SPEED and abs(number) > FASTEST_ON_WHEELS:
            return "m/s" if self.unit(Dimension.LENGTH) in METRIC_LENGTHS else "ft/s"
        return unit

    def number(self, number: float, dimension: Dimension) -> str:
        """Show one SI number."""
        return self._in_unit(number, self._unit_for(number, dimension))

    def _in_unit(self, number: float, unit: str | None) -> str:
        if unit is None:
            return f"{number:.4g}"
        shown = to_unit(number, unit)
        if self.fraction and unit == "in" and _on_tape(shown, self.fraction):
            return show(number, unit, fraction=self.fraction)
        return show(number, unit, decimals=_decimals(shown))

    def round(self, number: float, dimension: Dimension) -> str:
        """Show one SI number that is round in some unit, without the zeros behind it."""
        unit = self.unit(dimension) or ""
        return f"{round(to_unit(number, unit), 2):g} {unit}"

    def feet(self, count: float) -> str:
        """Show a length that is a round number of feet: as such beside inches, else in the builder's unit."""
        unit = self.unit(Dimension.LENGTH)
        return (
            f"{count:g} ft" if unit in ("in", "ft") else self.number(from_unit(count, "ft"), Dimension.LENGTH)
        )

    def point(self, point: tuple[float, float, float]) -> str:
        """Show a point as the file writes it: [aft, right, up] in the builder's unit of length."""
        return f"[{', '.join(self._bare(point))}]"

    def spot(self, point: tuple[float, float, float]) -> str:
        """Say where a point is, for whoever does not see the file: `aft 30.00, right -2.00, up 3.00 in`."""
        ways = (f"{way} {number}" for way, number in zip(AXIS_NAMES, self._bare(point), strict=True))
        return f"{', '.join(ways)} {self.unit(Dimension.LENGTH)}"

    def _bare(self, point: tuple[float, float, float]) -> tuple[str, ...]:
        unit = self.unit(Dimension.LENGTH)
        return tuple(self.number(one, Dimension.LENGTH).removesuffix(f" {unit}") for one in point)

    @property
    def decimals(self) -> Display:
        """The same units without fractions, for sums that have to add up as printed."""
        return replace(self, fraction=None)

    def value(self, value: Value) -> str:
        """Show a value: one figure, a range, or the word unknown."""
        return "unknown" if value.span is None else self._range(value.span, value.dimension)

    @lru_cache(maxsize=16384)  # noqa: B019  there are as many displays as ways to write units
    def _range(self, span: tuple[float, float], dimension: Dimension) -> str:
        least, most = span
        if most - least <= FINE * abs(most):
            return self.number((least + most) / 2, dimension)
        unit = self._unit_for(most, dimension)
        low, high = (self._in_unit(bound, unit) for bound in span)
        if unit is None:
            return f"{low} to {high}"
        return low if low == high else f"{low.removesuffix(' ' + unit)} to {high}"


def _on_tape(number: float, fraction: int) -> bool:
    """Whether a tape's fraction tells a length well enough: long, or on the fraction itself."""
    steps = number * fraction
    return abs(number) >= 1 or (round(steps) != 0 and abs(steps - round(steps)) < ON_THE_MARK)


def _decimals(number: float) -> int | None:
    """Two figures for a small number such as a wall of .035, thousandths for one like 5/8."""
    if number == 0 or abs(number) < TINY or abs(number) >= 1:
        return None
    if abs(number) < SMALL:
        return 1 - math.floor(math.log10(abs(number)))
    hundredths = abs(number) * 100
    return None if abs(hundredths - round(hundredths)) < ON_THE_MARK else 3


def display_of(units: FileUnits) -> Display:
    """Take the file's units, and for what it leaves out the usual ones of its length unit."""
    usual = METRIC if units.length in METRIC_LENGTHS else INCH
    chosen = {dimension: _chosen(units, dimension, unit) for dimension, unit in usual.items()}
    fraction = {"16": 16, "1/16": 16, "32": 32, "1/32": 32}.get(units.fractions)
    return Display(tuple(chosen.items()), fraction)


def usual_display(length: str, fraction: int | None = None) -> Display:
    """The usual units that go with a unit of length, whatever a file says."""
    usual = METRIC if length in METRIC_LENGTHS else INCH
    return Display(tuple(usual.items()), fraction)


def _chosen(units: FileUnits, dimension: Dimension, usual: str) -> str:
    written = getattr(units, dimension.value, "") if dimension.value.isidentifier() else ""
    try:
        return canonical_unit(written, dimension) if written else usual
    except UnitError:
        return usual


def count_of(number: int, noun: str) -> str:
    """How many of something: `1 thing`, `3 things`, `2 WARNINGS`."""
    return f"{number} {noun}" if number == 1 else f"{number} {noun}{'S' if noun.isupper() else 's'}"


def listed(names: Iterable[str]) -> str:
    """Names as in a sentence: `a, b and c`; nothing for none."""
    *rest, last = list(names) or [""]
    return f"{', '.join(rest)} and {last}" if rest else last
