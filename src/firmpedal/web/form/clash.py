"""What was typed in a field and is not in the file: another one wrote there since, or it was refused."""

from __future__ import annotations

from dataclasses import dataclass
from html import escape
from typing import TYPE_CHECKING

from firmpedal.project.tree import UNKNOWN
from firmpedal.web.form.does import does

if TYPE_CHECKING:
    from firmpedal.project.fields import Cell, Field

    Where = tuple[str, int, int]  # a cell: the place of its field, its row, its number in the row

MINE, THEIRS = "mine", "theirs"  # what the two buttons do
NOTHING = "nothing"


@dataclass(frozen=True)
class Clash:
    """What was typed in a cell, and what stands there in its place.

    That is what another window or program wrote there while it was being typed; or, where `refused` says why
    it could not be saved, what stood there before. `waits` says that there are two versions of the file, so
    that nothing can be written before one is chosen.
    """

    where: Where
    mine: str
    theirs: str
    waits: bool = False
    refused: str = ""

    @property
    def words(self) -> str:
        """What happened, as a sentence."""
        mine, theirs = self.mine or NOTHING, self.theirs or NOTHING
        if self.refused:
            return f"Not saved: {self.refused}"
        if self.waits:
            return (
                f"Not saved yet: there are two versions of this file. Choose one of them, then write {mine}."
            )
        return (
            f"Not saved yet: while you were typing, another window or program wrote {theirs} here. "
            f"You typed {mine}. Which one holds?"
        )


class Shown:
    """What the cells of one page showed, against what stands there now; the page's own writing is known."""

    def __init__(self) -> None:
        self._own: dict[Where, str] = {}

    def clash(self, where: Where, cell: Cell, words: str, began: str | None) -> Clash | None:
        """See whether somebody else changed a cell since; what this page wrote there is no news.

        Args:
            where: The cell.
            cell: As it stands in the file now.
            words: What was typed.
            began: What the cell showed when typing began; None where nothing is known of it.
        """
        now = _plain(cell.words)
        if began is None or now in (_plain(began), _plain(words)) or self._own.get(where) == now:
            return None
        return Clash(where, words.strip(), cell.words)

    def wrote(self, where: Where, field: Field | None) -> None:
        """Keep what this page wrote in a cell, as the file has it."""
        _, row, number = where
        if field is not None and row < len(field.rows) and number < len(field.rows[row].cells):
            self._own[where] = _plain(field.rows[row].cells[number].words)


def clash_html(clash: Clash) -> str:
    """What happened, with both values, and a button for each."""
    place, row, number = clash.where
    of = f"{row} {number} {place}"
    mine, theirs = clash.mine or NOTHING, clash.theirs or NOTHING
    if clash.refused:
        buttons = does(MINE, of, f"Try {mine} again") + does(THEIRS, of, f"Leave it at {theirs}")
    else:
        buttons = does(MINE, of, f"Write {mine}", main=True) + does(THEIRS, of, f"Keep {theirs}")
    return (
        f'<div class="fp-field-wrong" role="alert"><p>{escape(clash.words)}</p>'
        f'<div class="fp-actions">{buttons}</div></div>'
    )


def still_open(clash: Clash, field: Field | None) -> bool:
    """Whether there is still something to choose: its cell is there, and does not hold what was typed."""
    _, row, number = clash.where
    if field is None or row >= len(field.rows) or number >= len(field.rows[row].cells):
        return False
    return _plain(field.rows[row].cells[number].words) != _plain(clash.mine)


def where_of(of: str) -> Where:
    """The cell that a button of `clash_html` is about."""
    row, number, place = of.split(" ", 2)
    return place, int(row), int(number)


def _plain(words: str) -> str:
    """Words to be compared: nothing written and written as unknown are the same, for neither says a thing."""
    words = " ".join(words.split())
    return "" if words == UNKNOWN else words
