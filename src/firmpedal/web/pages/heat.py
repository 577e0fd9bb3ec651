"""Heat of the brakes: how warm they get, what stands it, and how to know better."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.heat import NOT_SHOWN, TITLE, heat_asks, heat_sheet
from firmpedal.web.pages.report import Report
from firmpedal.web.sheets import sheets_html
from firmpedal.web.sound.measuring import MEASURE, measuring

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Sheet
    from firmpedal.web.answers import System


def sheets(evaluation: Evaluation) -> tuple[Sheet, ...]:
    """One sheet, as far as the file goes."""
    return (heat_sheet(evaluation, asks=False),)


def heat_html(text: str, file: str, option: str | None, system: System | None) -> str:
    """The sheet as HTML; what is not shown leads to the rows below it, to be measured."""
    made = sheets_html(sheets, text, file, option, system)
    return made.replace(f">{NOT_SHOWN}<", f'><a href="#{MEASURE}">{NOT_SHOWN}</a><')


PAGE = Report(
    "One stop, stops in a row, a long taxi: how warm they get, as closely as it is known.",
    titled=True,
    work=heat_html,
    below=(measuring(heat_asks),),
)

__all__ = ["PAGE", "TITLE", "sheets"]
