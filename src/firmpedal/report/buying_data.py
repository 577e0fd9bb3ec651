"""What to order as plain data and as a table for spreadsheets."""

from __future__ import annotations

import csv
import io
from typing import TYPE_CHECKING, Any

from firmpedal.decide.prices import NO_CURRENCY
from firmpedal.report.consumables import consumables
from firmpedal.report.contract import parts_data, si
from firmpedal.report.order import bill_of, order_list
from firmpedal.report.tools import tools
from firmpedal.units import Dimension, to_unit

if TYPE_CHECKING:
    from firmpedal.decide.prices import Price, PriceBook
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.order import OrderRow

COLUMNS = (
    "quantity",
    "spares",
    "order",
    "order unit",
    "designation",
    "description",
    "size",
    "material",
    "where",
    "length",
    "length unit",
    "also known as",
    "price",
    "currency",
    "pack",
    "per",
)
UNPRICED = ("", "", "", "")
WITHOUT_UNIT = "m"
_FIGURES = 6


def buying_data(evaluation: Evaluation, book: PriceBook | None = None) -> dict[str, Any]:
    """The parts list as ever, then what to order with spares and prices, what is used up, and the tools."""
    rows = order_list(evaluation, book)
    data = {
        **parts_data(evaluation),
        "order": [_order(row) for row in rows],
        "consumables": [
            {"what": what, "amount": amount, "for": why} for what, amount, why in consumables(evaluation)
        ],
        "tools": [{"what": what, "for": why} for what, why in tools(evaluation)],
    }
    if book is not None:
        found = bill_of(rows)
        data["prices"] = {
            "totals": [{"currency": currency, "total": str(amount)} for currency, amount in found.totals],
            "missing": list(found.missing),
            "rows": found.rows,
            "other_rows": book.others,
        }
    return data


def _order(row: OrderRow) -> dict[str, Any]:
    item, price = row.item, row.price
    return {
        "designation": item.designation,
        "category": item.category.value,
        "quantity": row.quantity,
        "spares": row.spares,
        "order": row.order,
        "order_unit": row.unit,
        "size": item.size,
        "material": item.material,
        "description": item.description,
        "where": list(item.where),
        "length": si(row.length),
        "also_known_as": list(item.also_known_as),
        "wait": row.waits,
        "price": str(price.amount) if price else None,
        "currency": price.currency if price else None,
        "per": price.per.value if price else None,
        "pack": price.pack if price else None,
        "cost": None if row.cost is None else str(row.cost),
    }


def order_csv(evaluation: Evaluation, book: PriceBook | None = None) -> str:
    """What to order as comma-separated values, with the same columns whatever is in it.

    A cell is empty where something is not known yet. Lengths are those of one stick, hose or piece, the
    longest of a range, in the file's own unit. Prices are empty without a book; filled in, the table is
    one that can be read as a book.
    """
    text = io.StringIO()
    table = csv.writer(text, lineterminator="\n")
    table.writerow(COLUMNS)
    unit = evaluation.display.unit(Dimension.LENGTH) or WITHOUT_UNIT
    table.writerows(_cells(row, unit) for row in order_list(evaluation, book))
    return text.getvalue()


def _cells(row: OrderRow, unit: str) -> tuple[str, ...]:
    item, price = row.item, row.price
    known = row.length is not None and row.length.known
    length = f"{to_unit(row.length.high, unit):.{_FIGURES}g}" if row.length is not None and known else ""
    return (
        str(row.quantity),
        str(row.spares),
        "" if row.order is None else str(row.order),
        row.unit,
        item.designation,
        f"{item.description}; {row.waits}" if row.waits else item.description,
        item.size,
        item.material,
        ", ".join(item.where),
        length,
        unit if known else "",
        ", ".join(item.also_known_as),
        *((str(price.amount), _currency(price), str(price.pack), price.per.value) if price else UNPRICED),
    )


def _currency(price: Price) -> str:
    return "" if price.currency == NO_CURRENCY else price.currency
