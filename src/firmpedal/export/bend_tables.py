"""Bend data and points as comma-separated tables, out and in again.

Lengths are in millimetres and angles in degrees, whatever the aircraft's file uses; the heading of each
column names its unit, so that a spreadsheet or a bending machine needs no guess. Lines that begin with #
are remarks; the first ones say which way a rotation counts.
"""

from __future__ import annotations

import csv
import io
from math import degrees, radians
from typing import TYPE_CHECKING

from firmpedal.lay.half_bent import BendData
from firmpedal.lay.shape import Bend

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.shape import Point
    from firmpedal.pipeline import Evaluation

PLANE = "plane"  # the plane of bend turns, by the right hand with the thumb along the feed
TUBE = "tube"  # the tube turns in a bender that stays put: the other sign
SIGN_WORDS = {
    PLANE: "rotation: the plane of the next bend, right hand with the thumb along the feed, first bend 0",
    TUBE: "rotation: the tube itself in a bender that stays put, right hand with the thumb along the feed, "
    "first bend 0",
}
BEND_COLUMNS = ("line", "bend", "straight_before_mm", "rotation_deg", "angle_deg", "radius_mm")
POINT_COLUMNS = ("line", "point", "aft_mm", "right_mm", "up_mm")
_MILLI = 1000.0


class TableError(Exception):
    """A table that cannot be read: what is wrong, and in which row of the file, counted from 1."""

    def __init__(self, message: str, row: int) -> None:
        super().__init__(f"row {row}: {message}")
        self.row = row


def bends_csv(evaluation: Evaluation, sign: str = PLANE) -> str:
    """Every bent tube as feed, rotation and angle; the last row of a tube is its last straight.

    Args:
        evaluation: What was worked out.
        sign: `plane` or `tube`: what turns by a rotation.
    """
    rows = [
        row
        for line in evaluation.laid
        if line.tube and line.tube.centreline
        for row in _bend_rows(
            line.name, BendData(line.tube.centreline.straights, line.tube.centreline.bends), sign
        )
    ]
    return _table((SIGN_WORDS[sign], "angle: how far the tube turns, 0 is straight"), BEND_COLUMNS, rows)


def _bend_rows(name: str, tube: BendData, sign: str) -> Iterator[tuple[str, ...]]:
    way = 1 if sign == PLANE else -1
    for number, (straight, bend) in enumerate(zip(tube.straights, tube.bends, strict=False), 1):
        turn = way * degrees(bend.rotation) if number > 1 else 0.0
        figures = (straight * _MILLI, turn, degrees(bend.angle), bend.radius * _MILLI)
        yield name, str(number), *map(_figure, figures)
    yield name, "end", _figure(tube.straights[-1] * _MILLI), "", "", ""


def points_csv(evaluation: Evaluation) -> str:
    """The corner points of every line whose points are known, ends among them."""
    rows = [
        (line.name, str(number), *(_figure(one * _MILLI) for one in point))
        for line in evaluation.laid
        for number, point in enumerate(line.path or (), 1)
    ]
    datum = evaluation.aircraft.datum
    words = f"points: [aft, right, up] from {datum.x_zero}, {datum.y_zero}, {datum.z_zero}"
    return _table(
        (words, "corner points: where neighbouring straights meet, not where bends begin"),
        POINT_COLUMNS,
        rows,
    )


def _figure(number: float) -> str:
    """Twelve figures: a metre to the thousandth of a nanometre."""
    return f"{number + 0.0:.12g}"


def _table(remarks: tuple[str, ...], columns: tuple[str, ...], rows: list[tuple[str, ...]]) -> str:
    text = io.StringIO()
    text.writelines(f"# {remark}\n" for remark in remarks)
    csv.writer(text, lineterminator="\n").writerows([columns, *rows])
    return text.getvalue()


def read_bends(text: str) -> dict[str, BendData]:
    """Read bend data back; the sign is the one that the table's remark names.

    Raises:
        TableError: A column is missing, a figure is none, or a tube has no last straight.
    """
    way = -1 if SIGN_WORDS[TUBE] in text else 1
    straights: dict[str, list[float]] = {}
    bends: dict[str, list[Bend]] = {}
    done: set[str] = set()
    for row, cells in _rows(text, BEND_COLUMNS):
        name = cells["line"]
        if name in done:
            raise TableError(f"{name} goes on after its last straight", row)
        straights.setdefault(name, []).append(_number(cells, "straight_before_mm", row) / _MILLI)
        bends.setdefault(name, [])
        if cells["bend"] == "end":
            done.add(name)
            continue
        turn = radians(way * _number(cells, "rotation_deg", row)) if bends[name] else 0.0
        angle, radius = radians(_number(cells, "angle_deg", row)), _number(cells, "radius_mm", row) / _MILLI
        bends[name].append(Bend(len(bends[name]) + 1, angle, turn, radius, 0.0))
    if unfinished := [name for name in straights if name not in done]:
        raise TableError(f"{unfinished[0]} has no row `end` with its last straight", len(text.splitlines()))
    return {name: BendData(tuple(straights[name]), tuple(bends[name])) for name in straights}


def read_points(text: str) -> dict[str, tuple[Point, ...]]:
    """Read points back, in the order of the rows.

    Raises:
        TableError: A column is missing or a figure is none.
    """
    found: dict[str, list[Point]] = {}
    for row, cells in _rows(text, POINT_COLUMNS):
        aft, right, up = (_number(cells, column, row) / _MILLI for column in POINT_COLUMNS[2:])
        found.setdefault(cells["line"], []).append((aft, right, up))
    return {name: tuple(points) for name, points in found.items()}


def _rows(text: str, columns: tuple[str, ...]) -> Iterator[tuple[int, dict[str, str]]]:
    """The rows under the heading with their numbers in the file; remarks and empty rows are passed over."""
    lines = [(number, line) for number, line in enumerate(text.lstrip("\ufeff").splitlines(), 1)]
    kept = [(number, line) for number, line in lines if line.strip() and not line.startswith("#")]
    if not kept:
        raise TableError("there is no table in this file", 1)
    heading = [cell.strip() for cell in next(csv.reader([kept[0][1]]))]
    if lacking := [column for column in columns if column not in heading]:
        raise TableError(f"there is no column `{lacking[0]}`", kept[0][0])
    for number, line in kept[1:]:
        cells = [cell.strip() for cell in next(csv.reader([line]))]
        yield number, dict(zip(heading, [*cells, *[""] * len(heading)], strict=False))


def _number(cells: dict[str, str], column: str, row: int) -> float:
    try:
        return float(cells[column])
    except ValueError:
        raise TableError(f"`{cells[column]}` under {column} is no number", row) from None
