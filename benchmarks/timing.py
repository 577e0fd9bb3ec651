"""Time two ways of doing the same work and print the ratio."""

from __future__ import annotations

from dataclasses import dataclass
from time import perf_counter
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

REPEATS = 5


@dataclass(frozen=True)
class Race:
    """Two ways of one piece of work: how long each took at its best, and whether they agree."""

    work: str
    ours: float
    other: float
    other_name: str
    agreement: str

    def __str__(self) -> str:
        ratio = self.other / self.ours
        return (
            f"{self.work}\n  ours {1000 * self.ours:.2f} ms, {self.other_name} {1000 * self.other:.2f} ms: "
            f"ratio {ratio:.2f}\n  {self.agreement}"
        )


def best_time(work: Callable[[], object]) -> float:
    """The shortest of some runs, in seconds."""
    times = []
    for _ in range(REPEATS):
        start = perf_counter()
        work()
        times.append(perf_counter() - start)
    return min(times)
