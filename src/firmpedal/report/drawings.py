"""Every drawing that there is of an aircraft, by a name that can be a file's."""

from __future__ import annotations

import re
import unicodedata
from typing import TYPE_CHECKING

from firmpedal.report import heat, stopping
from firmpedal.report.cards import card
from firmpedal.report.cold import cold_sheet
from firmpedal.report.feel import feel_sheet
from firmpedal.report.flare_card import flare_card
from firmpedal.report.fullsize import fullsize_pages
from firmpedal.report.measuring import form_sheets
from firmpedal.report.paper import PAPERS
from firmpedal.report.schematic.sheet import circuit_sheet
from firmpedal.report.sheet import Drawing, Group
from firmpedal.report.torque import torque_sheet
from firmpedal.report.trapped import trapped_sheet

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Sheet

PAPER = PAPERS["A4"]  # the pages at full size; their drawings are true on any larger paper too
CLOCKS = "clock_faces"  # of a card: what comes after the drawing of the line


def drawings(evaluation: Evaluation) -> dict[str, Drawing]:
    """The lines, the circuit, clock faces, flares, curves, what is measured where, pages at full size."""
    found: dict[str, Drawing] = {}
    for name, drawing in _all(evaluation):
        found[_free(name, found)] = drawing
    return found


def _all(evaluation: Evaluation) -> Iterator[tuple[str, Drawing]]:
    for line in evaluation.laid:
        for number, drawing in enumerate(_of_sheet(card(evaluation, line))):
            yield f"{line.name}_{CLOCKS}" if number else line.name, drawing
    sheets = [("circuit", circuit_sheet(evaluation)), ("flares", flare_card(evaluation))]
    sheets += [("torque", torque_sheet(evaluation)), ("shut_in", trapped_sheet(evaluation))]
    sheets += [("cold", cold_sheet(evaluation)), ("pedal", feel_sheet(evaluation))]
    sheets += [("stopping", stopping.packet_sheet(evaluation)), ("heat", heat.packet_sheet(evaluation))]
    sheets += [("to_measure", sheet) for sheet in form_sheets(evaluation)]
    for name, sheet in sheets:
        yield from ((name, drawing) for drawing in _of_sheet(sheet))
    for page in fullsize_pages(evaluation, PAPER):
        yield f"fullsize_{_plain(page.title)}", page.drawing


def _of_sheet(sheet: Sheet | Group | None) -> Iterator[Drawing]:
    for block in sheet.blocks if sheet else ():
        if isinstance(block, Group):
            yield from _of_sheet(block)
        elif isinstance(block, Drawing):
            yield block


def _plain(title: str) -> str:
    """A title as a name for a file; numbers in rings become plain ones."""
    letters = unicodedata.normalize("NFKC", title)
    return re.sub(r"\W+", "_", letters).strip("_")


def _free(name: str, taken: dict[str, Drawing]) -> str:
    """The name, or with a number after it where a drawing has it; capitals alone tell no files apart."""
    folded, free, number = {each.casefold() for each in taken}, name, 1
    while free.casefold() in folded:
        number += 1
        free = f"{name}_{number}"
    return free
