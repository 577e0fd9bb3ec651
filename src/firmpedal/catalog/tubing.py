"""One tube or plastic line: what its material and its size together say of it."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from firmpedal.catalog.records import load, read_value
from firmpedal.catalog.sizes import dash_sizes
from firmpedal.model.stock import LineKind, Tube
from firmpedal.quantity import Value, unknown
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.catalog.sizes import DashSize
    from firmpedal.model.stock import Material

_ALIKE = 1e-6  # m; sizes this near are the same size written another way
_INCH = 0.0254
_FINEST = 64
# What a builder can do where nothing is published for a size.
ASK = "nothing is published here for this size. Ask its maker, and choose a size or a metal that has a figure"


def tube_of(phrase: str, material: Material, outside: Value, wall: Value, written: str) -> Tube:
    """Put a tube together from its material, its two dimensions and its size as written."""
    size = _dash_size(outside)
    metal = material.kind is LineKind.TUBE
    return Tube(
        phrase=phrase,
        kind=material.kind,
        material=material,
        outside_diameter=outside,
        wall=wall,
        dash=size.dash if size else None,
        least_bend_radius=_of_size(size, "least_bend_radius", material.group, phrase),
        support_spacing=_of_size(size, "support_spacing", material.group, phrase),
        rated_pressure=_rated_pressure(material, outside, wall, phrase),
        flare_diameter=_of_size(size if metal else None, "flare_diameter", "any", phrase),
        nominal_size=_nominal_size(outside, written),
    )


def _dash_size(outside: Value) -> DashSize | None:
    """Find the dash number of an outside diameter; a metric tube has none."""
    for size in dash_sizes():
        if abs(size.outside_diameter.middle - outside.middle) < _ALIKE:
            return size
    return None


def _of_size(size: DashSize | None, name: str, basis: str, phrase: str) -> Value:
    value, label = size.value(name, basis) if size else None, f"{name.replace('_', ' ')} of {phrase}"
    return value or unknown(label, Dimension.LENGTH, "catalogue", f"{label}: {ASK}")


def _rated_pressure(material: Material, outside: Value, wall: Value, phrase: str) -> Value:
    """Give the pressure that plastic line is sold for, where its wall is at least as thick in proportion."""
    record = load("tubes.yaml")["rated_pressure"]
    label = f"rated pressure of {phrase}, as sold, at room temperature"
    if material.group == record["group"]:
        sold = [
            read_value(record[name], Dimension.LENGTH, name, record) for name in ("outside_diameter", "wall")
        ]
        if wall.low / outside.high >= sold[1].low / sold[0].high * (1 - _ALIKE):
            return read_value(record["value"], Dimension.PRESSURE, label, record)
    return unknown(label, Dimension.PRESSURE, "catalogue", f"{label}: {ASK}")


def _nominal_size(outside: Value, written: str) -> str:
    """Say an outside diameter as compression fittings do: 1/4 in however it was written, or 6 mm."""
    sixty_fourths = outside.middle / _INCH * _FINEST
    if abs(sixty_fourths - round(sixty_fourths)) * _INCH / _FINEST < _ALIKE:
        return f"{Fraction(round(sixty_fourths), _FINEST)} in"
    return f"{outside.middle * 1000:g} mm" if written.endswith(("mm", "cm")) else written
