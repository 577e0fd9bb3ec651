"""What is loaded before the first page, and what after it: seen in a process of its own."""

from __future__ import annotations

import subprocess
import sys

from firmpedal.web.loading import FOR_CLIENTS, THE_REST

FIRST = "from firmpedal.web.loading import *; load(); import firmpedal.web.serving; import sys; "


def loaded(program: str, names: tuple[str, ...]) -> list[str]:
    """Which of some modules are there after a program."""
    program = f"{FIRST}{program}; print(*[name for name in {names} if name in sys.modules])"
    said = subprocess.run(
        [sys.executable, "-c", program],
        capture_output=True, text=True, check=True, env={"PYTHONPATH": ":".join(filter(None, sys.path))},
    )  # fmt: skip
    return said.stdout.split()


def test_the_server_is_there_without_what_is_for_clients_and_without_the_later_pages():
    assert loaded("pass", (*FOR_CLIENTS, *THE_REST)) == []


def test_who_wants_it_later_finds_it():
    assert loaded("import requests", FOR_CLIENTS) == ["requests"]


def test_the_rest_comes_after_it():
    assert loaded("load_the_rest(0).join()", THE_REST) == list(THE_REST)
