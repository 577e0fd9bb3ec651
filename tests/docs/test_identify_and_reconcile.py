"""The page on identifying and reconciling says every option, fault and key."""

import json

import pytest
from generator.console import printed
from page_blocks import ROOT
from typer.main import get_command

from firmpedal.cli.main import app
from firmpedal.decide.fault import Fault

PAGE = (ROOT / "docs" / "identify_and_reconcile.md").read_text(encoding="utf-8")
LIST = "examples/brindlewick_kit.csv"
KIT = ["reconcile", "examples/brindlewick.yaml", "--option", "rigid", "--list", LIST]
THREAD = ["identify", "--outside-diameter", "9.9 mm", "--turns", "4"]


def keys(data):
    if isinstance(data, dict):
        yield from data
        data = list(data.values())
    if isinstance(data, list):
        for each in data:
            yield from keys(each)


@pytest.mark.parametrize("words", [KIT, THREAD, ["identify", "--tube", "6 mm"]])
def test_every_key_of_the_json_is_described(words):
    data = json.loads(printed([*words, "--json"], ROOT))
    assert {key for key in keys(data) if f"`{key}`" not in PAGE.partition("For other programs")[2]} == set()


def test_every_option_is_described():
    options = {name for each in get_command(app).commands["identify"].params for name in each.opts}
    assert {name for name in options - {"--help"} if f"`{name}`" not in PAGE and name not in PAGE} == set()


@pytest.mark.parametrize("fault", Fault)
def test_every_fault_is_described(fault):
    table = PAGE.partition("| it says |")[2].partition("\n\n")[0]
    assert fault.value in table
