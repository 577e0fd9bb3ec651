"""Letting a phone in: a code that is shown on the computer and typed on the phone.

Whoever guesses has few tries with each code, and after them waits longer each time until there is another.
"""

from __future__ import annotations

import secrets
import time
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

DIGITS = 6
LIFE = 300.0  # s; to walk from the computer to the aircraft and type an address
TRIES = 5  # wrong ones with each code
FIRST_PAUSE, LONGEST_PAUSE = 10.0, 3600.0  # s; after too many tries, twice as long each time


class Said(StrEnum):
    """Why no phone was let in."""

    WRONG = "That is not the code. Look at the computer again."
    PAUSED = "There were too many wrong codes. Wait a while; then there is another one on the computer."
    OLD = "That code is no longer in force. There is another one on the computer."


class Pairing:
    """The code in force, and the phones that were let in. All of it is forgotten when the app is stopped."""

    def __init__(
        self, told: Callable[[str], None] = lambda _code: None, clock: Callable[[], float] = time.monotonic
    ) -> None:
        self._told, self._clock = told, clock
        self._code, self._until = "", 0.0
        self._wrong, self._rounds, self._again = 0, 0, 0.0
        self._phones: list[str] = []

    @property
    def code(self) -> str:
        """The code in force; empty where there is none."""
        return self._code if self._clock() < self._until else ""

    @property
    def life(self) -> float:
        """How long the code is in force yet [s]."""
        return max(self._until - self._clock(), 0.0) if self._code else 0.0

    @property
    def pause(self) -> float:
        """How long there is no code because of wrong ones [s]."""
        return max(self._again - self._clock(), 0.0)

    @property
    def phones(self) -> int:
        """How many were let in."""
        return len(self._phones)

    def ask(self) -> str:
        """Somebody wants a code: the one in force, else a new one, which is told; none during a pause."""
        if not self.code and not self.pause:
            self._code = f"{secrets.randbelow(10**DIGITS):0{DIGITS}d}"
            self._until, self._wrong = self._clock() + LIFE, 0
            self._told(self._code)
        return self.code

    def enter(self, given: str) -> str | Said:
        """Try a code; the result is what the phone will be known by, or why it stays out.

        A code lets one phone in. Blanks and dashes in it do not count.
        """
        if self.pause:
            return Said.PAUSED
        if not self.code:
            self.ask()
            return Said.OLD
        if not secrets.compare_digest("".join(given.split()).replace("-", "").encode(), self._code.encode()):
            return self._refused()
        self._code, self._rounds = "", 0
        self._phones.append(secrets.token_urlsafe(32))
        return self._phones[-1]

    def knows(self, phone: str) -> bool:
        """Whether this is one that was let in."""
        found = [secrets.compare_digest(phone.encode(), each.encode()) for each in self._phones]
        return any(found)

    def _refused(self) -> Said:
        self._wrong += 1
        if self._wrong < TRIES:
            return Said.WRONG
        self._code = ""
        self._again = self._clock() + min(FIRST_PAUSE * 2**self._rounds, LONGEST_PAUSE)
        self._rounds += 1
        return Said.PAUSED
