"""`firmpedal reconcile`: a list of parts against the design."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.terminal import UNUSABLE, console, evaluated, print_block, print_json
from firmpedal.decide.listing import ListError, decoded, entries
from firmpedal.report.reconcile import reconcile_sheet, reconciled
from firmpedal.report.reconcile_data import list_errors, reconcile_data

if TYPE_CHECKING:
    from pathlib import Path

    from firmpedal.decide.listing import Entry


def run(file: Path, parts: Path, option: str | None, *, as_json: bool) -> int:
    """Hold a list against a file; the result is the exit code."""
    evaluation = evaluated(file, option, as_json=as_json)
    if evaluation is None:
        return UNUSABLE
    rows = _read(parts, as_json=as_json)
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


def _read(parts: Path, *, as_json: bool) -> tuple[Entry, ...] | None:
    """Read the list, or say why it cannot be read."""
    try:
        return entries(decoded(parts.read_bytes()))
    except OSError as error:
        words = (error.strerror or "cannot be read").lower()
        problem = ListError(f"the list cannot be read: {words}", "check its name and folder")
    except ListError as error:
        problem = error
    if as_json:
        print_json(list_errors(problem, str(parts)))
    out = console(error=True)
    out.print(Text(f"{parts}:{problem.line}:{problem.column}: {problem.message}"), soft_wrap=True)
    out.print(Text(f"   try: {problem.suggestion}"), soft_wrap=True)
    return None
