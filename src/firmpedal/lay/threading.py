"""Whether a bent tube can be pushed end first through a hole in a flat panel without meeting the panel.

The hole holds the tube at one station after another, from the end that goes first to where the tube sits.
At each the square to the panel may lean against the tube as far as the hole is wide. What has gone through
has to lie beyond the panel and what has not before it; so the square has to lie on the right side of as
many planes as the tube has points, and the one that leans least is a projection onto a cone.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import acos, atan2, cos, hypot
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.lay.along import point_at, sample
from firmpedal.lay.cone import nearest_in_cone
from firmpedal.quantity import Answer
from firmpedal.units import from_unit

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from firmpedal.lay.shape import Centreline

    Array = NDArray[np.float64]

STEP = from_unit(0.25, "in")
LONGEST = from_unit(25, "ft")  # no tube in one piece of a light aircraft is longer: our estimate
ROUNDS = 12  # of shifting the planes by the tube's thickness; two or three are enough where there is room
ROUNDING = 1e-9


@dataclass(frozen=True, slots=True)
class Opening:
    """A round hole in a flat panel [m]. Nearer than `reach` to the hole the panel surely goes on."""

    width: float
    thickness: float
    reach: float


def greatest_lean(opening: Opening, across: float) -> float | None:
    """How far what is so wide can lean in a hole [rad]; None where it does not go in.

    It turns w = across / cos(a) + T tan(a) round.
    """
    slant = hypot(opening.width, opening.thickness)
    if across > opening.width:
        return None
    return max(0.0, acos(across / slant) - atan2(opening.thickness, opening.width))


def goes_through(
    line: Centreline, end: str, station: float, wide: tuple[Opening, float], narrow: tuple[Opening, float]
) -> Answer:
    """Say whether the panel itself leaves the tube room, pushed through with one end first.

    Only the panel is looked at, not what else stands round about.

    Args:
        line: The tube's centreline.
        end: `from` or `to`: which end goes first.
        station: Where the tube sits in the hole at last, from its start [m].
        wide: The hole at its widest and thinnest, and the least width of the tube in it.
        narrow: The hole at its narrowest and thickest, and the greatest width of the tube in it.

    Returns:
        YES or NO where that is sure; UNKNOWN for a tube so long that a figure of it must be wrong.
    """
    if line.developed_length > LONGEST:
        return Answer.UNKNOWN
    points, stations = _sampled(line, station)
    if end == "to":
        points, stations = points[::-1], line.developed_length - stations[::-1]
        station = line.developed_length - station
    found = Answer.YES
    for number in range(1, len(stations)):
        if stations[number] > station:
            break
        held = _Held(points, number, stations)
        if not held.possible(*wide):
            return Answer.NO
        if found is Answer.YES and not held.certain(*narrow):
            found = Answer.UNKNOWN
    return found


def _sampled(line: Centreline, station: float) -> tuple[Array, Array]:
    """Give points along the tube with their stations; where it sits at last is one of them."""
    points, stations = sample(line, STEP)
    if np.abs(stations - station).min() <= ROUNDING * line.developed_length:
        return points, stations
    number = int(np.searchsorted(stations, station))
    return np.insert(points, number, point_at(line, station), axis=0), np.insert(stations, number, station)


class _Held:
    """The tube held by the hole at one of its points; those before it have gone through."""

    def __init__(self, points: Array, number: int, stations: Array) -> None:
        away = points - points[number]
        away[number:] *= -1  # now all of it has to lie on the side that the square points to
        others = np.arange(len(points)) != number
        self.away = away[others]
        self.off = np.linalg.norm(self.away, axis=1)
        self.along = abs(stations - stations[number])[others]
        before, after = points[number] - points[number - 1], points[min(number + 1, len(points) - 1)]
        forward = before / np.linalg.norm(before)
        onward = after - points[number]
        if (length := float(np.linalg.norm(onward))) > 0:
            forward = forward + onward / length
        self.lead = -forward / np.linalg.norm(forward)

    def possible(self, opening: Opening, across: float) -> bool:
        """Whether any lean keeps the centreline, where it is surely over the panel, on its side."""
        lean = greatest_lean(opening, across)
        if lean is None:
            return False
        beside = (self.off > opening.width) & (self.off < opening.reach)
        square = nearest_in_cone(self.away[beside] / self.off[beside, None], self.lead)
        return float(np.linalg.norm(square)) >= cos(lean) - ROUNDING

    def certain(self, opening: Opening, across: float) -> bool:
        """Whether some lean keeps the whole tube off the panel, but for the stretch in the hole."""
        lean = greatest_lean(opening, across)
        if lean is None:
            return False
        clear = (opening.thickness + across) / 2
        inside = self.along <= opening.thickness + across
        least = np.where(inside, 0.0, clear)
        square = self.lead
        for _ in range(ROUNDS):
            if np.all(self.away @ square >= least - ROUNDING):
                return float(square @ self.lead) >= cos(lean) - ROUNDING
            square = nearest_in_cone(self.away - least[:, None] * square, self.lead)
            if (length := float(np.linalg.norm(square))) < ROUNDING:
                return False
            square = square / length
        return False
