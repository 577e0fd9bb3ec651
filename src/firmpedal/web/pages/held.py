"""A supplier's list or a kit's packing list, held against what the design needs."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from firmpedal.decide.listing import entries
from firmpedal.report.reconcile import reconcile_sheet, reconciled
from firmpedal.web.answers import answer
from firmpedal.web.pages import report
from firmpedal.web.sheets import written
from firmpedal.web.takeaway.pasting import Pasting

if TYPE_CHECKING:
    from firmpedal.web.answers import System
    from firmpedal.web.frame import Frame

TITLE = "A supplier's list against ours"
LEAD = (
    "Paste a supplier's list, or a kit's packing list, or choose its file. What is short, what is something "
    "else and what is left over stands below at once."
)
NOTHING = "Nothing to compare yet: paste a list above."


@lru_cache(maxsize=16)
def held_html(pasted: str, text: str, file: str, option: str | None, system: System | None) -> str:
    """Write a list held against what a text comes to as HTML; empty where one of the two is not there.

    Raises:
        ListError: The list cannot be used.
    """
    evaluation = answer(text, file, option, system).evaluation
    if evaluation is None or not pasted.strip():
        return ""
    found = reconciled(evaluation, entries(pasted))
    sheet = reconcile_sheet(found, evaluation.display, "", len(evaluation.violations))
    return written((sheet,), file, option)


def show(frame: Frame) -> None:
    """Put the page into the frame; what is pasted stays with the file as long as the app is open."""
    pasting = Pasting(frame)

    def work(text: str, file: str, option: str | None, system: System | None) -> str:
        return held_html(pasting.usable, text, file, option, system)

    report.show(report.Report(LEAD, titled=True, empty=NOTHING, beside=(pasting.put,), work=work), frame)
