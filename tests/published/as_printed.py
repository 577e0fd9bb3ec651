"""Compare a number with a figure in a book: equal within half a unit of its last printed digit."""

import math
import re
from dataclasses import dataclass
from decimal import Decimal

_FIGURE = re.compile(
    r"""
    (?P<figure>
        [-+]?\d{1,3}(?:[ ,]\d{3})+(?:\.\d+)?
      | [-+]?\d+(?:\.\d*)?(?:e[-+]?\d+)?
    )
    (?:\ (?P<unit>\D.*))?
    """,
    re.VERBOSE,
)


@dataclass(frozen=True, eq=False)
class Printed:
    """A printed figure; `==` with a number allows half a unit of the last digit and no more."""

    digits: str
    unit: str
    figure: Decimal

    @property
    def half_unit(self) -> Decimal:
        return Decimal((0, (1,), int(self.figure.as_tuple().exponent))) / 2

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, int | float):
            return NotImplemented
        return math.isfinite(other) and abs(Decimal(other) - self.figure) <= self.half_unit

    __hash__ = None  # type: ignore[assignment]

    def __repr__(self) -> str:
        return f"{self.digits} {self.unit} (within {self.half_unit})"


def as_printed(text: str) -> Printed:
    """Read a figure as printed, such as `43.3 in^4`, `1,955.7` or `6.802e11`.

    Zeros at the end of a whole number count as printed digits.
    """
    found = _FIGURE.fullmatch(text)
    if found is None:
        raise ValueError(f"not a printed figure: {text}")
    digits = found["figure"]
    return Printed(digits, found["unit"] or "", Decimal(digits.replace(",", "").replace(" ", "")))
