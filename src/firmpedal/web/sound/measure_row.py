"""One measurement to take: what it is, how to take it, and where to type it: in a box, or in its fields."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.project.edit import EditError
from firmpedal.project.supposed import is_thread
from firmpedal.report.measure_sheet import offer_words, same_words
from firmpedal.web import addresses
from firmpedal.web.elements import box, button, link, put_words, said
from firmpedal.web.form.fields import WHICH_THREAD
from firmpedal.web.sound.forms import Pen, form, refusal_words
from firmpedal.web.sound.ways import ways
from firmpedal.web.wording import sentence

if TYPE_CHECKING:
    from collections.abc import Awaitable, Callable

    from firmpedal.report.offers import Offer
    from firmpedal.report.to_measure import ToMeasure
    from firmpedal.web.form.clash import Clash
    from firmpedal.web.sound.field_box import FieldBox
    from firmpedal.web.sound.forms import Given
    from firmpedal.web.sound.in_fields import Asked

    Write = Callable[[ToMeasure, str], Awaitable[None]]


NEEDED_FOR = "It is needed to check:"


class MeasureRow:
    """A thing to measure as it stands on the page; `write` is none where nothing may be changed.

    A figure has a box to itself; what is written in several pieces, such as a point, has its fields, which
    `box_of` makes. `typed` gives what was typed in a box and refused, when the page was here before.
    """

    def __init__(
        self,
        asked: Asked,
        file: str,
        write: Write | None,
        box_of: Callable[[str], FieldBox],
        typed: Callable[[str], Clash | None],
    ) -> None:
        told = asked.told
        self._told, self._file, self._write = told, file, write
        self._pen: Pen | None = None
        self._boxes: tuple[FieldBox, ...] = ()
        self.element = box("li", "fp-measure")
        with self.element:
            if told.at and write is not None and not asked.fields:
                with form(self._sent):
                    self._pen = Pen(_plain(told.what), "figure", told.unit, told.how)
                    said("button", "Write it down", "fp-button", type="submit")
                waits = typed(told.at)
                if waits is not None:
                    self._pen.put_back(waits.mine, waits.refused)
                for offer in told.offers:
                    self._offered(offer)
            else:
                self._what = said("p", _plain(told.what), "fp-measure-what")
                if told.how and not asked.fields:  # its fields say how
                    said("p", told.how, "fp-small")
                self._boxes = tuple(map(box_of, asked.fields))
            if is_thread(told.at):
                to = addresses.thread(file, asked.evaluation.reading.option, told.at)
                link(WHICH_THREAD, to, "fp-small fp-field-which")
            if told.later:
                said("p", told.later)
            if told.others:
                said("p", same_words(told), "fp-small")
            if self._pen is None and not self._boxes:  # the way to its place is how it is written
                self._belongs()
            else:
                with box("details", "fp-fold"):
                    said("summary", "Why, and where" if told.why else "Where")
                    with box(classes="fp-fold-in"):
                        self._belongs()

    def _belongs(self) -> None:
        """What waits for it, and the ways to its place."""
        checks = self._told.checks
        if self._told.why:
            said("p", NEEDED_FOR if checks else sentence(self._told.why), "fp-small")
        if checks:
            with box("ul", "fp-list fp-small"):
                for each in checks:
                    said("li", each)
        self._ways = box(classes="fp-finding-ways")

    def show(self, asked: Asked) -> None:
        """Show where it belongs now; the field and what is typed in it stay."""
        told, evaluation = asked.told, asked.evaluation
        if self._pen is None:
            put_words(self._what, _plain(told.what))
        self._told = told
        for each in self._boxes:
            each.show()
        self._ways.clear()
        with self._ways:
            own = asked.fields or ((told.at,) if told.at else told.places)
            for place in (each for each in own if each not in told.others):
                ways(evaluation, self._file, place, open_to=self._write is not None)

    def _offered(self, offer: Offer) -> None:
        """A figure that the file has elsewhere: said, and taken over where somebody has measured it."""
        said("p", sentence(offer_words(offer)))
        if not offer.doubt:
            button(f"Yes, write {offer.words}", lambda: self._put(offer.words))

    async def _sent(self, given: Given) -> None:
        await self._put(" ".join(given.get("figure", [])))

    async def _put(self, words: str) -> None:
        if self._write is None or self._pen is None:
            return
        try:
            await self._write(self._told, words)
        except EditError as refusal:
            self._pen.refuse(refusal_words(refusal))
        else:
            self._pen.refuse("")


def _plain(words: str) -> str:
    """Words for a page, which need no marks round the keys of the file."""
    return words.replace("`", "")
