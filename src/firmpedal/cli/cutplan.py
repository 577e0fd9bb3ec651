"""`firmpedal cutplan`: which piece of tube to cut from which stick."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.answering import answered
from firmpedal.cli.terminal import print_block, print_verdict
from firmpedal.report.contract import cutplan_data
from firmpedal.report.cutplan import cutplan_sheet

if TYPE_CHECKING:
    from pathlib import Path

    from rich.console import Console

    from firmpedal.pipeline import Evaluation


def run(file: Path, option: str | None, *, as_json: bool) -> int:
    """Print the cutting plan; the result is the exit code."""
    return answered(file, option, as_json=as_json, data=cutplan_data, show=_show)


def _show(out: Console, evaluation: Evaluation) -> None:
    sheet = cutplan_sheet(evaluation)
    if sheet is None:
        out.print(Text("There is no metal tube in this file to cut."))
        return
    print_verdict(out, evaluation)
    for block in sheet.blocks:
        print_block(out, block)
