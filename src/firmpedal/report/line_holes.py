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
            cut = passing(line, panel) if passage is not None else None
            if passage is None or cut is None or not cut.points or not isinstance(panel.where, Sheet):
                continue
            if not passage.hole.known:  # what it has to be stands among the things to measure
                continue
            top = "forward" if panel.where.axis == 2 else "up"
            name = f"{line.name} in {panel.name}"
            found.append(drawn_hole(name, passage.hole, top, _words(evaluation.display, cut, passage.hole)))
    return found


def _words(display: Display, cut: Passing, hole: Value) -> Iterator[str]:
    yield f"hole {decimals(hole, display)} as the file says, for its grommet"
    if isinstance(cut.panel.where, Sheet):
        yield FACES[cut.panel.where.axis]
    yield f"middle at {display.point(cut.points[0][1])}"
