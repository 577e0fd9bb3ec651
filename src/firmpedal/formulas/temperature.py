"""Strength that plastic tube keeps when it is warm, from a published table."""

from __future__ import annotations

from bisect import bisect_right
from itertools import pairwise
from typing import TYPE_CHECKING

from firmpedal.formulas._validity import require

if TYPE_CHECKING:
    from collections.abc import Sequence

_ICE_POINT = 273.15
# Temperature against burst pressure as a share of that at 23 C, as printed.
_NYLON_STRENGTH = (
    (23 + _ICE_POINT, 1.00),
    (40 + _ICE_POINT, 0.80),
    (100 + _ICE_POINT, 0.37),
)


def interpolate(position: float, points: Sequence[tuple[float, float]]) -> float:
    """Read a table of points between its rows, along straight lines.

    Args:
        position: Where to read.
        points: Rows of position and number, positions rising.

    Returns:
        The number at that position.

    Raises:
        ValueError: The positions do not rise, or the table does not reach that far.
    """
    places = [place for place, _ in points]
    require(len(places) > 1 and all(a < b for a, b in pairwise(places)), "the table's positions have to rise")
    rounding = 1e-9 * (places[-1] - places[0])  # 212 F may arrive a hair beyond 100 C
    require(
        places[0] - rounding <= position <= places[-1] + rounding,
        "the table does not reach that far",
    )
    row = min(max(bisect_right(places, position), 1), len(places) - 1)
    (start, first), (end, last) = points[row - 1], points[row]
    return first + (last - first) * (position - start) / (end - start)


def nylon_strength_retained(temperature: float) -> float:
    """Strength that plasticised nylon tube keeps when warm, as a share of that at 23 C.

    r = straight lines at T through 23 C 1.00, 40 C 0.80, 100 C 0.37

    Args:
        temperature: T, of the tube's wall [K].

    Returns:
        Share of the burst pressure at 23 C, r [-].

    Valid: 23 C to 100 C (296.15 K to 373.15 K); plasticised nylon, short time under pressure.
    Source: [polyamide-burst-data], burst pressure against temperature, tube 6 x 4 mm.
    """
    return interpolate(temperature, _NYLON_STRENGTH)
