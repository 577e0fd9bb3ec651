"""Work that takes long: begun once however often it is asked for, told of, stopped, and kept when done."""

from __future__ import annotations

import logging
import multiprocessing
import time
from enum import Enum, auto
from threading import Event, Lock, Semaphore, Thread
from typing import TYPE_CHECKING

from firmpedal.web.worker import BROKEN, Refused, work

if TYPE_CHECKING:
    from collections.abc import Callable
    from multiprocessing.connection import Connection

    from firmpedal.web.papers import Made
    from firmpedal.web.worker import Wish

    Subject = tuple[str, str, str | None]

AT_ONCE = 2  # pieces of work; the others wait, so that the pages stay quick
KEPT = 6  # pieces that are done or given up; a packet with its pictures is some megabytes
LOOK_EVERY = 0.1  # s
WAITING, BEGINNING = "Waiting until other work is done ...", "Beginning ..."
STOPPED = "Stopped. Nothing was made."


class State(Enum):
    """How far a piece of work is."""

    RUNNING = auto()
    DONE = auto()
    STOPPED = auto()
    REFUSED = auto()


class Work:
    """One piece of work: its state, words for it, and what came of it.

    It runs in a fresh process, which shares nothing with us that it could leave broken when it is stopped.
    """

    def __init__(
        self, wish: Wish, number: int, free: Semaphore, does: Callable[[Wish, Connection], None]
    ) -> None:
        self.wish, self.number = wish, number
        self.state, self.words = State.RUNNING, WAITING
        self.made: Made | None = None
        self.began = time.monotonic()
        self._settled = Event()
        self._free, self._does, self._end = free, does, Event()
        Thread(target=self._run, name=f"work {number}", daemon=True).start()

    @property
    def running(self) -> bool:
        return self.state is State.RUNNING

    @property
    def seconds(self) -> int:
        """For how long it has been running, in whole seconds."""
        return int(time.monotonic() - self.began)

    def wait(self) -> None:
        """Come back when it is no longer running."""
        self._settled.wait()

    def stop(self) -> None:
        """End it, wherever it is. What is done already stays."""
        self._end.set()

    def _run(self) -> None:
        while not self._free.acquire(timeout=LOOK_EVERY):
            if self._end.is_set():
                self._over(State.STOPPED, STOPPED)
                return
        try:
            self._alone()
        except Exception:  # the last resort: whoever waits is told
            logging.getLogger(__name__).exception("%s could not be begun", self.wish.name)
            self._over(State.REFUSED, BROKEN)
        finally:
            self._free.release()

    def _alone(self) -> None:
        """Start the process, hear what it says, and leave none behind."""
        self.words = BEGINNING
        apart = multiprocessing.get_context("spawn")  # a fork would share our server's sockets and threads
        ours, theirs = apart.Pipe(duplex=False)
        process = apart.Process(target=self._does, args=(self.wish, theirs), daemon=True)
        process.start()
        theirs.close()
        try:
            self._hear(ours)
        finally:
            process.kill()
            process.join()
            ours.close()

    def _hear(self, ours: Connection) -> None:
        while not self._end.is_set():
            try:
                if not ours.poll(LOOK_EVERY):
                    continue
                told = ours.recv()
            except (EOFError, OSError):  # it ended without a word
                self._over(State.REFUSED, BROKEN)
                return
            if isinstance(told, str):
                self.words = told
            elif isinstance(told, Refused):
                self._over(State.REFUSED, told.words)
                return
            else:
                self.made = told
                self._over(State.DONE, told.said)
                return
        self._over(State.STOPPED, STOPPED)

    def _over(self, state: State, words: str) -> None:
        self.words, self.state = words, state
        self._settled.set()


class Works:
    """All pieces of work, of each subject the last: one paper of one option of one file."""

    def __init__(self, does: Callable[[Wish, Connection], None] = work) -> None:
        self._does = does
        self._all: dict[Subject, Work] = {}
        self._free, self._lock, self._count = Semaphore(AT_ONCE), Lock(), 0

    def find(self, file: str, option: str | None, name: str) -> Work | None:
        """The last piece of work on a subject, whatever its text was."""
        return self._all.get((name, file, option))

    def begin(self, wish: Wish) -> Work:
        """Begin a piece of work, unless the same runs or is done; one on an older text is stopped."""
        subject = (wish.name, wish.file, wish.option)
        with self._lock:
            there = self._all.pop(subject, None)
            if there is not None and there.wish == wish and there.state in (State.RUNNING, State.DONE):
                self._all[subject] = there
                return there
            if there is not None:
                there.stop()
            self._count += 1
            self._all[subject] = begun = Work(wish, self._count, self._free, self._does)
            self._forget()
            return begun

    def stop_all(self) -> None:
        """End all of it, for the app ends."""
        for each in tuple(self._all.values()):
            each.stop()

    def _forget(self) -> None:
        """Let go of the oldest that are over."""
        over = [subject for subject, each in self._all.items() if not each.running]
        for subject in over[: max(0, len(over) - KEPT)]:
            del self._all[subject]


WORKS = Works()  # of the one app that runs here
