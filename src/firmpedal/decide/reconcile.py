"""A list of parts against what the design needs: short, wrong, left over, odd counts.

What is needed comes in as plain rows from the one place that counts it; nothing is counted again here.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from itertools import product
from typing import TYPE_CHECKING

from firmpedal.decide.fault import Discrepancy, Fault, mismatch
from firmpedal.decide.goods import Goods, Kind
from firmpedal.decide.odd_counts import odd_counts
from firmpedal.decide.reconcile_lengths import hoses, listed_whole, tubes, whole

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from firmpedal.decide.listed import Listed, Listing
    from firmpedal.quantity import Value


HARMLESS = frozenset({Fault.LEFT_OVER, Fault.ODD})


@dataclass(frozen=True, slots=True)
class Needed:
    """One row of what the design needs; `lengths` holds each piece of tube or hose."""

    goods: Goods
    quantity: int
    where: tuple[str, ...] = ()
    lengths: tuple[Value, ...] = ()
    spare: bool = False


@dataclass(frozen=True, slots=True)
class Row:
    """One thing with how many are needed and listed; tube is compared by its whole length."""

    name: str
    needed: int
    listed: int
    agrees: bool
    needed_length: Value | None = None
    listed_length: Value | None = None


@dataclass(frozen=True, slots=True)
class Reconciliation:
    """A list held against a design."""

    rows: tuple[Row, ...]
    faults: tuple[Discrepancy, ...]
    listing: Listing

    @property
    def agrees(self) -> bool:
        return not self.faults and not self.listing.questions

    @property
    def covers(self) -> bool:
        """Whether everything needed is there; things left over are no harm."""
        return all(each.fault in HARMLESS for each in self.faults)

    @property
    def unclear(self) -> bool:
        """Whether nothing is known to lack, but not everything is known either."""
        lacking = any(each.fault not in HARMLESS | {Fault.NOT_SHOWN} for each in self.faults)
        asked = bool(self.listing.questions) or any(each.fault is Fault.NOT_SHOWN for each in self.faults)
        return asked and not lacking

    def count(self, fault: Fault) -> int:
        return sum(each.quantity for each in self.faults if each.fault is fault)


def reconcile(needed: Iterable[Needed], listing: Listing, cutter_loss: float = 0.0) -> Reconciliation:
    """Hold a list against what is needed; each cut of a tube takes `cutter_loss` [m]."""
    wanted = tuple(needed)
    pieces = [each for each in wanted if each.goods.kind is Kind.PIECE]
    goods = {each.goods.key: each.goods for each in pieces}
    goods |= {each.goods.key: each.goods for each in listing.rows if each.goods.kind is Kind.PIECE}
    need = _counts((each.goods.key, each.quantity) for each in pieces if not each.spare)
    spare = _counts((each.goods.key, each.quantity) for each in pieces if each.spare)
    have = _counts((each.goods.key, each.quantity) for each in listing.rows if each.goods.kind is Kind.PIECE)
    where = {each.goods.key: each.where for each in pieces}
    short = {key: need[key] - have[key] for key in goods if need[key] > have[key]}
    over = {key: have[key] - need[key] for key in goods if have[key] > need[key]}
    faults = _swapped(short, over, goods, where)
    faults += [
        Discrepancy(Fault.SHORT, n, goods[key].name, where=where.get(key, ()))
        for key, n in short.items()
        if n
    ]
    faults += [
        Discrepancy(Fault.LEFT_OVER, n - spare[key], goods[key].name)
        for key, n in over.items()
        if n > spare[key]
    ]
    faults += [Discrepancy(Fault.ODD, number, words) for number, words in odd_counts(goods, need, have)]
    lengths = [each for each in wanted if each.goods.kind is not Kind.PIECE and not each.spare]
    faults += [*tubes(lengths, listing.rows, cutter_loss), *hoses(lengths, listing.rows)]
    rows = tuple(Row(goods[key].name, need[key], have[key], need[key] == have[key]) for key in goods)
    named = frozenset(name for fault in faults for name in (fault.name, fault.needed))
    measured = _length_rows(lengths, listing.rows, named)
    return Reconciliation((*rows, *measured), tuple(sorted(faults, key=_order)), listing)


def _counts(pairs: Iterable[tuple[str, int]]) -> Counter[str]:
    found: Counter[str] = Counter()
    for key, number in pairs:
        found[key] += number
    return found


def _order(fault: Discrepancy) -> int:
    return list(Fault).index(fault.fault)


def _swapped(
    short: dict[str, int],
    over: dict[str, int],
    goods: Mapping[str, Goods],
    where: Mapping[str, tuple[str, ...]],
) -> list[Discrepancy]:
    """Pair what is short with what is left over of the same family; both are used up by it."""
    faults = []
    for fault in (Fault.WRONG_MATERIAL, Fault.WRONG_SIZE, Fault.WRONG_BOTH):
        for missing, extra in product(tuple(short), tuple(over)):
            number = min(short[missing], over[extra])
            if number and _difference(goods[missing], goods[extra]) is fault:
                short[missing] -= number
                over[extra] -= number
                faults.append(_instead(fault, number, goods[missing], goods[extra], where.get(missing, ())))
    return faults


def _instead(fault: Fault, number: int, missing: Goods, extra: Goods, where: tuple[str, ...]) -> Discrepancy:
    one, other = extra.material, missing.material
    metals = f"{one} for {other}" if one != other and one and other else ""
    return Discrepancy(fault, number, extra.name, missing.name, where, metals)


def _difference(one: Goods, other: Goods) -> Fault | None:
    same = (one.size, one.material) == (other.size, other.material)
    return None if same or one.family != other.family else mismatch(one, other)


def _length_rows(
    needed: Sequence[Needed], listed: Sequence[Listed], faulty: frozenset[str]
) -> tuple[Row, ...]:
    """Hose by the piece, tube by the length; `faulty` are the names that something is wrong with."""
    own = [each for each in listed if each.goods.kind is not Kind.PIECE]
    goods = {each.goods.key: each.goods for each in own}
    goods |= {each.goods.key: each.goods for each in needed}
    rows = []
    for key, each in goods.items():
        wanted = [row for row in needed if row.goods.key == key]
        found = [row for row in own if row.goods.key == key]
        lengths = whole([length for row in wanted for length in row.lengths]), listed_whole(found)
        measured = lengths if each.kind is Kind.TUBE else (None, None)
        numbers = sum(row.quantity for row in wanted), sum(row.quantity for row in found)
        rows.append(Row(each.name, *numbers, each.name not in faulty, *measured))
    return tuple(rows)
