"""`firmpedal heat`: how warm the brakes get, and what stands it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.cli.terminal import UNUSABLE, console, evaluated, print_json, print_sheet, print_verdict
from firmpedal.report.heat import heat_sheet
from firmpedal.report.heat_data import heat_data

if TYPE_CHECKING:
    from pathlib import Path


def run(file: Path, option: str | None, *, as_json: bool) -> int:
    """Print the heat of the brakes; the result is the exit code."""
    evaluation = evaluated(file, option, as_json=as_json)
    if evaluation is None:
        return UNUSABLE
    if as_json:
        print_json(heat_data(evaluation))
    else:
        out = console()
        print_verdict(out, evaluation)
        print_sheet(out, heat_sheet(evaluation))
    return 0
