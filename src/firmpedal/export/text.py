"""Sheets as plain text, for a letter or a forum.

Nobody knows in which type and how wide it is shown there, so nothing stands in columns and no line is broken:
a row of a table is one line.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.buying import parts_sheet
from firmpedal.report.cover import verdict_line
from firmpedal.report.packet import footer_of
from firmpedal.report.sheet import Bullets, Facts, Figures, Group, Heading, Paragraph, Table, Tone

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.pipeline import Evaluation
    from firmpedal.report.packet import Footer
    from firmpedal.report.sheet import Block, Sheet

ALOUD = (Tone.WARNING, Tone.CAUTION, Tone.NOTE)


def text(sheets: Iterable[Sheet], footer: Footer, verdict: str) -> str:
    """Write sheets one below the other. Same sheets, same text.

    Drawings, sums and lines to write on are left out.

    Args:
        sheets: What is wanted as text.
        footer: Of which aircraft, option and revision it is; stands on top.
        verdict: In one line, for nobody who gets a list alone should buy by it unwarned.
    """
    lines = [footer.words, verdict]
    for sheet in sheets:
        lines += ["", sheet.title, *([sheet.subtitle] if sheet.subtitle else [])]
        for block in sheet.blocks:
            lines += _lines(block)
    return "\n".join(lines).rstrip() + "\n"


def parts_text(evaluation: Evaluation) -> str:
    """Write what to order, in the units of the evaluation."""
    return text((parts_sheet(evaluation),), footer_of(evaluation), verdict_line(evaluation))


def _lines(block: Block) -> Iterator[str]:
    if isinstance(block, Heading):
        yield from ("", block.text)
    elif isinstance(block, Paragraph):
        yield from ("", f"{block.tone.value}: {block.text}" if block.tone in ALOUD else block.text)
    elif isinstance(block, Bullets):
        yield from (f"{'[ ]' if block.boxes else '-'} {item}" for item in block.items)
    elif isinstance(block, Facts):
        yield from (f"{term}: {said}" for term, said in block.rows)
    elif isinstance(block, Figures):
        yield from (f"{each.label}: {_told(each.text, each.note)}" for each in block.items)
    elif isinstance(block, Table):
        yield from _table(block)
    elif isinstance(block, Group):
        for inner in block.blocks:
            yield from _lines(inner)


def _table(table: Table) -> Iterator[str]:
    """What the columns are, then a line for each row; empty cells are left out."""
    if table.title:
        yield from ("", table.title)
    if any(table.columns):
        yield f"({'; '.join(filter(None, table.columns))})"
    for row in table.rows:
        yield f"- {'; '.join(found for cell in row if (found := _cell(cell)))}"


def _cell(cell: str) -> str:
    """The first line counts, and the others explain it."""
    first, *others = cell.split("\n")
    return _told(first, *others)


def _told(first: str, *others: str) -> str:
    explained = ", ".join(filter(None, others))
    return f"{first} ({explained})" if explained else first
