"""`firmpedal stop`: what each foot gives, and what a stop and a run-up take."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.cli.answering import answered
from firmpedal.cli.terminal import print_sheet, print_verdict
from firmpedal.report.stopping import stopping_sheet
from firmpedal.report.stopping_data import stopping_data

if TYPE_CHECKING:
    from pathlib import Path

    from rich.console import Console

    from firmpedal.pipeline import Evaluation


def run(file: Path, option: str | None, *, as_json: bool) -> int:
    """Print how it stops and holds; the result is the exit code."""
    return answered(file, option, as_json=as_json, data=stopping_data, show=_show)


def _show(out: Console, evaluation: Evaluation) -> None:
    print_verdict(out, evaluation)
    print_sheet(out, stopping_sheet(evaluation))
