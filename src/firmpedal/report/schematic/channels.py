"""How lines run between two rows: straight down, or across on a track that is theirs alone."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

STRAIGHT = 0.05  # what counts as straight down
CLEAR = 9.0  # two lines nearer than this would look like one


@dataclass(frozen=True, slots=True)
class Jog:
    """A step across from one height to the next on a track; `owner` is the line, `part` its how-manieth."""

    owner: int
    part: int
    start: float
    stop: float
    track: int = 0

    @property
    def span(self) -> tuple[float, float]:
        return min(self.start, self.stop) - CLEAR, max(self.start, self.stop) + CLEAR


def tracked(ends: Sequence[tuple[float, float]]) -> list[list[Jog]]:
    """For each line its jogs from the upper row down, each with its track counted from the top.

    Where two lines would have to be above each other, one of them takes two steps.
    """
    jogs = [
        Jog(number, 0, start, stop)
        for number, (start, stop) in enumerate(ends)
        if abs(stop - start) > STRAIGHT
    ]
    placed = None
    while placed is None:
        sequence, stuck = _sequence(jogs)
        if stuck is None:
            placed = _on_tracks(sequence)
        else:
            jogs = _split(jogs, stuck, [place for pair in ends for place in pair])
    found: list[list[Jog]] = [[] for _ in ends]
    for jog in placed:
        found[jog.owner].append(jog)
    return [sorted(steps, key=lambda jog: jog.part) for steps in found]


def track_count(steps: list[list[Jog]]) -> int:
    return max((jog.track + 1 for line in steps for jog in line), default=0)


def _before(one: Jog, other: Jog) -> bool:
    """Whether the one must be above the other: it comes down where the other goes down, or is its first."""
    if one.owner == other.owner:
        return one.part < other.part
    return abs(one.start - other.stop) < CLEAR


def _sequence(jogs: list[Jog]) -> tuple[list[Jog], Jog | None]:
    """The jogs from the top down, or the one to split where they go round in a circle."""
    left = sorted(jogs, key=_wish)
    found: list[Jog] = []
    while left:
        free = [jog for jog in left if not any(_before(other, jog) for other in left if other is not jog)]
        if not free:
            owners = [jog.owner for jog in jogs]
            whole = [
                jog for jog in left
                if owners.count(jog.owner) == 1 and abs(jog.stop - jog.start) > 4 * CLEAR
            ]  # fmt: skip
            if whole:
                return [], max(whole, key=lambda jog: (abs(jog.stop - jog.start), -jog.owner))
            free = left
        found.append(free[0])
        left.remove(free[0])
    return found, None


def _wish(jog: Jog) -> tuple[float, int]:
    """Lines that go right are higher the farther right they start, those that go left the other way."""
    return (-jog.start if jog.stop > jog.start else jog.start, jog.owner)


def _split(jogs: list[Jog], stuck: Jog, ends: list[float]) -> list[Jog]:
    """Let a line take two steps, and go down between them where no other one does."""
    taken = [*ends, *(place for jog in jogs for place in (jog.start, jog.stop))]
    middle = (stuck.start + stuck.stop) / 2
    while any(abs(middle - place) < CLEAR for place in taken):
        middle += CLEAR
    first = replace(stuck, stop=middle)
    return [jog for jog in jogs if jog is not stuck] + [first, Jog(stuck.owner, 1, middle, stuck.stop)]


def _on_tracks(sequence: list[Jog]) -> list[Jog]:
    """The highest free track for each, below all that must be above it."""
    placed: list[Jog] = []
    for jog in sequence:
        lowest = 0
        for other in placed:
            low, high = other.span
            meets = jog.span[0] < high and low < jog.span[1]
            if meets or _before(other, jog):
                lowest = max(lowest, other.track + 1)
        placed.append(replace(jog, track=lowest))
    return placed
