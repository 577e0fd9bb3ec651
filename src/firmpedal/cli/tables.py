"""Reading a builder's own table, a list of parts or a price book, or saying why it cannot be read."""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeVar

from rich.text import Text

from firmpedal.cli.terminal import console, print_json
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
