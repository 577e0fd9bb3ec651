"""What is written in the cells of a form, saved, or kept beside them until it is settled."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from firmpedal.project.field_edits import put_in, with_mark, with_row, without_row
from firmpedal.project.field_rows import given_in
from firmpedal.project.line_kinds import went
from firmpedal.project.mirror_list import mirrored
from firmpedal.project.options_edit import written_out
from firmpedal.project.own_image import own_image
from firmpedal.web.form.clash import MINE, THEIRS, Clash, Shown, still_open, where_of

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.project import Reading
    from firmpedal.project.fields import Field
    from firmpedal.web.form.chosen import Chosen
    from firmpedal.web.form.clash import Where


EMPTIED = "emptied"
ALSO = "Saved; {gone}. Undo brings all of it back."


class Writing:
    """One page's writing.

    `show` makes the form anew, with what was refused; `told` is called when something typed waits to be
    settled, or waits no more. That is kept with the file, in `clashes`, so that whoever leaves the page finds
    it again. `refused` is of what was not typed: a choice, or one more in a list. `also` says at a field what
    else went as it was written.
    """

    def __init__(self, chosen: Chosen, show: Callable[[], None], told: Callable[[], None]) -> None:
        self._chosen, self._show, self._told = chosen, show, told
        self.refused: dict[Where, str] = {}
        self.also: dict[str, str] = {}
        self.clashes = chosen.watch.document.unsettled.setdefault(chosen.option, {})
        self._shown = Shown()
        self.forget_settled()

    def forget(self) -> None:
        """Forget what was refused: something else is looked at."""
        self.refused, self.also = {}, {}

    def forget_settled(self) -> None:
        """Let go of what was typed in cells that are gone, or that hold it by now.

        While the text cannot be read no cell can be found, and nothing is let go of.
        """
        if self._chosen.reading.aircraft is None:
            return
        for where, clash in tuple(self.clashes.items()):
            if not still_open(clash, self._chosen.field_at(where[0])):
                del self.clashes[where]

    def unsettled_at(self) -> str:
        """The place of the first cell in which something typed waits; empty where nothing does."""
        return next((place for place, _, _ in self.clashes), "")

    def open_clash(self) -> Where | None:
        """A cell in which another one wrote too, and nobody has chosen yet which one holds."""
        own = (where for where, each in self.clashes.items() if not each.refused)
        return next((where for where in own if self._chosen.field(where[0])), None)

    def put(self, told: dict[str, Any]) -> None:
        """Something was written in a cell: save it, or say beside it why that cannot be."""
        where, words = (str(told["place"]), int(told["row"]), int(told["number"])), str(told["words"])
        field = self._chosen.field(where[0])
        if field is None or where[1] >= len(field.rows) or where[2] >= len(field.rows[where[1]].cells):
            self._show()
            return
        cell = field.rows[where[1]].cells[where[2]]
        before = self.clashes.pop(where, None)
        clash = self._shown.clash(where, cell, words, told.get("began"))
        if clash is None and self._chosen.watch.document.conflict is not None:
            clash = Clash(where, words.strip(), cell.words, waits=True)
        if clash is not None:
            self.clashes[where] = clash
            self._show()
            self._told()
            return
        said, text = f"{field.place}: {words.strip() or EMPTIED}", self._chosen.watch.document.text
        refused = self._chosen.change(lambda reading: put_in(reading, field, cell, words), said)
        if refused:
            self.clashes[where] = Clash(where, words.strip(), cell.words, refused=refused)
        else:
            gone = went(text, self._chosen.watch.document.text, field.place, self._chosen.option)
            self.also = {field.place: ALSO.format(gone=gone)} if gone else {}
            self._shown.wrote(where, self._chosen.field(where[0]))
        self._show()
        if refused or before is not None:
            self._told()

    def by_word(self) -> dict[str, Callable[[str], None]]:
        """What the buttons of a field do, by the words that they are told by."""
        return {
            "more": self.one_more,
            "out": self.one_out,
            MINE: lambda of: self.settle(of, mine=True),
            THEIRS: lambda of: self.settle(of, mine=False),
        }

    def settle(self, of: str, *, mine: bool) -> None:
        """Write what was typed after all, now that both values were seen; or leave what stands there."""
        clash = self.clashes.pop(where_of(of), None)
        self._told()
        if clash is None or not mine:
            self._show()
            return
        place, row, number = clash.where
        told = {"place": place, "row": row, "number": number, "words": clash.mine, "began": clash.theirs}
        self.put(told)

    def mark(self, told: dict[str, Any]) -> None:
        """How far a figure can be trusted was chosen."""
        field, mark = self._chosen.field(str(told["place"])), str(told["words"])
        if field is not None:
            where = (field.place, -1, 0)
            self.refused.pop(where, None)
            self._try(lambda reading: with_mark(reading, field, mark), f"{field.place}: {mark}", where)

    def way(self, told: dict[str, Any]) -> None:
        """A point, a shape or a movement is to be given in another way."""
        field, number, way = self._chosen.field(str(told["place"])), int(told["row"]), str(told["words"])
        if field is None or number >= len(field.rows):
            self._show()
            return
        where, row = (field.place, number, -1), field.rows[number]
        self.refused.pop(where, None)
        words = f"{field.place}: {way}"
        self._try(lambda reading: given_in(reading, row, way, field.method), words, where)

    def one_more(self, place: str) -> None:
        """One more in a list."""
        field = self._chosen.field(place)
        if field is not None:
            self.refused.clear()
            self._try(lambda reading: with_row(reading, field), f"one more in {field.place}", _list_of(field))

    def one_out(self, place: str) -> None:
        """One out of a list."""
        field = self._chosen.field(place)
        if field is not None:
            self.refused.clear()
            words = f"{place} taken out"
            self._try(lambda reading: without_row(reading, field, place), words, _list_of(field))

    def alone(self, place: str) -> None:
        """A thing is written out for the option that is looked at."""
        words = f"{place} written out for option {self._chosen.option}"
        self._try(lambda reading: written_out(reading, place), words, (place, -1, -1))

    def mirror(self, place: str) -> None:
        """A thing gets a mirror image."""
        self._try(lambda reading: mirrored(reading, place), f"{place} mirrored", (place, -1, -1))

    def own(self, place: str) -> None:
        """A mirror image becomes a thing of its own; where it cannot, what is looked at says why."""
        where = (self._chosen.place, -1, -1)
        self._try(lambda reading: own_image(reading, place), f"{place} made its own", where)

    def _try(self, does: Callable[[Reading], str], words: str, where: Where) -> None:
        self.refused.pop(where, None)
        refused = self._chosen.change(does, words)
        if refused:
            self.refused[where] = f"Not saved: {refused}"
        self._show()


def _list_of(field: Field) -> Where:
    return field.place, -1, 0
