"""What stands on the terminal: no blanks behind a line, nothing wider than there is room for."""

import io

import pytest
from evaluated import EXAMPLE
from typer.testing import CliRunner

from firmpedal.cli.main import app
from firmpedal.cli.tidy import TidyConsole, without_blanks

# named as a builder names it who stands in its folder: a place is printed whole, however long its path
FILE = EXAMPLE.name
COMMANDS = [
    ("check", FILE),
    ("parts", FILE),
    ("lines", FILE),
    ("form", FILE),
    ("cutplan", FILE, "--option", "rigid"),
    ("compare", FILE),
    ("explain", FILE, "left_line"),
    ("retrofit", FILE, "--to", "rigid"),
    ("identify", "--tube", "0.25in"),
]


@pytest.mark.parametrize("words", COMMANDS, ids=lambda words: words[0])
def test_no_line_ends_in_blanks_or_goes_beyond_the_width(words, monkeypatch):
    monkeypatch.chdir(EXAMPLE.parent)
    result = CliRunner(env={"COLUMNS": "80", "NO_COLOR": "1"}).invoke(app, list(words))
    lines = result.stdout.splitlines()
    assert len(lines) > 5
    assert [line for line in lines if line != line.rstrip()] == []
    assert [line for line in lines if len(line) > 80] == []


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("a  \nb", "a\nb"),
        ("  a\n", "  a\n"),
        ("a  b \t\n\n  \nc", "a  b\n\n\nc"),
        ("\x1b[1ma  \x1b[0m  \nb", "\x1b[1ma\x1b[0m\nb"),
        ("\x1b[1ma\x1b[0m  b", "\x1b[1ma\x1b[0m  b"),
    ],
)
def test_only_blanks_behind_a_line_go(text, left):
    assert without_blanks(text) == left


def test_what_is_bold_stays_bold():
    out = io.StringIO()
    TidyConsole(file=out, force_terminal=True, color_system="standard", width=20).print("word", style="bold")
    assert out.getvalue() == "\x1b[1mword\x1b[0m\n"
