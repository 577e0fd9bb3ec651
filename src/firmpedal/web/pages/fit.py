"""Fit and fill: the circuit, the way to an option, the order of putting together, filling and bleeding."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.pipeline import evaluate, read_text
from firmpedal.report.bleeding import bleeding_sheet
from firmpedal.report.cold import cold_sheet
from firmpedal.report.cover import BEFORE, CAUTIONS
from firmpedal.report.putting_together import putting_together_sheet
from firmpedal.report.retrofit import retrofit_sheet
from firmpedal.report.schematic.sheet import circuit_sheet
from firmpedal.report.sheet import Bullets, Paragraph, Sheet, Tone
from firmpedal.report.trapped import trapped_sheet
from firmpedal.web.pages.report import Report
from firmpedal.web.takeaway.shelves import hangar, way_to_retrofit

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation

TORQUES = "The torques are under Make."


def sheets(evaluation: Evaluation) -> tuple[Sheet, ...]:
    """Cautions, the circuit, the work from as written to the option, what goes on when, and filling."""
    found = (
        Sheet(BEFORE, (Bullets(CAUTIONS), Paragraph(TORQUES, Tone.NOTE))),
        circuit_sheet(evaluation),
        *_work(evaluation),
        putting_together_sheet(evaluation),
        bleeding_sheet(evaluation),
        trapped_sheet(evaluation),
        cold_sheet(evaluation),
    )
    return tuple(sheet for sheet in found if sheet is not None)


def _work(evaluation: Evaluation) -> tuple[Sheet, ...]:
    """The way from the file as written, in the units that the option is shown in."""
    there = evaluation.reading
    written = read_text(there.text, there.file) if there.option is not None else None
    if written is None or written.aircraft is None:
        return ()
    return (retrofit_sheet(evaluate(written, evaluation.display), evaluation),)


PAGE = Report(
    "The circuit with its joints, what goes on before what, and how to fill and bleed.",
    sheets,
    pens=True,
    beside=(way_to_retrofit, hangar),
)
