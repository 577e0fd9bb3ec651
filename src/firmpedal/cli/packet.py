"""`firmpedal packet`: write the printed packet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.cli.printing import write_sheets
from firmpedal.cli.targets import refused
from firmpedal.cli.terminal import UNUSABLE, console, evaluated

if TYPE_CHECKING:
    from pathlib import Path

    from firmpedal.pipeline import Evaluation


def run(file: Path, out: Path, option: str | None) -> int:
    """Write the packet of a file; the result is the exit code."""
    if refused(out, ".pdf", file):
        return UNUSABLE
    with console(error=True).status("Working it out ..."):
        evaluation = evaluated(file, option)
    if evaluation is None:
        return UNUSABLE
    return write_packet(evaluation, out)


def write_packet(evaluation: Evaluation, out: Path) -> int:
    """Write the packet of an evaluation; the result is the exit code."""
    from firmpedal.pipeline import usable_options  # noqa: PLC0415
    from firmpedal.report.packet import packet_sheets  # noqa: PLC0415  loads slowly

    return write_sheets(packet_sheets(evaluation, usable_options(evaluation.reading)), evaluation, out)
