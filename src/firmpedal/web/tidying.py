"""When the interpreter looks through all it holds for what nobody needs: in a pause, not in an answer.

What the stages remember is some hundred thousand values. To look through them takes a quarter of a second,
finds next to nothing, and by itself happens in the middle of an answer, for that is when values are made.
"""

from __future__ import annotations

import gc
import time
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

NEVER = 1_000_000  # so many collections of younger values before the old ones are looked through
PAUSE = 15.0  # s without an answer: somebody reads, measures or is away
LONGEST = 600.0  # s; where there never is such a pause


def hold_back() -> None:
    """Look through young values alone from now on; whoever asks for this sees to the old ones."""
    young, middle, _ = gc.get_threshold()
    gc.set_threshold(young, middle, NEVER)


class Tidier:
    """Looks through everything once after each spell of answers."""

    def __init__(
        self, clock: Callable[[], float] = time.monotonic, collect: Callable[[], object] = gc.collect
    ) -> None:
        self._clock, self._collect = clock, collect
        self._since: float | None = None  # when the first answer was made that was not tidied up after
        self._last = 0.0

    def answered(self) -> None:
        """An answer was made."""
        self._last = self._clock()
        if self._since is None:
            self._since = self._last

    def look(self) -> None:
        """Tidy up if there is something to be tidied, and a pause to do it in."""
        if self._since is None:
            return
        now = self._clock()
        if now - self._last >= PAUSE or now - self._since >= LONGEST:
            self._since = None
            self._collect()


TIDIER = Tidier()  # of the one app that runs here
