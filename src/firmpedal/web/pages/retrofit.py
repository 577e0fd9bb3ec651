"""The work from one option to another: what comes off, what is used again, what to buy, in which order."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache, partial
from typing import TYPE_CHECKING

from firmpedal.report.advice import AS_WRITTEN
from firmpedal.report.retrofit import TITLE, retrofit_sheet
from firmpedal.web import addresses
from firmpedal.web.elements import box, link, said
from firmpedal.web.options import BEGIN, options_of
from firmpedal.web.pages import report
from firmpedal.web.sheets import written

if TYPE_CHECKING:
    from firmpedal.web.answers import Answer, System
    from firmpedal.web.frame import Frame

LEAD = "From what hangs in the aircraft to what you want: choose both, then work from top to bottom."
SAME = (
    "Choose two that differ: the aircraft as it is today, and what you want to build. Where there is no "
    "second one yet, begin an option."
)


@lru_cache(maxsize=16)
def work_html(before: str | None, text: str, file: str, option: str | None, system: System | None) -> str:
    """Write the work from one option to another as HTML; empty where they are one, or one cannot be read."""
    found = {each.name: each.evaluation for each in options_of(text, file, system)}
    old, new = found.get(before), found.get(option)
    if before == option or old is None or new is None:
        return ""
    return written((retrofit_sheet(old, new),), file, option)


@dataclass(frozen=True)
class Way:
    """The page, for what the work begins from; none for the file as written."""

    before: str | None

    def address(self, file: str, option: str | None) -> str:
        """The page that leads from the same to another option."""
        return addresses.retrofit(file, option, self.before)

    def show(self, frame: Frame) -> None:
        """Put the page into the frame."""
        page = report.Report(
            LEAD,
            work=partial(work_html, self.before),
            pens=True,
            titled=True,
            empty=SAME,
            beside=(self._ways,),
        )
        report.show(page, frame)

    def _ways(self, frame: Frame) -> None:
        """From which option to which, to be chosen."""
        ways = box(classes="fp-from-to")
        file, option = frame.file, frame.watch.option

        def listed(answer: Answer) -> None:
            names = (None, *answer.reading.options)
            ways.clear()
            with ways:
                if len(names) == 1:
                    link(BEGIN, addresses.begin(file, option), "fp-button")
                _row("From", self.before, [(name, addresses.retrofit(file, option, name)) for name in names])
                _row("To", option, [(name, self.address(file, name)) for name in names])

        frame.watch.when_answered(listed)


def _row(word: str, chosen: str | None, ways: list[tuple[str | None, str]]) -> None:
    """One choice among the options, each a link."""
    with box("nav", "fp-options", aria_label=word):
        said("span", word)
        for name, to in ways:
            here = {"aria_current": "true"} if name == chosen else {}
            link(name or AS_WRITTEN, to, **here)


__all__ = ["TITLE", "Way", "work_html"]
