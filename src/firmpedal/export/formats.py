"""The one table of formats that an aircraft's lines can be written in."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.export import bend_tables, dxf, step, svg
from firmpedal.report.drawings import drawings
from firmpedal.report.fullsize import not_drawn

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from firmpedal.pipeline import Evaluation

    Writer = Callable[[Evaluation, Path, str], "Exported"]


@dataclass(frozen=True, slots=True)
class Exported:
    """The files that were written, and in words what is not in them."""

    paths: tuple[Path, ...]
    left_out: tuple[str, ...] = ()


def _step(evaluation: Evaluation, folder: Path, _sign: str) -> Exported:
    """Every line and the room of its fittings as solids, for a CAD program."""
    path = folder / "lines.step"
    written = step.write(evaluation, path)
    return Exported((path,) if written.names else (), written.left_out)


def _dxf(evaluation: Evaluation, folder: Path, _sign: str) -> Exported:
    """A flat drawing of each bent tube with dimensions, for a drawing program."""
    return Exported(dxf.write(evaluation, folder), not_drawn(evaluation))


def _csv(evaluation: Evaluation, folder: Path, sign: str) -> Exported:
    """Bends as feed, rotation and angle, and corner points, for a spreadsheet or a bending machine."""
    tables = {
        "bends.csv": bend_tables.bends_csv(evaluation, sign),
        "points.csv": bend_tables.points_csv(evaluation),
    }
    for name, text in tables.items():
        (folder / name).write_text(text, encoding="utf-8")
    return Exported(tuple(folder / name for name in tables))


def _svg(evaluation: Evaluation, folder: Path, _sign: str) -> Exported:
    """Every drawing as a picture that can be made larger: lines, circuit, clock faces, flares, templates."""
    made = []
    for name, drawing in drawings(evaluation).items():
        path = folder / f"{name}.svg"
        path.write_text(svg.svg(drawing), encoding="utf-8")
        made.append(path)
    return Exported(tuple(made))


FORMATS: dict[str, Writer] = {"step": _step, "dxf": _dxf, "csv": _csv, "svg": _svg}


def words(name: str) -> str:
    """What a format is for, in one sentence."""
    return (FORMATS[name].__doc__ or "").strip()
