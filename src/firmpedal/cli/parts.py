"""`firmpedal parts`: what to buy."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.cli.terminal import UNUSABLE, console, evaluated, print_block, print_json
from firmpedal.report.contract import parts_data
from firmpedal.report.parts import parts_sheet

if TYPE_CHECKING:
    from pathlib import Path


def run(file: Path, option: str | None, *, as_json: bool) -> int:
    """Print the parts list; the result is the exit code."""
    evaluation = evaluated(file, option, as_json=as_json)
    if evaluation is None:
        return UNUSABLE
    if as_json:
        print_json(parts_data(evaluation))
        return 0
    out = console()
    for block in parts_sheet(evaluation).blocks:
        print_block(out, block)
    return 0
