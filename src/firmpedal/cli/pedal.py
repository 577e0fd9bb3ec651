"""`firmpedal pedal`: how far each pedal goes under a foot, and what the travel is spent on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.tables import write_table
from firmpedal.cli.targets import refused
from firmpedal.cli.terminal import UNUSABLE, console, evaluated, print_json, print_sheet, print_verdict
from firmpedal.pipeline import usable_options
from firmpedal.quantity import Mark, Value
from firmpedal.report.feel import feel_sheet
from firmpedal.report.feel_data import curves_csv, feel_data
from firmpedal.report.feel_options import feel_options_sheet
from firmpedal.report.network import network_sheet
from firmpedal.units import Dimension, UnitError, read

if TYPE_CHECKING:
    from pathlib import Path

    from rich.console import Console

    from firmpedal.pipeline import Evaluation

NO_PEDAL = "No pedal of this file presses a brake yet: describe cylinders, lines and calipers first."


@dataclass(frozen=True, slots=True)
class Wanted:
    """In which form it is wanted, and the force to look at."""

    as_json: bool = False
    table: Path | None = None
    force: str | None = None


def run(file: Path, option: str | None, wanted: Wanted) -> int:
    """Print how each pedal feels; the result is the exit code."""
    if wanted.table is not None and refused(wanted.table, ".csv", file):
        return UNUSABLE
    evaluation = evaluated(file, option, as_json=wanted.as_json)
    if evaluation is None:
        return UNUSABLE
    try:
        force = _force(evaluation, wanted.force)
    except UnitError as error:
        console(error=True).print(Text(f"--force: {error}"))
        return UNUSABLE
    if wanted.table is not None and not write_table(wanted.table, curves_csv(evaluation, force)):
        return UNUSABLE
    if wanted.as_json:
        print_json(feel_data(evaluation, force))
    elif wanted.table is not None:
        console().print(Text(f"Wrote {wanted.table}"))
    else:
        _print(console(), evaluation, force, options=option is None)
    return 0


def _force(evaluation: Evaluation, text: str | None) -> Value | None:
    """The force asked for, in the file's unit where it has none of its own.

    Raises:
        UnitError: It cannot be read, or is less than nothing.
    """
    if text is None:
        return None
    measured = read(text, Dimension.FORCE, evaluation.display.unit(Dimension.FORCE))
    if measured.span[0] <= 0:
        raise UnitError(f"a foot of {text} presses nothing: give a force above zero")
    return Value("force asked for", Dimension.FORCE, measured.span, Mark.MEASURED, "foot")


def _print(out: Console, evaluation: Evaluation, force: Value | None, *, options: bool) -> None:
    sheet = feel_sheet(evaluation, force)
    if sheet is None:
        out.print(Text(NO_PEDAL))
        return
    print_verdict(out, evaluation)
    beside = feel_options_sheet(usable_options(evaluation.reading)) if options else None
    for each in (sheet, network_sheet(evaluation), beside):
        if each is not None:
            print_sheet(out, each)
