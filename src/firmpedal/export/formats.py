"""The one table of formats that an aircraft's lines can be written in."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.export import bend_tables, dxf, step, svg
from firmpedal.report.pictures import picture
from firmpedal.report.schematic.picture import circuit_drawing
from firmpedal.report.sheet import Drawing

if TYPE_CHECKING:
    from collections.abc import Callable, Collection
    from pathlib import Path

    from firmpedal.pipeline import Evaluation

    Writer = Callable[[Evaluation, Path, str], tuple[Path, ...]]


def _step(evaluation: Evaluation, folder: Path, _sign: str) -> tuple[Path, ...]:
    """Every line and the room of its nuts as solids, for a CAD program."""
    path = folder / "lines.step"
    step.write(evaluation, path)
    return (path,)


def _dxf(evaluation: Evaluation, folder: Path, _sign: str) -> tuple[Path, ...]:
    """A flat drawing of each bent tube with dimensions, for a drawing program."""
    return dxf.write(evaluation, folder)


def _csv(evaluation: Evaluation, folder: Path, sign: str) -> tuple[Path, ...]:
    """Bends as feed, rotation and angle, and corner points, for a spreadsheet or a bending machine."""
    tables = {
        "bends.csv": bend_tables.bends_csv(evaluation, sign),
        "points.csv": bend_tables.points_csv(evaluation),
    }
    for name, text in tables.items():
        (folder / name).write_text(text, encoding="utf-8")
    return tuple(folder / name for name in tables)


def _svg(evaluation: Evaluation, folder: Path, _sign: str) -> tuple[Path, ...]:
    """The drawing of each line's card and the circuit, as pictures that can be made larger."""
    made = []
    drawings = {line.name: picture(line, evaluation.display) for line in evaluation.laid}
    for name, drawing in {**drawings, _circuit_name(drawings): circuit_drawing(evaluation)}.items():
        if isinstance(drawing, Drawing):
            path = folder / f"{name}.svg"
            path.write_text(svg.svg(drawing), encoding="utf-8")
            made.append(path)
    return tuple(made)


def _circuit_name(lines: Collection[str]) -> str:
    """A file name for the circuit that no line has."""
    return "circuit" if "circuit" not in lines else "the circuit"


FORMATS: dict[str, Writer] = {"step": _step, "dxf": _dxf, "csv": _csv, "svg": _svg}


def words(name: str) -> str:
    """What a format is for, in one sentence."""
    return (FORMATS[name].__doc__ or "").strip()
