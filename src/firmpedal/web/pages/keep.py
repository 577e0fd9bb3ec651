"""Keep: the papers that stay with the aircraft, every sum and its source."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.cover import cover_sheet
from firmpedal.report.sheet import Paragraph, Sheet, Tone
from firmpedal.report.sources import sources_sheet
from firmpedal.report.sums import sums_sheet
from firmpedal.web.pages.report import Report
from firmpedal.web.takeaway.shelves import hangar, packet

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation

NOT_YET = "What to look at every year, and when each hose is due, is not worked out yet."


def sheets(evaluation: Evaluation) -> tuple[Sheet, ...]:
    """The cover, then the sums, then where they come from."""
    later = Sheet("Later years", (Paragraph(NOT_YET, Tone.NOTE),))
    return (cover_sheet(evaluation), later, sums_sheet(evaluation), sources_sheet(evaluation))


PAGE = Report(
    "The papers that stay with the aircraft. Print them, sign them, and keep your file with them.",
    sheets,
    pens=True,
    beside=(packet, hangar),
)
