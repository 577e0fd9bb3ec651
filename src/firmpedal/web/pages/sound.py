"""Is it sound? What was found, and what is still to be measured."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.report.cover import certificate
from firmpedal.report.findings import findings_sheet, measure_sheet
from firmpedal.report.sheet import Sheet, Table
from firmpedal.web.pages.report import Report
from firmpedal.web.takeaway.shelves import way_to_options

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block


def sheets(evaluation: Evaluation) -> tuple[Sheet, ...]:
    """What was found, under the word on whose data decide, then what to measure."""
    found, measure = findings_sheet(evaluation), measure_sheet(evaluation)
    whose = certificate(evaluation)
    first = Sheet(found.title, (*whose, *found.blocks), subtitle=found.subtitle)
    return (first, _to_read(measure)) if measure is not None else (first,)


def _to_read(sheet: Sheet) -> Sheet:
    """Without the columns for a pen: a figure belongs into the file, and would be lost here."""
    return replace(sheet, blocks=tuple(map(_without_pen, sheet.blocks)))


def _without_pen(block: Block) -> Block:
    if not isinstance(block, Table):
        return block
    kept = [n for n, column in enumerate(block.columns) if n not in block.pen and column]
    return Table(
        tuple(block.columns[n] for n in kept), tuple(tuple(row[n] for n in kept) for row in block.rows)
    )


PAGE = Report(
    "What could hurt somebody comes first, then what could break something. Each says what to try.",
    sheets,
    (("form.pdf", "Print the measuring form"),),
    beside=(way_to_options,),
)
