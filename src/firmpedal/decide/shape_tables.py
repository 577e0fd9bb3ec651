"""Reading the shapes of lines from a table: corner points, or bends as feed, rotation and angle."""

from __future__ import annotations

import re
from dataclasses import dataclass
from math import pi
from typing import TYPE_CHECKING

from firmpedal.decide.listing import LARGEST, ListError, rows, separator
from firmpedal.lay.half_bent import BendData
from firmpedal.lay.shape import Bend, Point
from firmpedal.units import Dimension, UnitError, canonical_unit, read

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.decide.listing import Cell, Row

PLANE = "plane"  # the plane of bend turns, by the right hand with the thumb along the feed
TUBE = "tube"  # the tube turns in a bender that stays put: the other sign
SIGN_WORDS = {
    PLANE: "rotation: the plane of the next bend, right hand with the thumb along the feed, first bend 0",
    TUBE: "rotation: the tube itself in a bender that stays put, right hand with the thumb along the feed, "
    "first bend 0",
}
END = "end"  # in the column `bend`: the row with the last straight
NAMES = ("line", "bend", "point")
LENGTHS = ("aft", "right", "up", "straight before", "radius")
ANGLES = ("rotation", "angle")
QUANTITIES = dict.fromkeys(LENGTHS, Dimension.LENGTH) | dict.fromkeys(ANGLES, Dimension.ANGLE)
OF_POINTS = ("aft", "right", "up")
OF_BENDS = ("bend", "straight before", "rotation", "angle", "radius")
HEADINGS = (
    "line, point, aft_in, right_in, up_in",
    "line, bend, straight_before_in, rotation_deg, angle_deg, radius_in",
)
SAME_ROTATION = 1e-9  # from nothing, or from half a turn: both signs mean the same
_DECIMAL_COMMA = re.compile(r"[-+]?(?:0,\d+|\d+,(?:\d{1,2}|\d{4,}))")  # no thousands can be meant
_SIGN = re.compile(r"#\s*rotation\s*:\s*(?:the\s+)?(plane|tube)\b", re.IGNORECASE)

Shape = tuple[Point, ...] | BendData


@dataclass(frozen=True, slots=True)
class _Column:
    name: str
    unit: str | None
    place: int


@dataclass(frozen=True, slots=True)
class _Line:
    """One row under the heading: its cells by the name of their column."""

    number: int
    cells: dict[str, tuple[Cell, _Column]]

    def text(self, name: str) -> str:
        return self.cells[name][0].text if name in self.cells else ""

    def figure(self, name: str) -> float:
        """One figure, in SI."""
        if name not in self.cells:
            raise ListError(f"this row has nothing under {name}", "fill it in", self.number)
        cell, column = self.cells[name]
        if not cell.text:
            raise self.refused(name, f"there is nothing under {name} in this row", "fill it in")
        written = cell.text.replace(",", ".") if _DECIMAL_COMMA.fullmatch(cell.text) else cell.text
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

    def refused(self, name: str, message: str, suggestion: str) -> ListError:
        """What is wrong with a cell, with its place."""
        cell, _ = self.cells[name]
        return ListError(message, suggestion, cell.line, cell.column)


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
    if all(name in columns for name in OF_POINTS):
        return {name: _points(those) for name, those in _by_name(lines)}
    turns = _agreed(said[1].lower() if said else None, turns)
    return {name: _bends(those, turns) for name, those in _by_name(lines)}


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


def _columns(row: Row) -> dict[str, _Column]:
    """The columns that are known, by name; others are passed over.

    Raises:
        ListError: A column stands there twice, its unit is none, or neither table is whole.
    """
    found: dict[str, _Column] = {}
    for place, cell in enumerate(row):
        column = _column(cell, place)
        if column is None:
            continue
        if column.name in found:
            raise ListError(f"there are two columns `{column.name}`", "keep one", cell.line, cell.column)
        found[column.name] = column
    wanted = OF_POINTS if found.keys() & set(OF_POINTS) else OF_BENDS
    lacking = [name for name in wanted if name not in found]
    if lacking:
        raise ListError(f"there is no column `{lacking[0]}`", _titles(wanted), row[0].line, row[0].column)
    return found


def _titles(wanted: Iterable[str]) -> str:
    return f"titles such as {HEADINGS[0] if wanted == OF_POINTS else HEADINGS[1]}"


def _column(cell: Cell, place: int) -> _Column | None:
    words = " ".join(re.sub(r"[_()\[\]:,*]+", " ", cell.text.casefold()).split())
    if words in NAMES:
        return _Column(words, None, place)
    for name, dimension in QUANTITIES.items():
        if words == name or words.startswith(f"{name} "):
            unit = words.removeprefix(name).strip()
            try:
                return _Column(name, canonical_unit(unit, dimension) if unit else None, place)
            except UnitError as error:
                wanted = OF_POINTS if name in OF_POINTS else OF_BENDS
                raise ListError(f"{cell.text}: {error}", _titles(wanted), cell.line, cell.column) from None
    return None


def _line(row: Row, columns: dict[str, _Column]) -> _Line:
    return _Line(
        row[0].line,
        {name: (row[each.place], each) for name, each in columns.items() if each.place < len(row)},
    )


def _by_name(lines: list[_Line]) -> Iterator[tuple[str, list[_Line]]]:
    names = dict.fromkeys(line.text("line") for line in lines)
    for name in names:
        yield name, [line for line in lines if line.text("line") == name]


def _points(lines: list[_Line]) -> tuple[Point, ...]:
    for count, line in enumerate(lines, 1):
        _counted(line, "point", count)
    if len(lines) < 2:
        words = "a line has two ends, and there is one point here"
        raise ListError(words, "give both ends and the corners between them", lines[0].number)
    return tuple((line.figure("aft"), line.figure("right"), line.figure("up")) for line in lines)


def _counted(line: _Line, name: str, count: int) -> None:
    """Refuse a row out of order; where rows have no numbers, they count as they come."""
    if line.text(name) not in ("", str(count)):
        words = f"{name} {line.text(name)} stands where {name} {count} should"
        raise line.refused(name, words, "put the rows in order from the first end")


def _bends(lines: list[_Line], turns: str | None) -> BendData:
    straights, bends = [], list[Bend]()
    for count, line in enumerate(lines, 1):
        straights.append(_not_below(line, "straight before", 0.0))
        if line.text("bend").casefold() == END:
            if count < len(lines):
                words = f"{line.text('line') or 'the line'} goes on after its last straight"
                raise ListError(words, "put the row `end` last", lines[count].number)
            return BendData(tuple(straights), tuple(bends))
        _counted(line, "bend", count)
        bends.append(_bend(line, count, turns))
    words = f"{lines[0].text('line') or 'the line'} has no row `end` with its last straight"
    raise ListError(words, "add the row, with `end` under bend", lines[-1].number)


def _bend(line: _Line, number: int, turns: str | None) -> Bend:
    angle, radius = _not_below(line, "angle", 0.0), _not_below(line, "radius", 0.0)
    if not 0 < angle < pi:
        words = "a bend turns by more than nothing and less than 180 degrees"
        raise line.refused("angle", words, "give how far the tube turns, 0 is straight")
    if radius == 0:
        raise line.refused("radius", "a tube has no bend of radius 0", "give it to the centre line")
    rotation = line.figure("rotation") if number > 1 else 0.0
    if turns is None and SAME_ROTATION < abs(rotation) < pi - SAME_ROTATION:
        words = "the table does not say what turns by a rotation, and so not which way"
        advice = "--rotation plane (the plane of bend turns) or --rotation tube (the tube turns)"
        raise line.refused("rotation", words, advice)
    return Bend(number, angle, -rotation if turns == TUBE else rotation, radius, 0.0)


def _not_below(line: _Line, name: str, least: float) -> float:
    figure = line.figure(name)
    if figure < least:
        raise line.refused(name, f"{name} is below nothing here", "give it without a minus")
    return figure
