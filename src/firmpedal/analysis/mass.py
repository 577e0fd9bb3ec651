"""What the lines weigh: tube, hose, fittings and the fluid in them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.swelling import line_volume
from firmpedal.formulas.mass import mass_of_length, mass_of_volume, tube_mass_per_length
from firmpedal.model.stock import Hose
from firmpedal.quantity import Mark, Missing, Value, apply, total
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.fit.assembly import Assembly
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.stock import Fluid


def line_mass(line: LaidLine) -> Value:
    """Mass of one line without fluid and without the fittings at its ends."""
    place, label = f"{line.place}.mass", f"mass of {line.name}"
    stock = line.stock
    if isinstance(stock, Hose):
        bare = apply(
            mass_of_length,
            f"hose of {line.name}",
            place=place,
            mass_per_length=stock.mass_per_length,
            length=line.order_length,
        )
        return total(label, (bare, stock.end_mass, stock.end_mass), place)
    per_length = apply(
        tube_mass_per_length,
        f"mass per length of {stock.phrase}",
        place=place,
        outside_diameter=stock.outside_diameter,
        wall_thickness=stock.wall,
        density=stock.material.density,
    )
    length = line.cut_length or line.path_length
    return apply(mass_of_length, label, place=place, mass_per_length=per_length, length=length)


def fluid_mass(line: LaidLine, fluid: Fluid | None) -> Value:
    """Mass of the fluid that fills one line."""
    label, place = f"mass of the fluid in {line.name}", f"{line.place}.fluid mass"
    if fluid is None:
        missing = (Missing("fluid", "which brake fluid is used"),)
        return Value(label, Dimension.MASS, None, Mark.MEASURED, place, missing=missing)
    return apply(mass_of_volume, label, place=place, volume=line_volume(line), density=fluid.density)


def whole_mass(lines: tuple[LaidLine, ...], assembly: Assembly, fluid: Fluid | None) -> Value:
    """Mass of all lines, fittings and fluid together; components are not counted."""
    parts = [part.mass for joint in assembly.joints for part in joint.parts]
    masses = [line_mass(line) for line in lines] + [fluid_mass(line, fluid) for line in lines] + parts
    if not masses:
        return Value("mass of lines, fittings and fluid", Dimension.MASS, (0.0, 0.0), Mark.DERIVED, "mass")
    return total("mass of lines, fittings and fluid", masses, "mass")
