"""Paper for drawings at full size: its size, the room on it, the ruler and the crosses that prove a print."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.report.marks import LETTERS, MILLIMETRE, cross, text
from firmpedal.report.placing import Box
from firmpedal.report.sheet import Mark, Stroke
from firmpedal.report.views import POINTS_PER_METRE
from firmpedal.units import from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.report.views import Flat

INCH = from_unit(1, "in") * POINTS_PER_METRE
WHITE = 10 * MILLIMETRE  # what a printer leaves white at an edge: nothing is drawn there
BASE = WHITE + 8.5 * MILLIMETRE  # height of the ruler's line over the edge of the sheet
THIN, THICK = 0.35, 0.9


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet on its side, in points, and the room for drawings between its corner crosses."""

    name: str
    size: Flat
    area: Box

    @property
    def room(self) -> Box:
        """Where drawings stand: within the crosses, clear of their arms."""
        return Box(
            self.area.left, self.area.low + 4 * MILLIMETRE, self.area.right, self.area.high - 4 * MILLIMETRE
        )


def _paper(name: str, wide: float, tall: float, area: tuple[float, float]) -> Paper:
    """A paper from lengths in metres; the area stands in the middle across, over the ruler."""
    width, height = (length * POINTS_PER_METRE for length in area)
    left, low = (wide * POINTS_PER_METRE - width) / 2, 31 * MILLIMETRE
    size = (wide * POINTS_PER_METRE, tall * POINTS_PER_METRE)
    return Paper(name, size, Box(left, low, left + width, low + height))


# The area is a round number of centimetres, so that the distance of its crosses can be checked too.
PAPERS = {
    "A4": _paper("A4", 0.297, 0.210, (0.270, 0.140)),
    "letter": _paper("letter", from_unit(11, "in"), from_unit(8.5, "in"), (0.250, 0.140)),
}


def proof(paper: Paper) -> tuple[Mark, ...]:
    """The crosses in the corners of the area, and the ruler under it."""
    area = paper.area
    corners = [(x, y) for x in (area.left, area.right) for y in (area.low, area.high)]
    crosses = [mark for corner in corners for mark in cross(corner)]
    return (*crosses, *ruler((area.left, BASE)))


def proof_words(paper: Paper) -> str:
    """What to do with ruler and crosses before anything is cut."""
    across, upward = (
        round((high - low) / MILLIMETRE)
        for low, high in ((paper.area.left, paper.area.right), (paper.area.low, paper.area.high))
    )
    return (
        f"Print on {paper.name} at 100 percent, no fit to page. Then measure the ruler with a steel rule: "
        f"100 mm, and 4 in. The crosses in the corners stand {across} mm apart along the page and "
        f"{upward} mm up it. If one of these is not true, do not use the page."
    )


def ruler(at: Flat) -> tuple[Mark, ...]:
    """A ruler of 100 mm over a line and of 4 in under it, both from the same end."""
    x, y = at
    line = Stroke((at, (x + 4 * INCH, y)), THICK)
    return (line, *_millimetres(x, y), *_inches(x, y))


def _millimetres(x: float, y: float) -> Iterator[Mark]:
    for n in range(101):
        tall = 4.0 if n % 50 == 0 else 3.2 if n % 10 == 0 else 2.4 if n % 5 == 0 else 1.6
        yield _tick((x + n * MILLIMETRE, y), tall * MILLIMETRE, THICK if n in (0, 100) else THIN)
        if n % 50 == 0:
            words = f"{n} mm" if n == 100 else f"{n}"
            yield text(
                words, (x + n * MILLIMETRE, y + 6.2 * MILLIMETRE), LETTERS, "start" if n == 0 else "middle"
            )


def _inches(x: float, y: float) -> Iterator[Mark]:
    for n in range(33):
        tall = 4.0 if n % 8 == 0 else 2.6 if n % 4 == 0 else 1.6
        yield _tick((x + n * INCH / 8, y), -tall * MILLIMETRE, THICK if n in (0, 32) else THIN)
        if n % 8 == 0:
            words = "4 in" if n == 32 else f"{n // 8}"
            yield text(
                words, (x + n * INCH / 8, y - 6.2 * MILLIMETRE), LETTERS, "start" if n == 0 else "middle"
            )


def _tick(at: Flat, tall: float, weight: float) -> Stroke:
    return Stroke((at, (at[0], at[1] + tall)), weight)
