"""One row of a table of shapes: its cells by the name of their column, figures in SI."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.decide.listing import DECIMAL_COMMA, ListError
from firmpedal.model.space import AXIS_NAMES
from firmpedal.units import Dimension, UnitError, read

if TYPE_CHECKING:
    from firmpedal.decide.listing import Cell

LENGTHS = (*AXIS_NAMES, "straight before", "radius")
ANGLES = ("rotation", "angle")
QUANTITIES = dict.fromkeys(LENGTHS, Dimension.LENGTH) | dict.fromkeys(ANGLES, Dimension.ANGLE)
DASHES = frozenset({"", "-", "\u2013", "\u2014"})  # what stands where there is nothing to write


@dataclass(frozen=True, slots=True)
class Column:
    name: str
    unit: str | None
    place: int


@dataclass(frozen=True, slots=True)
class ShapeRow:
    """One row under the heading: its cells by the name of their column."""

    number: int
    cells: dict[str, tuple[Cell, Column]]

    def text(self, name: str) -> str:
        return self.cells[name][0].text if name in self.cells else ""

    def figure(self, name: str) -> float:
        """One figure, in SI."""
        if name not in self.cells:
            raise ListError(f"this row has nothing under {name}", "fill it in", self.number)
        cell, column = self.cells[name]
        if not cell.text:
            raise self.refused(name, f"there is nothing under {name} in this row", "fill it in")
        written = cell.text.replace(",", ".") if DECIMAL_COMMA.fullmatch(cell.text) else cell.text
        if "," in written:  # to some it marks thousands, to others it is the decimal point
            advice = (
                f"write {cell.text.replace(',', '.')} or {cell.text.replace(',', '')}, whichever is meant"
            )
            raise self.refused(name, f"the comma in {cell.text} can be read in two ways", advice)
        try:
            found = read(written, QUANTITIES[name], column.unit)
        except UnitError as error:
            raise self.refused(name, f"{name}: {error}", "write one figure such as 7.25") from None
        low, high = found.span
        if low != high or found.about or found.swing:
            raise self.refused(name, f"{name} is no single figure here", "write the one that was measured")
        return low

    def figure_or_none(self, name: str) -> float:
        """One figure, in SI, 0 where nothing or a dash stands."""
        return 0.0 if self.text(name).strip() in DASHES else self.figure(name)

    def refused(self, name: str, message: str, suggestion: str) -> ListError:
        """What is wrong with a cell, with its place."""
        cell, _ = self.cells[name]
        return ListError(message, suggestion, cell.line, cell.column)


def counted(line: ShapeRow, name: str, count: int) -> None:
    """Refuse a row out of order; where rows have no numbers, they count as they come."""
    if line.text(name) not in ("", str(count)):
        words = f"{name} {line.text(name)} stands where {name} {count} should"
        raise line.refused(name, words, "put the rows in order from the first end")
