"""Heat of the brakes: how warm they get, what stands it, and how to know better."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.heat import TITLE, heat_asks, heat_sheet
from firmpedal.web.pages.report import Report
from firmpedal.web.sound.measuring import measuring

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Sheet


def sheets(evaluation: Evaluation) -> tuple[Sheet, ...]:
    """One sheet, as far as the file goes."""
    return (heat_sheet(evaluation, asks=False),)


PAGE = Report(
    "One stop, stops in a row, a long taxi: how warm they get, as closely as it is known.",
    sheets,
    titled=True,
    below=(measuring(heat_asks),),
)

__all__ = ["PAGE", "TITLE", "sheets"]
