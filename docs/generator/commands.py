"""What each command says of itself, as `--help` prints it."""

from __future__ import annotations

from generator.region import PageError
from typer.main import get_command
from typer.testing import CliRunner

from firmpedal.cli.main import app

WIDTH = "80"


def page(_argument: str) -> str:
    """The help of the program, then of each command."""
    parts = [_block(())]
    for name in names():
        text = _block((name,))
        parts.append(f"### `firmpedal {name}`\n\n{text}")
    return "\n\n".join(parts)


def names() -> list[str]:
    """The commands in the order in which the program lists them."""
    return list(getattr(get_command(app), "commands", {}))


def _block(words: tuple[str, ...]) -> str:
    runner = CliRunner(env={"COLUMNS": WIDTH, "TERMINAL_WIDTH": WIDTH, "NO_COLOR": "1"})
    result = runner.invoke(app, [*words, "--help"], prog_name="firmpedal")
    if result.exit_code != 0:
        raise PageError(f"commands: `firmpedal {' '.join(words)} --help` ends with {result.exit_code}")
    lines = [line.rstrip() for line in result.output.strip().splitlines()]
    return "```text\n" + "\n".join(lines) + "\n```"
