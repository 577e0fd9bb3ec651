"""How far each pedal goes under a foot: what its travel is spent on, with the curves."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.feel import feel_asks, feel_sheet
from firmpedal.report.network import network_sheet
from firmpedal.web.pages.report import Report
from firmpedal.web.sound.measuring import measuring

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Sheet

TITLE = "Pedal feel"


def sheets(evaluation: Evaluation) -> tuple[Sheet, ...]:
    """The sheet of the pedals and that of the circuit under pressure, where there are any."""
    found = (feel_sheet(evaluation, asks=False), network_sheet(evaluation))
    return tuple(sheet for sheet in found if sheet is not None)


PAGE = Report(
    "How far each pad goes under a foot and why; then which feet press which wheel, and what one leak costs.",
    sheets,
    empty="No pedal presses a brake yet: describe cylinders, lines and calipers first.",
    below=(measuring(feel_asks),),
)
