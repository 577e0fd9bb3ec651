"""The mass of a fitting, which no source gives: an estimate from the prism round its body."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from firmpedal.catalog.errors import RecordError
from firmpedal.catalog.records import read_value
from firmpedal.quantity import Mark, Step, Value
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Mapping

_AREA_OF_WIDTH_SQUARED = {"hexagon": math.sqrt(3) / 2, "round": math.pi / 4}
_ESTIMATE = {"source": "firmpedal-estimate", "mark": "estimate"}


def estimated_mass(
    designation: str,
    envelope: Mapping[str, Any],
    dimensions: Mapping[str, Value],
    threads: tuple[Value, ...],
    density: Value,
) -> Value:
    """Estimate a part's mass as fill times prism times density, lowest to highest.

    The prism is a hexagon across the flats, or a round as wide as the body or its largest male
    thread, as long as the part or all its legs together. The fill says how much of it is metal:
    bores and reliefs take away, a collar outside the prism adds.

    Args:
        designation: The part, for labels.
        envelope: Shape, names of the lengths and of the width, and the fill, as the record gives them.
        dimensions: The part's dimensions by name.
        threads: Major diameters of the male threads [m].
        density: Of the metal [kg/m^3].

    Raises:
        RecordError: The envelope names a dimension that the record does not give.
    """
    try:
        lengths = [dimensions[name] for name in envelope["lengths"]]
        width = dimensions[envelope["width"]]
    except KeyError as error:
        raise RecordError(designation, f"no dimension {error}") from None
    fill = read_value(envelope["fill"], Dimension.NUMBER, f"{designation} fill", _ESTIMATE)
    area = _AREA_OF_WIDTH_SQUARED[envelope["shape"]]

    def mass(side: int) -> float:
        widest = max([_side(width, side), *(_side(thread, side) for thread in threads)])
        length = sum(_side(value, side) for value in lengths)
        return _side(fill, side) * area * widest**2 * length * _side(density, side)

    inputs = [("w", width), *((f"L{n}", value) for n, value in enumerate(lengths, 1))]
    step = Step(
        f"fill x {area:.3f} w^2 x length x density, {envelope['shape']} prism",
        (*inputs, ("fill", fill), ("density", density)),
        "w is the width across flats, or of the largest thread where that is wider",
    )
    span = (mass(0), mass(1))
    return Value(
        f"{designation} mass", Dimension.MASS, span, Mark.ESTIMATE, source="firmpedal-estimate", step=step
    )


def _side(value: Value, side: int) -> float:
    return (value.low, value.high)[side]
