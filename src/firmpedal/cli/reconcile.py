"""`firmpedal reconcile`: a list of parts against the design."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.cli.tables import read_table
from firmpedal.cli.terminal import UNUSABLE, console, evaluated, print_block, print_json
from firmpedal.decide.listing import entries
from firmpedal.report.reconcile import reconcile_sheet, reconciled
from firmpedal.report.reconcile_data import reconcile_data

if TYPE_CHECKING:
    from pathlib import Path


def run(file: Path, parts: Path, option: str | None, *, as_json: bool) -> int:
    """Hold a list against a file; the result is the exit code."""
    evaluation = evaluated(file, option, as_json=as_json)
    if evaluation is None:
        return UNUSABLE
    rows = read_table(parts, "the list", entries, as_json=as_json)
    if rows is None:
        return UNUSABLE
    found = reconciled(evaluation, rows)
    if as_json:
        print_json(reconcile_data(evaluation, found, str(parts)))
    else:
        out = console()
        open_ends = len(evaluation.violations)
        for block in reconcile_sheet(found, evaluation.display, str(parts), open_ends).blocks:
            print_block(out, block)
    return 0 if found.agrees else 1
