"""The holes that lines pass panels in, at full size: as wide as the file says, at the place they pass."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.lay.panels import passing
from firmpedal.model.aircraft import find
from firmpedal.model.shapes import Sheet
from firmpedal.report.lengths import decimals
from firmpedal.report.panel_holes import drawn_hole

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.panels import Passing
    from firmpedal.model.display import Display
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value
    from firmpedal.report.sheet import Mark

FACES = ("seen from ahead or behind", "seen from either side", "seen from above or below")


def line_hole_marks(evaluation: Evaluation) -> list[tuple[Mark, ...]]:
    """Draw every hole whose diameter is declared and that a line surely passes."""
    found = []
    for panel in evaluation.aircraft.panels:
        for line in evaluation.laid:
            passage = find(panel.passes, line.name)
            cut = passing(line.run, panel) if passage is not None else None
            if passage is None or cut is None or cut.unsure or not isinstance(panel.where, Sheet):
                continue
            if len(cut.points) != 1 or not passage.hole.known or not passage.hole.exact:
                continue  # what is not known stands among the things to measure
            top = "forward" if panel.where.axis == 2 else "up"
            name = f"{line.name} in {panel.name}"
            found.append(drawn_hole(name, passage.hole, top, _words(evaluation.display, cut, passage.hole)))
    return found


def _words(display: Display, cut: Passing, hole: Value) -> Iterator[str]:
    yield f"{decimals(hole, display)} free, as the file says; wider before the grommet is in"
    if isinstance(cut.panel.where, Sheet):
        yield FACES[cut.panel.where.axis]
    yield f"middle at {display.spot(cut.points[0][1])}"
