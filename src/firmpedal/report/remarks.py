"""A word of caution where a length rests on something that nobody measured."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.quantity import Mark
from firmpedal.report.sheet import Paragraph, Tone

if TYPE_CHECKING:
    from firmpedal.quantity import Value
    from firmpedal.report.sheet import Block

WORDS = {
    Mark.ESTIMATE: "This length rests on an estimate. Measure from seat to seat before you {verb}.",
    Mark.ASSUMED: "This length rests on an assumed point. Measure from seat to seat before you {verb}.",
}


def length_remark(length: Value, verb: str) -> list[Block]:
    """Say that a length must be measured first, if it must."""
    if not length.known or length.mark not in WORDS:
        return []
    return [Paragraph(WORDS[length.mark].format(verb=verb), Tone.CAUTION)]
