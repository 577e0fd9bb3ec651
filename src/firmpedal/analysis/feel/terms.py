"""What pedals have to fill and push against, for any number of cases at once, as plain arrays.

Every array of `Terms` has one figure for each case, `knots` and `slopes` one row. Everything is explicit in
pressure: the volume taken up, from it the stroke, from it the travel of the pad and the force on it. So a
whole curve is one pass, and only the travel at a given force wants a search (`solve.py`).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Array = NDArray[np.float64]

OUTSIDE = 101_325.0  # Pa, the standard atmosphere; the air that is shut in starts from it


@dataclass(frozen=True)
class Link:
    """A lever by its pins: the cylinder at rest, the two pins' distances from the pivot, the pad's arm.

    `difference` and `total` are of the two distances; all in metres.
    """

    length: Array
    difference: Array
    total: Array
    pad_arm: Array

    def travel(self, stroke: Array) -> Array:
        """Travel of the pad along its arc for a stroke of the cylinder [m]."""
        return self.pad_arm[:, None] * (self._opening(np.zeros_like(stroke)) - self._opening(stroke))

    def ratio(self, stroke: Array) -> Array:
        """Pad travel for a small further stroke [-]: the pad's arm over the cylinder's."""
        length = self.length[:, None] - stroke
        low, high = self.difference[:, None] ** 2, self.total[:, None] ** 2
        with np.errstate(divide="ignore", invalid="ignore"):
            arm = np.sqrt((length**2 - low) * (high - length**2)) / (2 * length)
            return self.pad_arm[:, None] / arm

    def _opening(self, stroke: Array) -> Array:
        length = self.length[:, None] - stroke
        low, high = self.difference[:, None] ** 2, self.total[:, None] ** 2
        with np.errstate(invalid="ignore"):
            return 2 * np.arcsin(np.sqrt((length**2 - low) / (high - low)))


@dataclass(frozen=True)
class Terms:
    """What each case has to fill and push against, in SI.

    The volume that gives way in proportion is a line of straight pieces over pressure: from each knot on
    the slope grows by what stands beside it. Without a `link` the ratio stays what it is.
    """

    area: Array  # of the cylinder's bore
    full_stroke: Array
    free_stroke: Array
    gap: Array  # volume that closes the pad gaps
    knots: Array  # [cases, knots] pressures
    slopes: Array  # [cases, knots] volume per pressure that comes in at each knot
    fluid: Array  # volume of fluid without air
    modulus: Array
    air: Array  # volume of free air at no gauge pressure
    exponent: Array
    spring: Array  # force at rest
    spring_rate: Array
    friction: Array
    ratio: Array
    link: Link | None = None

    @property
    def cases(self) -> int:
        return len(self.area)

    def volume(self, pressure: Array) -> Array:
        """Volume that each case takes up at its pressures, [cases, points] [m^3]."""
        given = pressure[:, :, None] - self.knots[:, None, :]
        walls: Array = (np.maximum(given, 0.0) * self.slopes[:, None, :]).sum(axis=2)
        squeezed: Array = self.fluid[:, None] * -np.expm1(-pressure / self.modulus[:, None])
        lost = -np.expm1(-np.log1p(pressure / OUTSIDE) / self.exponent[:, None])
        return self.gap[:, None] + walls + squeezed + self.air[:, None] * lost

    def stroke(self, pressure: Array) -> Array:
        """Stroke of the cylinder, the free one included [m]."""
        return self.free_stroke[:, None] + self.volume(pressure) / self.area[:, None]

    def travel(self, stroke: Array) -> Array:
        """Travel of the pad along its arc [m]."""
        return self.ratio[:, None] * stroke if self.link is None else self.link.travel(stroke)

    def ratio_at(self, stroke: Array) -> Array:
        """Pad travel per stroke, where the stroke has come to [-]."""
        if self.link is None:
            return np.broadcast_to(self.ratio[:, None], stroke.shape)
        return self.link.ratio(stroke)

    def push(self, pressure: Array, stroke: Array) -> Array:
        """Force along the cylinder [N]; a spring that is solid goes no further."""
        went = np.minimum(stroke, self.full_stroke[:, None])
        spring = self.spring[:, None] + self.spring_rate[:, None] * went
        return pressure * self.area[:, None] + spring + self.friction[:, None]


@dataclass(frozen=True)
class Curves:
    """Force against travel of many cases, each array [cases, points], from pads just touching on."""

    pressure: Array
    stroke: Array
    travel: Array
    force: Array


def curves(terms: Terms, pressure: Array) -> Curves:
    """Work out whole curves in one pass.

    Args:
        terms: The cases.
        pressure: Gauge pressures of each case, [cases, points] [Pa].
    """
    stroke = terms.stroke(pressure)
    force = terms.push(pressure, stroke) / terms.ratio_at(stroke)
    return Curves(pressure, stroke, terms.travel(stroke), force)


def pressures_up_to(greatest: Array, points: int) -> Array:
    """Pressures from nothing to the greatest of each case, close together where air gives way most."""
    return greatest[:, None] * np.linspace(0.0, 1.0, points)[None, :] ** 2
