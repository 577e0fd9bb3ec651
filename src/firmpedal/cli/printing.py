"""Sheets to a PDF from the command line, or the reason why not."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.terminal import UNUSABLE, console, print_unwritable
from firmpedal.model.display import count_of

if TYPE_CHECKING:
    from pathlib import Path

    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Sheet


def write_sheets(sheets: tuple[Sheet, ...], evaluation: Evaluation, out: Path) -> int:
    """Write sheets with the evaluation's footer; the result is the exit code."""
    from firmpedal.export.packet import write  # noqa: PLC0415  the printing library is slow to load

    with console(error=True).status("Printing ..."):
        try:
            pages = write(sheets, evaluation, out)
        except OSError as trouble:
            print_unwritable(out, trouble)
            return UNUSABLE
    console().print(Text(f"Wrote {out}, {count_of(pages, 'page')}."))
    return 0
