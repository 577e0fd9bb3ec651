"""`firmpedal import`: the shape of lines from a table into the builder's own file."""

from __future__ import annotations

import difflib
from functools import partial
from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.export import SIGNS
from firmpedal.cli.tables import read_table
from firmpedal.cli.terminal import UNUSABLE, console, evaluated, print_unwritable, print_wrapped
from firmpedal.decide.fitted import NotImportedError
from firmpedal.decide.imported import imported
from firmpedal.decide.shape_tables import shapes_of
from firmpedal.project.save import ChangedMeanwhileError, as_read, save
from firmpedal.report.importing import import_words, where_to

if TYPE_CHECKING:
    from pathlib import Path

    from firmpedal.decide.shape_tables import Shape
    from firmpedal.pipeline import Evaluation


def run(
    table: Path, file: Path, line: str | None, option: str | None, rotation: str | None, *, dry: bool
) -> int:
    """Write a table's shapes into a file, all of them or none; the result is the exit code."""
    error = console(error=True)
    if rotation is not None and rotation not in SIGNS:
        error.print(Text(f"--rotation is {' or '.join(SIGNS)}, not {rotation!r}."))
        return UNUSABLE
    before = evaluated(file, option)
    if before is None:
        return UNUSABLE
    shapes = read_table(table, "the table", partial(shapes_of, turns=rotation), as_json=False)
    if shapes is None:
        return UNUSABLE
    wanted, refusal = where_to(shapes, [each.name for each in before.laid], line)
    if refusal:
        print_wrapped(error, f"{table}: ", refusal)
        return UNUSABLE
    after = _taken_over(before, wanted, table)
    if after is None:
        return UNUSABLE
    return _shown(before, after) if dry else _shown_and_saved(before, after, file)


def _taken_over(before: Evaluation, wanted: dict[str, Shape], table: Path) -> Evaluation | None:
    """Each line in turn, a mirror image after the line that it follows; None where one is refused."""
    now = before
    for name, shape in wanted.items():
        try:
            made = imported(now, name, shape)
        except NotImportedError as refusal:
            error = console(error=True)
            print_wrapped(error, f"{table}: ", f"{name}: {refusal.message}")
            print_wrapped(error, "   try: ", refusal.suggestion or "write it out by hand")
            error.print(Text("Nothing was written."))
            return None
        for words in import_words(name, made):
            print_wrapped(console(), "", words)
        now = made.evaluation if made else now
    return now


def _shown(before: Evaluation, after: Evaluation) -> int:
    _print_difference(before, after)
    console().print(Text("Nothing was written: --dry-run."))
    return 0


def _shown_and_saved(before: Evaluation, after: Evaluation, file: Path) -> int:
    if after.reading.text == before.reading.text:
        console().print(Text(f"Nothing to change in {file}."))
        return 0
    _print_difference(before, after)
    try:
        save(file, after.reading.text, as_read(file, before.reading.text))
    except ChangedMeanwhileError:
        words = "was changed by somebody else meanwhile. Nothing was written; do it again."
        console(error=True).print(Text(f"{file} {words}"))
        return UNUSABLE
    except OSError as trouble:
        print_unwritable(file, trouble)
        return UNUSABLE
    console().print(Text(f"Wrote {file}. Then: firmpedal check {file}"), soft_wrap=True)
    return 0


def _print_difference(before: Evaluation, after: Evaluation) -> None:
    """The lines of the file that change, with one on either side."""
    old, new = before.reading.text.splitlines(), after.reading.text.splitlines()
    for row in list(difflib.unified_diff(old, new, n=1, lineterm=""))[2:]:
        console().print(Text(row), soft_wrap=True)
