"""A builder's file as a phone has it: what the computer does to it shows, and nothing is done here."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.web.desk import Document

if TYPE_CHECKING:
    from firmpedal.web.desk import Conflict
    from firmpedal.web.history import History


class ReadOnly(Document):
    """A document as a phone has it: the same one, in step with every change of it, but it changes nothing."""

    may_change = False

    def __init__(self, document: Document) -> None:
        self.__dict__ = document.__dict__  # one state, so that what the computer does shows here

    def replace_text(self, text: str, based_on: str, said: str = "") -> None:
        """Leave the text as it is."""

    def keep_mine(self) -> None:
        """Leave a conflict to the computer."""

    def take_theirs(self) -> None:
        """Leave a conflict to the computer."""

    def settle(self, conflict: Conflict, text: str, said: str) -> None:
        """Leave a conflict to the computer."""

    def restore(self) -> None:
        """Leave a file that is gone to the computer."""

    def _take(self, text: str, said: str, joined_within: float = 0.0) -> None:
        pass

    def _keep(self, history: History) -> None:
        pass
