"""What a bare number means in a builder's file: the unit of each field of a figure."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.project.context import Context
from firmpedal.project.notes import Notes
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.project.field_cells import Cell, Row
    from firmpedal.project.tree import Branch

OF_LENGTHS = ("position", "positions", "vector", "lengths", "clamps")
OF_PIECES = ("shape", "body", "sheet", "motions")
NO_FIGURE = ("", "axis", "line")  # what a piece of a shape or a movement is called that is no figure
SWING = "swing"


def bare_unit(tree: Branch, dimension: Dimension | None) -> str:
    """The unit of a number that is written without one; empty where the file names none.

    Args:
        tree: The file, whatever units its answers are looked at in.
        dimension: What the number measures; None for what is no number.
    """
    return "" if dimension is None else Context(tree, Notes()).default_unit(dimension) or ""


def with_units(
    rows: tuple[Row, ...], tree: Branch, method: str, dimension: Dimension | None
) -> tuple[Row, ...]:
    """The rows of a field, each cell of a figure with the unit of a bare number there.

    Args:
        rows: The rows.
        tree: The file.
        method: How the field is read.
        dimension: What the field measures, where it is a single figure.
    """
    return tuple(
        replace(row, cells=tuple(
            replace(cell, unit=bare_unit(tree, _dimension(cell, method, dimension))) for cell in row.cells
        ))
        for row in rows
    )  # fmt: skip


def _dimension(cell: Cell, method: str, dimension: Dimension | None) -> Dimension | None:
    if cell.choices:
        return None
    if method in OF_PIECES:
        if cell.label in NO_FIGURE:
            return None
        return Dimension.ANGLE if cell.label == SWING else Dimension.LENGTH
    return Dimension.LENGTH if method in OF_LENGTHS else dimension
