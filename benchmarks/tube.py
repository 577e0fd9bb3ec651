"""Bend geometry beside build123d, a general CAD kernel, which rounds the same corners its own way."""

from __future__ import annotations

import numpy as np

from benchmarks.timing import Race, best_time
from firmpedal.lay.centreline import Centreline, centreline

TUBES = 50
SEED = 7


def _corners() -> list[tuple[tuple[float, float, float], ...]]:
    """Random tubes of six corners, far enough apart for their bends."""
    random = np.random.default_rng(SEED)
    found = []
    while len(found) < TUBES:
        steps = random.uniform(80, 200, (5, 1)) * _directions(random, 5)
        points = tuple(map(tuple, np.vstack([np.zeros(3), np.cumsum(steps, axis=0)]).tolist()))
        if isinstance(centreline(points, 14.3), Centreline):
            found.append(points)
    return found


def _directions(random: np.random.Generator, count: int) -> np.ndarray:
    vectors = random.normal(size=(count, 3))
    return vectors / np.linalg.norm(vectors, axis=1)[:, None]


def race() -> Race:
    """Developed length of fifty tubes both ways."""
    from build123d import FilletPolyline  # noqa: PLC0415  importing the kernel takes seconds

    tubes = _corners()

    def ours() -> list[float]:
        lines = [centreline(points, 14.3) for points in tubes]
        return [line.developed_length for line in lines if isinstance(line, Centreline)]

    def kernel() -> list[float]:
        return [FilletPolyline(*points, radius=14.3).length for points in tubes]

    worst = max(abs(a - b) / b for a, b in zip(ours(), kernel(), strict=True))
    words = f"largest relative difference of length {worst:.1e}"
    return Race(f"developed length of {TUBES} tubes", best_time(ours), best_time(kernel), "build123d", words)
