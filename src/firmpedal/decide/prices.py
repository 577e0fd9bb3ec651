"""Prices of a builder's own book: by the piece, the pack or the length, each in its currency."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from decimal import ROUND_CEILING, ROUND_HALF_UP, Decimal
from enum import StrEnum
from typing import TYPE_CHECKING

from firmpedal.units import to_unit

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.decide.goods import Goods

NO_CURRENCY = "no currency said"
LENGTH_DECIMALS = 6  # so that 6 ft in metres are 6 ft again, and no pack is opened for a float's last digit


class Per(StrEnum):
    """What a price is for."""

    EACH = "each"
    PACK = "pack"
    FOOT = "ft"
    METRE = "m"


BY_LENGTH = (Per.FOOT, Per.METRE)


@dataclass(frozen=True, slots=True)
class Price:
    """One row of the book; `pack` is how many are sold together, `length` that of one hose or stick [m]."""

    goods: Goods
    amount: Decimal
    currency: str
    pack: int
    per: Per
    line: int
    length: tuple[float, float] | None = None

    @property
    def by_length(self) -> bool:
        return self.per in BY_LENGTH

    def packs(self, wanted: int) -> int:
        """How many packs hold a number of pieces."""
        return -(-wanted // self.pack)

    def cost(self, pieces: int, length: float | None = None) -> Decimal | None:
        """What a number of pieces cost, each of a length [m]; None where the length is needed and unknown.

        Length that is sold in packs is bought in whole packs: 10 ft in packs of 6 are 12 ft.
        """
        if not self.by_length:
            packs = self.packs(pieces)
            return _money(self.amount * packs * (1 if self.per is Per.PACK else self.pack))
        if length is None:
            return None
        whole = Decimal(repr(round(to_unit(length, self.per.value), LENGTH_DECIMALS))) * pieces
        if self.pack > 1:
            whole = (whole / self.pack).to_integral_value(ROUND_CEILING) * self.pack
        return _money(self.amount * whole)


def _money(amount: Decimal) -> Decimal:
    return amount.quantize(Decimal("0.01"), ROUND_HALF_UP)


@dataclass(frozen=True, slots=True)
class PriceBook:
    """The rows that name something of the list, and how many rows are for other things."""

    prices: tuple[Price, ...]
    others: int = 0


@dataclass(frozen=True, slots=True)
class Bill:
    """What all costs, each currency for itself, and the things whose price or length is missing."""

    totals: tuple[tuple[str, Decimal], ...]
    missing: tuple[str, ...]
    rows: int


def bill(costs: Iterable[tuple[str, str, Decimal | None]]) -> Bill:
    """Add up what has a cost; never from one currency to another.

    Args:
        costs: Of each row its name, its currency, and its cost or None.
    """
    all_rows = tuple(costs)
    sums: dict[str, Decimal] = defaultdict(Decimal)
    for _, currency, cost in all_rows:
        if cost is not None:
            sums[currency] += cost
    missing = tuple(name for name, _, cost in all_rows if cost is None)
    return Bill(tuple(sorted(sums.items())), missing, len(all_rows))
