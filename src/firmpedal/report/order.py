"""What to order: what is used and the spares, in the packs and sticks in which things are sold."""

from __future__ import annotations

import math
from collections import Counter
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.catalog import catalogue
from firmpedal.decide.goods import named
from firmpedal.decide.prices import bill
from firmpedal.decide.spares import rule_of, use_of
from firmpedal.decide.tube_plan import tube_plans
from firmpedal.model.display import listed
from firmpedal.model.part import Category
from firmpedal.quantity import Mark, Value, exactly
from firmpedal.report.parts import Item, goods_of_item, parts_list
from firmpedal.report.remarks import WHAT, rests_on
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from decimal import Decimal

    from firmpedal.decide.goods import Goods
    from firmpedal.decide.prices import Bill, Price, PriceBook
    from firmpedal.decide.spares import Use
    from firmpedal.decide.tube_plan import StickCount, TubePlan
    from firmpedal.pipeline import Evaluation

EACH, STICK, PIECE = "each", "stick", "piece"
SAME = 0.0016  # 1/16 in, to which hoses are ordered [m]


@dataclass(frozen=True, slots=True)
class OrderRow:
    """One row to order from; `order` is None where something has to be known first, which `wait` says.

    Tube is counted in sticks as the cutting plan buys them, everything else as it is used. `length` is
    that of one stick, hose or piece.
    """

    item: Item
    goods: Goods
    use: Use
    quantity: int
    spares: int
    order: int | None
    unit: str = EACH
    length: Value | None = None
    price: Price | None = None
    pack: int = 1  # as the builder's file has it; a price book that names a pack comes before it
    wait: str = ""

    @property
    def waits(self) -> str:
        """What is to be found out before it, or some of its pieces, are ordered; empty for nothing."""
        told = (self.wait, _look_words(self.item), _guess_words(self.item))
        return "; ".join(words for words in told if words)

    @property
    def cost(self) -> Decimal | None:
        """What the row costs; None where a price, a quantity or a length is missing."""
        if self.price is None or self.order is None or self.wait:
            return None
        length = self.length.high if self.length is not None and self.length.known else None
        return self.price.cost(self.order, length)


def _look_words(item: Item) -> str:
    """Which of its pieces were chosen for a thread that nobody has looked at yet."""
    if not item.supposed:
        return ""
    count = len(item.supposed)
    if count == item.quantity:
        return "wait: its thread is only supposed" if count == 1 else "wait: their threads are only supposed"
    which = f"{count} of {item.quantity} {'waits' if count == 1 else 'wait'}"
    return f"{which}, where the thread is only supposed: {listed(list(dict.fromkeys(item.supposed)))}"


def _guess_words(item: Item) -> str:
    """Of a hose to whose length nobody measured all, what to do; its card names the parts it rests on."""
    guessed = [length.mark for length in item.lengths if rests_on(length)]
    if item.category is not Category.HOSE or not guessed:
        return ""
    return f"its length rests on {WHAT[max(guessed)]}: measure from seat to seat before you order"


def bill_of(rows: tuple[OrderRow, ...]) -> Bill:
    """Add up a priced list; what is not bought at all counts nowhere."""
    bought = [row for row in rows if row.order != 0]
    return bill((row.item.designation, row.price.currency if row.price else "", row.cost) for row in bought)


def wanted_goods(evaluation: Evaluation) -> tuple[Goods, ...]:
    """What a price book may name."""
    return tuple({row.goods.key: row.goods for row in order_list(evaluation)}.values())


def order_list(evaluation: Evaluation, book: PriceBook | None = None) -> tuple[OrderRow, ...]:
    """Everything to order, in the order of the parts list; tube comes as sticks.

    Args:
        evaluation: What was worked out.
        book: A price book, whose packs and prices are taken where it has them.
    """
    items, packs = parts_list(evaluation), packs_of(evaluation)
    rows: list[OrderRow] = []
    plans = {plan.phrase: plan for plan in tube_plans(evaluation)}
    for item in items:
        if item.category is not Category.TUBE:
            rows.append(_row(evaluation, item))
        elif item.designation in plans:
            rows += _sticks(evaluation, plans.pop(item.designation), items)
    packed = [_packed(row, packs) for row in rows]
    return tuple(_priced(row, book) if book is not None else row for row in packed)


def packs_of(evaluation: Evaluation) -> dict[str, int]:
    """How many pieces the file says are sold together, by the key of the goods or the name as it stands."""
    unit = evaluation.display.unit(Dimension.LENGTH)
    goods = tuple(goods_of_item(item, unit) for item in parts_list(evaluation))
    found = {}
    for pack in evaluation.aircraft.buying.packs:
        meant = named(pack.of, goods, unit)
        if pack.pieces.known and pack.pieces.high > 0:
            found[meant.goods.key if meant else pack.of] = math.ceil(pack.pieces.high)
    return found


def _packed(row: OrderRow, packs: dict[str, int]) -> OrderRow:
    """A row ordered by whole packs; tube that is bought by the stick too."""
    pack = packs.get(row.goods.key, 1)
    if row.order is None:
        return replace(row, pack=pack)
    return replace(row, pack=pack, order=-(-row.order // pack) * pack)


def _row(evaluation: Evaluation, item: Item) -> OrderRow:
    use = use_of(catalogue().part(item.designation), item.category)
    rule = rule_of(use, evaluation.aircraft.buying)
    spares = rule.spares(item.quantity) if rule is not None else 0
    goods = goods_of_item(item, evaluation.display.unit(Dimension.LENGTH))
    row = OrderRow(item, goods, use, item.quantity, spares, item.quantity + spares)
    if not item.lengths:
        return row
    length = item.lengths[0]
    made = replace(row, length=length, unit=EACH if item.category is Category.HOSE else PIECE)
    return made if length.known else replace(made, order=None, wait="its length is not known yet: measure it")


def _sticks(evaluation: Evaluation, plan: TubePlan, items: tuple[Item, ...]) -> list[OrderRow]:
    """A row for each length of stick that is bought, or one that says why none is."""
    tubes = [item for item in items if (item.category, item.designation) == (Category.TUBE, plan.phrase)]
    lengths = tuple(length for item in tubes for length in item.lengths)
    names = tuple(name for item in tubes for name in item.where)
    whole = replace(tubes[0], quantity=len(lengths), lengths=lengths, where=names)
    goods = goods_of_item(whole, evaluation.display.unit(Dimension.LENGTH))
    use = use_of(None, Category.TUBE)
    waits = _waits(plan)
    if not plan.sticks_to_buy:
        order = None if waits else 0
        said = "; ".join(waits) or "what you have is enough"
        return [OrderRow(replace(whole, description="tube"), goods, use, 0, 0, order, STICK, wait=said)]
    return [_stick_row(evaluation, plan, whole, sticks) for sticks in plan.sticks_to_buy]


def _stick_row(evaluation: Evaluation, plan: TubePlan, whole: Item, sticks: StickCount) -> OrderRow:
    """Sticks of one length, with the tubes that are cut from them and no others."""
    tubes = {
        name: length for name, length in zip(whole.where, whole.lengths, strict=True) if name in sticks.tubes
    }
    item = replace(
        whole,
        quantity=len(tubes),
        description=_stick_words(evaluation, tuple(tubes.values())),
        where=tuple(tubes),
        lengths=tuple(tubes.values()),
    )
    return OrderRow(
        item,
        goods_of_item(item, evaluation.display.unit(Dimension.LENGTH)),
        use_of(None, Category.TUBE),
        sticks.used,
        sticks.practice,
        sticks.used + sticks.practice,
        STICK,
        exactly(f"stick of {plan.phrase}", Dimension.LENGTH, sticks.length, Mark.READ),
        wait="; ".join(_waits(plan)),
    )


def _waits(plan: TubePlan) -> list[str]:
    waits = [f"the length of {', '.join(plan.unknown)} is not known yet: measure it"] if plan.unknown else []
    if plan.plan.without_stick:
        names = ", ".join(piece.name for piece in plan.plan.without_stick)
        waits.append(f"no stick holds {names}: see the cutting plan")
    return waits


def _stick_words(evaluation: Evaluation, lengths: tuple[Value, ...]) -> str:
    """What is cut from the sticks: equal lengths once, with how many."""
    if not lengths:
        return "tube, to practise on"
    counted = Counter(evaluation.display.value(length) for length in lengths)
    shown = [f"{count} of {length}" if count > 1 else length for length, count in counted.items()]
    return f"tube, to cut {', '.join(shown)}"


def _priced(row: OrderRow, book: PriceBook) -> OrderRow:
    """A row with its price, and the order rounded up to whole packs."""
    own = [price for price in book.prices if price.goods.key == row.goods.key]
    sized = [price for price in own if price.length is not None and _same_length(row, price.length)]
    found = next(iter(sized), None) or next((price for price in own if price.length is None), None)
    if found is None:
        return row
    if row.order is None or found.by_length:
        return replace(row, price=found)
    if found.pack == 1:
        return replace(row, price=found)
    least = row.quantity + row.spares
    return replace(row, price=found, pack=found.pack, order=found.packs(least) * found.pack)


def _same_length(row: OrderRow, span: tuple[float, float]) -> bool:
    length = row.length
    if length is None or not length.known:
        return False
    return span[0] - SAME <= length.high and length.low <= span[1] + SAME
