"""Where text with a unit meets SI, on the way in and on the way out, and nowhere else."""

from firmpedal.units.holding import HELD, held, let_go
from firmpedal.units.names import UnitError, canonical_unit, units_of
from firmpedal.units.reading import Measurement, read
from firmpedal.units.showing import from_unit, show, show_span, to_unit, written
from firmpedal.units.table import Dimension, dimension_of

__all__ = [
    "HELD",
    "Dimension",
    "Measurement",
    "UnitError",
    "canonical_unit",
    "dimension_of",
    "from_unit",
    "held",
    "let_go",
    "read",
    "show",
    "show_span",
    "to_unit",
    "units_of",
    "written",
]
