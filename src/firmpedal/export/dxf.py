"""Flat drawings of bent tubes for a drawing program: the straight tube with its marks, and three views."""

from __future__ import annotations

from dataclasses import dataclass
from math import degrees
from typing import TYPE_CHECKING, Any

from firmpedal.lay.centreline import sample
from firmpedal.report.views import FROM_ABOVE, FROM_BEHIND, FROM_LEFT
from firmpedal.units import Dimension, from_unit, to_unit

if TYPE_CHECKING:
    from pathlib import Path

    from firmpedal.lay.line import LaidLine
    from firmpedal.pipeline import Evaluation

SPACING = from_unit(0.02, "in")  # of points on a bend in the views
INSUNITS = {"in": 1, "mm": 4, "cm": 5, "m": 6}  # how a DXF file names its unit
LETTER = 1 / 60  # of the developed length
TURNS = "turn: the plane of the next bend, plus is clockwise seen from end A"
LAYERS = {"tube": 7, "marks": 1, "dimensions": 3, "words": 7, "views": 5}


@dataclass(frozen=True, slots=True)
class _Sheet:
    """The drawing of one tube, with its unit and the height of its letters in that unit."""

    space: Any
    unit: str
    letter: float

    @property
    def row(self) -> float:
        return 2 * self.letter

    def length(self, metres: float) -> float:
        return to_unit(metres, self.unit)

    def line(self, one: tuple[float, float], other: tuple[float, float], layer: str) -> None:
        self.space.add_line(one, other, dxfattribs={"layer": layer})

    def words(self, text: str, at: tuple[float, float]) -> None:
        self.space.add_text(text, height=self.letter, dxfattribs={"layer": "words"}).set_placement(at)


def write(evaluation: Evaluation, folder: Path) -> tuple[Path, ...]:
    """Write a drawing for each tube that can be bent; the result is the files.

    Raises:
        OSError: A file cannot be written.
    """
    made = []
    for line in evaluation.laid:
        if line.tube and line.tube.centreline and line.work:
            path = folder / f"{line.name}.dxf"
            _drawing(evaluation, line).saveas(path)
            made.append(path)
    return tuple(made)


def _drawing(evaluation: Evaluation, line: LaidLine) -> Any:
    from ezdxf.filemanagement import new  # noqa: PLC0415  only needed here

    unit = evaluation.display.unit(Dimension.LENGTH) or "mm"
    document = new("R2010", setup=True)
    document.header["$INSUNITS"] = INSUNITS.get(unit, 4)
    document.header["$MEASUREMENT"] = 0 if unit == "in" else 1
    for name, colour in LAYERS.items():
        document.layers.add(name, color=colour)
    whole = to_unit(line.tube.developed_length.middle, unit) if line.tube else 0.0
    sheet = _Sheet(document.modelspace(), unit, whole * LETTER)
    _straight(sheet, line, whole)
    _views(sheet, line)
    radius = evaluation.display.decimals.value(line.tube.radius) if line.tube else ""
    words = f"{line.name}: {line.stock.phrase}, bend radius {radius}; lengths from end A, unit: {unit}"
    sheet.words(words, (0, -2 * sheet.row))
    if line.tube and len(line.tube.bends) > 1:
        sheet.words(TURNS, (0, -(3 + len(line.tube.bends)) * sheet.row))
    return document


def _straight(sheet: _Sheet, line: LaidLine, whole: float) -> None:
    """The tube before it is bent, flares made: its two edges, a mark for each bend, dimensions from end A."""
    assert line.tube is not None and line.work is not None  # noqa: S101, PT018  the caller looked
    half = sheet.length(line.stock.outside_diameter.middle) / 2
    for side in (-half, half):
        sheet.line((0, side), (whole, side), "tube")
    for at in (0.0, whole):
        sheet.line((at, -half), (at, half), "tube")
    for number, (bend, work) in enumerate(zip(line.tube.bends, line.work.bends, strict=True), 1):
        at = sheet.length(work.mark.middle)
        sheet.line((at, -2 * half), (at, 2 * half), "marks")
        _dimension(sheet, at, number * sheet.row)
        turn = f", turn {degrees(bend.rotation.middle):+.1f}" if number > 1 else ""
        words = f"bend {number}: {degrees(bend.angle.middle):.1f} deg{turn}"
        sheet.words(words, (min(at, 0.8 * whole), -(2 + number) * sheet.row))
    _dimension(sheet, whole, (1 + len(line.work.bends)) * sheet.row)


def _dimension(sheet: _Sheet, to: float, height: float) -> None:
    settings = {"dimtxt": sheet.letter, "dimasz": sheet.letter, "dimdec": 2, "dimexo": 0.0, "dimlfac": 1.0}
    settings["dimzin"] = 0  # 5.80, not 5.8: as many figures for each
    sheet.space.add_linear_dim(
        base=(0, height), p1=(0, 0), p2=(to, 0), override=settings, dxfattribs={"layer": "dimensions"}
    ).render()


def _views(sheet: _Sheet, line: LaidLine) -> None:
    """The finished tube's centre line seen from three sides, side by side."""
    assert line.tube is not None and line.tube.centreline is not None  # noqa: S101, PT018
    points, _ = sample(line.tube.centreline, SPACING)
    low, right = sheet.row * (4 + len(line.tube.bends)), 0.0
    for view in (FROM_BEHIND, FROM_LEFT, FROM_ABOVE):
        seen = [view.flat((p[0], p[1], p[2])) for p in points]
        flat = [(sheet.length(x), sheet.length(y)) for x, y in seen]
        left, bottom = min(x for x, _ in flat), min(y for _, y in flat)
        sheet.space.add_lwpolyline(
            [(x - left + right, y - bottom + low) for x, y in flat], dxfattribs={"layer": "views"}
        )
        sheet.words(view.words[0], (right, low - sheet.row))
        wide = max(x for x, _ in flat) - left
        right += max(wide, 12 * sheet.letter) + 2 * sheet.row
