"""The sheet to order from: parts with spares, what they cost, what is used up, and the tools."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.supposed import supposed_joints
from firmpedal.decide.prices import Per
from firmpedal.decide.spares import RULES, Use, own_rules
from firmpedal.decide.tube_plan import practice_pieces
from firmpedal.fit.assembly import named_open, outer_ends
from firmpedal.fit.counts import flared_count, seal_count
from firmpedal.model.part import Category
from firmpedal.model.stock import Hose
from firmpedal.quantity import total
from firmpedal.report.consumables import consumables, fluid_waits_for
from firmpedal.report.looks import looks
from firmpedal.report.order import bill_of, order_list, packs_of
from firmpedal.report.sheet import Bullets, Heading, Paragraph, Sheet, Table, Tone
from firmpedal.report.tools import tools

if TYPE_CHECKING:
    from firmpedal.decide.prices import PriceBook
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value
    from firmpedal.report.order import OrderRow
    from firmpedal.report.sheet import Block

COLUMNS = ("order", "designation", "what", "where")
PRICE_COLUMNS = ("order", "designation", "what", "price", "cost")
WIDTHS = (0.13, 0.23, 0.34, 0.30)
PRICE_WIDTHS = (0.13, 0.25, 0.30, 0.18, 0.14)
SPARES = "Spares: one rule for all lists, our estimate. The small figures are used + spare."
OWN_SPARES = "Spares by your file, in place of our rule:"
NO_CONVERSION = "Each currency is added up for itself. Carriage, tax, fluid and tools are not in it."


def parts_sheet(evaluation: Evaluation, book: PriceBook | None = None) -> Sheet:
    """The parts list as a table to order from.

    Args:
        evaluation: What was worked out.
        book: The builder's own prices, where there are any.
    """
    rows = order_list(evaluation, book)
    priced = book is not None
    cells = tuple(_cells(evaluation, row, priced=priced) for row in rows)
    columns, widths = (PRICE_COLUMNS, PRICE_WIDTHS) if priced else (COLUMNS, WIDTHS)
    table = Table(columns, cells, frozenset({0, 4}) if priced else frozenset({0}), widths=widths)
    blocks: list[Block] = [*_looks(evaluation, rows), table, *_closing(evaluation)]
    blocks += _costs(rows) if priced else []
    blocks += [
        *_spares(evaluation, rows),
        *_packs(evaluation, rows),
        *_bulk_hose(evaluation),
        *_names(rows),
        *_second_tables(evaluation),
        *_fluid_waits(evaluation),
    ]
    return Sheet("Parts to order", tuple(blocks))


def _cells(evaluation: Evaluation, row: OrderRow, *, priced: bool) -> tuple[str, ...]:
    show = evaluation.display.value
    what = row.item.description
    if row.length is not None and row.length.known and row.item.category is Category.TUBE:
        what = f"sticks of {show(row.length)}\n{what}"
    if row.waits:
        what = f"{what}\n{row.waits}"
    cells = (order_words(row), row.item.designation, what)
    if not priced:
        return (*cells, ", ".join(row.item.where))
    cost = f"{row.cost} {row.price.currency}" if row.cost is not None and row.price is not None else "missing"
    return (*cells, _price_words(row), "" if row.order == 0 else cost)


def order_words(row: OrderRow) -> str:
    """How many to order, and how that comes about."""
    if row.order is None:
        return "?"
    told = f"{row.quantity} + {row.spares}" if row.spares else ""
    if row.pack > 1:
        told = f"{told or row.quantity}, by {row.pack}"
    return f"{row.order}\n{told}" if told else str(row.order)


def _price_words(row: OrderRow) -> str:
    """A price and what it is for: `2.20 USD`, `per ft, by 6`."""
    price = row.price
    if price is None:
        return ""
    per = "each" if price.per is Per.EACH else f"per {price.per.value}"
    sold = f" of {price.pack}" if price.per is Per.PACK else f", by {price.pack}"
    return f"{price.amount} {price.currency}\n{per}{sold if price.pack > 1 else ''}"


def _looks(evaluation: Evaluation, rows: tuple[OrderRow, ...]) -> list[Block]:
    """How many pieces wait until somebody has looked at the thread that they are for."""
    joints = supposed_joints(evaluation.aircraft, evaluation.assembly)
    return looks((joint.name for joint, _ in joints), sum(len(row.item.supposed) for row in rows))


def _closing(evaluation: Evaluation) -> list[Block]:
    """Say in words that the list closes, or that it does not."""
    open_ends = len(evaluation.violations)
    if open_ends:
        words = f"This list does not close: {open_ends} ends mate with nothing. See the findings."
        return [Paragraph(words, Tone.WARNING)]
    counted = [*_flared_words(evaluation), *_seal_words(evaluation)]
    told = "".join(f"{words}; " for words in counted)
    return [Paragraph(f"The list closes: {told}every end has its partner.")]


def _flared_words(evaluation: Evaluation) -> list[str]:
    """What the closing law makes equal at flares and panels, spares left out."""
    count = flared_count(
        evaluation.assembly.joints, outer_ends(evaluation.aircraft), named_open(evaluation.aircraft)
    )
    words = []
    if count.flared_tube_ends:
        ends, nuts, sleeves = count.flared_tube_ends, count.coupling_nuts, count.sleeves
        words.append(f"{ends} flared tube ends, {nuts} coupling nuts, {sleeves} sleeves")
    if count.bulkhead_ends:
        words.append(f"{count.bulkhead_ends} bulkhead ends, {count.jam_nuts} jam nuts")
    return words


def _seal_words(evaluation: Evaluation) -> list[str]:
    """What the closing law makes equal at compression joints, washers and O-rings."""
    count = seal_count(
        evaluation.assembly.joints, outer_ends(evaluation.aircraft), named_open(evaluation.aircraft)
    )
    words = []
    if count.plain_tube_ends:
        ends, nuts = count.plain_tube_ends, count.compression_nuts
        sleeves, inserts = count.compression_sleeves, count.inserts
        words.append(f"{ends} plastic line ends, {nuts} nuts, {sleeves} sleeves, {inserts} inserts")
    if count.washer_faces:
        words.append(f"{count.washer_faces} washer faces, {count.washers} sealing washers")
    if count.o_ring_seats:
        words.append(f"{count.o_ring_seats} O-ring seats, {count.o_rings} O-rings")
    return words


def _costs(rows: tuple[OrderRow, ...]) -> list[Block]:
    """The total in each currency, and what has no price."""
    found = bill_of(rows)
    totals = " and ".join(f"{amount} {currency}" for currency, amount in found.totals) or "nothing yet"
    words = f"Together {totals}; {len(found.missing)} of {found.rows} prices are missing."
    blocks: list[Block] = [Paragraph(words, Tone.LEAD)]
    if found.missing:
        blocks.append(Paragraph(f"Missing: {', '.join(found.missing)}."))
    return [*blocks, Paragraph(NO_CONVERSION, Tone.SMALL)]


def _spares(evaluation: Evaluation, rows: tuple[OrderRow, ...]) -> list[Block]:
    """The rules that were used here: ours with their reasons, and those of the builder's file."""
    own = own_rules(evaluation.aircraft.buying)
    ruled = {use for rule in own for use in rule.uses}
    uses = {row.use for row in rows if row.spares} - ruled
    rules = [rule.words for rule in RULES if uses & set(rule.uses)]
    if Use.TUBE in uses:
        count = practice_pieces(evaluation)
        rules.append(f"tube: bought to practise on, because what is left over does not give {count} pieces")
    blocks: list[Block] = [Paragraph(f"{SPARES} {_sentences(rules)}", Tone.SMALL)] if rules else []
    said = [rule.words for rule in own if {row.use for row in rows} & set(rule.uses)]
    return [*blocks, Paragraph(f"{OWN_SPARES} {_sentences(said)}", Tone.SMALL)] if said else blocks


def _packs(evaluation: Evaluation, rows: tuple[OrderRow, ...]) -> list[Block]:
    """Packs of the builder's file that are for nothing on this list."""
    keys = {row.goods.key for row in rows}
    strange = [name for name in packs_of(evaluation) if name not in keys]
    return (
        [Paragraph(f"Not on this list, though the file has packs of it: {', '.join(strange)}.")]
        if strange
        else []
    )


def _sentences(words: list[str]) -> str:
    return " ".join(f"{each[0].upper()}{each[1:]}." for each in words)


def _bulk_hose(evaluation: Evaluation) -> list[Block]:
    """For whoever makes hoses up: how much hose, so that one end cut badly loses no line."""
    blocks: list[Block] = []
    stocks = {line.stock.phrase: line.stock for line in evaluation.laid if isinstance(line.stock, Hose)}
    for phrase, stock in stocks.items():
        own = [line.order_length for line in evaluation.laid if line.stock.phrase == phrase]
        cut = next((value for angle, value in stock.end_cutoff if angle == 0), None)
        if cut is None:
            continue
        whole = total(f"bulk {phrase}", (*own, *(cut for _ in own)))
        blocks.append(Paragraph(_bulk_words(evaluation, phrase, len(own), whole, cut), Tone.SMALL))
    return blocks


def _bulk_words(evaluation: Evaluation, phrase: str, count: int, whole: Value, cut: Value) -> str:
    show = evaluation.display.value
    if not whole.known:
        return f"{phrase}: made up, and ordered when its length is known."
    hoses = "1 hose" if count == 1 else f"{count} hoses"
    return (
        f"{phrase} is ordered made up and tested, to the lengths above. Where you may make hoses up "
        f"yourself, {show(whole)} of it is enough for {hoses}, and one end of each, {show(cut)}, can be "
        "spoiled without losing it."
    )


def _second_tables(evaluation: Evaluation) -> list[Block]:
    """What is used up, and the tools: by kind, so that anybody can sell them."""
    used = Table(("what", "how much", "for"), consumables(evaluation), widths=(0.27, 0.21, 0.52))
    bench = Table(("tool", "for"), tools(evaluation), widths=(0.36, 0.64))
    return [Heading("Used up on the way"), used, Heading("Tools"), bench]


def _fluid_waits(evaluation: Evaluation) -> list[Block]:
    """What the amount of fluid waits for, by itself: beside the amount it would hide everything else."""
    missing = fluid_waits_for(evaluation)
    return [Heading("Measure first, for the amount of fluid"), Bullets(missing)] if missing else []


def _names(rows: tuple[OrderRow, ...]) -> list[Block]:
    named = {row.item.designation: row.item.also_known_as for row in rows if row.item.also_known_as}
    aliases = [f"{designation}: also {', '.join(names)}" for designation, names in named.items()]
    return [Paragraph("Other names on the bag. " + "; ".join(aliases) + ".", Tone.SMALL)] if aliases else []
