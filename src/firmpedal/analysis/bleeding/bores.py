"""What a bubble does in the bore of each line, left alone and pushed."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi
from typing import TYPE_CHECKING

from firmpedal.formulas.bubbles import (
    CRITICAL_BOND_NUMBER,
    bond_number,
    bubble_speed_at_most,
    buoyancy_number,
    rise_in_a_time,
    sweeping_flow,
)
from firmpedal.formulas.laminar import tube_bore
from firmpedal.model.stock import Hose
from firmpedal.quantity import Answer, Mark, Missing, Value, apply, exactly
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.stock import Fluid

CRITICAL = exactly(
    "Bond number below which no bubble rises",
    Dimension.NUMBER,
    CRITICAL_BOND_NUMBER,
    Mark.READ,
    source="bretherton-1961",
)
# Nobody knows how steeply a line falls at each bubble, so it is taken to fall upright: that asks for most.
UPRIGHT = exactly("slope, upright at the worst", Dimension.ANGLE, pi / 2, Mark.DERIVED)
MINUTE = exactly("left alone for a minute", Dimension.TIME, 60.0, Mark.DERIVED)


@dataclass(frozen=True, slots=True)
class Bore:
    """One line: whether a bubble that fills it stays put, how far it creeps in a minute, what sweeps it on.

    `stays` is YES where it surely does not rise by itself, NO where it surely can.
    """

    line: str
    bore: Value
    bond: Value
    stays: Answer
    creep: Value
    sweep: Value


def bore_of(line: LaidLine) -> Value:
    """The bore of a line."""
    stock, place = line.stock, f"{line.place}.bore"
    if isinstance(stock, Hose):
        return stock.bore.named(f"bore of {line.name}", place)
    return apply(
        tube_bore,
        f"bore of {line.name}",
        place=place,
        outside_diameter=stock.outside_diameter,
        wall_thickness=stock.wall,
    )


def bubble_in(line: LaidLine, fluid: Fluid | None, viscosity: Value) -> Bore:
    """What a bubble does in one line."""
    bore, place = bore_of(line), line.place
    bond = (
        apply(
            bond_number,
            f"Bond number of {line.name}",
            place=f"{place}.bond number",
            density=fluid.density,
            bore=bore,
            surface_tension=fluid.surface_tension,
        )
        if fluid is not None
        else not_without_fluid(f"Bond number of {line.name}", Dimension.NUMBER, place)
    )
    buoyancy = apply(buoyancy_number, f"buoyancy in {line.name}", place=place, bore=bore, viscosity=viscosity)
    speed = apply(bubble_speed_at_most, f"speed in {line.name}", place=place, bond=bond, buoyancy=buoyancy)
    creep = apply(
        rise_in_a_time,
        f"rise of a bubble in {line.name} in a minute, at most",
        place=f"{place}.creep",
        froude=speed,
        bore=bore,
        time=MINUTE,
    )
    sweep = apply(
        sweeping_flow,
        f"flow that surely takes air along in {line.name}",
        place=f"{place}.sweep",
        bore=bore,
        down_angle=UPRIGHT,
    )
    return Bore(line.name, bore, bond, bond.at_most(CRITICAL), creep, sweep)


def not_without_fluid(label: str, dimension: Dimension, place: str) -> Value:
    """A figure that waits for the fluid."""
    missing = (Missing("fluid", "which brake fluid is used"),)
    return Value(label, dimension, None, Mark.MEASURED, place, missing=missing)
