"""The direction nearest to another one among those on the right side of several planes."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from firmpedal.lay.rows import lengths

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Array = NDArray[np.float64]

TOUCHING = 1e-12  # a plane is not passed by less than this share of the direction's length


def nearest_in_cone(planes: Array, direction: Array) -> Array:
    """Project a direction onto the cone of all vectors that lie on the right side of every plane.

    The vector sought is the direction and a sum of some planes' normals with weights above nought: the planes
    that it ends up in. The plane that it is furthest beyond is added, and one whose weight would fall below
    nought is taken out again, after Lawson and Hanson, Solving Least Squares Problems, 1974, chapter 23.
    In space no more than three ever matter.

    Args:
        planes: Normals that point to the right side, of any length, shape (n, 3); n may be 0.
        direction: Shape (3,).

    Returns:
        The nearest vector, shape (3,), nought where only that is on the right side of all. Where the
        direction is a unit vector, its length is the cosine of the angle between the two.
    """
    long = lengths(planes)
    normals = planes[long > 0] / long[long > 0, None]
    found: list[int] = []
    weights, nearest = np.zeros(0), direction
    least = -TOUCHING * float(np.linalg.norm(direction))
    while len(normals):
        sides = normals @ nearest
        worst = int(np.argmin(sides))
        if sides[worst] >= least or worst in found:
            break
        held, weights = _held(normals, [*found, worst], np.append(weights, 0.0), direction)
        if held == found:  # it went in and came out again: only rounding is left
            break
        found, nearest = held, direction + weights @ normals[held]
    return nearest


def _held(normals: Array, found: list[int], weights: Array, direction: Array) -> tuple[list[int], Array]:
    """Solve for the weights of some planes; go only until one falls to nought, and drop that one."""
    while found:
        wanted = np.asarray(np.linalg.lstsq(normals[found].T, -direction, rcond=None)[0], dtype=np.float64)
        if (wanted > 0).all():
            return found, wanted
        falling = wanted <= 0
        share = float((weights[falling] / np.maximum(weights[falling] - wanted[falling], 1e-300)).min())
        weights = weights + share * (wanted - weights)
        kept = weights > TOUCHING * max(1.0, float(weights.max()))
        if kept.all():  # rounding hides the one that falls
            kept[int(np.argmin(weights))] = False
        found, weights = [one for one, keep in zip(found, kept, strict=True) if keep], weights[kept]
    return found, weights
