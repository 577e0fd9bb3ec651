"""`firmpedal parts`: what to buy."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.tables import read_table, write_table
from firmpedal.cli.targets import refused
from firmpedal.cli.terminal import (
    UNUSABLE,
    console,
    evaluated,
    print_block,
    print_json,
    print_verdict,
)
from firmpedal.decide.prices_reading import price_book
from firmpedal.report.buying import parts_sheet
from firmpedal.report.buying_data import buying_data, order_csv
from firmpedal.report.order import wanted_goods
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from pathlib import Path

    from firmpedal.decide.prices import PriceBook
    from firmpedal.pipeline import Evaluation


@dataclass(frozen=True, slots=True)
class Wanted:
    """In which form the list is wanted, and the price book to put to it."""

    as_json: bool = False
    table: Path | None = None
    prices: Path | None = None


def run(file: Path, option: str | None, wanted: Wanted) -> int:
    """Print the parts list; the result is the exit code."""
    evaluation = None if _refused(file, wanted) else evaluated(file, option, as_json=wanted.as_json)
    if evaluation is None:
        return UNUSABLE
    book = None
    if wanted.prices is not None:
        book = _book(evaluation, wanted.prices, as_json=wanted.as_json)
        if book is None:
            return UNUSABLE
    if wanted.table is not None and not write_table(wanted.table, order_csv(evaluation, book)):
        return UNUSABLE
    if wanted.as_json:
        print_json(buying_data(evaluation, book))
        return 0
    out = console()
    if wanted.table is not None:
        out.print(Text(f"Wrote {wanted.table}"))
        return 0
    print_verdict(out, evaluation)
    for block in parts_sheet(evaluation, book).blocks:
        print_block(out, block)
    return 0


def _refused(file: Path, wanted: Wanted) -> bool:
    read = (file,) if wanted.prices is None else (file, wanted.prices)
    return wanted.table is not None and refused(wanted.table, ".csv", *read)


def _book(evaluation: Evaluation, path: Path, *, as_json: bool) -> PriceBook | None:
    """Read the price book, or say why it cannot be read."""
    goods, unit = wanted_goods(evaluation), evaluation.display.unit(Dimension.LENGTH)
    return read_table(path, "the price book", lambda text: price_book(text, goods, unit), as_json=as_json)
