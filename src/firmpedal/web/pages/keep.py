"""Keep: the papers that stay with the aircraft, every sum and its source."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.cover import cover_sheet
from firmpedal.report.sheet import Bullets, Sheet
from firmpedal.report.sources import sources_sheet
from firmpedal.report.sums import sums_sheet
from firmpedal.web.pages.report import Report
from firmpedal.web.takeaway.shelves import hangar, packet

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation

LATER = (
    "Keep the packet, filled in and signed: every later look is held against its cards, torques and joints.",
    "How often to look, and when a hose or seal is due, its maker, the kit's maker and local rules say.",
)


def sheets(evaluation: Evaluation) -> tuple[Sheet, ...]:
    """The cover, then the sums, then where they come from."""
    later = Sheet("Later years", (Bullets(LATER),))
    return (cover_sheet(evaluation), later, sums_sheet(evaluation), sources_sheet(evaluation))


PAGE = Report(
    "The papers that stay with the aircraft. Print them, sign them, and keep your file with them.",
    sheets,
    pens=True,
    beside=(packet, hangar),
)
