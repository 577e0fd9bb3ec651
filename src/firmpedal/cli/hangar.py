"""`firmpedal hangar`: one page for the phone, to take along to the aircraft."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.targets import refused
from firmpedal.cli.terminal import UNUSABLE, console, evaluated, print_unwritable

if TYPE_CHECKING:
    from pathlib import Path


def run(file: Path, out: Path, option: str | None) -> int:
    """Write the page of a file; the result is the exit code."""
    from firmpedal.export.hangar import write  # noqa: PLC0415  loads slowly
    from firmpedal.pipeline import usable_options  # noqa: PLC0415

    if refused(out, ".html", file):
        return UNUSABLE
    with console(error=True).status("Working it out ..."):
        evaluation = evaluated(file, option)
        if evaluation is None:
            return UNUSABLE
        try:
            cards = write(evaluation, usable_options(evaluation.reading), out)
        except OSError as trouble:
            print_unwritable(out, trouble)
            return UNUSABLE
    console().print(Text(f"Wrote {out}, {cards} cards. Copy it to your phone; it needs no connection."))
    return 0
