"""Pressure of fluid that is shut in and grows warm."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.formulas.trapped import trapped_pressure_rise
from firmpedal.quantity import Mark, Missing, Value, apply, exactly
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from firmpedal.model.stock import Fluid

WARMING_FROM = from_unit(15, "degC")  # any temperature will do: the rise is the same from each


def rise_per_degree(fluid: Fluid | None, unit: str, place: str) -> Value:
    """How much the pressure of trapped fluid rises with one degree, at most: nothing round it gives."""
    label = "rise of pressure of trapped fluid, one degree warmer"
    if fluid is None:
        missing = (Missing("fluid", "which brake fluid is used"),)
        return Value(label, Dimension.PRESSURE, None, Mark.MEASURED, place, missing=missing)
    degree = from_unit(1, unit, difference=True)
    cool, warm = (
        exactly(words, Dimension.TEMPERATURE, number, Mark.DERIVED, source="firmpedal-derivation")
        for words, number in (("when shut", WARMING_FROM), ("one degree warmer", WARMING_FROM + degree))
    )
    return apply(
        trapped_pressure_rise,
        label,
        place=f"{place}.trapped",
        expansion=fluid.thermal_expansion,
        bulk_modulus=fluid.bulk_modulus,
        cool_temperature=cool,
        warm_temperature=warm,
    )
