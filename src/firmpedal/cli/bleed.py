"""`firmpedal bleed`: which way to fill each wheel, how hard, where air stays; shut in and cold."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.answering import answered
from firmpedal.cli.terminal import print_sheet, print_verdict
from firmpedal.report.bleeding import bleeding_sheet
from firmpedal.report.bleeding_contract import bleed_data
from firmpedal.report.cold import cold_sheet
from firmpedal.report.trapped import trapped_sheet

if TYPE_CHECKING:
    from pathlib import Path

    from rich.console import Console

    from firmpedal.pipeline import Evaluation

NOTHING = "No caliper is joined to a line yet, so there is nothing to fill."


def run(file: Path, option: str | None, *, as_json: bool) -> int:
    """Print how to fill and bleed; the result is the exit code."""
    return answered(file, option, as_json=as_json, data=bleed_data, show=_show)


def _show(out: Console, evaluation: Evaluation) -> None:
    sheet = bleeding_sheet(evaluation)
    print_verdict(out, evaluation)
    if sheet is None:
        out.print(Text(NOTHING))
        return
    for each in (sheet, trapped_sheet(evaluation), cold_sheet(evaluation)):
        if each is not None:
            print_sheet(out, each)
