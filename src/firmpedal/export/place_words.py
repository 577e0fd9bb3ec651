"""Where something stands in a builder's file, for those who read no keys: its name and what of it."""

from __future__ import annotations

import re

from firmpedal.model.aircraft import Aircraft
from firmpedal.project.names import label_of
from firmpedal.project.schema import known_keys

PLACES = tuple(known_keys(Aircraft))  # what a place in a file can begin with
_PLACE = re.compile(rf"(line \d+), ((?:{'|'.join(PLACES)})\.[^();,\n]*)")


def named(text: str) -> str:
    """Words in which the place behind each `line 12,` is named as readers know it."""
    return _PLACE.sub(lambda found: f"{found[1]}, {label_of(found[2])}", text)
