"""The thread of a port as declared: what it is, and how far that can be trusted."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.quantity import Mark

if TYPE_CHECKING:
    from firmpedal.model.part import Interface


@dataclass(frozen=True, slots=True)
class Thread:
    """What a port's thread is by the file.

    A thread that is only supposed is taken for what it is supposed to be wherever parts are chosen; what is
    said of those parts is another matter.
    """

    interface: Interface
    mark: Mark = Mark.MEASURED

    @property
    def supposed(self) -> bool:
        """Whether nobody has looked at it yet."""
        return self.mark.guessed
