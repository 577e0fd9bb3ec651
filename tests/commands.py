"""The command line in this process: a command is run as its words are given, and nothing starts anew.

That the installed command does the same is for `unit/test_installed.py` to see.
"""

from __future__ import annotations

import os
from contextlib import chdir
from dataclasses import dataclass
from pathlib import Path

from typer.testing import CliRunner

from firmpedal.cli.main import app

PLAIN = {"COLUMNS": "80", "NO_COLOR": "1", "TERM": "dumb"}  # as a pipe has it


@dataclass(frozen=True)
class Done:
    """What a command left behind."""

    returncode: int
    stdout: str
    stderr: str


def firmpedal(*words: str | os.PathLike[str], inside: Path = Path()) -> Done:
    """Run `firmpedal` with these words in a folder; whatever it did not say in a sentence is raised."""
    with chdir(inside):
        result = CliRunner(env=PLAIN).invoke(app, list(map(os.fspath, words)), prog_name="firmpedal")
    if result.exception is not None and not isinstance(result.exception, SystemExit):
        raise result.exception
    return Done(result.exit_code, result.stdout, result.stderr)


def prints(*words: str | os.PathLike[str], inside: Path = Path()) -> str:
    """What a command prints that ends well."""
    done = firmpedal(*words, inside=inside)
    assert done.returncode == 0, done.stderr
    return done.stdout
