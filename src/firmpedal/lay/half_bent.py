"""A tube in the bender: some bends made, one on its way, the others still straight.

Everything is seen from the bender. The bend under way begins at the origin, the tube comes to it along
the first axis, bends towards the second and about the third; its centre is one bend radius along the
second. What is before the bend is held, what is after it moves with the lever.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.lay.moves import turned
from firmpedal.lay.rows import crossed

if TYPE_CHECKING:
    from collections.abc import Collection, Iterator

    from numpy.typing import NDArray

    from firmpedal.lay.shape import Bend, Centreline

    Array = NDArray[np.float64]

ARC_STEP = np.radians(5)
FEED, AXIS = np.array([1.0, 0.0, 0.0]), np.array([0.0, 0.0, 1.0])


@dataclass(frozen=True, slots=True)
class BendData:
    """A tube as it is fed: straights between tangent points, one more than bends."""

    straights: tuple[float, ...]
    bends: tuple[Bend, ...]

    @property
    def backwards(self) -> BendData:
        """The same tube fed from its other end: each rotation stands between the same two bends."""
        rotations = [0.0, *(bend.rotation for bend in self.bends[:0:-1])]  # one too many for a straight tube
        bends = tuple(
            replace(bend, rotation=rotation)
            for bend, rotation in zip(self.bends[::-1], rotations, strict=False)
        )
        return BendData(self.straights[::-1], bends)


def bend_data(line: Centreline) -> BendData:
    return BendData(line.straights, line.bends)


@dataclass(frozen=True, slots=True)
class HalfBent:
    """The tube's centreline on either side of the bend under way, from the bend outwards.

    Each is a polyline of shape (n, 3) [m]. `held` begins at the origin; `moving` begins where the lever
    has got to, with what is left of the bend still straight.
    """

    held: Array
    moving: Array


def half_bent(tube: BendData, number: int, angle: float, made: Collection[int]) -> HalfBent:
    """Lay the tube in the bender while one bend is made.

    Args:
        tube: The finished tube as fed.
        number: Which bend is under way, from 0.
        angle: How far it has got [rad].
        made: The bends that are made already.
    """
    bend = tube.bends[number]
    return HalfBent(_before(tube, number, made), _after(tube, number, angle, made, bend.radius))


def _after(tube: BendData, number: int, angle: float, made: Collection[int], radius: float) -> Array:
    centre = np.array([0.0, radius, 0.0])
    place = centre + turned(-centre, AXIS, angle)
    feed, normal = turned(FEED, AXIS, angle), AXIS
    points = [place]
    place = place + (radius * (tube.bends[number].angle - angle) + tube.straights[number + 1]) * feed
    points.append(place)
    for other in range(number + 1, len(tube.bends)):
        bend = tube.bends[other]
        normal = turned(normal, feed, bend.rotation)
        if other in made:
            points += _arc(place, feed, normal, bend)
            place, feed = points[-1], turned(feed, normal, bend.angle)
        else:
            place = place + bend.arc * feed
        place = place + tube.straights[other + 1] * feed
        points.append(place)
    return np.array(points)


def _before(tube: BendData, number: int, made: Collection[int]) -> Array:
    place, back = np.zeros(3), -FEED
    normal = turned(AXIS, FEED, -tube.bends[number].rotation)
    points = [place]
    place = place + tube.straights[number] * back
    points.append(place)
    for other in range(number - 1, -1, -1):
        bend = tube.bends[other]
        if other in made:
            points += _arc(place, back, -normal, bend)
            place, back = points[-1], turned(back, -normal, bend.angle)
        else:
            place = place + bend.arc * back
        normal = turned(normal, -back, -bend.rotation)
        place = place + tube.straights[other] * back
        points.append(place)
    return np.array(points)


def _arc(start: Array, direction: Array, normal: Array, bend: Bend) -> Iterator[Array]:
    """Points on an arc after its start, its end among them."""
    centre = start + bend.radius * crossed(normal, direction)
    for angle in np.linspace(0, bend.angle, int(np.ceil(bend.angle / ARC_STEP)) + 1)[1:]:
        yield centre + turned(start - centre, normal, float(angle))
