"""`firmpedal heat`: how warm the brakes get, and what stands it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.cli.answering import answered
from firmpedal.cli.terminal import print_sheet, print_verdict
from firmpedal.report.heat import heat_sheet
from firmpedal.report.heat_data import heat_data

if TYPE_CHECKING:
    from pathlib import Path

    from rich.console import Console

    from firmpedal.pipeline import Evaluation


def run(file: Path, option: str | None, *, as_json: bool) -> int:
    """Print the heat of the brakes; the result is the exit code."""
    return answered(file, option, as_json=as_json, data=heat_data, show=_show)


def _show(out: Console, evaluation: Evaluation) -> None:
    print_verdict(out, evaluation)
    print_sheet(out, heat_sheet(evaluation))
