"""A word of caution where a length rests on something that nobody measured."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.display import listed
from firmpedal.quantity import Mark
from firmpedal.report.sheet import Paragraph, Tone

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.quantity import Value
    from firmpedal.report.sheet import Block

WHAT = {Mark.ESTIMATE: "an estimate", Mark.ASSUMED: "an assumed point"}
NAMED = 3  # more than these nobody measures one by one
NOTHING = 1e-6  # metres: less moves no length


def wanted_for(value: Value) -> tuple[str, ...]:
    """What is to be measured before a value is known, each thing once."""
    return tuple(dict.fromkeys(each.what for each in value.missing))


def until_measured(count: int) -> str:
    """How many things a figure waits for, in a line; which they are stands elsewhere."""
    return f"not known until {count} thing{' is' if count == 1 else 's are'} measured"


def length_remark(length: Value, verb: str) -> list[Block]:
    """Say that a length must be measured first, if it must."""
    words = rests_on(length)
    if not words:
        return []
    return [Paragraph(f"This length {words} before you {verb}.", Tone.CAUTION)]


def rests_on(length: Value) -> str:
    """What nobody measured of a length, and what to measure; empty where all was."""
    if not length.known or length.mark not in WHAT:
        return ""
    names = list(dict.fromkeys(_guessed(length, length.mark)))
    if not names or len(names) > NAMED:
        return f"rests on {WHAT[length.mark]}. Measure from seat to seat"
    parts = "it" if len(names) == 1 else "these"
    return f"rests on {WHAT[length.mark]}: {listed(names)}. Measure {parts}, or from seat to seat,"


def _guessed(value: Value, mark: Mark) -> Iterator[str]:
    """The ranges at the root of a value that have its mark and move it; plain figures do not."""
    if value.mark is not mark or not value.known:
        return
    if value.step is not None and value.step.inputs:
        for _, inner in value.step.inputs:
            yield from _guessed(inner, mark)
    elif value.high - value.low > NOTHING:
        yield value.label
