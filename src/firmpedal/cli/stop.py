"""`firmpedal stop`: what each foot gives, and what a stop and a run-up take."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.cli.terminal import UNUSABLE, console, evaluated, print_json, print_sheet, print_verdict
from firmpedal.report.stopping import stopping_sheet
from firmpedal.report.stopping_data import stopping_data

if TYPE_CHECKING:
    from pathlib import Path


def run(file: Path, option: str | None, *, as_json: bool) -> int:
    """Print how it stops and holds; the result is the exit code."""
    evaluation = evaluated(file, option, as_json=as_json)
    if evaluation is None:
        return UNUSABLE
    if as_json:
        print_json(stopping_data(evaluation))
    else:
        out = console()
        print_verdict(out, evaluation)
        print_sheet(out, stopping_sheet(evaluation))
    return 0
