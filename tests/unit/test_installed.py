"""The installed command beside the one that the other tests run in their own process."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from evaluated import EXAMPLE

from commands import PLAIN, Done, firmpedal

FIRMPEDAL = str(Path(sys.executable).with_name("firmpedal"))


@pytest.mark.parametrize(
    "words",
    [
        ("check", EXAMPLE, "--option", "rigid"),  # not sound: ends with 1
        ("explain", EXAMPLE, "--option", "rigid", "left_leg"),
        ("packet", EXAMPLE, "-o", EXAMPLE),  # refused: ends with 2, and says why
        ("no-such-word",),
    ],
)
def test_it_prints_and_ends_as_the_other_does(words):
    started = [FIRMPEDAL, *map(str, words)]
    done = subprocess.run(started, capture_output=True, text=True, check=False, env={**os.environ, **PLAIN})
    assert Done(done.returncode, done.stdout, done.stderr) == firmpedal(*words)
