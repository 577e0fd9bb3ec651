"""Prove: every joint looked at, tightened and tried, with a place to sign."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.joint_checks import joint_checks_sheet
from firmpedal.web.pages.report import Report
from firmpedal.web.takeaway.shelves import packet_is_there

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Sheet


def sheets(evaluation: Evaluation) -> tuple[Sheet, ...]:
    """The list of joints, where there are any."""
    sheet = joint_checks_sheet(evaluation)
    return (sheet,) if sheet is not None else ()


PAGE = Report(
    "Joint by joint. The pressure test is done by, or under, somebody who is entitled to sign for it.",
    sheets,
    pens=True,
    empty="There is no joint in this aircraft yet.",
    beside=(packet_is_there,),
)
