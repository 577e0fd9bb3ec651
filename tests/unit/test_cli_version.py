"""`firmpedal --version`: the version of the package, whatever else is asked."""

import tomllib
from pathlib import Path

import pytest
from typer.testing import CliRunner

from firmpedal.cli.main import app

PROJECT = tomllib.loads((Path(__file__).parents[2] / "pyproject.toml").read_text(encoding="utf-8"))


@pytest.mark.parametrize("words", [["--version"], ["--version", "check"]])
def test_the_version_is_that_of_the_package(words):
    result = CliRunner().invoke(app, words)
    assert (result.exit_code, result.stdout) == (0, f"firmpedal {PROJECT['project']['version']}\n")
