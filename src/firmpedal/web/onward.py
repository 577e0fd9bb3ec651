"""Under the title of each page: where the builder stands, in one line, and the ways on from there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.next_step import Next, To, next_step, to_mend
from firmpedal.web import addresses
from firmpedal.web.elements import box, link, put_words, said

if TYPE_CHECKING:
    from firmpedal.web.answers import Answer

AT_THE_COMPUTER = (To.TEXT, To.DESCRIBE)  # a phone has no such page


def way_to(to: To, file: str, option: str | None) -> str:
    """The address at which something is done."""
    if to is To.TEXT:
        return addresses.text(file, option)
    if to is To.FORM:
        return addresses.paper(file, "form.pdf", option)
    step, mark = {
        To.FOUND: ("sound", "#found"),
        To.MEASURE: ("sound", "#measure"),
        To.PACKET: ("keep", "#packet"),
        To.DESCRIBE: ("describe", "#add"),
    }.get(to, (to.value, ""))
    return addresses.step(file, step, option) + mark


def ways_on(
    found: Next, file: str, option: str | None, here: str, *, changes: bool
) -> tuple[tuple[str, str], ...]:
    """The words and the address of each way that can be gone: none to where somebody is, or may not go.

    Args:
        found: What to do next.
        file: The file's name.
        option: One of its options; none for the file as written.
        here: The address of the page.
        changes: Whether the file may be changed from here; a phone may not.
    """
    ways = (
        (words, way_to(to, file, option)) for words, to in found.ways if changes or to not in AT_THE_COMPUTER
    )
    return tuple((words, to) for words, to in ways if to != here)


class Onward:
    """The line and its ways, kept abreast of the answer.

    Args:
        file: The file's name.
        option: One of its options; none for the file as written.
        step: The step of the job that the page belongs to.
        here: The address of the page; no way leads to where somebody is.
        changes: Whether the file may be changed from here; a phone may not.
    """

    def __init__(self, file: str, option: str | None, step: str, here: str, *, changes: bool) -> None:
        self._about, self._step, self._here, self._changes = (file, option), step, here, changes
        self._shown: Next | None = None
        self._box = box(classes="fp-next")
        with self._box:
            self._words = said("p", "")
            self._ways = box(classes="fp-actions")
        self._box.set_visibility(False)

    def out_of_date(self) -> None:
        """Show that the line may not hold any more."""
        self._box.classes("fp-stale")

    def nothing(self) -> None:
        """There is no way on; the page says elsewhere why."""
        self._shown = None
        self._box.set_visibility(False)

    def show(self, answer: Answer) -> None:
        """Say where the builder stands now."""
        self._box.classes(remove="fp-stale")
        evaluation = answer.evaluation
        found = (
            to_mend(len(answer.reading.problems)) if evaluation is None else next_step(evaluation, self._step)
        )
        if found == self._shown:
            return
        self._shown = found
        put_words(self._words, found.words)
        self._box.set_visibility(True)
        self._ways.clear()
        with self._ways:
            for number, (words, to) in enumerate(
                ways_on(found, *self._about, self._here, changes=self._changes)
            ):
                link(words, to, "fp-button" + ("" if number else " fp-button-main"))
