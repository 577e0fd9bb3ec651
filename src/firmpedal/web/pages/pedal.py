"""How far each pedal goes under a foot: what its travel is spent on, with the curves."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.feel import feel_sheet
from firmpedal.web.pages.report import Report

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Sheet

TITLE = "Pedal feel"


def sheets(evaluation: Evaluation) -> tuple[Sheet, ...]:
    """The sheet of the pedals, where there are any."""
    sheet = feel_sheet(evaluation)
    return (sheet,) if sheet is not None else ()


PAGE = Report(
    "How far each pad goes under a foot, where the travel goes, and what heat, wear and air do to it.",
    sheets,
    empty="No pedal presses a brake yet: describe cylinders, lines and calipers first.",
)
