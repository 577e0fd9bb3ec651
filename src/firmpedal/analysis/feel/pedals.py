"""Force against travel of one pedal in all its cases, from the aircraft's values."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.analysis.feel.cases import CASES, Warmth
from firmpedal.analysis.feel.filled import Filled, filled, terms_of
from firmpedal.analysis.feel.solve import at_force, at_stroke, at_travel
from firmpedal.analysis.feel.terms import curves, pressures_up_to
from firmpedal.analysis.linkage import pad_travel
from firmpedal.quantity import Mark, Value
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.analysis.feel.cases import Case
    from firmpedal.analysis.feel.solve import Pressed
    from firmpedal.analysis.feel.terms import Array, Curves, Terms
    from firmpedal.analysis.stroke import Pressing
    from firmpedal.quantity import Missing

POINTS = 65  # of a curve
AS_IT_IS = (Warmth.COLD, Warmth.FROST)  # worth a row where nothing gets soft with heat as well


@dataclass(frozen=True)
class Feel:
    """One pedal pressed by itself: its curves and where it comes to, two rows for each case.

    The first row of a case is as firm as its figures let it be, the second as soft. `bottoms` is the force
    at which the cylinder has no stroke left, `stops` that at which the pad meets its stop, both
    [rows, 1] and infinite where that never is.
    """

    pressing: Pressing
    filled: Filled
    cases: tuple[Case, ...]
    forces: tuple[Value, ...]
    curves: Curves
    pressed: Pressed
    bottoms: Array
    stops: Array | None

    def travel(self, case: Case, force: int) -> Value:
        """How far the pad goes in a case at one of the forces, were there no end to it."""
        return self._value(self.pressed.travel, case, force, f"pad travel, {case.words}")

    def stroke(self, case: Case, force: int) -> Value:
        """Stroke of the cylinder in a case at one of the forces, were there no end to it."""
        return self._value(self.pressed.stroke, case, force, f"stroke, {case.words}")

    def _value(self, found: Array, case: Case, force: int, label: str) -> Value:
        row = 2 * self.cases.index(case)
        ends = sorted(float(found[row + n, force]) for n in (0, 1))
        place = f"{self.pressing.cylinder.place}.feel"
        if not np.isfinite(ends).all():
            return Value(label, Dimension.LENGTH, None, Mark.DERIVED, place)
        return Value(label, Dimension.LENGTH, (ends[0], ends[1]), self.filled.mark, place)

    def force_of(self, found: Array, case: Case) -> tuple[float, float]:
        """The least and the greatest force of `bottoms` or `stops` for a case."""
        row = 2 * self.cases.index(case)
        firm, soft = float(found[row, 0]), float(found[row + 1, 0])
        return min(firm, soft), max(firm, soft)

    @property
    def full_travel(self) -> Value:
        """How far the pad goes until the cylinder bottoms."""
        cylinder = self.pressing.cylinder
        place = f"{cylinder.place}.pad travel.full"
        return pad_travel(
            self.pressing.pedal,
            self.pressing.ratio,
            cylinder.stroke,
            f"pad travel that bottoms {cylinder.name}",
            place,
        )


def feel(pressing: Pressing, forces: tuple[Value, ...]) -> Feel | tuple[Missing, ...]:
    """Work out one pedal's curves, or say what is missing for them.

    Args:
        pressing: What the pedal presses.
        forces: At which it is asked how far the pad goes, in rising order; the curves go up to the last.
    """
    found = filled(pressing)
    unknown = (*found.missing, *(missing for force in forces for missing in force.missing))
    if unknown or not forces:
        return tuple(dict.fromkeys(unknown))
    cases = tuple(
        case for case in CASES if not found.lacks(case) and (found.softens or case.warmth in AS_IT_IS)
    )
    terms = terms_of(found, cases)
    asked = np.array([[force.span[n % 2] for force in forces if force.span] for n in range(terms.cases)])
    pressed = at_force(terms, asked)
    line = curves(terms, pressures_up_to(pressed.pressure[:, -1], POINTS))
    stop = pressing.pedal.brake.travel_to_stop if pressing.pedal else None
    stops = None
    if stop is not None and stop.span is not None:
        stops = at_travel(terms, _ends(stop.span[::-1], terms))
    return Feel(pressing, found, cases, forces, line, pressed, at_stroke(terms, _full(terms)), stops)


def _ends(span: tuple[float, float], terms: Terms) -> Array:
    return np.array([[span[n % 2]] for n in range(terms.cases)])


def _full(terms: Terms) -> Array:
    """The end of the stroke, of a soft case the shorter one."""
    full = terms.full_stroke.copy()
    full[0::2], full[1::2] = terms.full_stroke[1::2], terms.full_stroke[0::2]
    return full[:, None]
