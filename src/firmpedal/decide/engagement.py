"""How far a taper thread goes in by hand, against how far it should."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from firmpedal.formulas.threads import engagement_turns
from firmpedal.quantity import Answer, Mark, Value, apply, exactly
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.catalog import Thread
    from firmpedal.decide.thread_ends import Candidate

ONE_PART = exactly(  # a gauge finds a sound thread within one turn of flush
    "turns a sound part may be off", Dimension.NUMBER, 1, Mark.MEMORY, source="asme-b1-20-1"
)
BOTH_PARTS = 2  # fitting and port may both be off, the same way


class Depth(StrEnum):
    """What the turns by hand say."""

    RIGHT = "right"
    SHORT = "short"  # possible only if both parts are at their limits
    TOO_SHORT = "under-tapped or another thread"
    DEEP = "deep"
    TOO_DEEP = "over-tapped or worn"


@dataclass(frozen=True, slots=True)
class Engagement:
    """Turns by hand found and owed for one taper thread."""

    thread: Thread
    turns: Value
    owed: Value  # hand-tight length over the pitch
    usual: Value | None  # as older figures print it
    depth: Depth

    @property
    def good(self) -> bool:
        return self.depth is Depth.RIGHT


def engagements(candidates: Iterable[Candidate], turns: Value) -> tuple[Engagement, ...]:
    """Hold the turns by hand against every taper thread among the candidates."""
    threads = dict.fromkeys(each.thread for each in candidates if each.thread and each.taper is Answer.YES)
    return tuple(_engagement(thread, turns) for thread in threads)


def _engagement(thread: Thread, turns: Value) -> Engagement:
    length, pitch = thread.value("hand_tight_length"), thread.value("pitch")
    if length is None or pitch is None:
        raise LookupError(f"{thread.name} has no hand-tight length or no pitch")
    owed = apply(engagement_turns, f"turns by hand of {thread.name}", engagement=length, pitch=pitch)
    return Engagement(thread, turns, owed, thread.value("hand_turns"), _depth(turns, owed))


def _depth(turns: Value, owed: Value) -> Depth:
    part = ONE_PART.middle
    if turns.high < owed.low - BOTH_PARTS * part:
        return Depth.TOO_SHORT
    if turns.low > owed.high + BOTH_PARTS * part:
        return Depth.TOO_DEEP
    if turns.high < owed.low - part:
        return Depth.SHORT
    return Depth.DEEP if turns.low > owed.high + part else Depth.RIGHT
