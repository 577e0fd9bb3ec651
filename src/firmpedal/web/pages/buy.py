"""What to buy, and from which sticks the tube is cut."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.buying import parts_sheet
from firmpedal.report.cutplan import cutplan_sheet
from firmpedal.web.pages.report import Report
from firmpedal.web.takeaway.shelves import list_to_copy, way_to_held

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Sheet


def sheets(evaluation: Evaluation) -> tuple[Sheet, ...]:
    """The list to buy from, then the plan for cutting."""
    plan = cutplan_sheet(evaluation)
    return (parts_sheet(evaluation), *((plan,) if plan is not None else ()))


PAGE = Report(
    "Everything that is needed, spares included, each with the place it goes to.",
    sheets,
    pens=True,
    beside=(list_to_copy, way_to_held),
)
