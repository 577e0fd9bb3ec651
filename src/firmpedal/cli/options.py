"""Several options of one file, for the commands that set them side by side."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.cli.terminal import evaluated, print_json, print_problems
from firmpedal.pipeline import Evaluation, UnusableFileError, evaluate_options
from firmpedal.report.advice import AS_WRITTEN
from firmpedal.report.contract import errors_data

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path


def named(word: str | None) -> str | None:
    """An option as somebody names it; the file as written has a name too."""
    return None if word is None or " ".join(word.split()).casefold() == AS_WRITTEN else word


def evaluated_options(
    file: Path, names: Sequence[str | None] | None, *, as_json: bool
) -> tuple[Evaluation, ...] | None:
    """Evaluate options of a file, or say what is wrong with one; None when one cannot be used.

    Without names: as written, then every option.
    """
    wanted = None if names is None else list(dict.fromkeys(names))
    first = evaluated(file, wanted[0] if wanted else None, as_json=as_json)
    if first is None:
        return None
    try:
        return evaluate_options(first.reading, wanted)
    except UnusableFileError as error:
        if as_json:
            print_json(errors_data(error.reading))
        print_problems(error.reading)
        return None
