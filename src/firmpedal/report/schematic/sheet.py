"""The sheet with the circuit on it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.schematic.picture import circuit_drawing
from firmpedal.report.sheet import Sheet

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation

TITLE = "Circuit"


def circuit_sheet(evaluation: Evaluation) -> Sheet | None:
    """The circuit on one page; None where the file has nothing that a line could come to."""
    drawing = circuit_drawing(evaluation)
    return None if drawing is None else Sheet(TITLE, (drawing,))
