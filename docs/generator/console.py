"""What the program prints for a command, at the width of a plain terminal."""

from __future__ import annotations

import contextlib
import os
import re
from typing import TYPE_CHECKING

from typer.testing import CliRunner

from firmpedal.cli.main import app

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

WIDTH = "80"
LEFT_OUT = "..."


def printed(words: list[str], folder: Path) -> str:
    """Run `firmpedal` with these words inside a folder and give all it prints, without loose blanks.

    With `--json` it is what goes to another program: what is said to people besides is left out.

    Raises:
        Exception: Whatever the program did not say in a sentence.
    """
    environment = {"COLUMNS": WIDTH, "TERMINAL_WIDTH": WIDTH, "NO_COLOR": "1", "TERM": "dumb"}
    with _inside(folder):
        result = CliRunner(env=environment).invoke(app, words, prog_name="firmpedal")
    if result.exception is not None and not isinstance(result.exception, SystemExit):
        raise result.exception
    return tidy(result.stdout if "--json" in words else result.output)


@contextlib.contextmanager
def _inside(folder: Path) -> Iterator[None]:
    before = os.getcwd()  # noqa: PTH109  the way back, whatever it is
    os.chdir(folder)
    try:
        yield
    finally:
        os.chdir(before)


def tidy(text: str) -> str:
    """Take away blanks at the ends of lines and empty lines at both ends."""
    return "\n".join(line.rstrip() for line in text.splitlines()).strip("\n")


def paragraphs(text: str) -> list[str]:
    """The pieces of a text between empty lines."""
    return [piece for piece in re.split(r"\n\s*\n", tidy(text)) if piece]


def only(text: str, wanted: tuple[str, ...]) -> str:
    """Keep the first paragraph that holds each wanted text; what is left out is marked."""
    pieces = paragraphs(text)
    kept = {next((n for n, piece in enumerate(pieces) if each in piece), None) for each in wanted}
    lines: list[str] = []
    for number, piece in enumerate(pieces):
        if number in kept:
            lines.append(piece)
        elif not lines or lines[-1] != LEFT_OUT:
            lines.append(LEFT_OUT)
    return "\n\n".join(lines)
