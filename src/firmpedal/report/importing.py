"""What an import did to a line, in words."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from firmpedal.project.names import quoted, suggest
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from firmpedal.decide.imported import Imported
    from firmpedal.decide.shape_tables import Shape
    from firmpedal.lay.between_ends import Between
    from firmpedal.model.display import Display

NOTHING = 1e-9  # m: what rounding leaves of no difference
SHOWN_ANGLE = math.radians(0.05)


def where_to(
    shapes: dict[str, Shape], lines: Sequence[str], line: str | None
) -> tuple[dict[str, Shape], str]:
    """Which shape goes to which line of the file, or why one goes nowhere.

    Args:
        shapes: The table's, by the name of their line; an empty name stands for none.
        lines: The names of the file's lines.
        line: The one line that was asked for.
    """
    if line is not None:
        return _to_one(shapes, lines, line)
    if "" in shapes:
        return {}, "the table has no column `line`: say with --line which line it is"
    strange = [name for name in shapes if name not in lines]
    if strange:
        return {}, f"the file has no line {quoted(strange[0])}: {suggest(strange[0], lines)}"
    return shapes, ""


def _to_one(shapes: dict[str, Shape], lines: Sequence[str], line: str) -> tuple[dict[str, Shape], str]:
    """The shape of that name, or the table's only one."""
    if line not in lines:
        return {}, f"the file has no line {quoted(line)}: {suggest(line, lines)}"
    if line not in shapes and len(shapes) > 1:
        return {}, f"the table has no line {quoted(line)}: {suggest(line, shapes)}"
    return {line: shapes.get(line) or next(iter(shapes.values()))}, ""


def import_words(name: str, made: Imported | None) -> Iterator[str]:
    """Say what changes: corners, how the ends agree, how bends were turned, what cannot be bent."""
    if made is None:
        yield f"{name}: as in the file already."
        return
    show, shape = made.evaluation.display.decimals, made.shape
    count = len(shape.corners)
    corners = "no corners" if not count else "1 corner" if count == 1 else f"{count} corners"
    as_before = f", {made.kept} as in the file" if made.kept else ""
    yield f"{name}: {corners}{as_before}. {_ends_words(shape.ends_off, show)}"
    if shape.fit is not None and count:
        yield f"{name}: {_turned_words(shape.fit, from_ports=shape.from_ports)}"
    if shape.radius is not None:
        yield f"{name}: bend radius {show.number(shape.radius, Dimension.LENGTH)} is written too."
    line = next(each for each in made.evaluation.laid if each.name == name)
    if line.tube and line.tube.impossible:
        yield f"{name}: so it cannot be bent: {line.tube.impossible.words}."


def _ends_words(off: tuple[float, float], show: Display) -> str:
    if max(off) <= NOTHING:
        return "Its ends are those of the file."
    ends = [f"{show.number(one, Dimension.LENGTH)} at {word}" for one, word in zip(off, "AB", strict=True)]
    return f"The file's ends hold; the table's are off by {' and '.join(ends)}."


def _turned_words(fit: Between, *, from_ports: bool) -> str:
    """What said how the tube is turned, and how far its end straights are from that."""
    source = "the fittings in the ports point" if from_ports else "the corners in the file lead"
    off = [
        f"{math.degrees(one):.1f} deg at {word}"
        for one, word in zip(fit.off, "AB", strict=True)
        if one is not None and one > SHOWN_ANGLE
    ]
    end = f"; its end straights are off by {' and '.join(off)}." if off else "."
    return f"turned to leave its ends as {source}{end}"
