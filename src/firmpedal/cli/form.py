"""`firmpedal form`: what is still to be measured, on the screen or to print."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.printing import write_sheets
from firmpedal.cli.targets import refused
from firmpedal.cli.terminal import UNUSABLE, console, evaluated, print_block, print_wrapped
from firmpedal.report.measuring import form_sheets
from firmpedal.report.sheet import Blanks

if TYPE_CHECKING:
    from pathlib import Path

    from rich.console import Console

    from firmpedal.report.sheet import Sheet


def run(file: Path, out: Path | None, option: str | None) -> int:
    """Print the form of a file, or write it as a PDF; the result is the exit code."""
    if out is not None and refused(out, ".pdf", file):
        return UNUSABLE
    evaluation = evaluated(file, option)
    if evaluation is None:
        return UNUSABLE
    if out is not None:
        return write_sheets(form_sheets(evaluation), evaluation, out)
    for sheet in form_sheets(evaluation):
        _show(console(), sheet)
    return 0


def _show(out: Console, sheet: Sheet) -> None:
    out.print(Text(f"\n{sheet.title}", style="bold"))
    for block in sheet.blocks:
        if isinstance(block, Blanks):
            _show_blanks(out, block)
        else:
            print_block(out, block)


def _show_blanks(out: Console, block: Blanks) -> None:
    out.print(Text(f"\n{block.title}"))
    for row in block.rows:
        boxes = "  ".join(f"______ {words}".rstrip() for words in row.boxes)
        whole = f" [ ] {row.what}: {boxes}"
        if len(whole) < out.width:
            out.print(Text(whole), soft_wrap=True)
        else:
            print_wrapped(out, " [ ] ", f"{row.what}:")
            out.print(Text(f"     {boxes}"), soft_wrap=True)
        if row.how:
            print_wrapped(out, "     ", row.how, "dim")
