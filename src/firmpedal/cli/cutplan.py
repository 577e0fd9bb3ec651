"""`firmpedal cutplan`: which piece of tube to cut from which stick."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.terminal import UNUSABLE, console, evaluated, print_block, print_json, print_verdict
from firmpedal.report.contract import cutplan_data
from firmpedal.report.cutplan import cutplan_sheet

if TYPE_CHECKING:
    from pathlib import Path


def run(file: Path, option: str | None, *, as_json: bool) -> int:
    """Print the cutting plan; the result is the exit code."""
    evaluation = evaluated(file, option, as_json=as_json)
    if evaluation is None:
        return UNUSABLE
    if as_json:
        print_json(cutplan_data(evaluation))
        return 0
    out, sheet = console(), cutplan_sheet(evaluation)
    if sheet is None:
        out.print(Text("There is no metal tube in this file to cut."))
        return 0
    print_verdict(out, evaluation)
    for block in sheet.blocks:
        print_block(out, block)
    return 0
