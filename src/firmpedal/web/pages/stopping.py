"""Stopping and holding: what each foot gives, what a stop and a run-up take, where tyres or nose give way."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.stopping import TITLE, stopping_asks, stopping_sheet
from firmpedal.web.pages.report import Report
from firmpedal.web.sound.measuring import measuring

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Sheet


def sheets(evaluation: Evaluation) -> tuple[Sheet, ...]:
    """One sheet, as far as the file goes."""
    return (stopping_sheet(evaluation, asks=False),)


PAGE = Report(
    "From a foot on the pedal to drag at the ground, and back from a stop that you want.",
    sheets,
    titled=True,
    below=(measuring(stopping_asks),),
)

__all__ = ["PAGE", "TITLE", "sheets"]
