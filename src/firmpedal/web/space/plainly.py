"""What the page on the lines in space takes from an evaluation and from the browser, put plainly."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.display import METRIC_LENGTHS
from firmpedal.report.pictures import picture
from firmpedal.report.sheet import Sheet
from firmpedal.units import Dimension, to_unit

if TYPE_CHECKING:
    from firmpedal.model.display import Display
    from firmpedal.model.space import Point
    from firmpedal.pipeline import Evaluation
    from firmpedal.web.space.scene import Way

GRID = {True: 0.25, False: 0.254}  # m; a quarter of a metre where metric units are shown, else 10 in


def flat_drawings(evaluation: Evaluation) -> tuple[Sheet, ...]:
    """The drawing of each line by itself."""
    drawn = ((line.name, picture(line, evaluation.display)) for line in evaluation.laid)
    return tuple(Sheet(name, (drawing,)) for name, drawing in drawn if drawing is not None)


def corners_of(way: Way) -> list[Point]:
    ends = [(float(x), float(y), float(z)) for x, y, z in (way.points[0], way.points[-1])]
    return [ends[0], *(spot.point for spot in way.corners), ends[1]]


def unit_of(display: Display) -> dict[str, object]:
    """In which unit the picture tells lengths, and how far apart the lines of its ground are."""
    name = display.unit(Dimension.LENGTH) or "mm"
    per_metre, metric = to_unit(1.0, name), name in METRIC_LENGTHS
    return {"name": name, "perMetre": per_metre, "decimals": 0 if name == "mm" else 2, "step": GRID[metric]}


def triple(numbers: object) -> Point:
    """Three figures from the browser; anything else is no movement."""
    try:
        x, y, z = numbers  # type: ignore[misc]
        return float(x), float(y), float(z)  # type: ignore[has-type]
    except (TypeError, ValueError):
        return (0.0, 0.0, 0.0)
