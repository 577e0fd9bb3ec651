"""`firmpedal retrofit`: the work from one option to another."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.options import evaluated_options, named
from firmpedal.cli.terminal import UNUSABLE, console, print_block, print_json
from firmpedal.report.options_contract import retrofit_data
from firmpedal.report.retrofit import retrofit_sheet

if TYPE_CHECKING:
    from pathlib import Path


def run(file: Path, before: str | None, after: str, *, as_json: bool) -> int:
    """Print the way from one option to another; the result is the exit code."""
    old, new = named(before), named(after)
    evaluations = evaluated_options(file, [old, new], as_json=as_json)
    if evaluations is None:
        return UNUSABLE
    one, other = evaluations[0], evaluations[-1]  # one and the same where nothing changes
    if as_json:
        print_json(retrofit_data(one, other))
        return 0
    out, sheet = console(), retrofit_sheet(one, other)
    out.print(Text(f"{other.aircraft.aircraft.name}, {sheet.subtitle}", style="bold"))
    for block in sheet.blocks:
        print_block(out, block)
    return 0
