"""`firmpedal cards`: the cards of the lines for the bench, without the rest of the packet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.printing import write_sheets
from firmpedal.cli.targets import refused
from firmpedal.cli.terminal import UNUSABLE, console, evaluated
from firmpedal.project.names import quoted, suggest

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path


def run(file: Path, out: Path, option: str | None, lines: Sequence[str], *, only_lines: bool) -> int:
    """Write the cards of a file; the result is the exit code."""
    from firmpedal.report.cards import bench_sheets  # noqa: PLC0415  loads slowly

    if refused(out, ".pdf", file):
        return UNUSABLE
    evaluation = evaluated(file, option)
    if evaluation is None:
        return UNUSABLE
    error, names = console(error=True), [line.name for line in evaluation.laid]
    if unknown := [line for line in lines if line not in names]:
        for line in unknown:
            error.print(Text(f"The file has no line {quoted(line)}: {suggest(line, names)}"))
        return UNUSABLE
    if not names:
        error.print(Text("There is no line in this file to make."))
        return UNUSABLE
    return write_sheets(bench_sheets(evaluation, lines, only_lines=only_lines), evaluation, out)
