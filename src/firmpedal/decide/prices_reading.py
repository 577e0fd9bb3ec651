"""Reading a builder's own price book: any separator, the usual titles, every mistake with its place."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from decimal import Decimal
from enum import StrEnum
from typing import TYPE_CHECKING

from firmpedal.decide.goods import Kind, by_name, length_of, named
from firmpedal.decide.listing import COMMENTS, DECIMAL_COMMA, LARGEST, SAMPLE, ListError, rows, separator
from firmpedal.decide.prices import BY_LENGTH, NO_CURRENCY, Per, Price, PriceBook

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.decide.goods import Goods, Named
    from firmpedal.decide.listing import Cell, Row


class Column(StrEnum):
    """What a column of the price book holds."""

    PART = "designation"
    PRICE = "price"
    CURRENCY = "currency"
    PACK = "pack"
    PER = "per"
    LENGTH = "length"
    LENGTH_UNIT = "length unit"


TITLES: dict[Column, tuple[str, ...]] = {  # the surest first
    Column.PART: ("designation", "also known as", "part number", "part no", "p/n", "pn", "part", "item",
                  "bezeichnung", "artikel", "teil", "number", "name", "what"),
    Column.PRICE: ("price", "unit price", "preis", "einzelpreis", "cost"),
    Column.CURRENCY: ("currency", "währung", "waehrung", "cur"),
    Column.PACK: ("pack", "pack size", "package", "packung", "pieces in a pack"),
    Column.PER: ("per", "price per", "pro", "je", "unit", "einheit"),
    Column.LENGTH: ("length", "länge", "laenge"),
    Column.LENGTH_UNIT: ("length unit",),
}  # fmt: skip
PER_WORDS = {
    Per.EACH: ("each", "ea", "pc", "piece", "stück", "stueck", "st"),
    Per.PACK: ("pack", "bag", "packung", "pk"),
    Per.FOOT: ("ft", "foot", "feet", "'"),
    Per.METRE: ("m", "metre", "meter"),
}
UNCUT = "write a price with a point, `3.10`, or in quotes, where commas stand between the columns"
SIGNS = "$€£¥"
_PRICE = re.compile(
    rf"(?P<before>[{SIGNS}]|[A-Za-z]{{3}})?\s*(?P<number>\d[\d.,' ]*)\s*(?P<after>[{SIGNS}]|[A-Za-z]{{3}})?"
)
_PLAIN = re.compile(r"0+\.\d+|\d+(?:\.(?:\d{1,2}|\d{4,}))?")  # 1.234 may be one and a bit, or a thousand
_GROUPED = {",": re.compile(r"\d{1,3}(?:,\d{3})+\.\d+"), ".": re.compile(r"\d{1,3}(?:\.\d{3})+,\d+")}


@dataclass(frozen=True, slots=True)
class _Entry:
    cells: tuple[tuple[Column, Cell], ...]
    line: int
    untitled: tuple[Cell, ...] = ()  # behind the last title

    def cell(self, column: Column) -> Cell | None:
        return next((cell for found, cell in self.cells if found is column and cell.text), None)


def price_book(text: str, wanted: Iterable[Goods], length_unit: str | None) -> PriceBook:
    """Read a price book: only rows that name something wanted are judged.

    Raises:
        ListError: It has no titles, or a row that is needed cannot be understood.
    """
    known = tuple(wanted)
    keys = {each.key for each in known}
    prices: list[Price] = []
    others = 0
    for entry in _entries(text):
        part = entry.cell(Column.PART)
        found = _named(part, known, length_unit) if part is not None else None
        if found is None or found.goods.key not in keys:
            others += 1
            continue
        length = _length(entry, length_unit) or found.length
        price = _price(entry, found.goods, length)
        if price is not None and not _said_before(price, prices):
            prices.append(price)
    return PriceBook(tuple(prices), others)


def _named(part: Cell, known: tuple[Goods, ...], unit: str | None) -> Named | None:
    """What a row is for; a name that several wanted things go by has to be said in full."""
    names = [each.name for each in by_name(part.text, known)]
    if len(names) > 1:
        raise _trouble(part, f"`{part.text}` can be {' or '.join(names)}", "write one row for each")
    return named(part.text, known, unit)


def _entries(text: str) -> list[_Entry]:
    if len(text) > LARGEST:
        raise ListError("this is too long for a price book", "keep the rows that belong to the brakes")
    filled = [row for row in rows(text, separator(text)) if any(cell.text for cell in row)]
    kept = [row for row in filled if not _first(row).startswith(COMMENTS)]
    for number, row in enumerate(kept[:SAMPLE]):
        columns = _columns(row)
        if {Column.PART, Column.PRICE} <= set(columns.values()):
            return [_entry(each, columns, len(row)) for each in kept[number + 1 :]]
    where = kept[0][0] if kept else None
    raise ListError(
        "no row says which column is the part and which is the price",
        "begin with a row of titles: `designation, price, currency, pack, per`",
        where.line if where else 1,
        where.column if where else 1,
    )


def _first(row: Row) -> str:
    return next(cell.text for cell in row if cell.text)


def _entry(row: Row, columns: dict[int, Column], titles: int) -> _Entry:
    cells = tuple((columns[n], cell) for n, cell in enumerate(row) if n in columns)
    return _Entry(cells, row[0].line, tuple(cell for cell in row[titles:] if cell.text))


def _columns(row: Row) -> dict[int, Column]:
    """Take for each meaning the column with its surest title."""
    titles = {
        n: " ".join(re.sub(r"[._:#*()\-]+", " ", cell.text.casefold()).split()) for n, cell in enumerate(row)
    }
    found: dict[int, Column] = {}
    for column, words in TITLES.items():
        places = (n for word in words for n, title in titles.items() if title == word and n not in found)
        place = next(places, None)
        if place is not None:
            found[place] = column
    return found


def _currency(cell: Cell, price: Cell, written: str) -> str:
    """The currency of a cell; figures are none, and show that a price was cut in two at its comma."""
    said = cell.text.upper()
    if any(letter.isdigit() for letter in said):
        raise _trouble(cell, f"`{cell.text}` is no currency", UNCUT)
    if written and said != written:
        raise _trouble(price, f"the price says {written}, its currency {said}", "say one of them")
    return said


def _price(entry: _Entry, goods: Goods, length: tuple[float, float] | None) -> Price | None:
    """The price in a row; a row whose price is left empty has none."""
    cell = entry.cell(Column.PRICE)
    if cell is None:
        return None
    if (left := next((each for each in entry.untitled if each.text.isdigit()), None)) is not None:
        raise _trouble(left, f"`{left.text}` stands in no column", UNCUT)
    amount, written = _amount(cell)
    said = entry.cell(Column.CURRENCY)
    currency = _currency(said, cell, written) if said is not None else written or NO_CURRENCY
    pack = _pack(entry)
    per = _per(entry, goods, pack)
    own = None if goods.kind is Kind.PIECE or per in BY_LENGTH else length
    return Price(goods, amount, currency, pack, per, entry.line, own)


def _amount(cell: Cell) -> tuple[Decimal, str]:
    """A price and the currency written with it."""
    found = _PRICE.fullmatch(cell.text)
    if found is None:
        raise _trouble(cell, f"`{cell.text}` is no price", "write it as `12.50`")
    digits = re.sub(r"[' ]", "", found["number"])
    if found["before"] and found["after"]:
        raise _trouble(cell, f"`{cell.text}` has two currencies", "write it as `12.50`")
    written = (found["before"] or found["after"] or "").upper()
    if _PLAIN.fullmatch(digits):
        return Decimal(digits), written
    for group, pattern in _GROUPED.items():
        if pattern.fullmatch(digits):
            return Decimal(digits.replace(group, "").replace(",", ".")), written
    if DECIMAL_COMMA.fullmatch(digits):
        return Decimal(digits.replace(",", ".")), written
    raise _trouble(
        cell, f"`{cell.text}` can be read in two ways", "write it with a point and no thousands mark"
    )


def _pack(entry: _Entry) -> int:
    cell = entry.cell(Column.PACK)
    if cell is None:
        return 1
    if not re.fullmatch(r"\d{1,5}", cell.text) or int(cell.text) == 0:
        raise _trouble(
            cell, f"`{cell.text}` is no number of pieces", "write how many are in a pack, as in `10`"
        )
    return int(cell.text)


def _per(entry: _Entry, goods: Goods, pack: int) -> Per:
    cell = entry.cell(Column.PER)
    if cell is None and pack > 1:
        where = entry.cell(Column.PRICE)
        hint = "write `each` or `pack` in a column `per`"
        raise _trouble(where, "is this price for one piece or for the pack?", hint)
    if cell is None:
        return Per.EACH
    said = cell.text.casefold().removeprefix("per ").strip(". ")
    per = next((per for per, words in PER_WORDS.items() if said in words), None)
    if per is None:
        raise _trouble(cell, f"`{cell.text}` is no measure of a price", "write `each`, `pack`, `ft` or `m`")
    if per in BY_LENGTH and goods.kind is Kind.PIECE:
        raise _trouble(cell, f"{goods.name} is not sold by length", "write `each` or `pack`")
    return per


def _length(entry: _Entry, unit: str | None) -> tuple[float, float] | None:
    cell = entry.cell(Column.LENGTH)
    if cell is None:
        return None
    own = entry.cell(Column.LENGTH_UNIT)
    length = length_of(cell.text, own.text if own is not None else unit)
    if length is None:
        raise _trouble(cell, f"`{cell.text}` is no length", "write it with its unit, as in `9 in`")
    return length


def _said_before(price: Price, before: list[Price]) -> bool:
    """Whether another row says the same: what is sold by length stands once for each length of the list."""
    for other in before:
        if (other.goods.key, other.length) == (price.goods.key, price.length):
            if price.by_length and replace(price, line=other.line) == other:
                return True
            words = f"{price.goods.name} has a price in line {other.line} already"
            raise ListError(words, "keep the row that you will order by", price.line)
    return False


def _trouble(cell: Cell | None, message: str, suggestion: str) -> ListError:
    return ListError(message, suggestion, cell.line if cell else 1, cell.column if cell else 1)
