"""A line's shape from a table, written into the builder's text as corner points."""

from __future__ import annotations

import math
from dataclasses import dataclass
from difflib import SequenceMatcher
from typing import TYPE_CHECKING

from firmpedal.decide.fitted import Fitted, NotImportedError, fitted
from firmpedal.pipeline import evaluate, read_text
from firmpedal.project.edit import EditError, edited, is_written
from firmpedal.project.edit_lists import Item, with_items, with_key
from firmpedal.units import Dimension, written

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from firmpedal.decide.shape_tables import Shape
    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.shape import Point
    from firmpedal.pipeline import Evaluation

SAME = 5e-10  # m: a corner this near to the one in the file is that one, and keeps its own words
FIGURES_KEEP = 1e-10  # m: how far off a figure that is written may read back
KEPT = 1e-9  # m: how far off a line's corners may be when all is done


@dataclass(frozen=True, slots=True)
class Imported:
    """The aircraft with a line's new shape; `kept` of its corners stand as they were written."""

    evaluation: Evaluation
    shape: Fitted
    kept: int


def imported(evaluation: Evaluation, name: str, shape: Shape) -> Imported | None:
    """Write a shape into the text of an evaluation; None where the line has that shape already.

    Raises:
        NotImportedError: The shape does not belong between the line's ends, or cannot be written.
    """
    line = _named(evaluation, name)
    found = fitted(evaluation, line, shape)
    if found is None:
        return None
    figures = _Figures(evaluation)
    plan = tuple(_plan(line, found.corners, figures))
    if _nothing_new(line, plan) and found.radius is None:
        return None
    made = _read_back(evaluation, _text(evaluation, line, found, plan))
    _check_kept(_named(made, name), found.corners)
    return Imported(made, found, sum(item.text is None for item in plan))


def _named(evaluation: Evaluation, name: str) -> LaidLine:
    return next(each for each in evaluation.laid if each.name == name)


def _nothing_new(line: LaidLine, plan: tuple[Item, ...]) -> bool:
    return len(plan) == len(line.points) - 2 and all(item.text is None for item in plan)


def _text(evaluation: Evaluation, line: LaidLine, found: Fitted, plan: tuple[Item, ...]) -> str:
    """The text with the corners, and with the bend radius where it is another one."""
    figures, text, option = _Figures(evaluation), evaluation.reading.text, evaluation.reading.option
    try:
        if not _nothing_new(line, plan):
            corners = [figures.point(one) for one in found.corners]
            text = _with_corners(text, line.place, plan, corners, option)
        if found.radius is not None:
            text = _with_radius(text, line.place, figures.length(found.radius), option)
    except EditError as error:
        raise NotImportedError(str(error), error.suggestion) from None
    return text


def _read_back(evaluation: Evaluation, text: str) -> Evaluation:
    reading = read_text(text, evaluation.reading.file, evaluation.reading.option)
    if reading.aircraft is None:
        problem = reading.problems[0]
        raise NotImportedError(f"with it the file could not be used: {problem.message}", problem.suggestion)
    return evaluate(reading)


def _check_kept(line: LaidLine, corners: tuple[Point, ...]) -> None:
    """What reads back must be what was to be written."""
    found = [each.point for each in line.points[1:-1] if each.known]
    same = len(found) == len(corners) and all(
        math.dist(one, other) <= KEPT for one, other in zip(found, corners, strict=True)
    )
    if not same:
        words = f"the corners of {line.name} would not read back as they are in the table"
        raise NotImportedError(words, "write them out by hand")


@dataclass(frozen=True, slots=True)
class _Figures:
    """Writes lengths as the file does: in its unit, which is named where the file names none."""

    evaluation: Evaluation

    def length(self, metres: float) -> str:
        display = self.evaluation.display
        unit = display.unit(Dimension.LENGTH) or "mm"
        figure = written(metres, unit, within=FIGURES_KEEP, fraction=display.fraction)
        return figure if self.evaluation.aircraft.units.length else f"{figure} {unit}"

    def point(self, point: Point) -> str:
        return f"[{', '.join(self.length(one) for one in point)}]"


def _plan(line: LaidLine, corners: Sequence[Point], figures: _Figures) -> Iterator[Item]:
    """The items of the new list: corners that are there already stay as they are written."""
    old = [each.point if each.known else None for each in line.points[1:-1]]
    names = [next((n for n, one in enumerate(old) if one and _same(one, corner)), None) for corner in corners]
    wanted = [-1 - n if name is None else name for n, name in enumerate(names)]
    matcher = SequenceMatcher(None, list(range(len(old))), wanted, autojunk=False)
    for kind, first, last, new_first, new_last in matcher.get_opcodes():
        for n in range(new_last - new_first):
            place = first + n + 1 if first + n < last else None
            text = None if kind == "equal" else figures.point(corners[new_first + n])
            yield Item(place, text)


def _same(one: Point, other: Point) -> bool:
    return all(abs(a - b) <= SAME for a, b in zip(one, other, strict=True))


def _with_corners(
    text: str, line: str, plan: tuple[Item, ...], corners: list[str], option: str | None
) -> str:
    """Change `via` where it is written, else write it under the line."""
    if is_written(text, f"{line}.via", option):
        return with_items(text, f"{line}.via", plan, option)
    return with_key(text, line, "via", corners or "[]", option)


def _with_radius(text: str, line: str, radius: str, option: str | None) -> str:
    if is_written(text, f"{line}.bend radius", option):
        return edited(text, f"{line}.bend radius", radius, option)
    return with_key(text, line, "bend radius", radius, option)
