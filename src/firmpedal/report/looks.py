"""What is said where parts are bought for a thread that nobody has looked at yet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.display import listed
from firmpedal.report.sheet import Paragraph, Tone

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.report.sheet import Block

MOST_NAMED = 4  # so many ports are named; more are named at the parts that wait, and counted here
LOOK = "Look first, then order: another thread takes other parts."


def looks(ports: Iterable[str], pieces: int) -> list[Block]:
    """Say how many pieces wait until somebody has looked; nothing where there is no such port.

    Args:
        ports: The ports whose thread is only supposed, as lines call them; each counts once.
        pieces: How many pieces go into them. Where a line's own nut fits the port there is none, and
            something comes between them if its thread is another one.
    """
    names = list(dict.fromkeys(ports))
    if not names:
        return []
    waits = "1 piece waits" if pieces == 1 else f"{pieces or 'No'} pieces wait"
    told = "the thread is" if len(names) == 1 else "the threads are"
    where = listed(names) if len(names) <= MOST_NAMED else f"{len(names)} ports"
    return [Paragraph(f"{waits} for a look: at {where} {told} only supposed. {LOOK}", Tone.CAUTION)]
