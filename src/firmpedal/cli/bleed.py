"""`firmpedal bleed`: which way to fill each wheel, how hard, where air stays; shut in and cold."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.terminal import UNUSABLE, console, evaluated, print_block, print_json, print_verdict
from firmpedal.report.bleeding import bleeding_sheet
from firmpedal.report.bleeding_contract import bleed_data
from firmpedal.report.cold import cold_sheet
from firmpedal.report.trapped import trapped_sheet

if TYPE_CHECKING:
    from pathlib import Path

NOTHING = "No caliper is joined to a line yet, so there is nothing to fill."


def run(file: Path, option: str | None, *, as_json: bool) -> int:
    """Print how to fill and bleed; the result is the exit code."""
    evaluation = evaluated(file, option, as_json=as_json)
    if evaluation is None:
        return UNUSABLE
    if as_json:
        print_json(bleed_data(evaluation))
        return 0
    out, sheet = console(), bleeding_sheet(evaluation)
    print_verdict(out, evaluation)
    if sheet is None:
        out.print(Text(NOTHING))
        return 0
    for each in (sheet, trapped_sheet(evaluation), cold_sheet(evaluation)):
        if each is not None:
            out.print(Text(f"\n{each.title}", style="bold"))
            for block in each.blocks:
                print_block(out, block)
    return 0
