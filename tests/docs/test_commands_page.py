"""Every command has help, stands on its page, and its JSON is described there."""

import json

import pytest
from generator.commands import names
from generator.console import printed
from page_blocks import ROOT
from typer.main import get_command

from firmpedal.cli.main import app

PAGE = (ROOT / "docs" / "commands.md").read_text(encoding="utf-8")
README = (ROOT / "README.md").read_text(encoding="utf-8")
COMMANDS = get_command(app).commands


def test_there_are_commands():
    assert {"check", "parts", "lines", "explain", "packet", "new", "demo"} <= set(names())


@pytest.mark.parametrize("name", names())
def test_command_has_help_and_a_place(name):
    assert COMMANDS[name].help
    assert f"### `firmpedal {name}`" in PAGE
    assert f"`firmpedal {name}" in README


@pytest.mark.parametrize("name", names())
def test_every_argument_and_option_has_help(name):
    bare = [each.name for each in COMMANDS[name].params if not getattr(each, "help", None)]
    assert not bare


@pytest.mark.parametrize(
    "words",
    [["check"], ["parts"], ["lines"], ["stop"], ["heat"], ["pedal"], ["check", "--option", "nothing"]],
)
def test_every_key_of_the_json_is_described(words):
    file = str(ROOT / "examples" / "brindlewick.yaml")
    option = [] if "--option" in words else ["--option", "rigid"]
    text = printed([words[0], file, *words[1:], *option, "--json"], ROOT)
    known, _ = json.JSONDecoder().raw_decode(text)
    described = PAGE.partition("--json")[2]
    assert {key for key in keys(known) if f"`{key}`" not in described} == set()


def keys(data):
    if isinstance(data, dict):
        yield from data
        data = list(data.values())
    if isinstance(data, list):
        for each in data:
            yield from keys(each)
