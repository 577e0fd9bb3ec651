"""How thick a fluid is at a temperature, from the catalogue's points, joined piece by piece."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from firmpedal.formulas.viscosity import viscosity_between, walther_number
from firmpedal.quantity import Mark, Missing, Step, Value, apply, exactly
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.model.stock import Fluid

Piece = tuple[tuple[float, Value], tuple[float, Value]]
ROUNDING = 1e-6  # K; 68 F is 20 C


def viscosity_at(fluid: Fluid, temperature: Value, place: str = "fluid.viscosity") -> Value:
    """The kinematic viscosity at a temperature, or over a range of it; unknown beyond the known points."""
    label = f"viscosity of {fluid.name}"
    if not temperature.known:
        return _not_known(label, place, temperature.missing)
    if len(fluid.viscosity_at) < 2:
        return _not_known(label, place, (Missing("fluid", f"{label} at two temperatures"),))
    cold, warm = (_piece(fluid, number) for number in (temperature.low, temperature.high))
    if cold is None or warm is None:
        reach = f"{label} where it is colder or warmer than its table"
        return _not_known(label, place, (Missing("fluid", reach),))
    if cold == warm:
        return _between(cold, temperature, label, place)
    ends = [
        _between(piece, _end(temperature, number), label, place)
        for piece, number in ((cold, temperature.low), (warm, temperature.high))
    ]
    step = Step(
        "x1 to x2", (("x1", ends[1]), ("x2", ends[0])), "colder and warmer than a point that is known"
    )
    span = (ends[1].low, ends[0].high)
    mark = max(end.mark for end in ends)
    return Value(label, Dimension.KINEMATIC_VISCOSITY, span, mark, place, ends[0].source, step)


def _piece(fluid: Fluid, kelvin: float) -> Piece | None:
    found = (
        piece
        for piece in pairwise(fluid.viscosity_at)
        if piece[0][0] - ROUNDING <= kelvin <= piece[1][0] + ROUNDING
    )
    return next(found, None)


def _end(temperature: Value, kelvin: float) -> Value:
    return Value(temperature.label, Dimension.TEMPERATURE, (kelvin, kelvin), temperature.mark)


def _between(piece: Piece, temperature: Value, label: str, place: str) -> Value:
    (colder, thick), (warmer, thin) = piece
    points = {
        name: exactly(f"{name} of two temperatures", Dimension.TEMPERATURE, kelvin, Mark.READ)
        for name, kelvin in (("colder", colder), ("warmer", warmer))
    }
    heights = {
        name: apply(walther_number, f"height on the chart, {value.label}", place=place, viscosity=value)
        for name, value in (("colder_number", thick), ("warmer_number", thin))
    }
    return apply(viscosity_between, label, place=place, temperature=temperature, **points, **heights)


def _not_known(label: str, place: str, missing: tuple[Missing, ...]) -> Value:
    return Value(label, Dimension.KINEMATIC_VISCOSITY, None, Mark.MEASURED, place, missing=missing)
