"""A builder's file that lies open: what it says, every change of it, and what another program did to it.

What is changed is saved at once, for builders lose work otherwise; undo gives the text before it back.
"""

from __future__ import annotations

import asyncio
import time
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.project.edit import edited
from firmpedal.project.edit_keys import taken_along
from firmpedal.project.save import ChangedMeanwhileError, OnDisk, read, save
from firmpedal.web.history import History, Step

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from firmpedal.finding import Problem
    from firmpedal.web.form.clash import Clash, Where

TYPING_PAUSE = 5.0  # s; what is typed with shorter pauses is one step to undo
OPENED, OUTSIDE = "opened", "changed by another program"


@dataclass(frozen=True)
class Conflict:
    """Two versions of one file: the one that could not be saved, and what is on the disk now."""

    mine: str
    said: str
    theirs: OnDisk

    @property
    def gone(self) -> bool:
        """Whether the file was taken away, rather than changed."""
        return self.theirs.gone


class Document:
    """One file that lies open.

    `problems` say why it cannot be read as text, and then there is nothing to change until it can be read
    again; `trouble` says why the last change was not saved, where the disk refused it. Whoever holds the
    `turn` changes it next. What was typed in the fields of an option and is neither written nor given up
    stays in `unsettled`, wherever the one who typed it goes meanwhile. A supplier's list that was held
    against ours stays in `pasted`. Neither is in the file.
    """

    may_change = True

    def __init__(self, path: Path, clock: Callable[[], float] = time.monotonic) -> None:
        self.path = path
        self.conflict: Conflict | None = None
        self.trouble = ""
        self.unsettled: dict[str | None, dict[Where, Clash]] = {}
        self.pasted = ""
        self.turn = asyncio.Lock()
        self._clock = clock
        self._disk = read(path)
        self._ever_read = not self._disk.problems
        self._history = History(Step(self._disk.text, OPENED, clock()))
        self._listeners: list[Callable[[], None]] = []

    @property
    def text(self) -> str:
        return "" if self.problems else self._history.present.text

    @property
    def seen(self) -> str:
        """What there is to be seen: of a text that cannot be read, what of it can."""
        return self._disk.text if self.problems else self.text

    @property
    def problems(self) -> tuple[Problem, ...]:
        return self._disk.problems

    @property
    def gone(self) -> bool:
        """Whether the file is not in its folder any more."""
        return self._disk.gone

    @property
    def can_restore(self) -> bool:
        """Whether the file is gone, and what it said is known here."""
        return self.gone and self._ever_read and self.conflict is None

    @property
    def undoes(self) -> str:
        """What `undo` takes back, in words; empty where there is nothing."""
        return self._history.present.said if self._history.past and not self.problems else ""

    @property
    def redoes(self) -> str:
        return self._history.future[0].said if self._history.future and not self.problems else ""

    def listen(self, listener: Callable[[], None]) -> Callable[[], None]:
        """Call somebody after each change; what is returned ends that."""
        self._listeners.append(listener)
        return lambda: self._listeners.remove(listener) if listener in self._listeners else None

    def change(self, place: str, new_text: str, option: str | None = None) -> None:
        """Put another value in the place of one that is written, and save.

        What an option's own thing has from the aircraft as written is written out in the option first.

        Raises:
            EditError: It cannot be changed there; nothing was.
        """
        text = edited(taken_along(self.text, place, option), place, new_text, option)
        self._take(text, f"{place}: {new_text.strip()}")

    def rewrite(self, text: str, said: str) -> None:
        """Put a text in the place of the whole that was made from it, and save; a step of its own to undo.

        Args:
            text: What is to be there.
            said: What was done, in words.
        """
        self._take(text, said)

    def replace_text(self, text: str, based_on: str, said: str = "typed in the text") -> None:
        """Put another text in the place of the whole, and save; quick typing is one step to undo.

        Args:
            text: What is to be there.
            based_on: What was there when somebody began to type; if it is not any more, both are kept.
            said: What was done, in words.
        """
        text = text.replace("\r\n", "\n").replace("\r", "\n")
        if self.conflict is None and based_on != self.text != text:
            self.conflict = Conflict(text, said, self._disk)
            self._tell()
        else:
            self._take(text, said, TYPING_PAUSE)

    def undo(self) -> None:
        """Give the text back that was there before the last change, and save."""
        if not self.problems:
            self._keep(self._history.back())

    def redo(self) -> None:
        if not self.problems:
            self._keep(self._history.forth())

    def look(self) -> None:
        """See whether another program changed the file; if so, take what is there, for all of ours is saved.

        What cannot be read, or is gone, is taken too: it is said, and the last text that could be read stays
        where `restore` finds it. With something of ours not saved, what is there now is the other version.
        """
        if self.trouble:
            return
        now, known = read(self.path), self._disk if self.conflict is None else self.conflict.theirs
        if now.same_as(known):
            return
        if self.conflict is not None:
            self.conflict = replace(self.conflict, theirs=now)
        else:
            self._disk = now
            if not now.problems:
                self._read(now.text)
        self._tell()

    def _read(self, text: str) -> None:
        """Go on with a text from the disk; before the first that could be read there is nothing to undo."""
        step = Step(text, OUTSIDE, self._clock())
        if not self._ever_read:
            self._ever_read, self._history = True, History(step)
        elif text != self._history.present.text:
            self._history = self._history.then(step)

    def restore(self) -> None:
        """Write the last text that could be read, where the file is gone; over nothing that is there."""
        if self.can_restore:
            self._save(self._history)

    def keep_mine(self) -> None:
        """Settle a conflict: save the version from here. The other one stays one step back."""
        if self.conflict is not None:
            self.settle(self.conflict, self.conflict.mine, self.conflict.said)

    def settle(self, conflict: Conflict, text: str, said: str) -> None:
        """Settle a conflict by a text made of both versions, each of which stays a step back.

        Args:
            conflict: The one that was looked at; where there is another by now, nothing is done.
            text: What goes on.
            said: What was done, in words.
        """
        if self.conflict is not conflict:
            return
        if conflict.mine not in (text, self.text):
            self._history = self._history.then(Step(conflict.mine, conflict.said, self._clock()))
        if not conflict.theirs.problems and conflict.theirs.text != self.text:
            self._history = self._history.then(Step(conflict.theirs.text, OUTSIDE, self._clock()))
        self._disk, self.conflict = conflict.theirs, None
        self._keep(self._history.then(Step(text, said, self._clock())))

    def take_theirs(self) -> None:
        """Settle a conflict: go on with what is on the disk. The version from here stays one step back."""
        if self.conflict is None or self.conflict.theirs.problems:
            return
        conflict = self.conflict
        if conflict.mine != self.text:
            self._history = self._history.then(Step(conflict.mine, conflict.said, self._clock()))
        self._disk, self.conflict = conflict.theirs, None
        self._history = self._history.then(Step(conflict.theirs.text, OUTSIDE, self._clock()))
        self._tell()

    def _take(self, text: str, said: str, joined_within: float = 0.0) -> None:
        if self.conflict is not None:
            self.conflict = replace(self.conflict, mine=text, said=said)
        elif text != self.text and not self.problems:
            self._keep(self._history.then(Step(text, said, self._clock()), joined_within))

    def _keep(self, history: History) -> None:
        """Go on with another text if it can be saved; nothing is written where nothing changed."""
        if self.conflict is None and history is not self._history:
            self._save(history)

    def _save(self, history: History) -> None:
        """Write a text; if another program was there first, stop and say so."""
        try:
            self._disk = save(self.path, history.present.text, self._disk)
        except ChangedMeanwhileError as changed:
            self.conflict = Conflict(history.present.text, history.present.said, changed.theirs)
        except OSError as trouble:  # what was done stays here, to be saved with the next change
            self.trouble, self._history = trouble.strerror or str(trouble), history
        else:
            self.trouble, self._history = "", history
        self._tell()

    def _tell(self) -> None:
        for listener in tuple(self._listeners):
            listener()
