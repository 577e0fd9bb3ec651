"""Reading the shapes of lines from a table: corner points, or bends as feed, rotation and angle."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from firmpedal.decide.bend_rows import bends_of
from firmpedal.decide.listing import LARGEST, ListError, rows, separator
from firmpedal.decide.shape_rows import QUANTITIES, Column, ShapeRow, counted
from firmpedal.lay.half_bent import BendData
from firmpedal.lay.shape import Point
from firmpedal.model.space import AXIS_NAMES
from firmpedal.units import UnitError, canonical_unit

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.decide.listing import Cell, Row

NAMES = ("line", "bend", "point")
OF_BENDS = ("bend", "straight before", "rotation", "angle", "radius")
HEADINGS = (
    "line, point, aft_in, right_in, up_in",
    "line, bend, straight_before_in, rotation_deg, angle_deg, radius_in",
)
_SIGN = re.compile(r"#\s*rotation\s*:\s*(?:the\s+)?(plane|tube)\b", re.IGNORECASE)

Shape = tuple[Point, ...] | BendData


def shapes_of(text: str, turns: str | None = None) -> dict[str, Shape]:
    """Read a table of points or of bends, whatever the order and units of its columns.

    The result is by line; the name is empty where the table has no column `line`.

    Args:
        text: The table, with titles that name the units: `aft_in`, `straight_before_mm`, `Angle (deg)`.
        turns: `plane` or `tube`, what a rotation turns, for a table that does not say it.

    Raises:
        ListError: There is no such table in it, or a row cannot be understood.
    """
    if len(text) > LARGEST:
        raise ListError("this is too long for a table of lines", "keep the rows of the brake lines")
    said = _SIGN.search(text)
    kept = [row for row in _rows(text) if any(cell.text for cell in row)]
    if not kept:
        raise ListError("there is no table in this file", f"begin with titles: {HEADINGS[0]}")
    columns = _columns(kept[0])
    lines = [_line(row, columns) for row in kept[1:]]
    if not lines:
        raise ListError("there are no rows under the titles", "write one row for each", kept[0][0].line)
    if all(name in columns for name in AXIS_NAMES):
        return {name: _points(those) for name, those in _by_name(lines)}
    turns = _agreed(said[1].lower() if said else None, turns)
    return {name: bends_of(those, turns) for name, those in _by_name(lines)}


def _rows(text: str) -> list[Row]:
    """The rows that are no remarks; a remark's own commas do not count for the separator."""
    plain = "\n".join("" if _remark(line) else line for line in text.splitlines())
    return rows(plain, separator(plain))


def _remark(line: str) -> bool:
    return line.lstrip(' "').startswith("#")


def _agreed(said: str | None, asked: str | None) -> str | None:
    if said and asked and said != asked:
        words = f"the table says that a rotation turns the {said}, and {asked} was asked for"
        raise ListError(words, "leave --rotation out, or put the table's remark right")
    return said or asked


def _columns(row: Row) -> dict[str, Column]:
    """The columns that are known, by name; others are passed over.

    Raises:
        ListError: A column stands there twice, its unit is none, or neither table is whole.
    """
    found: dict[str, Column] = {}
    for place, cell in enumerate(row):
        column = _column(cell, place)
        if column is None:
            continue
        if column.name in found:
            raise ListError(f"there are two columns `{column.name}`", "keep one", cell.line, cell.column)
        found[column.name] = column
    wanted = AXIS_NAMES if found.keys() & set(AXIS_NAMES) else OF_BENDS
    lacking = [name for name in wanted if name not in found]
    if lacking:
        raise ListError(f"there is no column `{lacking[0]}`", _titles(wanted), row[0].line, row[0].column)
    return found


def _titles(wanted: Iterable[str]) -> str:
    return f"titles such as {HEADINGS[0] if wanted == AXIS_NAMES else HEADINGS[1]}"


def _column(cell: Cell, place: int) -> Column | None:
    words = " ".join(re.sub(r"[_()\[\]:,*]+", " ", cell.text.casefold()).split())
    if words in NAMES:
        return Column(words, None, place)
    for name, dimension in QUANTITIES.items():
        if words == name or words.startswith(f"{name} "):
            unit = words.removeprefix(name).strip()
            try:
                return Column(name, canonical_unit(unit, dimension) if unit else None, place)
            except UnitError as error:
                wanted = AXIS_NAMES if name in AXIS_NAMES else OF_BENDS
                raise ListError(f"{cell.text}: {error}", _titles(wanted), cell.line, cell.column) from None
    return None


def _line(row: Row, columns: dict[str, Column]) -> ShapeRow:
    return ShapeRow(
        row[0].line,
        {name: (row[each.place], each) for name, each in columns.items() if each.place < len(row)},
    )


def _by_name(lines: list[ShapeRow]) -> Iterator[tuple[str, list[ShapeRow]]]:
    names = dict.fromkeys(line.text("line") for line in lines)
    for name in names:
        yield name, [line for line in lines if line.text("line") == name]


def _points(lines: list[ShapeRow]) -> tuple[Point, ...]:
    for count, line in enumerate(lines, 1):
        counted(line, "point", count)
    if len(lines) < 2:
        words = "a line has two ends, and there is one point here"
        raise ListError(words, "give both ends and the corners between them", lines[0].number)
    return tuple((line.figure("aft"), line.figure("right"), line.figure("up")) for line in lines)
