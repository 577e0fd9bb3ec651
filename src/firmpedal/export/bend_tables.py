"""Bend data and points as comma-separated tables, as `decide/shape_tables.py` reads them.

Lengths are in millimetres and angles in degrees, whatever the aircraft's file uses; the heading of each
column names its unit, so that a spreadsheet or a bending machine needs no guess. Lines that begin with #
are remarks; the first ones say which way a rotation counts.
"""

from __future__ import annotations

import csv
import io
from math import degrees
from typing import TYPE_CHECKING

from firmpedal.decide.bend_rows import END, PLANE, SIGN_WORDS
from firmpedal.lay.half_bent import BendData
from firmpedal.report.remarks import WHAT

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.tube import TubeShape
    from firmpedal.pipeline import Evaluation

BEND_COLUMNS = ("line", "bend", "straight_before_mm", "rotation_deg", "angle_deg", "radius_mm")
POINT_COLUMNS = ("line", "point", "aft_mm", "right_mm", "up_mm")
_MILLI = 1000.0
LEAST = 1e-4  # metres, or radians: less than that nobody measures or bends
NOISE = 1e-9  # of a millimetre or a degree: what rounding leaves of nothing


def bends_csv(evaluation: Evaluation, sign: str = PLANE) -> str:
    """Every bent tube as feed, rotation and angle; the last row of a tube is its last straight.

    Args:
        evaluation: What was worked out.
        sign: `plane` or `tube`: what turns by a rotation.
    """
    bent = [
        (line.name, line.tube, line.tube.centreline)
        for line in evaluation.laid
        if line.tube and line.tube.centreline
    ]
    rows = [
        row for name, _, line in bent for row in _bend_rows(name, BendData(line.straights, line.bends), sign)
    ]
    remarks = [remark for name, tube, _ in bent for remark in _unsure(name, tube)]
    words = (SIGN_WORDS[sign], "angle: how far the tube turns, 0 is straight", *remarks)
    return _table(words, BEND_COLUMNS, rows)


def _unsure(name: str, tube: TubeShape) -> Iterator[str]:
    """Say it of a tube whose figures nobody measured: a table has no room for a range."""
    length = tube.developed_length
    values = (length, *tube.straights, *(bend.angle for bend in tube.bends))
    ranged = any(value.known and value.high - value.low > LEAST for value in values)
    if length.mark not in WHAT and not ranged:
        return
    why = f"rests on {WHAT[length.mark]}" if length.mark in WHAT else "has figures with a range"
    yield f"{name}: {why}; here is the middle. Measure before you bend"


def _bend_rows(name: str, tube: BendData, sign: str) -> Iterator[tuple[str, ...]]:
    way = 1 if sign == PLANE else -1
    for number, (straight, bend) in enumerate(zip(tube.straights, tube.bends, strict=False), 1):
        turn = way * degrees(bend.rotation) if number > 1 else 0.0
        figures = (straight * _MILLI, turn, degrees(bend.angle), bend.radius * _MILLI)
        yield name, str(number), *map(_figure, figures)
    yield name, END, _figure(tube.straights[-1] * _MILLI), "", "", ""


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
    return f"{number:.12g}" if abs(number) > NOISE else "0"


def _table(remarks: tuple[str, ...], columns: tuple[str, ...], rows: list[tuple[str, ...]]) -> str:
    text = io.StringIO()
    text.writelines(f"# {remark}\n" for remark in remarks)
    csv.writer(text, lineterminator="\n").writerows([columns, *rows])
    return text.getvalue()
