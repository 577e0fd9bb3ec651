"""The printed packet as plain sheets, and what stands at the foot of every page."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.report import heat, stopping
from firmpedal.report.bleeding import bleeding_sheet
from firmpedal.report.buying import parts_sheet
from firmpedal.report.cards import card_sheets
from firmpedal.report.cold import cold_sheet
from firmpedal.report.compare import compare_sheet
from firmpedal.report.cover import cover_sheet, option_words
from firmpedal.report.cutplan import cutplan_sheet
from firmpedal.report.feel import feel_sheet
from firmpedal.report.findings import findings_sheet
from firmpedal.report.flare_card import flare_card
from firmpedal.report.joint_checks import joint_checks_sheet
from firmpedal.report.measure_sheet import measure_sheet
from firmpedal.report.network import network_sheet
from firmpedal.report.putting_together import putting_together_sheet
from firmpedal.report.retrofit import retrofit_sheet
from firmpedal.report.schematic.sheet import circuit_sheet
from firmpedal.report.sources import sources_sheet
from firmpedal.report.sums import sums_sheet
from firmpedal.report.torque import torque_sheet
from firmpedal.report.trapped import trapped_sheet

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Sheet


@dataclass(frozen=True, slots=True)
class Footer:
    """What says, on a page that fell off the bench, which packet it belongs to."""

    aircraft: str
    option: str
    revision: str
    date: str

    @property
    def words(self) -> str:
        revision = f"revision {self.revision}" if self.revision else ""
        return ", ".join(word for word in (self.aircraft, self.option, revision, self.date) if word)


def footer_of(evaluation: Evaluation) -> Footer:
    """The footer of an evaluation: the builder's own words, and no date of printing."""
    header = evaluation.aircraft.aircraft
    return Footer(header.name, option_words(evaluation), header.revision, header.date)


def packet_sheets(evaluation: Evaluation, options: tuple[Evaluation, ...] = ()) -> tuple[Sheet, ...]:
    """All sheets in the order in which they are needed.

    Args:
        evaluation: What the packet is about.
        options: The file as written and its options, evaluated, where they are to be set side by side.
    """
    sheets = (
        cover_sheet(evaluation),
        circuit_sheet(evaluation),
        findings_sheet(evaluation),
        measure_sheet(evaluation),
        feel_sheet(evaluation),
        network_sheet(evaluation),
        compare_sheet(options) if len(options) > 1 else None,
        parts_sheet(evaluation),
        cutplan_sheet(evaluation),
        *work_sheets(evaluation, options),
        *card_sheets(evaluation),
        putting_together_sheet(evaluation),
        bleeding_sheet(evaluation),
        trapped_sheet(evaluation),
        cold_sheet(evaluation),
        torque_sheet(evaluation),
        flare_card(evaluation),
        joint_checks_sheet(evaluation),
        stopping.packet_sheet(evaluation),
        heat.packet_sheet(evaluation),
        sums_sheet(evaluation),
        sources_sheet(evaluation),
    )
    return tuple(sheet for sheet in sheets if sheet is not None)


def work_sheets(evaluation: Evaluation, options: tuple[Evaluation, ...]) -> list[Sheet]:
    """The way from the aircraft as written to the option that the packet is about."""
    if evaluation.reading.option is None:
        return []
    return [retrofit_sheet(other, evaluation) for other in options if other.reading.option is None]
