"""`firmpedal lines`: how each line is cut and bent, or what hose to order."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.answering import answered
from firmpedal.cli.terminal import print_block, print_verdict
from firmpedal.report.contract import lines_data
from firmpedal.report.lines import line_sheets

if TYPE_CHECKING:
    from pathlib import Path

    from rich.console import Console

    from firmpedal.pipeline import Evaluation


def run(file: Path, option: str | None, *, as_json: bool) -> int:
    """Print every line; the result is the exit code."""
    return answered(file, option, as_json=as_json, data=lines_data, show=_show)


def _show(out: Console, evaluation: Evaluation) -> None:
    print_verdict(out, evaluation)
    print_lines(out, evaluation)


def print_lines(out: Console, evaluation: Evaluation) -> None:
    """Print a short card for each line."""
    for sheet in line_sheets(evaluation):
        out.print(Text(f"\n{sheet.title}", style="bold"))
        out.print(Text(sheet.subtitle))
        for block in sheet.blocks:
            print_block(out, block)
