"""`firmpedal compare`: options side by side."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.options import evaluated_options, named
from firmpedal.cli.terminal import UNUSABLE, console, print_block, print_json
from firmpedal.report.compare import compare_sheet
from firmpedal.report.options_contract import compare_data

if TYPE_CHECKING:
    from pathlib import Path


def run(file: Path, options: list[str], *, as_json: bool) -> int:
    """Print options side by side; the result is the exit code."""
    names = [named(word) for word in options]
    if len(names) == 1 and names[0] is not None:
        names = [None, *names]
    evaluations = evaluated_options(file, names or None, as_json=as_json)
    if evaluations is None:
        return UNUSABLE
    if as_json:
        print_json(compare_data(evaluations))
        return 0
    out, sheet = console(), compare_sheet(evaluations)
    out.print(Text(f"{evaluations[0].aircraft.aircraft.name}: {sheet.subtitle}", style="bold"))
    for block in sheet.blocks:
        print_block(out, block)
    return 0
