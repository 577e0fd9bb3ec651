"""A figure and its unit stay on one line wherever a text is broken into lines."""

from __future__ import annotations

import re

from firmpedal.units.table import UNITS

HELD = "\u00a0"  # between a figure and its unit until lines are broken; then it is a space again
_NAMES = "|".join(
    re.escape(name) for name in sorted({unit.name for unit in UNITS} | {"%"}, key=len, reverse=True)
)
_FIGURE = re.compile(rf"(?<![\w.])-?\d[\d,.]*(?:[-/]\d+)* (?:{_NAMES})(?![\w/^-])")


def held(text: str) -> str:
    """The same text with a figure and its unit held together by `HELD`."""
    return _FIGURE.sub(lambda found: found.group().replace(" ", HELD), text)


def let_go(text: str) -> str:
    """The text as it was, with plain spaces, as it is printed and copied."""
    return text.replace(HELD, " ")
