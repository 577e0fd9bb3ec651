"""Tube by the metre and hose by the piece: whether what is listed is long enough, or the right length."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.decide import cutting
from firmpedal.decide.fault import Discrepancy, Fault, mismatch
from firmpedal.decide.goods import Kind
from firmpedal.quantity import Mark, Value
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from firmpedal.decide.goods import Goods
    from firmpedal.decide.listed import Listed
    from firmpedal.decide.reconcile import Needed

ON_A_TAPE = from_unit(1 / 8, "in")  # hose is made and measured to that; common practice, no source
NEAR = 1e-6

Piece = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Wanted:
    """One piece that is needed."""

    goods: Goods
    length: Value
    where: tuple[str, ...]


def _wanted(needed: Iterable[Needed], kind: Kind) -> list[Wanted]:
    return [
        Wanted(each.goods, length, each.where)
        for each in needed
        if each.goods.kind is kind
        for length in each.lengths
    ]


def _owned(rows: Iterable[Listed], kind: Kind) -> list[tuple[Goods, Piece]]:
    return [(row.goods, piece) for row in rows if row.goods.kind is kind for piece in row.lengths]


def tubes(needed: Iterable[Needed], rows: Iterable[Listed], cutter_loss: float = 0.0) -> list[Discrepancy]:
    """Cut as much as can be from the listed tube, less what each cut takes [m]; say what is left uncut."""
    wanted, unclear = _known(_wanted(needed, Kind.TUBE))
    owned = _owned(rows, Kind.TUBE)
    keys = dict.fromkeys(each.goods.key for each in wanted)
    uncut: list[Wanted] = []
    for key in keys:
        own = [piece for goods, piece in owned if goods.key == key]
        uncut += _cut([each for each in wanted if each.goods.key == key], own, cutter_loss)
    needless = {*keys, *(each.goods.key for each in unclear)}
    spare = [(goods, piece) for goods, piece in owned if goods.key not in needless]
    return [*_instead(uncut, spare, cutter_loss), *_short_tubes(uncut, owned), *map(_not_shown, unclear)]


def _known(wanted: Iterable[Wanted]) -> tuple[list[Wanted], list[Wanted]]:
    """Part what has a known length from what nobody has measured yet."""
    found: tuple[list[Wanted], list[Wanted]] = [], []
    for each in wanted:
        found[0 if each.length.known else 1].append(each)
    return found


def _not_shown(wanted: Wanted) -> Discrepancy:
    return Discrepancy(
        Fault.NOT_SHOWN, 1, wanted.goods.name, where=wanted.where, detail="its length is not known yet"
    )


def _cut(wanted: Sequence[Wanted], owned: Sequence[Piece], cutter_loss: float) -> list[Wanted]:
    """Give the pieces that cannot be cut from the listed lengths: as little of them as can be."""
    pieces = [
        cutting.Piece(str(number), each.length.high)
        for number, each in enumerate(wanted)
        if each.length.high > NEAR
    ]
    lows = Counter(low for low, _ in owned if low > NEAR)
    sticks = [  # of one length never more than there are pieces
        cutting.Stick("listed", low + NEAR, in_hand=True)
        for low in sorted(lows)
        for _ in range(min(lows[low], len(pieces)))
    ]
    plan = cutting.cutting_plan(pieces, sticks, cutter_loss)
    return [wanted[int(piece.name)] for piece in plan.without_stick]


def _instead(uncut: list[Wanted], spare: list[tuple[Goods, Piece]], cutter_loss: float) -> list[Discrepancy]:
    """Tube of another size or metal listed where this one is needed; what it would replace is taken off."""
    faults: list[Discrepancy] = []
    for extra in dict.fromkeys(goods for goods, _ in spare):
        near = next((each for each in uncut if each.goods.family == extra.family), None)
        pieces = [piece for goods, piece in spare if goods == extra]
        if near is None:
            faults.append(Discrepancy(Fault.LEFT_OVER, len(pieces), extra.name))
            continue
        missing = [each for each in uncut if each.goods == near.goods]
        still = _cut(missing, pieces, cutter_loss)
        for each in missing:
            if each not in still:
                uncut.remove(each)
        replaced = len(missing) - len(still)
        where = tuple(name for each in missing if each not in still for name in each.where)
        faults.append(
            Discrepancy(
                mismatch(near.goods, extra),
                max(1, replaced),
                extra.name,
                near.goods.name,
                tuple(dict.fromkeys(where)),
            )
        )
    return faults


def _short_tubes(uncut: Sequence[Wanted], owned: Sequence[tuple[Goods, Piece]]) -> list[Discrepancy]:
    faults = []
    for goods in dict.fromkeys(each.goods for each in uncut):
        pieces = [each for each in uncut if each.goods == goods]
        listed = [piece for own, piece in owned if own.key == goods.key]
        detail = "no listed length holds it" if listed else ""
        asked = _sum([each.length for each in pieces], f"length of {goods.name} still needed")
        where = tuple(dict.fromkeys(name for each in pieces for name in each.where))
        found = _listed(listed, f"length of {goods.name} listed") if listed else None
        faults.append(Discrepancy(Fault.SHORT, len(pieces), goods.name, "", where, detail, found, asked))
    return faults


def whole(values: Sequence[Value]) -> Value | None:
    """The length of all pieces needed; None where one is unknown or there are none."""
    return _sum(values, "length needed") if values else None


def listed_whole(rows: Sequence[Listed]) -> Value | None:
    """The length of all pieces listed."""
    pieces = [piece for row in rows for piece in row.lengths]
    return _listed(pieces, "length listed") if pieces else None


def _sum(values: Sequence[Value], label: str) -> Value | None:
    if not all(each.known for each in values):
        return None  # its pieces are said one by one
    span = (sum(each.low for each in values), sum(each.high for each in values))
    return Value(label, Dimension.LENGTH, span, max(each.mark for each in values))


def _listed(pieces: Sequence[Piece], label: str) -> Value:
    span = (sum(low for low, _ in pieces), sum(high for _, high in pieces))
    return Value(label, Dimension.LENGTH, span, Mark.MEASURED)


def hoses(needed: Iterable[Needed], rows: Iterable[Listed]) -> list[Discrepancy]:
    """Give each hose to the place whose length it has; then pair what is left by what is nearest."""
    left, unclear = _known(_wanted(needed, Kind.HOSE))
    spare = _owned(rows, Kind.HOSE)
    _taken(left, spare)
    faults = _paired(left, spare, same=True)
    faults += _paired(left, spare, same=False)
    faults += [
        Discrepancy(Fault.SHORT, 1, each.goods.name, where=each.where, asked=each.length) for each in left
    ]
    for each in unclear:  # any hose of its kind that is left may be the one
        faults.append(_not_shown(each))
        own = next((n for n, (goods, _) in enumerate(spare) if goods.key == each.goods.key), None)
        if own is not None:
            spare.pop(own)
    faults += [
        Discrepancy(Fault.LEFT_OVER, 1, goods.name, found=_listed([piece], f"length of {goods.name}"))
        for goods, piece in spare
    ]
    return _together(faults)


def _off(wanted: Wanted, piece: Piece) -> float:
    """How far a hose is from the length that is needed."""
    return max(0.0, wanted.length.low - piece[1], piece[0] - wanted.length.high)


def _taken(left: list[Wanted], spare: list[tuple[Goods, Piece]]) -> None:
    """Take away every hose that is right, the nearest pairs first."""
    pairs = [
        (_off(each, own[1]), n, m)
        for n, each in enumerate(left)
        for m, own in enumerate(spare)
        if own[0].key == each.goods.key and _off(each, own[1]) <= ON_A_TAPE
    ]
    used: tuple[set[int], set[int]] = set(), set()
    for _, n, m in sorted(pairs):
        if n not in used[0] and m not in used[1]:
            used[0].add(n)
            used[1].add(m)
    left[:] = [each for n, each in enumerate(left) if n not in used[0]]
    spare[:] = [own for m, own in enumerate(spare) if m not in used[1]]


def _paired(left: list[Wanted], spare: list[tuple[Goods, Piece]], *, same: bool) -> list[Discrepancy]:
    """Pair each hose that is missing with the nearest listed one, first of its own kind, then of another."""
    faults = []
    while pairs := [
        (_off(each, own[1]), n, m)
        for n, each in enumerate(left)
        for m, own in enumerate(spare)
        if (own[0].key == each.goods.key) is same
    ]:
        _, n, m = min(pairs)
        wanted, (goods, piece) = left.pop(n), spare.pop(m)
        fault = Fault.WRONG_LENGTH if same else mismatch(wanted.goods, goods)
        found = _listed([piece], f"length of {goods.name}")
        detail = _which_way(wanted, piece) if same else ""
        instead = wanted.goods.name
        faults.append(Discrepancy(fault, 1, goods.name, instead, wanted.where, detail, found, wanted.length))
    return faults


def _which_way(wanted: Wanted, piece: Piece) -> str:
    return "too short" if piece[1] < wanted.length.low else "too long"


def _together(faults: Sequence[Discrepancy]) -> list[Discrepancy]:
    """Add up what is wrong in the same way."""
    found: dict[tuple[object, ...], Discrepancy] = {}
    for each in faults:
        lengths = tuple(value.span if value else None for value in (each.found, each.asked))
        key = (each.fault, each.name, each.needed, each.detail, *lengths)
        one = found.get(key)
        where = tuple(dict.fromkeys((*(one.where if one else ()), *each.where)))
        number = each.quantity + (one.quantity if one else 0)
        found[key] = replace(each, quantity=number, where=where)
    return list(found.values())
