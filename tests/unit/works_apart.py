"""What the tests let run in a process of its own; loads next to nothing, for each process loads it anew."""

from __future__ import annotations

import os
import time
from pathlib import Path
from typing import NamedTuple

from firmpedal.web.worker import Refused

HALF_WAY = "Half way ..."


class Something(NamedTuple):
    """Stands for a paper: its bytes, and a word on it."""

    data: bytes
    said: str


def long(wish, say):
    """Notes which process it is, says how far it is, and takes until tomorrow."""
    Path(wish.text).write_text(str(os.getpid()), encoding="ascii")
    say.send(HALF_WAY)
    time.sleep(86400)


def short(wish, say):
    say.send(Something(wish.text.encode(), "a word"))


def dying(_wish, _say):
    os._exit(3)


def refusing(_wish, say):
    say.send(Refused("no ink"))
