"""What is still to be measured, as rows to write in: all of it, or what the figures of one page lack."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.display import count_of
from firmpedal.project.edit import EditError
from firmpedal.project.measured import measured
from firmpedal.project.names import label_of
from firmpedal.project.tree import UNKNOWN
from firmpedal.project.unknowns import as_known
from firmpedal.quantity import When
from firmpedal.report.measure_groups import measure_groups
from firmpedal.web import addresses
from firmpedal.web.answers import odd_in, reading_of
from firmpedal.web.elements import box, link, put_words, said
from firmpedal.web.form.clash import Clash
from firmpedal.web.sound.field_box import FieldBox
from firmpedal.web.sound.forms import refusal_words
from firmpedal.web.sound.in_fields import Asked, in_fields
from firmpedal.web.sound.kept import Kept
from firmpedal.web.sound.measure_fold import MeasureFold
from firmpedal.web.sound.measure_row import MeasureRow
from firmpedal.web.sound.news import News
from firmpedal.web.turns import in_turn

if TYPE_CHECKING:
    from collections.abc import Callable, Hashable, Iterable

    from nicegui import ui
    from nicegui.element import Element

    from firmpedal.pipeline import Evaluation
    from firmpedal.report.measure_groups import MeasureGroup
    from firmpedal.report.to_measure import ToMeasure
    from firmpedal.web.answers import Answer
    from firmpedal.web.frame import Frame

    Rows = Callable[[Evaluation], tuple[ToMeasure, ...]]
    Things = Kept[tuple[MeasureGroup, tuple[Asked, ...]]]

TITLE, MEASURE = "To measure", "measure"
FORM = "Print the list"
AT_THE_COMPUTER = "Figures are written into the file at the computer."
HOW = (
    "Type a figure as you would write it: 3/4, 10-1/2 in, 12 mm, 3.4 to 3.6, about 2. What the file makes "
    "alike, such as the two sides, is one row."
)
FOR_THIS_PAGE = "What this page leaves open is worked out as soon as these are known."
WRITTEN = "{what}: {words} is in the file. Undo takes it out."
FROM_WHEN = {
    When.NOW: "Now",
    When.IN_HAND: "With the parts in hand",
    When.FITTED: "When the lines are fitted",
    When.TRIED: "In the first trials",
}
FEW = 3  # so many rows lie open; of more, each thing is seen with what is missing of it
FOR_EVERY_OPTION = "It stands in the aircraft as written, for every option."


class Measuring:
    """The rows in a section of their own, hidden where nothing is to be measured.

    Args:
        frame: The page.
        rows: What is to be measured, of an evaluation.
        lead: What the rows are for, as the evaluation stands.
        news: Where the page says what was done.
        unfolded: The times from when on something can be measured that lie open at first.
    """

    def __init__(
        self,
        frame: Frame,
        rows: Rows,
        lead: Callable[[Evaluation], str],
        news: News,
        unfolded: tuple[When, ...] = (When.NOW,),
    ) -> None:
        self._frame, self.watch, self.file = frame, frame.watch, frame.file
        self._rows_of, self._news = rows, news
        self._changes = self.watch.document.may_change
        self._waiting = self.watch.document.unsettled.setdefault(self.watch.option, {})
        self.element = box("section", "fp-section", id=MEASURE, aria_label=TITLE)
        self._lead = lead
        self._folds: dict[tuple[When, str], MeasureFold] = {}
        self._shown: set[Hashable] = set()
        with self.element:
            said("h2", TITLE)
            self._lead_words = said("p", "")
            said("p", HOW if self._changes else AT_THE_COMPUTER, "fp-small")
            with box(classes="fp-actions"):
                link(FORM, addresses.paper(self.file, "form.pdf", self.watch.option), "fp-button")
            self._groups = {when: self._group(when, unfolded) for when in When}
        self.element.set_visibility(False)

    def show(self, evaluation: Evaluation) -> bool:
        """Show what is lacking now; says whether a row went away."""
        lacking = self._rows_of(evaluation)
        self.element.set_visibility(bool(lacking))
        put_words(self._lead_words, self._lead(evaluation))
        found = in_fields(evaluation, lacking) if self._changes else _as_told(evaluation, lacking)
        for when, (fold, count, things) in self._groups.items():
            wanted = {each.told: each for each in found if each.told.when is when}
            groups = measure_groups(evaluation, wanted)
            fold.set_visibility(bool(wanted))
            put_words(count, count_of(len(wanted), "thing"))
            things.show([(each.name, (each, tuple(map(wanted.__getitem__, each.rows)))) for each in groups])
            for each in groups if len(wanted) <= FEW else ():
                self._folds[when, each.name].open()
        before, self._shown = self._shown, {each.about for each in found}
        self._frame.history()  # what waits in these rows is not said above them as well
        return bool(before - self._shown)

    def _group(self, when: When, unfolded: tuple[When, ...]) -> tuple[Element, ui.html, Things]:
        """What can be measured from one time on, under that with how much it is, thing by thing."""

        def made(told: tuple[MeasureGroup, tuple[Asked, ...]]) -> MeasureFold:
            name = told[0].name
            fold = MeasureFold(told[0], f"measure {when} {name}", self._row)
            self._folds[when, name] = fold
            return fold

        opened = {"open": ""} if when in unfolded else {}
        with box("details", "fp-fold fp-measure-fold", data_fold=f"measure {when}", **opened) as fold:
            with box("summary"):
                said("span", FROM_WHEN[when])
                count = said("span", "", "fp-measure-short")
            things = Kept(box("ul", "fp-measures"), made)
        return fold, count, things

    def _row(self, asked: Asked) -> MeasureRow:
        return MeasureRow(asked, self.file, self._write if self._changes else None, self._box, self._typed)

    def _typed(self, at: str) -> Clash | None:
        """What was typed in a box before, and refused; it is seen there, and nowhere else on the page."""
        self._frame.in_place.add(at)
        return self._waiting.get((at, 0, 0))

    def _box(self, place: str) -> FieldBox:
        return FieldBox(self._frame, place, self._news)

    async def _write(self, one: ToMeasure, words: str) -> None:
        """Write a measurement into the file.

        Raises:
            EditError: It cannot be read as one, or not be written there; nothing was changed.
        """
        document, option, where = self.watch.document, self.watch.option, (one.at, 0, 0)

        def put(made: tuple[str, str | None]) -> None:
            text, where = made
            everywhere = f" {FOR_EVERY_OPTION}" if option is not None and where is None else ""
            odd = "".join(f" NOTE: {each}." for each in self._odd(text, one.at).values())
            self._news.tell(WRITTEN.format(what=label_of(one.at), words=words.strip()) + everywhere + odd)
            document.rewrite(text, f"{label_of(one.at)}: {words.strip()}")

        before = self._waiting.pop(where, None)
        try:
            await in_turn(document, lambda text: self._measured(text, one.at, words), put)
        except EditError as refusal:
            if words.strip():
                self._waiting[where] = Clash(where, words.strip(), UNKNOWN, refused=refusal_words(refusal))
            raise
        finally:
            if before or where in self._waiting:
                self._frame.history()

    def _measured(self, text: str, place: str, words: str) -> tuple[str, str | None]:
        option = self.watch.option
        known = as_known(reading_of(text, self.file, option).tree, place, words)
        return measured(text, place, known, option)

    def _odd(self, text: str, place: str) -> dict[str, str]:
        """What is out of the usual of a figure that was just written."""
        return odd_in(text, self.file, self.watch.option, self.watch.system, place)


def _as_told(evaluation: Evaluation, rows: Iterable[ToMeasure]) -> tuple[Asked, ...]:
    """The same where nothing can be typed."""
    return tuple(Asked(each, evaluation) for each in rows)


def measuring(rows: Rows) -> Callable[[Frame], None]:
    """Rows for a page of sheets: what its figures lack."""

    def put(frame: Frame) -> None:
        made = Measuring(frame, rows, lambda _evaluation: FOR_THIS_PAGE, News(frame.watch), tuple(When))

        def answered(answer: Answer) -> None:
            if answer.evaluation is not None:
                made.show(answer.evaluation)
            else:
                made.element.set_visibility(False)

        frame.watch.when_answered(answered)

    return put
