"""Tables of a builder's, a list of parts or a price book, read and written, or why that cannot be."""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeVar

from rich.text import Text

from firmpedal.cli.terminal import console, print_json, print_unwritable
from firmpedal.decide.listing import ListError, decoded
from firmpedal.report.reconcile_data import list_errors

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

Read = TypeVar("Read")


def read_table(path: Path, what: str, reader: Callable[[str], Read], *, as_json: bool) -> Read | None:
    """Read a table with the reader of its kind; None when it cannot be used, and that has been said.

    Args:
        path: The table's file.
        what: What it is, in words: `the list`.
        reader: Makes something of its text.
        as_json: Whether what is wrong is also wanted as JSON.
    """
    try:
        return reader(decoded(path.read_bytes()))
    except OSError as error:
        words = (error.strerror or "cannot be read").lower()
        problem = ListError(f"{what} cannot be read: {words}", "check its name and folder")
    except ListError as error:
        problem = error
    if as_json:
        print_json(list_errors(problem, str(path)))
    out = console(error=True)
    out.print(Text(f"{path}:{problem.line}:{problem.column}: {problem.message}"), soft_wrap=True)
    out.print(Text(f"   try: {problem.suggestion}"), soft_wrap=True)
    return None


def write_table(path: Path, text: str) -> bool:
    """Write a table for spreadsheets; False where it cannot be written, and that has been said."""
    try:
        path.write_text(text, encoding="utf-8", newline="")
    except OSError as trouble:
        print_unwritable(path, trouble)
        return False
    return True
