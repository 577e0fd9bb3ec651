"""Figures for the bench: decimals to reckon with beside fractions to find on a tape."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.model.display import Display
from firmpedal.units import Dimension, from_unit, show, show_span, to_unit

if TYPE_CHECKING:
    from firmpedal.quantity import Value

TAPE = 32  # parts of an inch on a builder's tape
HALF_MILLIMETRE = 0.0005  # what can be seen between two marks of a metric one
MOST_DECIMALS = 4
# By how much of itself rounding may change a figure in a sum.
LARGEST_ERROR = {Dimension.LENGTH: 5e-4, Dimension.VOLUME: 5e-3, Dimension.MASS: 5e-3}


@dataclass(frozen=True)
class FineDisplay(Display):
    """Shows small figures with more decimals than usual, so that a sum can be followed by hand."""

    def number(self, number: float, dimension: Dimension) -> str:
        """Show one SI number."""
        return self._shown(number, dimension, self._decimals(number, dimension))

    def _decimals(self, number: float, dimension: Dimension) -> int:
        """How many decimals a figure needs, 0 where the usual ones will do."""
        unit = self.unit(dimension)
        if unit is None or dimension not in LARGEST_ERROR or number == 0:
            return 0
        exact, error = to_unit(number, unit), LARGEST_ERROR[dimension]
        if _near(show(number, unit), unit, exact, error):
            return 0
        tries = range(1, MOST_DECIMALS + 1)
        enough = (n for n in tries if _near(show(number, unit, decimals=n), unit, exact, error))
        return next(enough, MOST_DECIMALS)

    def _shown(self, number: float, dimension: Dimension, decimals: int) -> str:
        unit = self.unit(dimension)
        if unit is None or decimals == 0:
            return super().number(number, dimension)
        return show(number, unit, decimals=decimals)

    def value(self, value: Value) -> str:
        """Show a value: one figure, a range, or the word unknown."""
        if value.span is None:
            return "unknown"
        decimals = max(self._decimals(bound, value.dimension) for bound in value.span)
        low, high = (self._shown(bound, value.dimension, decimals if bound else 0) for bound in value.span)
        if low == high:
            return low
        unit = self.unit(value.dimension)
        return f"{low.removesuffix(f' {unit}')} to {high}"


def _near(text: str, unit: str, exact: float, error: float) -> bool:
    shown = float(text.removesuffix(f" {unit}").replace(",", ""))
    return math.isclose(shown, exact, rel_tol=error)


def fine(display: Display) -> FineDisplay:
    """The same units with more decimals where a figure is small, and no fractions."""
    return FineDisplay(display.units)


def decimals(value: Value, display: Display) -> str:
    """A length with decimals, whatever the file asks for: `39.66 to 39.67 in`."""
    return Display(display.units).value(value)


def on_tape(value: Value, display: Display) -> str:
    """A length in inches to the nearest 1/32, as a tape shows it; other units as they are."""
    if value.span is None or display.unit(Dimension.LENGTH) != "in":
        return display.value(value)
    return show_span(value.span, "in", fraction=TAPE)


def to_mark(value: Value, display: Display) -> str:
    """A length to mark with pen and tape: to 1/32 in or half a millimetre."""
    if value.span is None or display.unit(Dimension.LENGTH) != "mm":
        return on_tape(value, display)
    low, high = (round(bound / HALF_MILLIMETRE) * HALF_MILLIMETRE for bound in value.span)
    return show_span((low, high), "mm", decimals=1)


def mark_step(display: Display) -> float:
    """How finely `to_mark` shows a length [m]."""
    unit = display.unit(Dimension.LENGTH)
    if unit == "in":
        return from_unit(1 / TAPE, unit)
    return HALF_MILLIMETRE if unit == "mm" else from_unit(0.01, unit or "m")


def both(value: Value, display: Display) -> str:
    """A length as decimals and, in inches, beside it as a fraction where that says something else."""
    plain, tape = decimals(value, display), on_tape(value, display)
    alike = plain.replace(".00", "") == tape.replace(".00", "")
    return plain if alike or value.span is None else f"{plain} ({tape})"


def bare(value: Value, display: Display) -> str:
    """A figure without its unit, for a row of figures that share one."""
    return display.value(value).removesuffix(f" {display.unit(value.dimension)}")


def degrees_of(angle: float) -> str:
    """A plain angle in whole degrees: how far a fitting turns the line."""
    return f"{show(angle, 'deg', decimals=0).removesuffix(' deg')}\u00b0"


def degrees(value: Value, *, signed: bool = False) -> str:
    """An angle with the sign of degrees, as a bender is marked."""
    if value.span is None:
        return "unknown"
    text = show_span(value.span, "deg").removesuffix(" deg")
    plus = "+" if signed and value.middle > 0 else ""
    return f"{plus}{text}\u00b0"
