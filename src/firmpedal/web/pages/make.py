"""Make the lines: a card for each, the flares, the torques."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.cards import card_sheets
from firmpedal.report.flare_card import flare_card
from firmpedal.report.paper import PAPERS
from firmpedal.report.torque import torque_sheet
from firmpedal.web.pages.report import Report
from firmpedal.web.takeaway.shelves import for_others, packet_is_there

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Sheet


TICKED = "under Prove"


def sheets(evaluation: Evaluation) -> tuple[Sheet, ...]:
    """The cards in the order of the file, then what holds for all lines."""
    rest = (flare_card(evaluation), torque_sheet(evaluation, ticked=TICKED))
    return (*card_sheets(evaluation), *(sheet for sheet in rest if sheet is not None))


PAGE = Report(
    "One card for each line. Take one to the bench at a time.",
    sheets,
    (
        ("cards.pdf", "Print the cards"),
        *((f"fullsize-{name}.pdf", f"Templates at full size, {name}") for name in PAPERS),
    ),
    pens=True,
    empty="There is no line in this aircraft yet.",
    beside=(packet_is_there,),
    below=(for_others,),
)
