"""Two who write in one field: what somebody typed is not written over what another editor put there since."""

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
    """What was typed in a cell, and what another window or program wrote there while it was being typed."""

    where: Where
    mine: str
    theirs: str


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
    """Both values, and a button for each."""
    place, row, number = clash.where
    of = f"{row} {number} {place}"
    mine, theirs = clash.mine or NOTHING, clash.theirs or NOTHING
    words = (
        f"Not saved yet: while you were typing, another window or program wrote {theirs} here. "
        f"You typed {mine}. Which one holds?"
    )
    buttons = does(MINE, of, f"Write {mine}", main=True) + does(THEIRS, of, f"Keep {theirs}")
    return (
        f'<div class="fp-field-wrong" role="alert"><p>{escape(words)}</p>'
        f'<div class="fp-actions">{buttons}</div></div>'
    )


def where_of(of: str) -> Where:
    """The cell that a button of `clash_html` is about."""
    row, number, place = of.split(" ", 2)
    return place, int(row), int(number)


def _plain(words: str) -> str:
    """Words to be compared: nothing written and written as unknown are the same, for neither says a thing."""
    words = " ".join(words.split())
    return "" if words == UNKNOWN else words
